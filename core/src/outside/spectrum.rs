//! The outside over a band: solved at a few frequencies, interpolated between.
//!
//! Interpolated are the aperture admittances and the far fields per unit of
//! transverse field at the rim, which are smooth through cutoffs; reflections and
//! fields per arriving wave follow from them. The work comes in steps of one
//! frequency, so that a page can say how far it is and stop between them.

use alloc::vec::Vec;

use super::error::OutsideError;
use super::mouth_mode::MouthMode;
use super::outline::Outline;
use super::prepared::{PreparedOutside, frequency_range};
use super::solution::OutsideSolution;
use crate::chebyshev::ChebyshevPoints;
use crate::complex::Complex;
use crate::constants::wavenumber;
use crate::math;
use crate::probe::GuideEnd;

/// Fewest and most frequencies that are solved for a band.
const SOLVED: (usize, usize) = (4, 48);
/// Frequencies per radian that the band is long on the body.
const PER_RADIAN: f64 = 1.6;

/// A solution over a band in the making.
#[derive(Clone, Debug)]
pub struct OutsideSteps {
    prepared: PreparedOutside,
    points: ChebyshevPoints,
    solutions: Vec<OutsideSolution>,
}

impl OutsideSteps {
    /// Prepares an outline for the band from `low_hz` to `high_hz` (the higher
    /// of the two counts as the upper edge). The work is in [`Self::step`].
    ///
    /// # Errors
    /// As [`PreparedOutside::new`].
    pub fn new(outline: &Outline, low_hz: f64, high_hz: f64) -> Result<Self, OutsideError> {
        let (low_hz, high_hz) = (low_hz.min(high_hz), low_hz.max(high_hz));
        let (lowest_hz, highest_hz) = frequency_range(outline.radius_m);
        if low_hz.is_nan() || low_hz < lowest_hz {
            return Err(OutsideError::Frequency {
                frequency_hz: low_hz,
                low_hz: lowest_hz,
                high_hz: highest_hz,
            });
        }
        let prepared = PreparedOutside::new(outline, high_hz)?;
        let size = math::hypot(outline.length_m + outline.front_m(), outline.widest_m());
        let turn = (wavenumber(high_hz) - wavenumber(low_hz)) * size;
        let count = 3 + math::ceil(PER_RADIAN * turn) as usize;
        Ok(Self {
            prepared,
            points: ChebyshevPoints::new(low_hz, high_hz, count.clamp(SOLVED.0, SOLVED.1)),
            solutions: Vec::new(),
        })
    }

    /// Frequencies to solve in all.
    #[must_use]
    pub fn total(&self) -> usize {
        self.points.points().len()
    }

    /// Frequencies solved.
    #[must_use]
    pub fn done(&self) -> usize {
        self.solutions.len()
    }

    /// The prepared body; its cost is that of each step.
    #[must_use]
    pub const fn prepared(&self) -> &PreparedOutside {
        &self.prepared
    }

    /// Solves the next frequency. True while there are more.
    pub fn step(&mut self) -> bool {
        if let Some(frequency) = self.points.points().get(self.solutions.len()) {
            // The points lie in the range that was checked.
            if let Ok(solution) = self.prepared.solve(*frequency) {
                self.solutions.push(solution);
            } else {
                return false;
            }
        }
        self.solutions.len() < self.total()
    }

    /// The result, once all steps are done.
    #[must_use]
    pub fn finish(self) -> Option<OutsideSpectrum> {
        (self.solutions.len() == self.points.points().len()).then_some(OutsideSpectrum {
            outline: *self.prepared.outline(),
            points: self.points,
            solutions: self.solutions,
        })
    }
}

/// The outside of a can over a band.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct OutsideSpectrum {
    pub(super) outline: Outline,
    pub(super) points: ChebyshevPoints,
    pub(super) solutions: Vec<OutsideSolution>,
}

impl OutsideSpectrum {
    /// Solves a band at once.
    ///
    /// # Errors
    /// As [`OutsideSteps::new`].
    pub fn new(outline: &Outline, low_hz: f64, high_hz: f64) -> Result<Self, OutsideError> {
        let mut steps = OutsideSteps::new(outline, low_hz, high_hz)?;
        while steps.step() {}
        let spectrum = steps.finish();
        spectrum.ok_or(OutsideError::Frequency {
            frequency_hz: low_hz,
            low_hz,
            high_hz,
        })
    }

    /// The outline it is of.
    #[must_use]
    pub const fn outline(&self) -> &Outline {
        &self.outline
    }

    /// Lower and upper edge of the band, Hz.
    #[must_use]
    pub fn band_hz(&self) -> (f64, f64) {
        let points = self.points.points();
        let edge = |point: Option<&f64>| point.copied().unwrap_or(f64::NAN);
        (edge(points.first()), edge(points.last()))
    }

    /// The modes at a frequency; `None` outside the band.
    #[must_use]
    pub fn at(&self, frequency_hz: f64) -> Option<OutsideSolution> {
        let weights = self.weights(frequency_hz)?;
        let first = self.solutions.first()?;
        let mut modes = first.modes.clone();
        for (order, mode) in modes.iter_mut().enumerate() {
            let each = || self.solutions.iter().filter_map(|one| one.modes.get(order));
            let k = wavenumber(frequency_hz);
            mode.k = k;
            mode.ka = k * mode.radius_m;
            mode.admittance = weighted(&weights, each().map(|one| one.admittance));
            for (place, value) in mode.series.theta.iter_mut().enumerate() {
                let term = |one: &MouthMode| one.series.theta.get(place).copied();
                *value = weighted(&weights, each().filter_map(term));
            }
            for (place, value) in mode.series.phi.iter_mut().enumerate() {
                let term = |one: &MouthMode| one.series.phi.get(place).copied();
                *value = weighted(&weights, each().filter_map(term));
            }
        }
        Some(OutsideSolution {
            frequency_hz,
            modes,
        })
    }

    /// The can's far end as the probe sees it; `None` outside the band.
    #[must_use]
    pub fn guide_end(&self, frequency_hz: f64) -> Option<GuideEnd> {
        let weights = self.weights(frequency_hz)?;
        let ka = wavenumber(frequency_hz) * self.outline.radius_m;
        let reflection = |order: usize| {
            let each = self.solutions.iter().filter_map(|one| one.modes.get(order));
            let mode = self.solutions.first()?.modes.get(order)?.mode();
            let y = weighted(&weights, each.map(|one| one.admittance));
            Some(crate::mouth::reflection_of_admittance(mode, ka, y))
        };
        Some(GuideEnd {
            length_m: self.outline.length_m,
            te11: reflection(1)?,
            tm01: reflection(0)?,
            te21: reflection(2)?,
        })
    }

    fn weights(&self, frequency_hz: f64) -> Option<Vec<f64>> {
        let (low, high) = self.band_hz();
        let slack = 1e-9 * high;
        (low - slack..=high + slack)
            .contains(&frequency_hz)
            .then(|| self.points.weights(frequency_hz))
    }
}

fn weighted(weights: &[f64], values: impl Iterator<Item = Complex>) -> Complex {
    weights
        .iter()
        .zip(values)
        .fold(Complex::ZERO, |sum, (w, value)| sum + value.scale(*w))
}
