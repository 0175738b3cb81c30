//! Everything the page says: findings, labels, refusals, reasons, cautions.
//!
//! Short, plain sentences; the trade's term stands beside the plain one.
//! Numbers are rounded to what a maker can use, in the maker's unit.

pub mod beam;
pub mod can;
mod cautions;
pub mod chart;
pub mod feed;
pub mod figures;
mod findings;
pub mod frame;
pub mod grade;
mod labels;
pub mod link_plan;
pub mod make;
pub mod measure;
mod names;
mod refusals;
pub mod section;
pub mod shelf;
pub mod smith;
pub mod terms;
pub mod tolerance;
mod why;

pub use cautions::{Caution, CautionText, Occasion, caution, cautions, occasion};
pub use findings::{Said, finding, verdict_line};
pub use labels::{Label, label};
pub use names::{change, metal, mode_effect};
pub use refusals::{before_the_link, broken_store, design_error, link_error, newer_link};
pub use why::{Shown, Why, why};

use tinwave_core::verdict::Severity;

/// The word that stands beside a severity's colour.
#[must_use]
pub const fn severity_word(severity: Severity) -> &'static str {
    match severity {
        Severity::Good => "Good",
        Severity::Note => "Note",
        Severity::Caution => "Caution",
        Severity::Stop => "Stop",
    }
}

/// The same as a key for styles.
#[must_use]
pub const fn severity_key(severity: Severity) -> &'static str {
    match severity {
        Severity::Good => "good",
        Severity::Note => "note",
        Severity::Caution => "caution",
        Severity::Stop => "stop",
    }
}
