//! Generates the JavaScript that joins a compiled program to the browser.

use crate::failure::{Failure, Result};
use std::path::Path;
use wasm_bindgen_cli_support::Bindgen;

/// The bindings generator's version, which is also the programs' wasm-bindgen.
pub(crate) const VERSION: &str = "0.2.130";

/// Runs the bindings generator on a compiled program; gives its JavaScript and the
/// program that belongs to it. What is cut off a program imports memory, table and stack
/// from it: then the linker's exports stay.
pub(crate) fn generate(compiled: &Path, name: &str, is_cut: bool) -> Result<(String, Vec<u8>)> {
    let refused = |error: &dyn std::fmt::Display| Failure::Bindings(format!("{error:#}"));
    let mut bindgen = Bindgen::new();
    bindgen
        .input_path(compiled)
        .out_name(name)
        .keep_lld_exports(is_cut)
        .remove_producers_section(true)
        .web(true)
        .map_err(|e| refused(&e))?;
    let mut output = bindgen.generate_output().map_err(|e| refused(&e))?;
    // The manifest has two files for a program; a third would be missed offline.
    let inline = output
        .snippets()
        .iter()
        .filter(|(_, list)| !list.is_empty());
    let foreign: Vec<&String> = inline
        .map(|(name, _)| name)
        .chain(output.local_modules().keys())
        .collect();
    if !foreign.is_empty() {
        return Err(Failure::Bindings(format!(
            "these crates bring JavaScript files of their own, which the page may not load: {foreign:?}"
        )));
    }
    let javascript = output.js().to_owned();
    Ok((javascript, output.wasm_mut().emit_wasm()))
}
