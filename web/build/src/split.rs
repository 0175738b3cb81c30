//! Cuts a compiled program in two: what the first paint needs, and what is fetched when
//! it is wanted. The cuts are marked in the source by `wasm_split`.

use crate::failure::{Failure, Result};
use std::fs;
use std::path::{Path, PathBuf};
use wasm_split_cli_support::{Options, transform};

/// The script that fetches the later part, as the main one names it.
pub(crate) const SCRIPT: &str = "split.js";

/// A program in two parts, not yet bound.
#[derive(Debug)]
pub(crate) struct Cut {
    /// The main part's file, for the bindings.
    pub(crate) main: PathBuf,
    /// The later part.
    pub(crate) later: Vec<u8>,
    /// The name by which [`SCRIPT`] fetches the later part.
    pub(crate) later_name: String,
}

/// Cuts; the files go into `folder`. `bindings` is the name of the main part's bindings.
pub(crate) fn cut(compiled: &Path, folder: &Path, bindings: &str) -> Result<Cut> {
    let wasm = fs::read(compiled).map_err(Failure::file("read", compiled))?;
    let main = folder.join("main.wasm");
    let (link_name, main_module) = (format!("./{SCRIPT}"), format!("./{bindings}"));
    let mut options = Options::new(&wasm);
    options.output_dir = folder;
    options.main_out_path = &main;
    options.link_name = &link_name;
    options.main_module = &main_module;
    let refused = |error: &dyn std::fmt::Display| Failure::Bindings(format!("{error:#}"));
    let made = transform(options).map_err(|e| refused(&e))?;
    // All cuts have one name, so there is one later part; the manifest has a row for one.
    let [file] = made.split_modules.as_slice() else {
        let found = &made.split_modules;
        return Err(refused(&format!(
            "one later part was to come out, not {found:?}"
        )));
    };
    let name = file.file_name().unwrap_or_default().to_string_lossy();
    Ok(Cut {
        later: fs::read(file).map_err(Failure::file("read", file))?,
        later_name: name.into_owned(),
        main,
    })
}
