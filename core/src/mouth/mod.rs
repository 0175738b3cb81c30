//! The mouth: what the open end of a thin-walled pipe does to its modes.
//!
//! [`OpenPipe`] is the exact solution; [`mouth_reflection`] and [`pipe_beam`] are
//! tables made from it, for sweeps and searches.

mod beam;
mod chebyshev;
mod error;
mod far_field;
mod kernel;
pub mod modified_bessel;
mod open_pipe;
pub mod real_bessel;
mod reflection_table;
mod table_data;

use table_data::ENDS;

/// Smallest and largest `k a` that the tables cover.
pub const COVERED_KA: (f64, f64) = (ENDS[0], ENDS[2]);

pub use beam::{PipeBeam, pipe_beam, pipe_pattern_dbi};
pub use error::MouthError;
pub use far_field::{FarField, Plane};
pub use open_pipe::OpenPipe;
pub use reflection_table::{mouth_reflection, reflection_of_admittance};
