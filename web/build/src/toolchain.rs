//! A compiler that can compile the page: one with a standard library for
//! `wasm32-unknown-unknown`.

use crate::apt;
use crate::debian::DebianCompiler;
use crate::failure::{Failure, Result};
use crate::folders::program_on_path;
use crate::process::succeeds_within;
use crate::steps::Steps;
use std::env;
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Duration;

/// The target that browsers run.
pub(crate) const TARGET: &str = "wasm32-unknown-unknown";

/// A probe compiles in a fraction of a second; a cold disk may need longer.
const PROBE_LIMIT: Duration = Duration::from_secs(60);
/// Time for rustup to fetch the target (about 15 MB).
const RUSTUP_LIMIT: Duration = Duration::from_secs(180);

/// One way to come by a compiler for the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Way {
    /// The toolchain in use has the target already.
    Active,
    /// `rustup target add`.
    Rustup,
    /// Debian's compiler, with a standard library built once from Debian's source.
    Apt,
}

/// A compiler for the page, ready for use.
#[derive(Debug)]
pub struct Toolchain {
    cargo: PathBuf,
    /// Set for the distribution's compiler, whose standard library for the
    /// target is in a folder of ours.
    debian: Option<DebianCompiler>,
}

impl Toolchain {
    /// Finds a compiler, or brings one: by what is there, by rustup, by apt.
    ///
    /// The variable `WASM_SETUP_WAYS` narrows the ways, as words out of
    /// `active rustup apt`.
    ///
    /// # Errors
    /// [`Failure::Missing`] when every allowed way failed, [`Failure::Usage`]
    /// for an unknown word in `WASM_SETUP_WAYS`, else those of the programs
    /// that were run.
    pub fn find(steps: &Steps) -> Result<Self> {
        let ways = allowed_ways(&env::var("WASM_SETUP_WAYS").unwrap_or_default())?;
        if ways.contains(&Way::Active) && active_has_target() {
            steps.say("compiler: the active toolchain has the WebAssembly target");
            return Ok(Self::active());
        }
        if ways.contains(&Way::Apt) {
            // Made by an earlier run: no need to ask rustup again.
            if let Some(debian) = DebianCompiler::ready()? {
                return Ok(Self::debian(steps, debian));
            }
        }
        if ways.contains(&Way::Rustup) && program_on_path("rustup").is_some() {
            if steps.step("adding the WebAssembly target with rustup", add_target)? {
                return Ok(Self::active());
            }
            steps.say("rustup could not add the target");
        }
        if ways.contains(&Way::Apt) && (apt::usable() || DebianCompiler::installed()) {
            return Ok(Self::debian(steps, DebianCompiler::bring(steps)?));
        }
        Err(Failure::Missing {
            what: format!("this machine has no compiler with a standard library for {TARGET}"),
            remedy: format!(
                "run `rustup target add {TARGET}`, or on Debian let this program use apt \
                 (as root, or with a sudo that needs no password)"
            ),
        })
    }

    fn active() -> Self {
        // Inside `cargo run` the variable names the very cargo that runs us.
        let cargo = env::var_os("CARGO").unwrap_or_else(|| OsString::from("cargo"));
        Self {
            cargo: PathBuf::from(cargo),
            debian: None,
        }
    }

    fn debian(steps: &Steps, compiler: DebianCompiler) -> Self {
        steps.say(&format!("compiler: Debian's {}", compiler.release()));
        Self {
            cargo: PathBuf::from(DebianCompiler::CARGO),
            debian: Some(compiler),
        }
    }

    /// A cargo command that can compile for the target. The caller adds the
    /// subcommand and `--target`.
    pub fn cargo(&self) -> Command {
        let mut command = Command::new(&self.cargo);
        if let Some(debian) = &self.debian {
            debian.prepare(&mut command);
        }
        command
    }

    /// Whether this is the distribution's compiler rather than rustup's.
    pub fn is_debian(&self) -> bool {
        self.debian.is_some()
    }
}

fn allowed_ways(words: &str) -> Result<Vec<Way>> {
    if words.trim().is_empty() {
        return Ok(vec![Way::Active, Way::Rustup, Way::Apt]);
    }
    words
        .split_whitespace()
        .map(|word| match word {
            "active" => Ok(Way::Active),
            "rustup" => Ok(Way::Rustup),
            "apt" => Ok(Way::Apt),
            other => Err(Failure::Usage(format!(
                "WASM_SETUP_WAYS: \"{other}\" is none of active, rustup, apt"
            ))),
        })
        .collect()
}

fn active_has_target() -> bool {
    let rustc = env::var_os("RUSTC").unwrap_or_else(|| OsString::from("rustc"));
    compiles_for_target(Command::new(rustc))
}

/// Whether this compiler has, and accepts, a standard library for the target.
/// A leftover folder proves nothing, so a small crate is really compiled (no
/// linker needed).
pub(crate) fn compiles_for_target(mut rustc: Command) -> bool {
    let probe = env::temp_dir().join(format!("tinwave-probe-{}", std::process::id()));
    let source = probe.join("probe.rs");
    let text = "#![crate_type = \"lib\"]\npub fn f() -> String { String::new() }\n";
    if std::fs::create_dir_all(&probe).is_err() || std::fs::write(&source, text).is_err() {
        return false;
    }
    rustc.args(["--target", TARGET, "--emit=metadata", "--out-dir"]);
    let compiles = succeeds_within(rustc.arg(&probe).arg(&source), PROBE_LIMIT);
    remove_probe(&probe);
    compiles
}

fn remove_probe(folder: &Path) {
    // A leftover in the temporary folder does no harm.
    let _ = std::fs::remove_dir_all(folder);
}

fn add_target() -> Result<bool> {
    let mut rustup = Command::new("rustup");
    // Without a network it should give up at once: there is another way.
    rustup.env("RUSTUP_MAX_RETRIES", "0");
    rustup.args(["target", "add", TARGET]);
    Ok(succeeds_within(&mut rustup, RUSTUP_LIMIT) && active_has_target())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ways_are_words_out_of_three() {
        assert_eq!(allowed_ways("apt").ok(), Some(vec![Way::Apt]));
        assert_eq!(
            allowed_ways(" rustup  active ").ok(),
            Some(vec![Way::Rustup, Way::Active])
        );
        assert_eq!(allowed_ways("").map(|w| w.len()).ok(), Some(3));
        assert!(allowed_ways("apt brew").is_err(), "an unknown word");
    }
}
