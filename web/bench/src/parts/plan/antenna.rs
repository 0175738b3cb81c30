//! An antenna of the link: a can with its computed beam, or one whose gain and width
//! are stated.

use std::cell::RefCell;
use std::sync::Arc;

use tinwave_core::beam::Beam;
use tinwave_core::design::{Design, Mouth, Sweep};
use tinwave_core::outside::{OutsideSpectrum, OutsideSteps};
use tinwave_core::radiation::CanBeam;
use tinwave_core::radio_link::pointing_loss_db;
use tinwave_core::si::{SiDesign, hertz, metres};

use crate::outsides::{kept_outside, outside_of};
use crate::whole::whole_can;

/// Directions round the axis in which an error of pointing is tried.
const AZIMUTHS: u32 = 8;

/// Most that an error of pointing is reckoned to cost, dB: in a null of the pattern the
/// surroundings still send something (common practice, no source).
const MOST_LOSS_DB: f64 = 40.0;

/// So many are kept.
const MOST_KEPT: usize = 4;

/// How well an antenna is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Knowledge {
    /// Field of the whole can, probe included.
    Computed,
    /// Field of the whole can without its probe: the match is not counted.
    WithoutProbe,
    /// From an endless pipe.
    Estimated,
    /// Stated by the maker.
    Stated,
}

/// An antenna.
#[derive(Clone, Debug)]
pub(super) struct Antenna {
    /// Gain straight ahead without the loss by reflection, dBi.
    pub gain_dbi: f64,
    /// Loss by reflection at its connector, dB.
    pub mismatch_loss_db: f64,
    /// Gain in the strongest direction without that loss, dBi.
    pub peak_gain_dbi: f64,
    /// Full half-power widths along and across the wire, degrees.
    pub widths_deg: Option<[f64; 2]>,
    /// Angle of the strongest direction along the wire, degrees.
    pub lean_deg: f64,
    /// Diameter of the mouth, m.
    pub mouth_diameter_m: Option<f64>,
    /// Length of the can, m.
    pub length_m: Option<f64>,
    /// How it is known.
    pub knowledge: Knowledge,
    beam: Option<CanBeam>,
}

thread_local! {
    static KEPT: RefCell<Vec<(Design, Arc<Antenna>)>> = const { RefCell::new(Vec::new()) };
}

impl Antenna {
    /// A can at the middle of its band: kept, or computed now. `None` where it has no
    /// beam there.
    pub(super) fn of_can(design: &Design) -> Option<Arc<Self>> {
        let mut key = design.clone();
        key.name.clear();
        let known = KEPT.with_borrow(|kept| {
            let found = kept.iter().find(|(known, _)| *known == key);
            found.map(|(_, antenna)| Arc::clone(antenna))
        });
        if known.is_some() {
            return known;
        }
        let computed = Arc::new(Self::compute(&key)?);
        KEPT.with_borrow_mut(|kept| {
            kept.insert(0, (key, Arc::clone(&computed)));
            kept.truncate(MOST_KEPT);
        });
        Some(computed)
    }

    /// An antenna by its gain and half-power width.
    pub(super) const fn stated(gain_dbi: f64, width_deg: f64) -> Self {
        Self {
            gain_dbi,
            mismatch_loss_db: 0.0,
            peak_gain_dbi: gain_dbi,
            widths_deg: Some([width_deg, width_deg]),
            lean_deg: 0.0,
            mouth_diameter_m: None,
            length_m: None,
            knowledge: Knowledge::Stated,
            beam: None,
        }
    }

    fn compute(design: &Design) -> Option<Self> {
        let centre_hz = centre_hz(design);
        let outside = outside_at_centre(design);
        let can = whole_can(design, outside.as_ref());
        let beam = outside.and_then(|outside| CanBeam::new(&outside, can.as_ref(), centre_hz));
        let mut antenna = match beam {
            Some(beam) => Self::of_beam(beam),
            None => {
                let si = SiDesign::new(design);
                Self::of_estimate(&Beam::new(design, &si, can.as_ref())?)
            }
        };
        let mouth_um = match design.mouth {
            Mouth::Funnel {
                mouth_diameter_um, ..
            } => mouth_diameter_um,
            _ => design.can.inside_diameter_um,
        };
        antenna.mouth_diameter_m = Some(metres(mouth_um));
        antenna.length_m = Some(metres(design.can.open_length_um));
        Some(antenna)
    }

    fn of_beam(beam: CanBeam) -> Self {
        let figures = beam.figures;
        let with_probe = beam.realised_gain_dbi.is_some();
        let (walls_db, mismatch_loss_db) = if with_probe {
            let walls = 10.0 * figures.radiated_share.log10();
            (walls, -10.0 * figures.accepted_share.log10())
        } else {
            (0.0, 0.0)
        };
        Self {
            gain_dbi: figures.directivity_dbi + walls_db,
            mismatch_loss_db: mismatch_loss_db.clamp(0.0, MOST_LOSS_DB),
            peak_gain_dbi: figures.peak_dbi.max(figures.directivity_dbi) + walls_db,
            widths_deg: figures
                .beamwidth_e_deg
                .zip(figures.beamwidth_h_deg)
                .map(|(e, h)| [e, h]),
            lean_deg: figures.e_peak_angle_deg,
            mouth_diameter_m: None,
            length_m: None,
            knowledge: if with_probe {
                Knowledge::Computed
            } else {
                Knowledge::WithoutProbe
            },
            beam: Some(beam),
        }
    }

    fn of_estimate(beam: &Beam) -> Self {
        let realised = beam.realised_gain_dbi.unwrap_or(beam.directivity_dbi);
        Self {
            gain_dbi: beam.directivity_dbi,
            mismatch_loss_db: (beam.directivity_dbi - realised).clamp(0.0, MOST_LOSS_DB),
            widths_deg: Some([beam.beamwidth_e_deg, beam.beamwidth_h_deg]),
            knowledge: Knowledge::Estimated,
            ..Self::stated(beam.directivity_dbi, beam.beamwidth_e_deg)
        }
    }

    /// Gain straight ahead with the loss by reflection, dBi.
    pub(super) fn realised_gain_dbi(&self) -> f64 {
        self.gain_dbi - self.mismatch_loss_db
    }

    /// Whether its pattern is computed, not a law of the main lobe.
    pub(super) const fn has_pattern(&self) -> bool {
        self.beam.is_some()
    }

    /// Loss by pointing past the other end, dB: the worst of the directions round the
    /// axis of the computed pattern, or the law of the main lobe.
    pub(super) fn pointing_loss_db(&self, error_deg: f64) -> f64 {
        let error = error_deg.abs().to_radians();
        if error == 0.0 {
            return 0.0;
        }
        if let Some(beam) = &self.beam {
            let ahead = beam.figures.directivity_dbi;
            let turn = 2.0 * std::f64::consts::PI / f64::from(AZIMUTHS);
            let least = (0..AZIMUTHS)
                .map(|n| beam.pattern.directivity_dbi(error, f64::from(n) * turn))
                .fold(f64::INFINITY, f64::min);
            return (ahead - least).clamp(0.0, MOST_LOSS_DB);
        }
        let narrow = self.widths_deg.map_or(360.0, |[e, h]| e.min(h));
        pointing_loss_db(error, narrow.to_radians())
    }
}

/// Most frequencies of a field that is solved for over the whole sweep, as the other
/// parts want it.
const FEW: usize = 6;

/// The outside of a can, at the middle of its band at least: over the whole sweep where
/// that is known or quick, else only round the middle, which is all that counts here.
fn outside_at_centre(design: &Design) -> Option<Arc<OutsideSpectrum>> {
    let sweep = design.effective_sweep();
    let centre_khz = design.band.low_khz.midpoint(design.band.high_khz);
    let quick = || {
        let steps = OutsideSteps::of_design(design).ok().flatten();
        steps.is_some_and(|steps| steps.total() <= FEW)
    };
    let covered = (sweep.low_khz..=sweep.high_khz).contains(&centre_khz);
    if covered && (kept_outside(design).is_some() || quick()) {
        return outside_of(design);
    }
    let mut narrow = design.clone();
    narrow.sweep = Some(Sweep {
        low_khz: centre_khz.saturating_sub(HALF_WIDTH_KHZ),
        high_khz: centre_khz + HALF_WIDTH_KHZ,
        points: 3,
    });
    outside_of(&narrow)
}

/// Half the sweep that is solved for round the middle.
const HALF_WIDTH_KHZ: u32 = 1_000;

/// Middle of a design's band, Hz.
pub(super) fn centre_hz(design: &Design) -> f64 {
    0.5 * (hertz(design.band.low_khz) + hertz(design.band.high_khz))
}

#[cfg(test)]
mod tests {
    use super::{Antenna, FEW};
    use crate::outsides::{kept_outside, outside_of};
    use tinwave_core::design::Mouth;
    use tinwave_core::outside::OutsideSteps;
    use tinwave_web::example;

    #[test]
    fn a_large_funnel_has_the_same_beam_from_the_middle_of_the_band_alone() {
        let mut design = example::example().design;
        design.mouth = Mouth::Funnel {
            mouth_diameter_um: 300_000,
            half_angle_millideg: 25_000,
        };
        let steps = OutsideSteps::of_design(&design).ok().flatten();
        assert!(steps.is_some_and(|steps| steps.total() > FEW));
        let alone = Antenna::compute(&design);
        assert!(kept_outside(&design).is_none());
        let _whole = outside_of(&design);
        let whole = Antenna::compute(&design);
        let gains = alone
            .zip(whole)
            .map(|(a, b)| (a.realised_gain_dbi(), b.realised_gain_dbi()));
        let (alone, whole) = gains.unwrap_or((0.0, f64::NAN));
        // The reckoning between solved frequencies is good to some hundredths of a dB.
        assert!((alone - whole).abs() < 0.02, "{alone} {whole}");
        assert!(whole > 12.0, "{whole}");
    }
}
