//! Compiles the page to WebAssembly.

use crate::failure::Result;
use crate::folders::workspace_folder;
use crate::process::run_shown;
use crate::target::Target;
use crate::toolchain::Toolchain;
use std::path::PathBuf;

/// The programs of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Part {
    /// The page itself.
    Page,
    /// What draws templates, fetched when something is to be printed.
    Print,
    /// What computes in a worker, and the parts that are fetched when they are wanted.
    Bench,
}

impl Part {
    /// The profile of `Cargo.toml` that it is compiled with.
    const fn profile(self) -> &'static str {
        match self {
            Self::Page | Self::Print => "page",
            Self::Bench => "workbench",
        }
    }

    /// The name of its files.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Page => "app",
            Self::Print => "print",
            Self::Bench => "bench",
        }
    }
}

/// Compiles a part with its profile; gives the file as the compiler
/// wrote it.
///
/// It has a target folder of its own, because the host's compiler may be
/// another one and the two would rebuild each other's work.
pub(crate) fn compile(toolchain: &Toolchain, part: Part) -> Result<PathBuf> {
    let target_folder = workspace_folder().join("target").join("wasm");
    let (package, file): (&[&str], _) = match part {
        Part::Page => (&["tinwave-web", "--bin", "tinwave-web"], "tinwave-web.wasm"),
        Part::Print => (&["tinwave-print", "--lib"], "tinwave_print.wasm"),
        Part::Bench => (&["tinwave-bench", "--lib"], "tinwave_bench.wasm"),
    };
    let profile = part.profile();
    let mut cargo = toolchain.cargo();
    cargo
        .current_dir(workspace_folder())
        .args(["build", "--package"])
        .args(package)
        .args([
            "--profile",
            profile,
            "--target",
            Target::Browser.triple(),
            "--target-dir",
        ])
        .arg(&target_folder);
    run_shown(&mut cargo)?;
    Ok(target_folder
        .join(Target::Browser.triple())
        .join(profile)
        .join(file))
}
