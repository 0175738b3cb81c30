//! Finds the browser.

use std::env;
use std::path::PathBuf;
use tinwave::{Failure, Result, apt};

/// Names that Chromium goes by on the search path.
const NAMES: [&str; 4] = [
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
];

/// The browser's program: the one that `TINWAVE_CHROMIUM` names, else one on
/// the search path, else Debian's, installed where that can be done unasked.
pub(crate) fn find() -> Result<PathBuf> {
    if let Some(named) = env::var_os("TINWAVE_CHROMIUM") {
        let named = PathBuf::from(named);
        if named.is_file() {
            return Ok(named);
        }
        return Err(Failure::Missing {
            what: format!("TINWAVE_CHROMIUM names no file: {}", named.display()),
            remedy: "set it to Chromium's program, or unset it".to_owned(),
        });
    }
    apt::program(&NAMES, "chromium")?.ok_or_else(|| Failure::Missing {
        what: "the browser tests need Chromium, and none was found".to_owned(),
        remedy: "install it (on Debian: sudo apt-get install chromium), \
                 or set TINWAVE_CHROMIUM to its program"
            .to_owned(),
    })
}
