//! Compiles the page to WebAssembly.

use crate::failure::Result;
use crate::folders::workspace_folder;
use crate::process::run_shown;
use crate::target::Target;
use crate::toolchain::Toolchain;
use std::path::PathBuf;

/// Compiles the package `tinwave-web` with the profile `page`; gives the file
/// as the compiler wrote it.
///
/// It has a target folder of its own, because the host's compiler may be
/// another one and the two would rebuild each other's work.
pub(crate) fn compile(toolchain: &Toolchain) -> Result<PathBuf> {
    let target_folder = workspace_folder().join("target").join("wasm");
    let mut cargo = toolchain.cargo();
    cargo
        .current_dir(workspace_folder())
        .args(["build", "--package", "tinwave-web", "--bin", "tinwave-web"])
        .args([
            "--profile",
            "page",
            "--target",
            Target::Browser.triple(),
            "--target-dir",
        ])
        .arg(&target_folder);
    run_shown(&mut cargo)?;
    Ok(target_folder
        .join(Target::Browser.triple())
        .join("page/tinwave-web.wasm"))
}
