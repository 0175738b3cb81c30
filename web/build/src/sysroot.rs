//! The library for a target, built once from the distribution's source.

use crate::debian::{DebianCompiler, clean};
use crate::failure::{Failure, Result};
use crate::fingerprint::fingerprint;
use crate::folders::cache_folder;
use crate::process::{run_quiet, run_shown};
use crate::target::Target;
use std::ffi::OsStr;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The page is sent over the air: the library's size matters more than its speed.
const OPT_LEVEL: &str = "z";
const FLAGS: [&str; 5] = [
    // Lets the page optimise across the library.
    "-Cembed-bitcode=yes",
    // Keeps the library's private crates private.
    "-Zforce-unstable-if-unmarked",
    "-Cstrip=debuginfo",
    // A panic traps at once: the page tells of the trap in its own words, and
    // messages that nobody reads, with all that puts them together, stay out.
    "--cfg=panic=\"immediate-abort\"",
    "-Aexplicit_builtin_cfgs_in_flags",
];
/// Goes up when this module lays out or compiles the library differently.
const LAYOUT: &str = "2";

/// The library's folder for one compiler build, named by all of `rustc -vV`.
pub(crate) fn folder(compiler_identity: &str, target: Target) -> Result<PathBuf> {
    let key = [compiler_identity, OPT_LEVEL, LAYOUT].map(str::as_bytes);
    Ok(cache_folder()?.join(format!("{target}-{}", fingerprint(&key))))
}

/// Builds the library into the folder, which appears only when it is complete.
/// What is there is replaced: it was found unusable.
pub(crate) fn build(compiler: &DebianCompiler, target: Target, folder: &Path) -> Result<()> {
    if folder.exists() {
        fs::remove_dir_all(folder).map_err(Failure::file("remove", folder))?;
    }
    let partial = folder.with_extension(format!("partial-{}", std::process::id()));
    let libraries = partial
        .join("lib/rustlib")
        .join(target.triple())
        .join("lib");
    fs::create_dir_all(&libraries).map_err(Failure::file("create", &libraries))?;

    let original = host_sysroot()?;
    compile(&original, target, &partial.join("build"))?;
    collect(&partial, target, &libraries)?;
    link_host_library(compiler, &original, &partial)?;

    if fs::rename(&partial, folder).is_ok() {
        return Ok(());
    }
    // Another run was quicker; its library is as good as ours.
    fs::remove_dir_all(&partial).map_err(Failure::file("remove", &partial))
}

fn host_sysroot() -> Result<PathBuf> {
    let mut rustc = Command::new(DebianCompiler::RUSTC);
    let printed = run_quiet(clean(&mut rustc).args(["--print", "sysroot"]))?;
    Ok(PathBuf::from(printed.trim()))
}

fn compile(original: &Path, target: Target, build: &Path) -> Result<()> {
    let source = original.join("lib/rustlib/src/rust/library");
    let manifest = source.join(target.library()).join("Cargo.toml");
    let mut cargo = Command::new(DebianCompiler::CARGO);
    clean(&mut cargo)
        .env("RUSTC", DebianCompiler::RUSTC)
        // The library uses what only the library may use. For this one call.
        .env("RUSTC_BOOTSTRAP", "1")
        .env("CARGO_ENCODED_RUSTFLAGS", FLAGS.join("\u{1f}"))
        .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", OPT_LEVEL)
        .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "1")
        .env("CARGO_PROFILE_RELEASE_DEBUG", "0")
        .args([
            "build",
            "--release",
            "--locked",
            "--target",
            target.triple(),
        ])
        .args(["--features", "optimize_for_size"])
        .arg("--target-dir")
        .arg(build)
        .arg("--manifest-path")
        .arg(manifest);
    run_shown(&mut cargo)
}

/// Keeps one `.rlib` for each crate; the crate `sysroot` itself is empty.
fn collect(partial: &Path, target: Target, libraries: &Path) -> Result<()> {
    let built = partial
        .join("build")
        .join(target.triple())
        .join("release/deps");
    let entries = fs::read_dir(&built).map_err(Failure::file("read", &built))?;
    for entry in entries {
        let file = entry.map_err(Failure::file("read", &built))?.path();
        let name = file.file_name().unwrap_or_default();
        let dummy = name.to_string_lossy().starts_with("libsysroot-");
        if file.extension() == Some(OsStr::new("rlib")) && !dummy {
            fs::copy(&file, libraries.join(name)).map_err(Failure::file("copy", &file))?;
        }
    }
    let build = partial.join("build");
    fs::remove_dir_all(&build).map_err(Failure::file("remove", &build))
}

/// Macros and build scripts run on the host: that library is the distribution's.
fn link_host_library(compiler: &DebianCompiler, original: &Path, partial: &Path) -> Result<()> {
    let inside = Path::new("lib/rustlib").join(compiler.host());
    let (from, to) = (original.join(&inside), partial.join(&inside));
    symlink(&from, &to).map_err(Failure::file("link", &to))
}

#[cfg(unix)]
fn symlink(from: &Path, to: &Path) -> std::io::Result<()> {
    std::os::unix::fs::symlink(from, to)
}

#[cfg(not(unix))]
fn symlink(_from: &Path, _to: &Path) -> std::io::Result<()> {
    Err(std::io::Error::from(std::io::ErrorKind::Unsupported))
}
