//! Shrinks the page: programs with Binaryen's `wasm-opt`, scripts and styles
//! with esbuild.

use crate::failure::{Failure, Result};
use crate::folders::cache_folder;
use crate::node;
use crate::process::run_quiet;
use crate::steps::Steps;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The optimiser's exact version and checksum, as npm reads them.
const PACKAGE: &str = include_str!("../optimiser/package.json");
const LOCK: &str = include_str!("../optimiser/package-lock.json");

/// What the compiler uses by default and every browser of the last years has.
const FEATURES: [&str; 7] = [
    "--enable-bulk-memory",
    "--enable-bulk-memory-opt",
    "--enable-multivalue",
    "--enable-mutable-globals",
    "--enable-nontrapping-float-to-int",
    "--enable-reference-types",
    "--enable-sign-ext",
];

/// Smallest after gzip: what the compiler has not put in line saves more by standing
/// once, and common parts put aside in locals make shorter code that packs worse. What
/// one generic function became for many types stands side by side, where gzip sees that
/// it is alike: 4 to 5 % of the page.
const SMALLEST: [&str; 7] = [
    // Streams to and from a server, which the page does not have: the framework exports
    // them whether they are used or not.
    "--remove-exports=*intounderlying*",
    "-Oz",
    "-ocimfs=0",
    "-fimfs=0",
    "-aimfs=0",
    "--skip-pass=local-cse",
    "--reorder-functions-by-name",
];

/// All that the result depends on beside what goes in.
pub(crate) fn recipe() -> String {
    [LOCK, &SMALLEST.join(" "), &FEATURES.join(" ")].concat()
}

/// The optimiser, installed.
#[derive(Debug)]
pub(crate) struct Optimiser {
    node: PathBuf,
    folder: PathBuf,
}

impl Optimiser {
    /// Finds the optimiser in the cache folder, or installs it there by npm.
    pub(crate) fn bring(steps: &Steps) -> Result<Self> {
        let node = node::find(steps)?;
        let folder = cache_folder()?.join("optimiser");
        fs::create_dir_all(&folder).map_err(Failure::file("create", &folder))?;
        for (name, text) in [("package.json", PACKAGE), ("package-lock.json", LOCK)] {
            let file = folder.join(name);
            fs::write(&file, text).map_err(Failure::file("write", &file))?;
        }
        if !node::has_locked(&folder) {
            steps.step("installing the optimiser", || node::install_locked(&folder))?;
        }
        Ok(Self { node, folder })
    }

    /// Gives the same program, smaller. Works in a folder that it may fill.
    pub(crate) fn shrink(&self, wasm: &[u8], work: &Path) -> Result<Vec<u8>> {
        let (before, after) = (work.join("before.wasm"), work.join("after.wasm"));
        fs::write(&before, wasm).map_err(Failure::file("write", &before))?;
        let script = self.folder.join("node_modules/binaryen/bin/wasm-opt");
        let mut command = Command::new(&self.node);
        command.arg(&script).args(SMALLEST).args(FEATURES);
        run_quiet(command.arg(&before).arg("-o").arg(&after))?;
        fs::read(&after).map_err(Failure::file("read", &after))
    }

    /// Makes one script of a script and what it imports from beside it.
    pub(crate) fn bundle(&self, script: &Path) -> Result<String> {
        let mut command = Command::new(&self.node);
        command
            .arg(self.folder.join("node_modules/esbuild/bin/esbuild"))
            .args([
                "--bundle",
                "--format=esm",
                "--charset=utf8",
                "--log-level=warning",
            ])
            .arg(script);
        run_quiet(&mut command)
    }

    /// Gives the same text of a kind (`js`, `css`), smaller.
    pub(crate) fn shrink_text(&self, kind: &str, text: &str, work: &Path) -> Result<String> {
        let source = work.join(format!("before.{kind}"));
        fs::write(&source, text).map_err(Failure::file("write", &source))?;
        let mut command = Command::new(&self.node);
        command
            .arg(self.folder.join("node_modules/esbuild/bin/esbuild"))
            .args(["--minify", "--charset=utf8", "--log-level=warning"])
            .arg(&source);
        run_quiet(&mut command)
    }
}
