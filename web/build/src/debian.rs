//! The distribution's Rust compiler, for machines where rustup cannot add a
//! target.
//!
//! A standard library is usable only by the very compiler that built it, so a
//! library built from Debian's source needs Debian's compiler as well. Debian
//! stable has a newer one (`rustc-web`, kept up to date to build browsers)
//! beside its ordinary `rustc`.

use crate::apt;
use crate::failure::{Failure, Result};
use crate::paths::same_paths_everywhere;
use crate::process::run_quiet;
use crate::steps::Steps;
use crate::sysroot;
use crate::target::Target;
use crate::toolchain::compiles_for;
use std::env;
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Variables that would make one toolchain's cargo use another's compiler.
const FOREIGN_VARIABLES: [&str; 8] = [
    "CARGO",
    "CARGO_BUILD_TARGET",
    "LD_LIBRARY_PATH",
    "RUSTC_WORKSPACE_WRAPPER",
    "RUSTC_WRAPPER",
    "RUSTDOC",
    "RUSTFLAGS",
    "RUSTUP_TOOLCHAIN",
];

/// Debian's compiler and what it needs to compile for the target.
#[derive(Debug)]
pub(crate) struct DebianCompiler {
    /// First line of `rustc -vV`.
    release: String,
    host: String,
    /// All of `rustc -vV`: names the one compiler that may use a library.
    identity: String,
    llvm_major: String,
}

impl DebianCompiler {
    pub(crate) const CARGO: &'static str = "/usr/bin/cargo";
    pub(crate) const RUSTC: &'static str = "/usr/bin/rustc";

    /// Whether the compiler's packages are installed.
    pub(crate) fn installed() -> bool {
        [Self::CARGO, Self::RUSTC]
            .iter()
            .all(|program| Path::new(program).is_file())
    }

    /// The compiler, if an earlier run left everything that it needs.
    pub(crate) fn ready(target: Target) -> Result<Option<Self>> {
        if !Self::installed() {
            return Ok(None);
        }
        let compiler = Self::identify()?;
        let usable = compiler.has_linker(target) && compiler.accepts_sysroot(target)?;
        Ok(usable.then_some(compiler))
    }

    /// Installs the compiler and builds its standard library for the target.
    pub(crate) fn bring(target: Target, steps: &Steps) -> Result<Self> {
        steps.step("installing Debian's Rust compiler", install_compiler)?;
        let compiler = Self::identify()?;
        if !compiler.has_linker(target) {
            steps.step("installing the linker of the same LLVM", || {
                compiler.install_linker()
            })?;
        }
        if !compiler.accepts_sysroot(target)? {
            let title = format!("building the library for {target} (once)");
            steps.step(&title, || {
                sysroot::build(&compiler, target, &compiler.sysroot(target)?)
            })?;
        }
        if compiler.accepts_sysroot(target)? {
            return Ok(compiler);
        }
        Err(Failure::Missing {
            what: format!("the library that was built for {target} does not work"),
            remedy: format!(
                "remove {} and try again",
                compiler.sysroot(target)?.display()
            ),
        })
    }

    fn identify() -> Result<Self> {
        let identity = run_quiet(clean(&mut Command::new(Self::RUSTC)).arg("-vV"))?;
        let field = |name: &str| {
            identity
                .lines()
                .find_map(|line| line.strip_prefix(name))
                .unwrap_or_default()
                .trim()
                .to_owned()
        };
        let llvm = field("LLVM version:");
        Ok(Self {
            release: identity.lines().next().unwrap_or_default().to_owned(),
            host: field("host:"),
            llvm_major: llvm.split('.').next().unwrap_or_default().to_owned(),
            identity,
        })
    }

    pub(crate) fn release(&self) -> &str {
        &self.release
    }

    pub(crate) fn host(&self) -> &str {
        &self.host
    }

    /// The folder with the library for the target: one for each compiler
    /// build, so that an upgrade makes a new one by itself.
    fn sysroot(&self, target: Target) -> Result<PathBuf> {
        sysroot::folder(&self.identity, target)
    }

    fn accepts_sysroot(&self, target: Target) -> Result<bool> {
        let mut rustc = Command::new(Self::RUSTC);
        clean(&mut rustc)
            .arg("--sysroot")
            .arg(self.sysroot(target)?);
        Ok(compiles_for(target, rustc))
    }

    /// Only the page is linked; for bare metal the core is compiled alone.
    fn has_linker(&self, target: Target) -> bool {
        target == Target::BareMetal || self.linker().is_some()
    }

    /// Sets a cargo command's environment so that it compiles with this compiler; adds
    /// the compiler's flags.
    pub(crate) fn prepare(&self, target: Target, cargo: &mut Command, flags: &mut Vec<String>) {
        clean(cargo).env("RUSTC", Self::RUSTC);
        // `cargo clippy` must be the distribution's as well.
        cargo.env("PATH", distribution_first());
        // With `--target` the flags reach the target's crates alone; build
        // scripts and macros use the distribution's own library. They are part
        // of cargo's own fingerprint, so another library rebuilds all.
        flags.extend(same_paths_everywhere());
        if let Ok(sysroot) = self.sysroot(target) {
            flags.extend(["--sysroot".to_owned(), sysroot.display().to_string()]);
        }
        if target == Target::Browser {
            flags.extend(
                self.linker()
                    .map(|file| format!("-Clinker={}", file.display())),
            );
        }
    }

    /// LLVM's WebAssembly linker, of the compiler's own LLVM version: another
    /// version may not read what this compiler writes.
    fn linker(&self) -> Option<PathBuf> {
        let path = format!("/usr/lib/llvm-{}/bin/wasm-ld", self.llvm_major);
        Some(PathBuf::from(path)).filter(|file| file.exists())
    }

    fn install_linker(&self) -> Result<()> {
        apt::install(&[&format!("lld-{}", self.llvm_major)])?;
        if self.linker().is_some() {
            return Ok(());
        }
        Err(Failure::Missing {
            what: format!("no wasm-ld of LLVM {}", self.llvm_major),
            remedy: format!("install the package lld-{}", self.llvm_major),
        })
    }
}

/// Takes away what another toolchain may have put into the environment.
pub(crate) fn clean(command: &mut Command) -> &mut Command {
    for name in FOREIGN_VARIABLES {
        command.env_remove(name);
    }
    command
}

fn install_compiler() -> Result<()> {
    let web = apt::installed("rustc-web") || apt::offered("rustc-web");
    if web {
        apt::install(&["rustc-web", "cargo-web", "rust-web-src"])
    } else {
        apt::install(&["rustc", "cargo", "rust-src"])
    }
}

/// The search path with the distribution's programs first.
fn distribution_first() -> OsString {
    let mut folders = vec![PathBuf::from("/usr/bin"), PathBuf::from("/bin")];
    if let Some(path) = env::var_os("PATH") {
        folders.extend(env::split_paths(&path));
    }
    // Only a folder with a colon in its name could fail to join.
    env::join_paths(&folders).unwrap_or_else(|_| OsString::from("/usr/bin:/bin"))
}
