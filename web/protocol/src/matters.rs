//! What each millimetre of a cut matters, and how far it may be off.

use serde::{Deserialize, Serialize};
use tinwave_core::design::{Design, Micrometres};
use tinwave_core::dimension::Dimension;

use crate::{Job, Question};

/// Works out how the match of a design as it is cut bears each dimension being off by
/// what a careful maker is off by, and how far length and distance may be off.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct WhatMatters {
    /// The design.
    pub design: Design,
}

/// What one dimension does alone.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Matter {
    /// Which.
    pub dimension: Dimension,
    /// By how much it is off, both ways: metres, for the capacitance farads.
    pub change: f64,
    /// Largest VSWR over the band with it off, the worse way; `None` where the can is
    /// then impossible.
    pub worst_vswr: Option<f64>,
}

/// How far a dimension may be off one way.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Way {
    /// By so much.
    pub um: Micrometres,
    /// Whether the limit lies beyond: no more was looked at.
    pub at_least: bool,
}

/// How far a dimension may be off before VSWR passes a limit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Leeway {
    /// The limit.
    pub vswr: f64,
    /// Shorter, or nearer.
    pub less: Way,
    /// Longer, or farther.
    pub more: Way,
}

/// What was worked out.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Matters {
    /// Largest VSWR over the band as drawn; `None` where it can't be computed.
    pub as_drawn: Option<f64>,
    /// Each dimension, the one that costs most first.
    pub dimensions: Vec<Matter>,
    /// Of the wire's length; `None` where VSWR is over 2 as drawn.
    pub length: Option<Leeway>,
    /// Of its distance.
    pub distance: Option<Leeway>,
}

impl Question for WhatMatters {
    type Answer = Matters;

    fn into_job(self) -> Job {
        Job::WhatMatters(self)
    }
}
