//! Designs from JSON and reports to JSON (schema 1 of both).

mod beam_report;
mod design_file;
mod design_writing;
mod report;

pub use design_file::{JsonError, design_from_json};
pub use design_writing::design_to_json;
pub use report::report_json;
