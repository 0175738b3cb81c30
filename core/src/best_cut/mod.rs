//! The best cut: the probe length, or length and distance from the back wall,
//! with the lowest worst-case VSWR over the band.
//!
//! The reflection is smooth in both dimensions, so it is computed at a few
//! Chebyshev points of each, interpolated, searched for its minima, and
//! computed anew round each of them. The work comes in steps of a few
//! milliseconds at most, so that a page stays responsive.

mod candidate;
mod slack;
mod surrogate;

use alloc::sync::Arc;
use alloc::vec::Vec;

use crate::design::{Design, Micrometres};
use crate::design_error::DesignError;
use crate::judge;
use crate::match_band::band_frequencies;
use crate::outside::OutsideSpectrum;
use crate::probe::{GuideCondition, PreparedProbe, ProbeGeometry};
use crate::reflection::{PointMatch, vswr};
use crate::si::{SiDesign, hertz, micrometres};
use crate::waveguide_mode::Mode;
use crate::whole_can::{CanBody, probe_geometry};

use candidate::{Candidate, refine};
pub use slack::{Allowance, Slack};
use surrogate::Surrogate;

/// What the search may change.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FreeDimensions {
    /// The probe's length; its distance from the back wall is kept.
    Length,
    /// Length and distance.
    LengthAndDistance,
}

/// One best cut.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct BestCut {
    /// Inner wall to tip.
    pub length_um: Micrometres,
    /// Inside of the back wall to the wire's axis.
    pub backshort_distance_um: Micrometres,
    /// Largest VSWR over the band.
    pub worst_vswr: f64,
    /// How far the length alone may be off.
    pub length_slack: Slack,
    /// How far the distance alone may be off.
    pub distance_slack: Slack,
}

/// How far the search is.
#[derive(Clone, Debug, PartialEq)]
pub enum Progress {
    /// Still at it; share done, 0 to 1.
    Working {
        /// Share of the steps done.
        done: f64,
    },
    /// The best first; two where two good pairs exist; empty where none can be computed.
    Done(Vec<BestCut>),
}

/// Points along the length.
const LENGTH_POINTS: usize = 14;
/// Points along the distance.
const DISTANCE_POINTS: usize = 17;
/// Most minima that are looked at closely.
const MOST_CANDIDATES: usize = 3;
/// Most pairs given.
const MOST_PAIRS: usize = 2;
/// A second pair counts as good up to this VSWR, or to 1.25 times the best.
const GOOD_VSWR: f64 = 1.5;
/// Cuts are given in hundredths of a millimetre.
const GRAIN_UM: u32 = 10;

/// What every evaluation needs: the probe but for its two dimensions, and the
/// guide's condition at each frequency looked at.
#[derive(Clone, Debug)]
struct Setting {
    geometry: ProbeGeometry,
    reference_ohm: f64,
    conditions: Vec<(f64, GuideCondition)>,
    lengths_m: (f64, f64),
    distances_m: (f64, f64),
}

impl Setting {
    fn prepare(&self, length_m: f64, distance_m: f64) -> Option<PreparedProbe> {
        let mut geometry = self.geometry.clone();
        geometry.feed.wire.insertion_m = length_m;
        geometry.feed.wire.axial_m = distance_m;
        PreparedProbe::new(&geometry).ok()
    }

    fn reflections(&self, probe: &PreparedProbe) -> impl Iterator<Item = PointMatch> {
        self.conditions.iter().map(|(frequency_hz, condition)| {
            let admittance = probe.input_admittance(*frequency_hz, condition);
            PointMatch::from_admittance(admittance, self.reference_ohm)
        })
    }

    /// Largest |Γ| over the frequencies.
    fn worst(&self, probe: &PreparedProbe) -> f64 {
        self.reflections(probe)
            .map(|point| point.reflection.abs())
            .fold(0.0, f64::max)
    }
}

#[derive(Clone, Debug)]
enum Stage {
    Sampling {
        next: usize,
    },
    Refining {
        next: usize,
        found: Vec<Candidate>,
    },
    Finishing {
        next: usize,
        found: Vec<Candidate>,
        cuts: Vec<BestCut>,
    },
    Done(Vec<BestCut>),
}

/// A search that advances step by step.
#[derive(Clone, Debug)]
pub struct BestCutSearch {
    setting: Setting,
    surrogate: Surrogate,
    stage: Stage,
}

/// Runs a search to its end.
///
/// # Errors
/// A number outside its hard range ([`Design::check`]).
pub fn best_cut(design: &Design, free: FreeDimensions) -> Result<Vec<BestCut>, DesignError> {
    best_cut_with(design, free, None)
}

/// Runs a search to its end, with the outside solved if it is.
///
/// # Errors
/// A number outside its hard range ([`Design::check`]).
pub fn best_cut_with(
    design: &Design,
    free: FreeDimensions,
    outside: Option<&Arc<OutsideSpectrum>>,
) -> Result<Vec<BestCut>, DesignError> {
    let mut search = BestCutSearch::with_outside(design, free, outside)?;
    loop {
        if let Progress::Done(cuts) = search.step() {
            return Ok(cuts);
        }
    }
}

impl BestCutSearch {
    /// Sets a search up; the work is in [`BestCutSearch::step`].
    ///
    /// # Errors
    /// A number outside its hard range ([`Design::check`]).
    pub fn new(design: &Design, free: FreeDimensions) -> Result<Self, DesignError> {
        Self::with_outside(design, free, None)
    }

    /// The same with the outside solved, if it is: then whatever stands at the mouth
    /// counts.
    ///
    /// # Errors
    /// A number outside its hard range ([`Design::check`]).
    pub fn with_outside(
        design: &Design,
        free: FreeDimensions,
        outside: Option<&Arc<OutsideSpectrum>>,
    ) -> Result<Self, DesignError> {
        design.check()?;
        let si = SiDesign::new(design);
        let setting = setting(design, &si, free, outside);
        let possible = setting.is_some();
        let setting = setting.unwrap_or_else(|| Setting {
            geometry: probe_geometry(&si),
            reference_ohm: si.reference_ohm,
            conditions: Vec::new(),
            lengths_m: (0.0, 0.0),
            distances_m: (0.0, 0.0),
        });
        let distances = match free {
            FreeDimensions::Length => 1,
            FreeDimensions::LengthAndDistance => DISTANCE_POINTS,
        };
        let surrogate = Surrogate::new(&setting, LENGTH_POINTS, distances);
        let stage = if possible {
            Stage::Sampling { next: 0 }
        } else {
            Stage::Done(Vec::new())
        };
        Ok(Self {
            setting,
            surrogate,
            stage,
        })
    }

    /// Does one piece of work: one probe prepared, or one minimum refined.
    pub fn step(&mut self) -> Progress {
        let stage = core::mem::replace(&mut self.stage, Stage::Done(Vec::new()));
        self.stage = self.advance(stage);
        let steps = (LENGTH_POINTS + 2 * MOST_CANDIDATES) as f64;
        let done = match &self.stage {
            Stage::Done(cuts) => return Progress::Done(cuts.clone()),
            Stage::Sampling { next } => *next,
            Stage::Refining { next, .. } => LENGTH_POINTS + next,
            Stage::Finishing { next, .. } => LENGTH_POINTS + MOST_CANDIDATES + next,
        };
        Progress::Working {
            done: done as f64 / steps,
        }
    }

    fn advance(&mut self, stage: Stage) -> Stage {
        match stage {
            Stage::Sampling { next } => {
                self.surrogate.sample(&self.setting, next);
                if next + 1 < LENGTH_POINTS {
                    return Stage::Sampling { next: next + 1 };
                }
                let found = self.surrogate.minima(MOST_CANDIDATES);
                Stage::Refining { next: 0, found }
            }
            Stage::Refining { next, mut found } => {
                if let Some(candidate) = found.get_mut(next) {
                    *candidate = refine(&self.setting, &self.surrogate, *candidate);
                    return Stage::Refining {
                        next: next + 1,
                        found,
                    };
                }
                found.sort_by(|a, b| a.worst.total_cmp(&b.worst));
                keep_good(&mut found);
                Stage::Finishing {
                    next: 0,
                    found,
                    cuts: Vec::new(),
                }
            }
            Stage::Finishing {
                next,
                found,
                mut cuts,
            } => {
                let Some(candidate) = found.get(next) else {
                    return Stage::Done(cuts);
                };
                cuts.extend(self.finish(*candidate));
                Stage::Finishing {
                    next: next + 1,
                    found,
                    cuts,
                }
            }
            done @ Stage::Done(_) => done,
        }
    }

    /// Rounds a refined minimum to what is printed, computes it exactly, and
    /// finds how far each dimension may be off.
    fn finish(&self, candidate: Candidate) -> Option<BestCut> {
        let grain = |m: f64| (micrometres(m) + GRAIN_UM / 2) / GRAIN_UM * GRAIN_UM;
        let length_um = grain(candidate.length_m);
        let backshort_distance_um = if self.surrogate.distance_is_free() {
            grain(candidate.distance_m)
        } else {
            micrometres(candidate.distance_m)
        };
        let length_m = f64::from(length_um) / 1e6;
        let distance_m = f64::from(backshort_distance_um) / 1e6;
        let probe = self.setting.prepare(length_m, distance_m)?;
        Some(BestCut {
            length_um,
            backshort_distance_um,
            worst_vswr: vswr(self.setting.worst(&probe)),
            length_slack: slack::of_length(&self.setting, &self.surrogate, length_m, distance_m),
            distance_slack: slack::of_distance(&self.setting, &probe, distance_m),
        })
    }
}

/// Keeps the best and at most one other good pair; minima that ran into one
/// another count once.
fn keep_good(found: &mut Vec<Candidate>) {
    let mut kept: Vec<Candidate> = Vec::new();
    for candidate in found.iter() {
        let limit = kept
            .first()
            .map_or(f64::INFINITY, |best| GOOD_VSWR.max(1.25 * vswr(best.worst)));
        let apart = kept.iter().all(|other| {
            (candidate.length_m - other.length_m).abs() > 5e-4
                || (candidate.distance_m - other.distance_m).abs() > 4e-3
        });
        if kept.len() < MOST_PAIRS && apart && vswr(candidate.worst) <= limit {
            kept.push(*candidate);
        }
    }
    *found = kept;
}

/// The setting of a search; `None` where nothing can be computed over the band.
fn setting(
    design: &Design,
    si: &SiDesign,
    free: FreeDimensions,
    outside: Option<&Arc<OutsideSpectrum>>,
) -> Option<Setting> {
    let body = CanBody::of(design, si, outside).ok()?;
    let centre = si.centre_hz();
    let wavelength = crate::constants::SPEED_OF_LIGHT / centre;
    let guide_wavelength = Mode::TE11.guide_wavelength_m(si.radius_m, centre)?;
    let relative_width = (si.band_high_hz - si.band_low_hz) / centre;
    // Five frequencies for a narrow band, eleven for a wide one.
    let points = [(0.05, 5), (0.10, 7), (0.15, 9)]
        .into_iter()
        .find(|(width, _)| relative_width <= *width)
        .map_or(11, |(_, points)| points);
    let mut conditions = Vec::new();
    for khz in band_frequencies(design.band, points) {
        conditions.push((hertz(khz), body.condition(hertz(khz)).ok()?));
    }
    let lengths_m = (
        (0.13 * wavelength).max(6.0 * si.wire_radius_m),
        (0.40 * wavelength).min(judge::longest_probe_m(si)),
    );
    let mouth_m = if design.mouth == crate::design::Mouth::Absorbing {
        f64::INFINITY
    } else {
        si.open_length_m - judge::least_mouth_distance_m(si)
    };
    let least_m = judge::least_backshort_distance_m(si);
    let distances_m = match free {
        FreeDimensions::Length => (si.backshort_distance_m, si.backshort_distance_m),
        FreeDimensions::LengthAndDistance => (
            least_m.max(0.08 * wavelength),
            (0.55 * guide_wavelength).min(3.0 * wavelength).min(mouth_m),
        ),
    };
    let buildable = judge::judge_feed_but_for_cut(si).is_empty()
        && distances_m.0 >= least_m
        && distances_m.1 <= mouth_m
        && distances_m.0 <= distances_m.1
        && lengths_m.0 < lengths_m.1;
    buildable.then(|| Setting {
        geometry: probe_geometry(si),
        reference_ohm: si.reference_ohm,
        conditions,
        lengths_m,
        distances_m,
    })
}
