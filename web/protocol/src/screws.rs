//! Tuning screws: where and how deep they better the match.

use serde::{Deserialize, Serialize};
use tinwave_core::design::{Design, Micrometres};
use tinwave_core::screw_search::{DepthPoint, ScrewSettings, TunedScrews};

use crate::{Job, Question};

/// Searches for the best screws, to be added to those of the design.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SearchScrews {
    /// The design.
    pub design: Design,
    /// How many, how thick, on which side.
    pub settings: ScrewSettings,
    /// Way of one turn.
    pub pitch_um: Micrometres,
}

/// What was found.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct ScrewsFound {
    /// The screws; `None` where the can is not computed.
    pub tuned: Option<TunedScrews>,
    /// For each screw, the others in place: VSWR against depth.
    pub curves: Vec<Vec<DepthPoint>>,
}

/// A depth may be off until the worst VSWR is this much more than its best.
pub const SLACK: f64 = 0.05;

/// Quarter turns round a depth within which the VSWR stays within [`SLACK`] of its
/// best.
#[must_use]
pub fn slack(curve: &[DepthPoint], at: u32) -> Option<(u32, u32)> {
    let vswr = |quarters: u32| {
        let found = curve.iter().find(|point| point.quarter_turns == quarters);
        found.and_then(|point| point.worst_vswr)
    };
    let most = vswr(at)? + SLACK;
    let is_near = |quarters: u32| vswr(quarters).is_some_and(|vswr| vswr <= most);
    let mut low = at;
    while low > 0 && is_near(low - 1) {
        low -= 1;
    }
    let mut high = at;
    while is_near(high + 1) {
        high += 1;
    }
    Some((low, high))
}

impl Question for SearchScrews {
    type Answer = ScrewsFound;

    fn into_job(self) -> Job {
        Job::SearchScrews(self)
    }
}
