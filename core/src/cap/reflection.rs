//! What a mode's reflection at the mouth becomes under a cap.

use super::filled_section::FilledSection;
use super::sheet::Sheet;
use crate::complex::Complex;
use crate::constants::wavenumber;
use crate::math;
use crate::mouth::reflection_of_admittance;
use crate::waveguide_mode::{Family, Mode};

/// Nearer to cutoff than this, in `|h/k|`, the reflection is -1 (TE) or +1 (TM)
/// whatever stands at the mouth.
const AT_CUTOFF: f64 = 1e-7;

/// Reflection coefficient of transverse E at the mouth with a cap, from that
/// without: TE and TM modes, above and below cutoff. Radius (m) and frequency (Hz)
/// positive; both reflections count at the rim's plane, out to which the sheet fills
/// the guide.
///
/// The sheet's section loaded by the mouth's admittance, less the same length of empty
/// guide: a sheet of no thickness, or of permittivity 1, changes nothing.
#[must_use]
pub fn capped_reflection(
    mode: Mode,
    radius_m: f64,
    frequency_hz: f64,
    reflection: Complex,
    sheet: &Sheet,
) -> Complex {
    let Some(mouth) = Mouth::new(mode, radius_m, frequency_hz, reflection) else {
        return reflection;
    };
    let kt = wavenumber(frequency_hz) * sheet.thickness_m();
    let filled = mouth.section(kt, sheet.relative_permittivity());
    let back = mouth.section(-kt, Complex::ONE);
    let y = back.admittance(filled.admittance(mouth.admittance));
    reflection_of_admittance(mode, mouth.ka, y)
}

/// Loss in the sheet itself, dB (0 or more): power that enters it over power that leaves
/// it, for a mode with that reflection at the mouth without a cap. `None` where the mode
/// takes no power through the mouth.
#[must_use]
pub fn dissipation_loss_db(
    mode: Mode,
    radius_m: f64,
    frequency_hz: f64,
    reflection: Complex,
    sheet: &Sheet,
) -> Option<f64> {
    let mouth = Mouth::new(mode, radius_m, frequency_hz, reflection)?;
    let kt = wavenumber(frequency_hz) * sheet.thickness_m();
    let filled = mouth.section(kt, sheet.relative_permittivity());
    (mouth.admittance.re > 0.0)
        .then(|| 10.0 * math::log10(filled.power_ratio(mouth.admittance).max(1.0)))
}

/// A mode before the mouth.
struct Mouth {
    family: Family,
    root: f64,
    ka: f64,
    /// Admittance over the vacuum's.
    admittance: Complex,
}

impl Mouth {
    fn new(mode: Mode, radius_m: f64, frequency_hz: f64, reflection: Complex) -> Option<Self> {
        let root = mode.root()?;
        let square = mode.squared_phase_ratio(radius_m, frequency_hz)?;
        let size = math::sqrt(math::fabs(square));
        if size < AT_CUTOFF {
            return None;
        }
        // h/k, -j|h/k| below cutoff.
        let beta = if square >= 0.0 {
            Complex::real(size)
        } else {
            Complex::new(0.0, -size)
        };
        let wave = match mode.family {
            Family::Te => beta,
            Family::Tm => beta.inv(),
        };
        Some(Self {
            family: mode.family,
            root,
            ka: wavenumber(frequency_hz) * radius_m,
            admittance: wave * (Complex::ONE - reflection) / (Complex::ONE + reflection),
        })
    }

    fn section(&self, kt: f64, permittivity: Complex) -> FilledSection {
        FilledSection::new(self.family, self.root, self.ka, kt, permittivity)
    }
}
