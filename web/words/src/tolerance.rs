//! How careful a maker must be: tolerances, many cans, screws.

mod cans;
mod care;
mod screws;

pub use cans::*;
pub use care::*;
pub use screws::*;
