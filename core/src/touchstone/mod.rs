//! Touchstone files: measured networks in, predicted reflection out.
//!
//! Source: *Touchstone File Format Specification*, IBIS Open Forum, versions 1.1
//! (2002), 2.0 (2009) and 2.1 (2024): option line, order of two-port data, noise
//! block, keywords. Details from memory, compared with what a general-purpose
//! microwave library reads.

mod error;
mod keyword;
mod number;
mod option_line;
mod parameters;
mod reader;
mod table;
mod writer;

pub use error::{TouchstoneError, TouchstoneProblem};
pub use option_line::{Format, Parameter};
pub use reader::{NetworkPoint, NoisePoint, Ports, Touchstone, TouchstoneWarning, read_touchstone};
pub use writer::write_one_port;
