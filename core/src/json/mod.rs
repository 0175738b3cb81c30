//! Designs from JSON and reports to JSON (schema 1 of both).

#[cfg(feature = "json")]
mod beam_report;
mod design_file;
mod design_writing;
#[cfg(feature = "json")]
mod report;
#[cfg(feature = "json")]
mod serde_tree;
mod thousandths;
mod tree;

pub use design_file::{JsonError, design_from_tree};
pub use design_writing::design_to_json;
#[cfg(feature = "json")]
pub use report::report_json;
#[cfg(feature = "json")]
pub use serde_tree::design_from_json;
pub use tree::JsonTree;
