//! A compiler for a target that the host's toolchain may lack: the browser's,
//! or a machine without an operating system.

use crate::apt;
use crate::debian::DebianCompiler;
use crate::failure::{Failure, Result};
use crate::folders::program_on_path;
use crate::paths::same_paths_everywhere;
use crate::process::succeeds_within;
use crate::steps::Steps;
use crate::target::Target;
use std::env;
use std::ffi::OsString;
use std::path::PathBuf;
use std::process::Command;
use std::time::Duration;

/// A probe compiles in a fraction of a second; a cold disk may need longer.
const PROBE_LIMIT: Duration = Duration::from_secs(60);
/// Time for rustup to fetch a target (about 15 MB).
const RUSTUP_LIMIT: Duration = Duration::from_secs(180);

/// One way to come by a compiler for a target.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Way {
    /// The toolchain in use has the target already.
    Active,
    /// `rustup target add`.
    Rustup,
    /// Debian's compiler, with a library built once from Debian's source.
    Apt,
}

/// What a compiler's library for the target was built for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Library {
    /// Small first: ours, from the distribution's source.
    ForSize,
    /// Quick first, as compilers ship it: the page is heavier.
    ForSpeed,
}

impl Library {
    /// How much more than its bar the page may weigh with it, in percent. What
    /// rustup brings makes it 7 to 9 % heavier.
    pub fn allowed_percent(self) -> usize {
        match self {
            Self::ForSize => 0,
            Self::ForSpeed => 10,
        }
    }
}

/// A compiler for a target, ready for use.
#[derive(Debug)]
pub struct Toolchain {
    cargo: PathBuf,
    target: Target,
    /// Set for the distribution's compiler, whose library for the target is in
    /// a folder of ours.
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
    pub fn find(target: Target, steps: &Steps) -> Result<Self> {
        let ways = allowed_ways(&env::var("WASM_SETUP_WAYS").unwrap_or_default())?;
        if ways.contains(&Way::Active) && active_has(target) {
            steps.say(&format!("compiler: the active toolchain has {target}"));
            return Ok(Self::active(target));
        }
        if ways.contains(&Way::Apt) {
            // Made by an earlier run: no need to ask rustup again.
            if let Some(debian) = DebianCompiler::ready(target)? {
                return Ok(Self::debian(target, steps, debian));
            }
        }
        if ways.contains(&Way::Rustup) && program_on_path("rustup").is_some() {
            let title = format!("adding {target} with rustup");
            if steps.step(&title, || Ok(add(target)))? {
                return Ok(Self::active(target));
            }
            steps.say(&format!("rustup could not add {target}"));
        }
        if ways.contains(&Way::Apt) && (apt::usable() || DebianCompiler::installed()) {
            let debian = DebianCompiler::bring(target, steps)?;
            return Ok(Self::debian(target, steps, debian));
        }
        Err(Failure::Missing {
            what: format!("this machine has no compiler with a library for {target}"),
            remedy: format!(
                "run `rustup target add {target}`, or on Debian let this program use apt \
                 (as root, or with a sudo that needs no password)"
            ),
        })
    }

    fn active(target: Target) -> Self {
        // Inside `cargo run` the variable names the very cargo that runs us.
        let cargo = env::var_os("CARGO").unwrap_or_else(|| OsString::from("cargo"));
        Self {
            cargo: PathBuf::from(cargo),
            target,
            debian: None,
        }
    }

    fn debian(target: Target, steps: &Steps, compiler: DebianCompiler) -> Self {
        steps.say(&format!("compiler: Debian's {}", compiler.release()));
        Self {
            cargo: PathBuf::from(DebianCompiler::CARGO),
            target,
            debian: Some(compiler),
        }
    }

    /// What the compiler's library was built for.
    pub fn library(&self) -> Library {
        match self.debian {
            Some(_) => Library::ForSize,
            None => Library::ForSpeed,
        }
    }

    /// A cargo command that can compile for the target. The caller adds the
    /// subcommand and `--target`.
    pub fn cargo(&self) -> Command {
        let mut command = Command::new(&self.cargo);
        let mut flags = self.target.flags();
        if let Some(debian) = &self.debian {
            debian.prepare(self.target, &mut command, &mut flags);
        } else {
            flags.extend(same_paths_everywhere());
            let own = env::var("RUSTFLAGS").unwrap_or_default();
            flags.extend(own.split_whitespace().map(str::to_owned));
        }
        command.env("CARGO_ENCODED_RUSTFLAGS", flags.join("\u{1f}"));
        command
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

fn active_has(target: Target) -> bool {
    let rustc = env::var_os("RUSTC").unwrap_or_else(|| OsString::from("rustc"));
    compiles_for(target, Command::new(rustc))
}

/// Whether this compiler has, and accepts, a library for the target. A leftover
/// folder proves nothing, so a small crate is really compiled (no linker needed).
pub(crate) fn compiles_for(target: Target, mut rustc: Command) -> bool {
    let name = format!("tinwave-probe-{}-{target}", std::process::id());
    let probe = env::temp_dir().join(name);
    let source = probe.join("probe.rs");
    if std::fs::create_dir_all(&probe).is_err() || std::fs::write(&source, target.probe()).is_err()
    {
        return false;
    }
    rustc.args(["--target", target.triple(), "--emit=metadata", "--out-dir"]);
    let compiles = succeeds_within(rustc.arg(&probe).arg(&source), PROBE_LIMIT);
    // A leftover in the temporary folder does no harm.
    let _ = std::fs::remove_dir_all(&probe);
    compiles
}

fn add(target: Target) -> bool {
    let mut rustup = Command::new("rustup");
    // Without a network it should give up at once: there is another way.
    rustup.env("RUSTUP_MAX_RETRIES", "0");
    rustup.args(["target", "add", target.triple()]);
    succeeds_within(&mut rustup, RUSTUP_LIMIT) && active_has(target)
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
