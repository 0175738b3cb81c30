//! The outside of a can: body of revolution, method of moments.
//!
//! A closed can of finite length with nothing, a conical funnel, a flat flange or
//! a choke cup at its mouth; perfectly conducting sheet of no thickness. Gives what
//! the mouth sends back in TE11, TM01 and TE21 and the far field of each. Time
//! convention `e^(+jωt)`; z along the axis, out of the mouth, 0 at the rim.

mod arc;
mod assembly;
mod error;
mod far_series;
mod ldl;
mod mode_probe;
mod moments;
mod mouth_mode;
mod of_design;
mod outline;
mod prepared;
mod reaction;
mod samples;
mod solution;
mod spectrum;

pub use error::OutsideError;
pub use mode_probe::MODES;
pub use mouth_mode::MouthMode;
pub use outline::{Outline, Rim};
pub use prepared::{PreparedOutside, frequency_range};
pub use solution::OutsideSolution;
pub use spectrum::{OutsideSpectrum, OutsideSteps};
