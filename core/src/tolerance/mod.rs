//! What a maker's tolerances do to the match: sensitivities, the share of cans that
//! pass, and which dimension deserves the care.

mod batch;
mod sensitivity;
mod surrogate;
mod yield_steps;

pub use batch::{Batch, at_least, batch};
pub use sensitivity::{Sensitivity, sensitivities};
pub use yield_steps::{Care, Spread, Yield, YieldError, YieldSettings, YieldSteps, yield_of};
