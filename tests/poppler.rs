//! Finds what renders a PDF.

use std::env;
use std::path::PathBuf;
use tinwave::{Failure, Result, apt};

/// Poppler's `pdftoppm` on the search path, Debian's installed where that can be
/// done unasked.
pub(crate) fn find() -> Result<PathBuf> {
    if on_path().is_none() && apt::usable() {
        apt::install(&["poppler-utils"])?;
    }
    on_path().ok_or_else(|| Failure::Missing {
        what: "the test of the printed page needs poppler's pdftoppm, and none was found"
            .to_owned(),
        remedy: "install it (on Debian: sudo apt-get install poppler-utils)".to_owned(),
    })
}

fn on_path() -> Option<PathBuf> {
    let path = env::var_os("PATH")?;
    env::split_paths(&path)
        .map(|folder| folder.join("pdftoppm"))
        .find(|file| file.is_file())
}
