//! A program, ready for the browser: compiled, cut, bound and shrunk.

use crate::bindings;
use crate::failure::{Failure, Result};
use crate::fingerprint::fingerprint;
use crate::optimise::{self, Optimiser};
use crate::program::Program;
use crate::split;
use crate::steps::Steps;
use crate::toolchain::Toolchain;
use std::fs;
use std::path::{Path, PathBuf};

/// A program's files.
#[derive(Debug)]
pub(crate) struct Bound {
    /// What joins it to the browser. It names the later part by [`LATER`].
    pub(crate) javascript: String,
    /// The program, or what of it comes first.
    pub(crate) wasm: Vec<u8>,
    /// What of it comes later.
    pub(crate) later: Option<Vec<u8>>,
}

/// Stands for the later part's name.
pub(crate) const LATER: &str = "{{later-part}}";

/// The files of a program's bindings before they are one.
const BINDINGS: &str = "bindings.js";

/// Makes a program. What follows compilation is taken from the last build when the
/// compiled file is the same.
pub(crate) fn bring(
    program: Program,
    toolchain: &Toolchain,
    optimiser: Option<&Optimiser>,
    steps: &Steps,
) -> Result<Bound> {
    let name = program.name();
    // The cut program has two scripts, which the optimiser makes one.
    let is_cut = program.can_be_cut() && optimiser.is_some();
    let title = format!("compiling {name}");
    let compiled = steps.step(&title, || program.compile(toolchain, is_cut))?;
    let raw = fs::read(&compiled).map_err(Failure::file("read", &compiled))?;
    let recipe = optimiser.map_or(String::new(), |_| optimise::recipe());
    let key = fingerprint(&[&raw, recipe.as_bytes(), bindings::VERSION.as_bytes()]);
    let kept = Kept(compiled.with_file_name(format!("{name}-bound-{key}")));
    if let Some(bound) = kept.read(is_cut) {
        steps.say(&format!("{name}: unchanged"));
        return Ok(bound);
    }
    fs::create_dir_all(&kept.0).map_err(Failure::file("create", &kept.0))?;
    let mut bound = steps.step("generating the bindings", || match optimiser {
        Some(optimiser) if is_cut => in_two(&compiled, name, &kept.0, optimiser),
        _ => whole(&compiled, name),
    })?;
    if let Some(optimiser) = optimiser {
        steps.step(&format!("shrinking {name}"), || {
            bound.wasm = optimiser.shrink(&bound.wasm, &kept.0)?;
            let later = bound.later.take();
            bound.later = later
                .map(|wasm| optimiser.shrink(&wasm, &kept.0))
                .transpose()?;
            Ok(())
        })?;
    }
    kept.write(&bound)?;
    Ok(bound)
}

fn whole(compiled: &Path, name: &str) -> Result<Bound> {
    let (javascript, wasm) = bindings::generate(compiled, name, false)?;
    Ok(Bound {
        javascript,
        wasm,
        later: None,
    })
}

/// Cuts a program, binds its main part, and makes one script of its own and of the one
/// that fetches the later part: by content each would have to be named after the other.
fn in_two(compiled: &Path, name: &str, folder: &Path, optimiser: &Optimiser) -> Result<Bound> {
    let cut = split::cut(compiled, folder, BINDINGS)?;
    let (javascript, wasm) = bindings::generate(&cut.main, name, true)?;
    let script = folder.join(BINDINGS);
    fs::write(&script, javascript).map_err(Failure::file("write", &script))?;
    let bundle = optimiser.bundle(&script)?;
    if bundle.matches(&cut.later_name).count() != 1 {
        let fault = format!("the later part {} is not named once", cut.later_name);
        return Err(Failure::Bindings(fault));
    }
    Ok(Bound {
        javascript: bundle.replace(&cut.later_name, LATER),
        wasm,
        later: Some(cut.later),
    })
}

/// The folder in which a result is kept.
struct Kept(PathBuf);

impl Kept {
    fn script(&self) -> PathBuf {
        self.0.join("bound.js")
    }

    fn wasm(&self) -> PathBuf {
        self.0.join("bound.wasm")
    }

    fn later(&self) -> PathBuf {
        self.0.join("later.wasm")
    }

    fn read(&self, is_cut: bool) -> Option<Bound> {
        let later = is_cut.then(|| fs::read(self.later()));
        Some(Bound {
            javascript: fs::read_to_string(self.script()).ok()?,
            wasm: fs::read(self.wasm()).ok()?,
            later: later.transpose().ok()?,
        })
    }

    fn write(&self, bound: &Bound) -> Result<()> {
        let write = |file: PathBuf, bytes: &[u8]| {
            fs::write(&file, bytes).map_err(Failure::file("write", &file))
        };
        if let Some(later) = &bound.later {
            write(self.later(), later)?;
        }
        write(self.wasm(), &bound.wasm)?;
        // Last, so that half a result is never taken for a whole one.
        write(self.script(), bound.javascript.as_bytes())
    }
}
