//! What to do about it: trim, lengthen, move or add a screw, and the match to expect.

use alloc::sync::Arc;
use alloc::vec::Vec;

use super::conclusion::Diagnosis;
use crate::best_cut::{BestCut, BestCutSearch, FreeDimensions, Progress};
use crate::changed_can::ChangedCan;
use crate::design::{Design, Micrometres, Screw};
use crate::design_error::DesignError;
use crate::dimension::Dimension;
use crate::match_band::band_frequencies;
use crate::outside::OutsideSpectrum;
use crate::reflection::vswr;
use crate::screw_search::{ScrewProgress, ScrewSearch, ScrewSettings, TunedScrews};
use crate::si::{SiDesign, hertz, micrometres};

/// One thing to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Remedy {
    /// Nothing: no cut betters it by much.
    Leave,
    /// Cut wire off.
    Trim {
        /// All that should come off.
        whole_um: Micrometres,
        /// How much to cut before measuring again: wire can't be put back.
        safe_um: Micrometres,
    },
    /// The wire is too short by this much: a new one.
    Lengthen {
        /// How much is missing.
        by_um: Micrometres,
    },
    /// Another hole, and a wire of another length.
    Move {
        /// From the inside of the back wall.
        backshort_distance_um: Micrometres,
        /// From the inner wall to the tip.
        length_um: Micrometres,
    },
    /// One more tuning screw, the wire left as it is.
    AddScrew(Screw),
}

/// Advice on a measured can.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Advice {
    /// The can as it most likely is.
    pub as_built: Design,
    /// Its largest VSWR over the band; `None` where it can't be computed.
    pub worst_vswr_now: Option<f64>,
    /// What to do, the least work first, with the largest VSWR to expect after all of
    /// it.
    pub remedies: Vec<(Remedy, f64)>,
}

/// Cuts below this are not worth a file.
const LEAST_CUT_UM: u32 = 100;
/// Share of a cut that is taken at most before measuring again.
const MOST_SHARE: f64 = 0.7;
/// The screw tried: M4 opposite the probe. Common practice, no source.
const SCREW: ScrewSettings = ScrewSettings {
    count: 1,
    diameter_um: 4000,
    angle_millideg: 180_000,
};
/// A remedy must better the reflection's worst VSWR by this factor.
const WORTH: f64 = 0.97;

/// Advice worked out step by step.
#[derive(Clone, Debug)]
pub struct AdviceSteps {
    as_built: Design,
    worst_vswr_now: Option<f64>,
    length_sd_m: f64,
    searches: [BestCutSearch; 2],
    found: [Option<Vec<BestCut>>; 2],
    screw_search: Option<ScrewSearch>,
    screws: Option<TunedScrews>,
}

impl AdviceSteps {
    /// From a design and what was found about the can made after it.
    ///
    /// # Errors
    /// A number outside its hard range.
    pub fn new(
        design: &Design,
        outside: Option<&Arc<OutsideSpectrum>>,
        diagnosis: &Diagnosis,
    ) -> Result<Self, DesignError> {
        let as_built = as_built(design, diagnosis);
        let search = |free| BestCutSearch::with_outside(&as_built, free, outside);
        let length = diagnosis
            .estimates
            .iter()
            .find(|estimate| estimate.dimension == Dimension::ProbeLength);
        Ok(Self {
            worst_vswr_now: worst_vswr_as_built(&as_built, outside)?,
            length_sd_m: length.map_or(0.0, |estimate| estimate.sd),
            searches: [
                search(FreeDimensions::Length)?,
                search(FreeDimensions::LengthAndDistance)?,
            ],
            found: [None, None],
            screw_search: ScrewSearch::new(&as_built, outside, SCREW).ok(),
            screws: None,
            as_built,
        })
    }

    /// Does one piece; `false` when there is no more.
    pub fn step(&mut self) -> bool {
        for (search, found) in self.searches.iter_mut().zip(&mut self.found) {
            if found.is_none() {
                if let Progress::Done(cuts) = search.step() {
                    *found = Some(cuts);
                }
                return true;
            }
        }
        if let Some(search) = &mut self.screw_search {
            if let ScrewProgress::Done(found) = search.step() {
                self.screws = found;
                self.screw_search = None;
            }
            return true;
        }
        false
    }

    /// The advice from what was found so far.
    #[must_use]
    pub fn finish(self) -> Advice {
        let now = self.worst_vswr_now.unwrap_or(f64::INFINITY);
        let [length, pair] = self.found.map(|found| found?.into_iter().next());
        let mut remedies = Vec::new();
        let mut best = now;
        if let Some(cut) = length.filter(|cut| cut.worst_vswr < WORTH * best) {
            let remedy = cut_of(
                self.as_built.probe.length_um,
                cut.length_um,
                self.length_sd_m,
            );
            if let Some(remedy) = remedy {
                best = cut.worst_vswr;
                remedies.push((remedy, cut.worst_vswr));
            }
        }
        if let Some(tuned) = self.screws.filter(|tuned| tuned.worst_vswr < WORTH * best)
            && let [screw] = tuned.screws.as_slice()
        {
            best = tuned.worst_vswr;
            remedies.push((Remedy::AddScrew(*screw), tuned.worst_vswr));
        }
        if let Some(cut) = pair.filter(|cut| cut.worst_vswr < WORTH * best) {
            let remedy = Remedy::Move {
                backshort_distance_um: cut.backshort_distance_um,
                length_um: cut.length_um,
            };
            remedies.push((remedy, cut.worst_vswr));
        }
        if remedies.is_empty() {
            remedies.push((Remedy::Leave, now));
        }
        Advice {
            as_built: self.as_built,
            worst_vswr_now: self.worst_vswr_now,
            remedies,
        }
    }
}

/// Trimming or lengthening from one length to another; `None` for less than a file
/// takes off.
fn cut_of(from_um: u32, to_um: u32, sd_m: f64) -> Option<Remedy> {
    if from_um.abs_diff(to_um) < LEAST_CUT_UM {
        return None;
    }
    let Some(whole_um) = from_um.checked_sub(to_um) else {
        return Some(Remedy::Lengthen {
            by_um: to_um.saturating_sub(from_um),
        });
    };
    // The wire is hardly ever shorter than twice the deviation below the estimate.
    let sure = f64::from(whole_um) - 2e6 * sd_m;
    let safe = sure.min(MOST_SHARE * f64::from(whole_um)) * 1e-6;
    Some(Remedy::Trim {
        whole_um,
        safe_um: micrometres(safe.max(0.0)).max(LEAST_CUT_UM).min(whole_um),
    })
}

/// The design with the estimated deviations put in.
fn as_built(design: &Design, diagnosis: &Diagnosis) -> Design {
    let mut built = design.clone();
    let si = SiDesign::new(design);
    for estimate in &diagnosis.estimates {
        let value = (estimate.dimension.of(&si) + estimate.change).max(0.0);
        match estimate.dimension {
            Dimension::ProbeLength => built.probe.length_um = micrometres(value),
            Dimension::BackshortDistance => {
                built.probe.backshort_distance_um = micrometres(value);
            }
            Dimension::InsideDiameter => built.can.inside_diameter_um = micrometres(value),
            Dimension::HoleDiameter => built.probe.hole_diameter_um = Some(micrometres(value)),
            // Femtofarads are to farads as micrometres to metres, a milliard times over.
            Dimension::ShuntCapacitance => built.probe.shunt_ff = micrometres(value * 1e9),
            Dimension::OpenLength => built.can.open_length_um = micrometres(value),
            Dimension::WireDiameter => built.probe.wire_diameter_um = micrometres(value),
        }
    }
    built
}

/// Largest VSWR over the band of a can that differs a little from the one whose outside
/// this is; `None` where it can't be computed.
///
/// # Errors
/// A number outside its hard range.
pub fn worst_vswr_as_built(
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
) -> Result<Option<f64>, DesignError> {
    let Some(mut can) = ChangedCan::new(design, outside)? else {
        return Ok(None);
    };
    let band = band_frequencies(design.band, 11);
    let frequencies: Vec<f64> = band.into_iter().map(hertz).collect();
    let si = can.nominal().clone();
    let worst = can.reflections(&si, &frequencies).ok();
    Ok(worst.map(|all| vswr(all.iter().map(|s| s.abs()).fold(0.0, f64::max))))
}
