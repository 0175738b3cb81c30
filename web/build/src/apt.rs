//! Debian's package tool, for what a bare machine lacks.

use crate::failure::{Failure, Result};
use crate::folders::program_on_path;
use crate::process::run_quiet;
use std::path::PathBuf;
use std::process::Command;
use std::sync::OnceLock;

/// Whether packages can be installed without asking the person: this is a
/// Debian-like system, and we are root or `sudo` needs no password.
pub fn usable() -> bool {
    program_on_path("apt-get").is_some() && (is_root() || sudo_is_free())
}

/// A program by one of its names: on the search path, else that of a Debian package,
/// installed where that can be done unasked. `None` if it can't be had.
///
/// # Errors
/// [`Failure::Program`] when `apt-get` failed.
pub fn program(names: &[&str], package: &str) -> Result<Option<PathBuf>> {
    let find = || names.iter().find_map(|name| program_on_path(name));
    if find().is_none() && usable() {
        install(&[package])?;
    }
    Ok(find())
}

/// Installs those of the packages that are missing, without recommended extras.
///
/// # Errors
/// [`Failure::Missing`] when this system has no usable `apt-get`;
/// [`Failure::Program`] when `apt-get` failed.
pub fn install(packages: &[&str]) -> Result<()> {
    let missing: Vec<&str> = packages.iter().copied().filter(|p| !installed(p)).collect();
    if missing.is_empty() {
        return Ok(());
    }
    if !usable() {
        return Err(Failure::Missing {
            what: format!("these packages are missing: {}", missing.join(" ")),
            remedy: format!(
                "install them with your system's package tool, for example: sudo apt-get install {}",
                missing.join(" ")
            ),
        });
    }
    refresh();
    let mut command = as_root("apt-get");
    command.args(["install", "-y", "-qq", "--no-install-recommends"]);
    run_quiet(command.args(&missing)).map(|_| ())
}

/// Whether the distribution offers the package.
pub fn offered(package: &str) -> bool {
    if has_candidate(package) {
        return true;
    }
    refresh();
    has_candidate(package)
}

/// Whether the package is installed now.
pub fn installed(package: &str) -> bool {
    let mut query = Command::new("dpkg-query");
    query.args(["-W", "-f", "${Status}", package]);
    run_quiet(&mut query).is_ok_and(|status| status.contains("ok installed"))
}

fn has_candidate(package: &str) -> bool {
    let mut query = Command::new("apt-cache");
    query.env("LC_ALL", "C").args(["policy", package]);
    run_quiet(&mut query).is_ok_and(|text| {
        text.lines().any(|line| {
            line.trim()
                .strip_prefix("Candidate:")
                .is_some_and(|version| version.trim() != "(none)")
        })
    })
}

/// Fetches the package lists, at most once per run. Old lists may still do,
/// so a failure is left to the install that follows.
fn refresh() {
    static DONE: OnceLock<()> = OnceLock::new();
    DONE.get_or_init(|| {
        if usable() {
            let _ = run_quiet(as_root("apt-get").args(["update", "-qq"]));
        }
    });
}

fn as_root(program: &str) -> Command {
    let mut command = if is_root() {
        let mut command = Command::new("env");
        command.arg("DEBIAN_FRONTEND=noninteractive");
        command
    } else {
        let mut command = Command::new("sudo");
        command.args(["-n", "env", "DEBIAN_FRONTEND=noninteractive"]);
        command
    };
    command.arg(program);
    command
}

fn is_root() -> bool {
    run_quiet(Command::new("id").arg("-u")).is_ok_and(|id| id.trim() == "0")
}

fn sudo_is_free() -> bool {
    run_quiet(Command::new("sudo").args(["-n", "true"])).is_ok()
}
