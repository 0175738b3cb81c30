//! The whole build, from source to a folder of static files.

use crate::assemble::{Programs, assemble, write};
use crate::bindings::{self, Program};
use crate::compile::{Part, compile};
use crate::failure::{Failure, Result};
use crate::fingerprint::fingerprint;
use crate::folders::workspace_folder;
use crate::optimise::{self, Optimiser};
use crate::steps::Steps;
use crate::target::Target;
use crate::toolchain::Toolchain;
use crate::weight::Weight;
use std::fs;
use std::path::{Path, PathBuf};

/// What to build.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BuildOptions {
    /// The folder to write. What is there must be an earlier build, or empty.
    pub out: PathBuf,
    /// Letters, digits, `.` and `-` that set this build's version apart from
    /// another one of the same content; usually empty.
    pub version_tag: String,
    /// Whether to run the optimiser. Without it a build is quicker, the page
    /// heavier, and the bars are not enforced.
    pub optimise: bool,
}

impl Default for BuildOptions {
    fn default() -> Self {
        Self {
            out: workspace_folder().join("dist"),
            version_tag: String::new(),
            optimise: true,
        }
    }
}

/// Builds the page: sets up what is missing, compiles, shrinks, writes.
///
/// # Errors
/// What went wrong, with what to do about it where that is known;
/// [`Failure::TooHeavy`] when the page, which is written all the same, passes a bar.
pub fn build(options: &BuildOptions, steps: &Steps) -> Result<Weight> {
    check_tag(&options.version_tag)?;
    let toolchain = Toolchain::find(Target::Browser, steps)?;
    let compiled = steps.step("compiling the page", || compile(&toolchain, Part::Page))?;
    let printer = steps.step("compiling the printer", || compile(&toolchain, Part::Print))?;
    let bench = steps.step("compiling the workbench", || {
        compile(&toolchain, Part::Bench)
    })?;
    let optimiser = if options.optimise {
        bring_optimiser(steps)
    } else {
        None
    };
    let optimised = |compiled: &Path, part| program(compiled, part, optimiser.as_ref(), steps);
    let programs = Programs {
        page: optimised(&compiled, Part::Page)?,
        print: optimised(&printer, Part::Print)?,
        bench: optimised(&bench, Part::Bench)?,
    };
    let work = compiled.with_file_name("tinwave-texts");
    fs::create_dir_all(&work).map_err(Failure::file("create", &work))?;
    let page = assemble(programs, &options.version_tag, &|kind, text| {
        optimiser.as_ref().map_or(Ok(text.to_owned()), |tool| {
            tool.shrink_text(kind, text, &work)
        })
    })?;
    write(&page, &options.out)?;
    steps.say(&format!("version {}", page.version));

    let weight = Weight::of(&page.files, toolchain.library());
    for line in weight.table().lines() {
        steps.say(line);
    }
    match weight.check() {
        Err(heavy) if optimiser.is_none() => {
            steps.say(&format!("not optimised, so let pass: {heavy}"))
        }
        checked => checked?,
    }
    Ok(weight)
}

fn check_tag(tag: &str) -> Result<()> {
    let plain = |c: char| c.is_ascii_alphanumeric() || c == '.' || c == '-';
    if tag.len() <= 40 && tag.chars().all(plain) {
        return Ok(());
    }
    Err(Failure::Usage(format!(
        "--version-tag {tag:?}: at most 40 letters, digits, dots and dashes"
    )))
}

/// The page's program with its bindings; taken from the last build when the
/// compiled file is the same.
fn program(
    compiled: &Path,
    part: Part,
    optimiser: Option<&Optimiser>,
    steps: &Steps,
) -> Result<Program> {
    let raw = fs::read(compiled).map_err(Failure::file("read", compiled))?;
    let recipe = optimiser.map_or(String::new(), |_| optimise::recipe());
    let made_by = [&recipe, bindings::VERSION, bindings::TREATMENT].concat();
    let key = fingerprint(&[&raw, made_by.as_bytes()]);
    let kept = compiled.with_file_name(format!("tinwave-{}-{key}", part.name()));
    let (script, wasm) = (kept.join("app.js"), kept.join("app.wasm"));

    if let (Ok(javascript), Ok(wasm)) = (fs::read_to_string(&script), fs::read(&wasm)) {
        steps.say(&format!("{}: unchanged", part.name()));
        return Ok(Program { javascript, wasm });
    }
    let mut program = steps.step("generating the bindings", || {
        bindings::generate(compiled, part.name())
    })?;
    fs::create_dir_all(&kept).map_err(Failure::file("create", &kept))?;
    if let Some(optimiser) = optimiser {
        program.wasm = steps.step("shrinking the page", || {
            optimiser.shrink(&program.wasm, &kept)
        })?;
    }
    fs::write(&wasm, &program.wasm).map_err(Failure::file("write", &wasm))?;
    // Last, so that half a result is never taken for a whole one.
    fs::write(&script, &program.javascript).map_err(Failure::file("write", &script))?;
    Ok(program)
}

/// The optimiser, or none with a plain word why.
fn bring_optimiser(steps: &Steps) -> Option<Optimiser> {
    match Optimiser::bring(steps) {
        Ok(optimiser) => Some(optimiser),
        Err(failure) => {
            steps.say(&format!(
                "going on WITHOUT the optimiser, the page will be heavier: {failure}"
            ));
            None
        }
    }
}
