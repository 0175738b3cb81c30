//! What is said at the bench: the steps, the figures, the templates.

mod bench;
mod figures_table;
mod pictures;
mod steps;
mod templates;

pub use bench::*;
pub use figures_table::*;
pub use pictures::*;
pub use steps::{BenchFacts, StepWords, step};
pub use templates::*;

use tinwave_maker::entry::{LengthUnit, format_length_number};

use crate::figures::trimmed;

/// A length as a ruler shows it, without its unit: to 0.1 mm or 0.001 in.
fn ruler(um: u32, unit: LengthUnit) -> String {
    format_length_number(um, unit)
}

/// The same with its unit.
fn ruled(um: u32, unit: LengthUnit) -> String {
    [&ruler(um, unit), " ", unit.symbol()].concat()
}

/// A drill or a wire as a caliper shows it: hundredths where there are any.
#[must_use]
pub fn drill(um: u32, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Millimetre if um.is_multiple_of(100) => format_length_number(um, unit),
        LengthUnit::Millimetre => trimmed(f64::from(um) / 1e3, 2),
        LengthUnit::Inch => format_length_number(um, unit),
    }
}

/// The same with its unit.
#[must_use]
pub fn drilled(um: u32, unit: LengthUnit) -> String {
    [&drill(um, unit), " ", unit.symbol()].concat()
}
