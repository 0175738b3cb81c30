//! Where things are.

use crate::failure::{Failure, Result};
use std::env;
use std::path::{Path, PathBuf};

/// The workspace's top folder, which holds `index.html`, `core` and `web`.
pub fn workspace_folder() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors()
        .nth(2)
        .map_or_else(|| here.to_owned(), Path::to_owned)
}

/// Where the build keeps what it fetched or made once for this user: the
/// compiler's standard library and the optimiser.
///
/// `TINWAVE_CACHE` if set, else `tinwave` in the user's cache folder.
///
/// # Errors
/// [`Failure::Missing`] when neither `TINWAVE_CACHE`, `XDG_CACHE_HOME` nor
/// `HOME` is set.
pub fn cache_folder() -> Result<PathBuf> {
    if let Some(folder) = env::var_os("TINWAVE_CACHE") {
        return Ok(PathBuf::from(folder));
    }
    if let Some(folder) = env::var_os("XDG_CACHE_HOME") {
        return Ok(Path::new(&folder).join("tinwave"));
    }
    let home = env::var_os("HOME").or_else(|| env::var_os("USERPROFILE"));
    match home {
        Some(home) => Ok(Path::new(&home).join(".cache").join("tinwave")),
        None => Err(Failure::Missing {
            what: "no folder to keep things in between builds (HOME is not set)".to_owned(),
            remedy: "set TINWAVE_CACHE to a folder of your own".to_owned(),
        }),
    }
}

/// Finds a program on the search path, as a shell would.
pub(crate) fn program_on_path(name: &str) -> Option<PathBuf> {
    let path = env::var_os("PATH")?;
    env::split_paths(&path)
        .map(|folder| folder.join(name))
        .find(|file| file.is_file())
}
