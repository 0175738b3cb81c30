//! Designs from JSON and reports to JSON (schema 1 of both).

#[cfg(feature = "json")]
mod beam_report;
mod design_file;
mod design_writing;
#[cfg(feature = "json")]
mod diagnosis_report;
#[cfg(feature = "json")]
mod report;
#[cfg(feature = "json")]
mod serde_tree;
mod thousandths;
mod tree;
#[cfg(feature = "json")]
mod tuning_report;

pub use design_file::{JsonError, design_from_tree};
pub use design_writing::design_to_json;
#[cfg(feature = "json")]
pub use diagnosis_report::diagnosis_json;
#[cfg(feature = "json")]
pub use report::report_json;
#[cfg(feature = "json")]
pub use serde_tree::design_from_json;
pub use tree::JsonTree;
