//! Generates the JavaScript that joins the compiled page to the browser.

use crate::failure::{Failure, Result};
use std::path::Path;
use walrus::ir::{Instr, InstrLocId, InstrSeqId, Visitor, dfs_in_order};
use walrus::{FunctionKind, LocalFunction, Module};
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

/// Part of the names of functions that end in an error of JavaScript's, which stops
/// no more than the call that led to it.
const THROWS: &str = "wasm_bindgen";

/// How this module treats the program: a result is kept for as long as this is the same.
pub(crate) const TREATMENT: &str = include_str!("bindings.rs");

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
    leave_traps(program);
    name_by_shape(program);
    Ok(Program {
        javascript,
        wasm: program.emit_wasm(),
    })
}

/// Leaves a trap of each function that can't be reached, and of each that ends in one
/// whatever it does before: a panic traps at once. Then the optimiser drops what only
/// they use, such as all that puts a panic's message together for nobody to read.
fn leave_traps(program: &mut Module) {
    for func in program.funcs.iter_mut() {
        let name = func.name.as_deref().unwrap_or_default();
        let never_run = NEVER_RUN.iter().any(|part| name.contains(part));
        if let FunctionKind::Local(local) = &mut func.kind
            && (never_run || never_returns(local) && !name.contains(THROWS))
        {
            let entry = local.entry_block();
            local.block_mut(entry).instrs.clear();
            local.builder_mut().func_body().unreachable();
        }
    }
}

/// Whether a function can be left by a trap alone: its last instruction is one, and
/// none before it leaves the body.
fn never_returns(func: &LocalFunction) -> bool {
    let entry = func.entry_block();
    let mut exits = Exits {
        entry,
        found: false,
    };
    dfs_in_order(&mut exits, func, entry);
    let last = func.block(entry).instrs.last();
    matches!(last, Some((Instr::Unreachable(_), _))) && !exits.found
}

/// Looks for ways out of a function's body.
struct Exits {
    entry: InstrSeqId,
    found: bool,
}

impl<'a> Visitor<'a> for Exits {
    fn visit_instr(&mut self, instr: &'a Instr, _: &'a InstrLocId) {
        self.found |= match instr {
            Instr::Return(_) | Instr::ReturnCall(_) | Instr::ReturnCallIndirect(_) => true,
            Instr::Br(branch) => branch.block == self.entry,
            Instr::BrIf(branch) => branch.block == self.entry,
            Instr::BrTable(branch) => {
                branch.default == self.entry || branch.blocks.contains(&self.entry)
            }
            _ => false,
        };
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

#[cfg(test)]
mod tests {
    use super::*;
    use walrus::{FunctionBuilder, FunctionId, ValType};

    /// A function that computes something, leaves early if it `returns`, and traps.
    fn function(program: &mut Module, name: &str, returns: bool) -> FunctionId {
        let mut builder = FunctionBuilder::new(&mut program.types, &[ValType::I32], &[]);
        builder.name(name.to_owned());
        let given = program.locals.add(ValType::I32);
        let mut body = builder.func_body();
        body.local_get(given).if_else(
            None,
            |then| {
                if returns {
                    then.return_();
                }
            },
            |_| {},
        );
        body.unreachable();
        builder.finish(vec![given], &mut program.funcs)
    }

    fn length(program: &Module, id: FunctionId) -> u64 {
        program.funcs.get(id).kind.unwrap_local().size()
    }

    #[test]
    fn what_can_only_end_in_a_trap_traps_at_once() {
        let mut program = Module::default();
        let panics = function(&mut program, "core::panicking::panic_fmt", false);
        let returns = function(&mut program, "sound", true);
        let throws = function(&mut program, "wasm_bindgen::throw_str", false);
        let never_run = function(&mut program, "wasm_streams::pull", true);
        let before = length(&program, returns);
        leave_traps(&mut program);
        assert_eq!(length(&program, panics), 1);
        assert_eq!(length(&program, never_run), 1);
        assert_eq!(length(&program, returns), before);
        assert!(length(&program, throws) > 1);
    }
}
