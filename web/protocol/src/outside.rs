//! The field outside a can.

use serde::{Deserialize, Serialize};
use tinwave_core::design::{Band, Design, Micrometres, Mouth, Sweep};
use tinwave_core::outside::OutsideSpectrum;

use crate::{Job, Question};

/// Solves the field outside a design's can over its sweep; it depends on can, mouth
/// and band alone. The worker keeps the solution for later jobs.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct SolveOutside {
    /// The design.
    pub design: Design,
}

/// What the outside of a can depends on; two designs of one key share their outside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct OutsideKey {
    mouth: Mouth,
    inside_diameter_um: Micrometres,
    open_length_um: Micrometres,
    band: Band,
    sweep: Sweep,
}

impl OutsideKey {
    /// Of a design.
    #[must_use]
    pub fn of(design: &Design) -> Self {
        Self {
            mouth: design.mouth,
            inside_diameter_um: design.can.inside_diameter_um,
            open_length_um: design.can.open_length_um,
            band: design.band,
            sweep: design.effective_sweep(),
        }
    }
}

impl Question for SolveOutside {
    /// `None` where it can't be solved: an absorbing mouth, or a can too large.
    type Answer = Option<OutsideSpectrum>;

    fn into_job(self) -> Job {
        Job::SolveOutside(self)
    }
}
