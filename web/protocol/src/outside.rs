//! The field outside a can.

use serde::{Deserialize, Serialize};
use tinwave_core::design::Design;
use tinwave_core::outside::OutsideSpectrum;

use crate::{Job, Question};

/// Solves the field outside a design's can over its sweep; it depends on can, mouth
/// and band alone. The worker keeps the solution for later jobs.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct SolveOutside {
    /// The design.
    pub design: Design,
}

impl Question for SolveOutside {
    /// `None` where it can't be solved: an absorbing mouth, or a can too large.
    type Answer = Option<OutsideSpectrum>;

    fn into_job(self) -> Job {
        Job::SolveOutside(self)
    }
}
