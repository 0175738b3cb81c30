//! The page that says what is needed and what to do in which order.

use crate::geometry::Rect;
use crate::job::PrintJob;
use crate::pattern::Pattern;
use crate::typesetting::Typesetter;
use crate::words;

/// The build sheet of a job for a body of that size.
#[must_use]
pub fn build_sheet(_job: &PrintJob, _set: Typesetter, _body: Rect) -> Pattern {
    Pattern {
        title: words::BUILD_SHEET,
        ..Pattern::default()
    }
}
