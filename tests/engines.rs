//! Finds the other engines that the page is walked in.

use std::path::PathBuf;
use tinwave::{Failure, Result, apt};

/// The programs of the other engines.
#[derive(Debug)]
pub(crate) struct Engines {
    /// Firefox ESR.
    pub(crate) firefox: PathBuf,
    /// The driver of WebKitGTK's small browser.
    pub(crate) webkit_driver: PathBuf,
    /// That browser.
    pub(crate) webkit: PathBuf,
}

/// Where Debian puts WebKitGTK's small browser, below the folder of an architecture.
const MINI_BROWSER: &str = "webkit2gtk-4.1/MiniBrowser";

/// Firefox and WebKitGTK: on the search path, else Debian's, installed where that can
/// be done unasked.
pub(crate) fn find() -> Result<Engines> {
    let needed = |what: &str, package: &str| Failure::Missing {
        what: format!("the tests in other engines need {what}, and none was found"),
        remedy: format!("install it (on Debian: sudo apt-get install {package})"),
    };
    let firefox = apt::program(&["firefox-esr", "firefox"], "firefox-esr")?
        .ok_or_else(|| needed("Firefox", "firefox-esr"))?;
    let webkit_driver = apt::program(&["WebKitWebDriver"], "webkit2gtk-driver")?
        .ok_or_else(|| needed("WebKitGTK's driver", "webkit2gtk-driver"))?;
    apt::program(&["xvfb-run"], "xvfb")?.ok_or_else(|| needed("a screen of its own", "xvfb"))?;
    // xvfb-run makes the screen's key with it.
    apt::program(&["xauth"], "xauth")?.ok_or_else(|| needed("xauth", "xauth"))?;
    let webkit = mini_browser().ok_or_else(|| needed("WebKitGTK", "webkit2gtk-driver"))?;
    Ok(Engines {
        firefox,
        webkit_driver,
        webkit,
    })
}

fn mini_browser() -> Option<PathBuf> {
    let folders = std::fs::read_dir("/usr/lib").ok()?;
    folders
        .filter_map(|folder| Some(folder.ok()?.path().join(MINI_BROWSER)))
        .find(|program| program.is_file())
}
