//! What a maker's tolerances do: which dimension deserves the care, and how many cans
//! come out well.

use serde::{Deserialize, Serialize};
use tinwave_core::design::Design;
use tinwave_core::dimension::Dimension;
use tinwave_core::tolerance::{Sensitivity, Yield, YieldSettings};

use crate::{Job, Question};

/// Works out what each dimension does within its tolerance.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RankDimensions {
    /// The design.
    pub design: Design,
    /// Tolerances either way, in the unit of [`Dimension::of`].
    pub tolerances: Vec<(Dimension, f64)>,
}

/// What each dimension does.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Ranking {
    /// Largest VSWR over the band as drawn.
    pub as_drawn: f64,
    /// The dimension that costs most first.
    pub ranked: Vec<Sensitivity>,
    /// Those whose tolerance makes the can impossible to build or compute.
    pub impossible: Vec<(Dimension, f64)>,
}

/// Draws cans at random within their tolerances, and judges each.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DrawCans {
    /// The design.
    pub design: Design,
    /// Tolerances, limit, number and seed.
    pub settings: YieldSettings,
}

/// Below this rise of the worst VSWR nothing is worth a word.
const NOTICEABLE: f64 = 0.01;

impl Ranking {
    /// The larger VSWR of a dimension's two ends.
    #[must_use]
    pub fn worst(of: &Sensitivity) -> f64 {
        of.worst_vswr.0.max(of.worst_vswr.1)
    }

    /// By how much a dimension alone can raise the worst VSWR.
    #[must_use]
    pub fn rise(&self, of: &Sensitivity) -> f64 {
        (Self::worst(of) - self.as_drawn).max(0.0)
    }

    /// The dimension that deserves the care, if any does.
    #[must_use]
    pub fn first(&self) -> Option<&Sensitivity> {
        let first = self.ranked.first()?;
        (self.rise(first) >= NOTICEABLE).then_some(first)
    }
}

impl Question for RankDimensions {
    /// `None` where the can is not computed.
    type Answer = Option<Ranking>;

    fn into_job(self) -> Job {
        Job::RankDimensions(self)
    }
}

impl Question for DrawCans {
    /// `None` where the can is not computed, or nothing scatters.
    type Answer = Option<Yield>;

    fn into_job(self) -> Job {
        Job::DrawCans(self)
    }
}
