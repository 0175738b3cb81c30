//! Generates the JavaScript that joins the compiled page to the browser.

use crate::failure::{Failure, Result};
use std::path::Path;
use walrus::{FunctionKind, Module};
use wasm_bindgen_cli_support::Bindgen;

/// The bindings generator's version, which is also the page's wasm-bindgen.
pub(crate) const VERSION: &str = "0.2.130";

/// The page's two program files, not yet optimised.
#[derive(Debug)]
pub(crate) struct Program {
    pub(crate) javascript: String,
    pub(crate) wasm: Vec<u8>,
}

/// Part of the names of the entry points that Leptos' server functions bring
/// (streams of the browser). The page makes no stream, so nothing calls them;
/// without them the optimiser drops what only they use.
const NEVER_CALLED: &str = "intounderlying";

/// Parts of the names of functions that only those entry points lead to. Tables of
/// functions that nobody reads any more hold on to some of them.
const NEVER_RUN: [&str; 3] = ["wasm_streams", "IntoUnderlying", "future_to_promise"];

/// Runs the bindings generator on the compiled page.
pub(crate) fn generate(compiled: &Path, name: &str) -> Result<Program> {
    let refused = |error: &dyn std::fmt::Display| Failure::Bindings(format!("{error:#}"));
    let mut bindgen = Bindgen::new();
    bindgen
        .input_path(compiled)
        .out_name(name)
        .remove_name_section(false)
        .remove_producers_section(true)
        .web(true)
        .map_err(|e| refused(&e))?;
    let mut output = bindgen.generate_output().map_err(|e| refused(&e))?;
    // The loader precaches two files by name; a third would be missed offline.
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
    let program = output.wasm_mut();
    let never_called: Vec<_> = program
        .exports
        .iter()
        .filter(|export| export.name.contains(NEVER_CALLED))
        .map(|export| export.id())
        .collect();
    for export in never_called {
        program.exports.delete(export);
    }
    empty_what_never_runs(program);
    name_by_shape(program);
    Ok(Program {
        javascript,
        wasm: program.emit_wasm(),
    })
}

/// Leaves a trap of each function that can't be reached, so that the optimiser drops
/// what only it uses.
fn empty_what_never_runs(program: &mut Module) {
    for func in program.funcs.iter_mut() {
        let name = func.name.as_deref().unwrap_or_default();
        let never_run = NEVER_RUN.iter().any(|part| name.contains(part));
        if let (true, FunctionKind::Local(local)) = (never_run, &mut func.kind) {
            let entry = local.entry_block();
            local.block_mut(entry).instrs.clear();
            local.builder_mut().func_body().unreachable();
        }
    }
}

/// Puts before each function's name what it takes and gives and how long it is, so
/// that the optimiser can lay like beside like: what stands near packs better.
fn name_by_shape(program: &mut Module) {
    let (types, funcs) = (&program.types, &mut program.funcs);
    for func in funcs.iter_mut() {
        let length = match &func.kind {
            FunctionKind::Local(local) => local.size(),
            _ => 0,
        };
        let (params, results) = types.params_results(func.ty());
        let name = func.name.as_deref().unwrap_or_default();
        func.name = Some(format!("{params:?}{results:?}{length:08} {name}"));
    }
}
