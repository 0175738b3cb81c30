//! The best cuts of a can.

use serde::{Deserialize, Serialize};
use tinwave_core::best_cut::BestCut;
use tinwave_core::design::{Band, Design, Micrometres, Mouth, Probe, Screw};
use tinwave_core::metal::Metal;

use crate::{Job, Question};

/// Searches for the best length and distance, with the outside where the worker has it.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct BestCuts {
    /// The design; its own cut does not count.
    pub design: Design,
}

/// Searches for the best length with the design's distance kept.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct BestLength {
    /// The design.
    pub design: Design,
}

/// What was found.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct CutsFound {
    /// The best first; a second where two good ones exist; empty where none can be
    /// worked out.
    pub cuts: Vec<BestCut>,
    /// Whether the outside was at hand; without it the mouth is that of an endless pipe.
    pub with_outside: bool,
}

/// What the best cut depends on; two designs of one key share their best cut.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct CutsKey {
    band: Band,
    mouth: Mouth,
    inside_diameter_um: Micrometres,
    open_length_um: Micrometres,
    metal: Metal,
    /// Without its length and distance.
    probe: Probe,
    screws: Vec<Screw>,
}

impl CutsKey {
    /// Of a design.
    #[must_use]
    pub fn of(design: &Design) -> Self {
        Self {
            band: design.band,
            mouth: design.mouth,
            inside_diameter_um: design.can.inside_diameter_um,
            open_length_um: design.can.open_length_um,
            metal: design.can.metal,
            probe: Probe {
                length_um: 0,
                backshort_distance_um: 0,
                ..design.probe
            },
            screws: design.screws.clone(),
        }
    }
}

impl Question for BestCuts {
    type Answer = CutsFound;

    fn into_job(self) -> Job {
        Job::BestCuts(self)
    }
}

impl Question for BestLength {
    type Answer = CutsFound;

    fn into_job(self) -> Job {
        Job::BestLength(self)
    }
}
