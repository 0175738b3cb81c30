//! Finds what renders a PDF.

use std::path::PathBuf;
use tinwave::{Failure, Result, apt};

/// Poppler's `pdftoppm` on the search path, Debian's installed where that can be
/// done unasked.
pub(crate) fn find() -> Result<PathBuf> {
    apt::program(&["pdftoppm"], "poppler-utils")?.ok_or_else(|| Failure::Missing {
        what: "the test of the printed page needs poppler's pdftoppm, and none was found"
            .to_owned(),
        remedy: "install it (on Debian: sudo apt-get install poppler-utils)".to_owned(),
    })
}
