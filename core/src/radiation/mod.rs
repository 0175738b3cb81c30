//! The true beam of a can: its modes' far fields summed with the amplitudes that
//! the probe gives them.

mod cut;
mod figures;
mod of_can;
mod phase_centre;
mod sum_pattern;

pub use cut::{Cut, SideLobe};
pub use figures::{BeamFigures, Direction};
pub use of_can::CanBeam;
pub use phase_centre::PhaseCentre;
pub use sum_pattern::{FieldSample, SumPattern};
