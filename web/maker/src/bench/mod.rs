//! The work at the bench: which steps a design needs, and which of them are done.

mod fittings;
mod fixing;
mod steps;
mod ticks;

pub use fittings::{BracketPlace, CapSheet};
pub use fixing::{Clamp, clamp_of, screw_for_hole};
pub use steps::{Stamp, Step, steps};
pub use ticks::{TICKS_KEY, Ticks};
