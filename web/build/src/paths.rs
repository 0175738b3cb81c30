//! What the page says of its own source files' places.

use std::env;
use std::path::PathBuf;

/// Compiler options by which the place of a fault reads the same whoever builds,
/// with neither their home folder in the page nor the bytes that takes.
pub(crate) fn same_paths_everywhere() -> Vec<String> {
    let cargo_home = env::var_os("CARGO_HOME")
        .map(PathBuf::from)
        .or_else(|| Some(PathBuf::from(env::var_os("HOME")?).join(".cargo")));
    let Some(sources) = cargo_home.map(|home| home.join("registry").join("src")) else {
        return Vec::new();
    };
    let registries = std::fs::read_dir(sources).into_iter().flatten().flatten();
    registries
        .map(|registry| format!("--remap-path-prefix={}/=", registry.path().display()))
        .collect()
}
