//! The two programs of the page, and how each is compiled.

use crate::failure::Result;
use crate::folders::workspace_folder;
use crate::process::run_shown;
use crate::target::Target;
use crate::toolchain::Toolchain;
use std::path::PathBuf;

/// A program that the browser runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Program {
    /// The page itself.
    App,
    /// All long work, in a thread of its own.
    Worker,
}

/// How a program is compiled.
struct Recipe {
    package: &'static str,
    /// What of the package, as cargo's arguments. A library's kind is narrowed: with
    /// another kind beside it cargo leaves out the optimisation across crates.
    what: &'static [&'static str],
    /// The profile of `Cargo.toml`.
    profile: &'static str,
    /// The compiled file.
    file: &'static str,
}

impl Program {
    const fn recipe(self) -> Recipe {
        match self {
            Self::App => Recipe {
                package: "tinwave-app",
                what: &["--bin", "tinwave-app"],
                profile: "page",
                file: "tinwave-app.wasm",
            },
            Self::Worker => Recipe {
                package: "tinwave-worker",
                what: &["--lib", "--crate-type", "cdylib"],
                profile: "worker",
                file: "tinwave_worker.wasm",
            },
        }
    }

    /// Its package's name.
    pub(crate) const fn name(self) -> &'static str {
        self.recipe().package
    }

    /// Whether its source marks where it may be cut in two.
    pub(crate) const fn can_be_cut(self) -> bool {
        matches!(self, Self::App)
    }

    /// Compiles it with its profile, whole or to be cut; gives the file as the compiler
    /// wrote it.
    ///
    /// It has a target folder of its own, because the host's compiler may be
    /// another one and the two would rebuild each other's work.
    pub(crate) fn compile(self, toolchain: &Toolchain, to_be_cut: bool) -> Result<PathBuf> {
        let recipe = self.recipe();
        let target = Target::Browser.triple();
        let folder = workspace_folder().join("target").join("wasm");
        let mut cargo = toolchain.cargo();
        cargo
            .current_dir(workspace_folder())
            .args(["rustc", "--package", recipe.package])
            .args(recipe.what)
            .args(["--profile", recipe.profile, "--target", target])
            .arg("--target-dir")
            .arg(&folder);
        if to_be_cut {
            // What is cut is found by the linker's notes.
            cargo.args(["--features", "split", "--", "-Clink-arg=--emit-relocs"]);
        }
        run_shown(&mut cargo)?;
        Ok(folder.join(target).join(recipe.profile).join(recipe.file))
    }
}
