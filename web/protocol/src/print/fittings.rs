//! What printing wants computed: how far the wire's length may be off, what a cap does
//! to the match, how deep a bracket's rivets may stick in.

use serde::{Deserialize, Serialize};
use tinwave_core::cap::Sheet;
use tinwave_core::design::Design;

use super::job::{Bracket, CutLimits};
use crate::{Job, Question};

/// Computes what belongs to the making of a design.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Fittings {
    /// The design.
    pub design: Design,
    /// The sheet of a cap over the mouth.
    pub cap: Option<Sheet>,
    /// Where a bracket goes: round the axis from the probe, thousandths of a degree.
    pub bracket_millideg: Option<u32>,
}

/// What was found.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct FittingsFound {
    /// Lengths of the wire that keep the VSWR under 1.5.
    pub within_1_5: Option<CutLimits>,
    /// Lengths that keep it under 2.
    pub within_2: Option<CutLimits>,
    /// What the cap does, where one was asked about.
    pub cap: Option<CapFound>,
    /// The bracket, where one was asked about.
    pub bracket: Option<BracketFound>,
}

/// What a cap does to the match.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub enum CapFound {
    /// It isn't computed for this mouth.
    NotComputed,
    /// It is.
    Computed {
        /// Worst VSWR of the band without the cap.
        vswr_without: f64,
        /// With it.
        vswr_with: f64,
        /// How far the best frequency moves, kHz.
        shift_khz: Option<i64>,
        /// Lost in the sheet, dB.
        loss_db: Option<f64>,
    },
}

/// A bracket and how deep its rivets may stick in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct BracketFound {
    /// Its two holes; the deepest where a limit was found.
    pub bracket: Bracket,
    /// How deep.
    pub depth: RivetDepth,
}

/// How deep rivets may stick in before the VSWR moves by 0.1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum RivetDepth {
    /// So far, micrometres.
    Within(u32),
    /// So far at least; more was not tried.
    Beyond(u32),
    /// It was not computed.
    NotComputed,
}

impl Question for Fittings {
    type Answer = FittingsFound;

    fn into_job(self) -> Job {
        Job::Fittings(self)
    }
}
