//! Everything that the worker does, one line a question.

use serde::{Deserialize, Serialize};

use crate::cuts::{BestCuts, BestLength};
use crate::outside::SolveOutside;

/// A question of any topic.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub enum Job {
    /// The field outside a can.
    SolveOutside(SolveOutside),
    /// The best cuts of a can.
    BestCuts(BestCuts),
    /// The best length with the distance kept.
    BestLength(BestLength),
}
