//! Node.js and its package tool, which run the optimiser and drive the browser tests.

use crate::apt;
use crate::failure::{Failure, Result};
use crate::folders::program_on_path;
use crate::process::run_quiet;
use crate::steps::Steps;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Finds `node` and `npm`; installs Debian's where that can be done unasked.
///
/// # Errors
/// [`Failure::Missing`] when there is none and none can be installed,
/// [`Failure::Program`] when the installation failed.
pub fn find(steps: &Steps) -> Result<PathBuf> {
    if !present() && apt::usable() {
        steps.step("installing Node.js", || apt::install(&["nodejs", "npm"]))?;
    }
    match program_on_path("node") {
        Some(node) if present() => Ok(node),
        _ => Err(Failure::Missing {
            what: "node and npm are not on the search path".to_owned(),
            remedy: "install Node.js 18.16 or later with npm (on Debian: sudo apt-get install nodejs npm)".to_owned(),
        }),
    }
}

fn present() -> bool {
    program_on_path("node").is_some() && program_on_path("npm").is_some()
}

/// A copy of the lock file that was installed.
const MARK: &str = "node_modules/.tinwave-lock";

/// Whether the packages of a folder's `package-lock.json` are installed.
pub fn has_locked(folder: &Path) -> bool {
    let installed = std::fs::read(folder.join(MARK)).ok();
    installed.is_some() && installed == std::fs::read(folder.join("package-lock.json")).ok()
}

/// Installs the packages of a folder's `package-lock.json`, exactly those,
/// unless the same ones are there.
///
/// # Errors
/// [`Failure::Program`] when `npm` failed, [`Failure::File`] when the folder
/// cannot be read or written.
pub fn install_locked(folder: &Path) -> Result<()> {
    if has_locked(folder) {
        return Ok(());
    }
    let lock = folder.join("package-lock.json");
    let mark = folder.join(MARK);
    let wanted = std::fs::read(&lock).map_err(Failure::file("read", &lock))?;
    let mut npm = Command::new("npm");
    // No package's install script is needed, so none is run.
    npm.current_dir(folder)
        .args(["ci", "--ignore-scripts", "--no-audit", "--no-fund"]);
    run_quiet(&mut npm)?;
    std::fs::write(&mark, &wanted).map_err(Failure::file("write", &mark))
}
