//! The best cuts of a can.

use serde::{Deserialize, Serialize};
use tinwave_core::best_cut::BestCut;
use tinwave_core::design::Design;

use crate::{Job, Question};

/// Searches for the best length alone, and for the best length and distance, with the
/// outside where the worker has it.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct BestCuts {
    /// The design; its own cut counts only as the distance of the first search.
    pub design: Design,
}

/// What was found, each list with the best first; empty where nothing can be computed.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct CutsFound {
    /// With the distance kept.
    pub length_only: Vec<BestCut>,
    /// With both free.
    pub pair: Vec<BestCut>,
    /// Whether the outside was at hand; without it the mouth is that of an endless pipe.
    pub with_outside: bool,
}

impl Question for BestCuts {
    type Answer = CutsFound;

    fn into_job(self) -> Job {
        Job::BestCuts(self)
    }
}
