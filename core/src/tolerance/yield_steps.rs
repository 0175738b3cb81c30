//! The share of cans that pass, by drawing many at random.
//!
//! Each can's reflection comes from a parabola through the true solver's values; a few
//! cans are also computed truly, and the difference is stated.

use alloc::sync::Arc;
use alloc::vec::Vec;

use super::surrogate::Surrogate;
use crate::changed_can::ChangedCan;
use crate::design::Design;
use crate::design_error::DesignError;
use crate::dimension::Dimension;
use crate::match_band::band_frequencies;
use crate::math;
use crate::outside::OutsideSpectrum;
use crate::random::Random;
use crate::reflection::{magnitude_of_vswr, vswr};
use crate::si::hertz;

/// How a dimension scatters round the drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Spread {
    /// Evenly within this much either way.
    Uniform(f64),
    /// Normally with this standard deviation.
    Normal(f64),
}

/// What is drawn and judged.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct YieldSettings {
    /// Dimensions that scatter, in the unit of [`Dimension::of`].
    pub spreads: Vec<(Dimension, Spread)>,
    /// A can passes up to this largest VSWR over the band; above 1.
    pub vswr_limit: f64,
    /// Cans to draw, 1 to 1,000,000.
    pub samples: u32,
    /// Seed of the random numbers.
    pub seed: u64,
}

/// Why no yield can be worked out.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum YieldError {
    /// A number of the design outside its hard range.
    Design(DesignError),
    /// The can itself can't be computed.
    NotComputed,
    /// A spread must be above zero and finite.
    Spread(Dimension, f64),
    /// The VSWR limit must be above 1.
    Limit(f64),
    /// The number of samples must be 1 to 1,000,000.
    Samples(u32),
}

impl From<DesignError> for YieldError {
    fn from(error: DesignError) -> Self {
        Self::Design(error)
    }
}

/// What one dimension costs.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Care {
    /// Which.
    pub dimension: Dimension,
    /// Share of cans that would pass were this dimension exact.
    pub pass_if_exact: f64,
    /// Mean of the largest VSWR were only this dimension off.
    pub mean_vswr_alone: f64,
}

/// The outcome.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Yield {
    /// Cans drawn.
    pub samples: u32,
    /// Share that passes.
    pub pass: f64,
    /// Bounds of the true share at 95 %: E. B. Wilson, *J. Amer. Statist. Assoc.* 22
    /// (1927) 209-212.
    pub pass_bounds: (f64, f64),
    /// Largest VSWR that half, and that nine tenths of the cans stay under.
    pub vswr_half: f64,
    /// The same for nine tenths.
    pub vswr_nine_tenths: f64,
    /// The dimension that deserves the care most first.
    pub care: Vec<Care>,
    /// Largest difference of the largest |Γ| between parabola and true solver, over
    /// the cans computed both ways.
    pub surrogate_error: f64,
}

const BAND_POINTS: u32 = 9;
/// Cans drawn in one step.
const PER_STEP: u32 = 200;
/// Cans computed truly as a check.
const CHECKS: usize = 8;
/// Normal spreads are sampled to this many deviations.
const NORMAL_REACH: f64 = 1.5;

/// A yield that comes step by step, a few milliseconds each.
#[derive(Clone, Debug)]
pub struct YieldSteps {
    can: ChangedCan,
    surrogate: Surrogate,
    settings: YieldSettings,
    random: Random,
    piece: usize,
    /// Largest |Γ| of each can drawn.
    drawn: Vec<f64>,
    /// For each dimension: cans that pass with it exact, and the sum of VSWR with it
    /// alone off.
    each: Vec<(u32, f64)>,
    checked: usize,
    surrogate_error: f64,
    failed: bool,
}

/// Draws all at once.
///
/// # Errors
/// [`YieldError`].
pub fn yield_of(
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
    settings: YieldSettings,
) -> Result<Yield, YieldError> {
    let mut steps = YieldSteps::new(design, outside, settings)?;
    while steps.step() {}
    steps.finish().ok_or(YieldError::NotComputed)
}

fn check(settings: &YieldSettings) -> Result<(), YieldError> {
    for (dimension, spread) in &settings.spreads {
        let (Spread::Uniform(size) | Spread::Normal(size)) = *spread;
        if !(size > 0.0 && size.is_finite()) {
            return Err(YieldError::Spread(*dimension, size));
        }
    }
    if !(settings.vswr_limit > 1.0 && settings.vswr_limit.is_finite()) {
        return Err(YieldError::Limit(settings.vswr_limit));
    }
    if !(1..=1_000_000).contains(&settings.samples) {
        return Err(YieldError::Samples(settings.samples));
    }
    Ok(())
}

impl YieldSteps {
    /// Sets it up; the work is in [`Self::step`].
    ///
    /// # Errors
    /// [`YieldError`].
    pub fn new(
        design: &Design,
        outside: Option<&Arc<OutsideSpectrum>>,
        settings: YieldSettings,
    ) -> Result<Self, YieldError> {
        check(&settings)?;
        let can = ChangedCan::new(design, outside)?.ok_or(YieldError::NotComputed)?;
        let reach = |spread: &Spread| match *spread {
            Spread::Uniform(half) => half,
            Spread::Normal(sd) => NORMAL_REACH * sd,
        };
        let reaches = settings.spreads.iter().map(|(d, s)| (*d, reach(s)));
        let band = band_frequencies(design.band, BAND_POINTS);
        Ok(Self {
            surrogate: Surrogate::new(reaches.collect(), band.into_iter().map(hertz).collect()),
            can,
            random: Random::new(settings.seed),
            piece: 0,
            drawn: Vec::new(),
            each: alloc::vec![(0, 0.0); settings.spreads.len()],
            checked: 0,
            surrogate_error: 0.0,
            failed: false,
            settings,
        })
    }

    /// Does one piece; `false` when there is no more. May be stopped at any time.
    pub fn step(&mut self) -> bool {
        if self.failed {
            return false;
        }
        if self.piece < self.surrogate.pieces() {
            self.failed = self.surrogate.sample(&mut self.can, self.piece).is_none();
            self.piece += 1;
        } else if self.checked < CHECKS {
            self.check_one();
        } else {
            for _ in 0..PER_STEP.min(self.left()) {
                self.draw();
            }
        }
        !self.failed && self.left() > 0
    }

    /// Share of the samples drawn.
    #[must_use]
    pub fn done(&self) -> f64 {
        self.drawn.len() as f64 / f64::from(self.settings.samples)
    }

    fn left(&self) -> u32 {
        let drawn = u32::try_from(self.drawn.len()).unwrap_or(u32::MAX);
        self.settings.samples.saturating_sub(drawn)
    }

    /// Deviations in units of the parabola's reach.
    fn deviations(&mut self) -> Vec<f64> {
        let random = &mut self.random;
        let spreads = self.settings.spreads.iter();
        spreads
            .map(|(_, spread)| match spread {
                Spread::Uniform(_) => 2.0 * random.uniform() - 1.0,
                Spread::Normal(_) => random.normal() / NORMAL_REACH,
            })
            .collect()
    }

    fn check_one(&mut self) {
        self.checked += 1;
        let deviations = self.deviations();
        // An impossible can says nothing about the parabola.
        if let Some(truth) = self.surrogate.true_worst(&mut self.can, &deviations) {
            let off = (self.surrogate.worst(&deviations) - truth).abs();
            self.surrogate_error = self.surrogate_error.max(off);
        }
    }

    fn draw(&mut self) {
        let limit = magnitude_of_vswr(self.settings.vswr_limit);
        let deviations = self.deviations();
        self.drawn.push(self.surrogate.worst(&deviations));
        for (i, (passing, sum)) in self.each.iter_mut().enumerate() {
            let with = |keep: bool| -> Vec<f64> {
                let each = deviations.iter().enumerate();
                each.map(|(k, d)| if (k == i) == keep { *d } else { 0.0 })
                    .collect()
            };
            *passing += u32::from(self.surrogate.worst(&with(false)) <= limit);
            *sum += vswr(self.surrogate.worst(&with(true)));
        }
    }

    /// What the samples drawn so far tell; `None` before the first.
    #[must_use]
    pub fn finish(mut self) -> Option<Yield> {
        let samples = u32::try_from(self.drawn.len()).ok().filter(|n| *n > 0)?;
        let n = f64::from(samples);
        let limit = magnitude_of_vswr(self.settings.vswr_limit);
        let passing = self.drawn.iter().filter(|worst| **worst <= limit).count();
        let pass = passing as f64 / n;
        self.drawn.sort_by(f64::total_cmp);
        let quantile = |tenths: usize| {
            let place = (self.drawn.len() * tenths).div_ceil(10).saturating_sub(1);
            vswr(self.drawn.get(place).copied().unwrap_or(1.0))
        };
        let dimensions = self.settings.spreads.iter().map(|(d, _)| *d);
        let mut care: Vec<Care> = dimensions
            .zip(&self.each)
            .map(|(dimension, (passing, sum))| Care {
                dimension,
                pass_if_exact: f64::from(*passing) / n,
                mean_vswr_alone: sum / n,
            })
            .collect();
        care.sort_by(|a, b| {
            let by_pass = b.pass_if_exact.total_cmp(&a.pass_if_exact);
            by_pass.then(b.mean_vswr_alone.total_cmp(&a.mean_vswr_alone))
        });
        Some(Yield {
            samples,
            pass,
            pass_bounds: wilson(pass, n),
            vswr_half: quantile(5),
            vswr_nine_tenths: quantile(9),
            care,
            surrogate_error: self.surrogate_error,
        })
    }
}

/// Wilson's score interval at 95 %.
fn wilson(share: f64, n: f64) -> (f64, f64) {
    let z = 1.959_964;
    let middle = share + z * z / (2.0 * n);
    let half = z * math::sqrt(share * (1.0 - share) / n + z * z / (4.0 * n * n));
    let whole = 1.0 + z * z / n;
    ((middle - half) / whole, (middle + half) / whole)
}
