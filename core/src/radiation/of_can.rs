//! The beam of a whole can at one frequency.

use super::figures::BeamFigures;
use super::sum_pattern::SumPattern;
use crate::complex::Complex;
use crate::outside::OutsideSpectrum;
use crate::whole_can::WholeCan;

/// The beam of a can at one frequency.
#[derive(Clone, Debug, PartialEq)]
pub struct CanBeam {
    /// The pattern: all modes as the probe launches them; TE11's alone where the
    /// probe was not computed.
    pub pattern: SumPattern,
    /// Its figures. Without the probe those of gain and shares mean nothing: see
    /// `realised_gain_dbi`.
    pub figures: BeamFigures,
    /// Gain straight ahead with match and wall loss in it; `None` without the probe.
    pub realised_gain_dbi: Option<f64>,
    /// Reflection of TE11's transverse field at the end of the can's straight wall.
    pub mouth_reflection: Complex,
}

impl CanBeam {
    /// At a frequency (Hz), from the outside and the can that was made with it.
    /// `None` outside the band of the solution, and where nothing is radiated.
    #[must_use]
    pub fn new(
        outside: &OutsideSpectrum,
        can: Option<&WholeCan>,
        frequency_hz: f64,
    ) -> Option<Self> {
        let modes = outside.at(frequency_hz)?;
        let probe = can.and_then(|can| {
            let point = can.match_at(frequency_hz).ok()?;
            Some((can.solve(frequency_hz).ok()?, point.reflection))
        });
        let (pattern, reflection) = match &probe {
            Some((probe, reflection)) => (SumPattern::new(&modes, probe), *reflection),
            None => (SumPattern::of_te11(&modes), Complex::ZERO),
        };
        let figures = BeamFigures::new(&pattern, reflection);
        figures.directivity_dbi.is_finite().then(|| Self {
            pattern,
            figures,
            realised_gain_dbi: probe.map(|_| figures.realised_gain_dbi),
            mouth_reflection: modes.te11().reflection(),
        })
    }
}
