//! The whole build, from source to a folder of static files.

use crate::assemble::{Parts, assemble, write};
use crate::bound;
use crate::failure::{Failure, Result};
use crate::first_paint::FirstPaint;
use crate::folders::workspace_folder;
use crate::optimise::Optimiser;
use crate::program::Program;
use crate::steps::Steps;
use crate::target::Target;
use crate::toolchain::Toolchain;
use crate::weight::Weight;
use std::fs;
use std::panic::resume_unwind;
use std::path::PathBuf;
use std::thread;

/// What to build.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BuildOptions {
    /// The folder to write. What is there must be an earlier build, or empty.
    pub out: PathBuf,
    /// Letters, digits, `.` and `-` that set this build's version apart from
    /// another one of the same content; usually empty.
    pub version_tag: String,
    /// Whether to run the optimiser. Without it a build is quicker and the page
    /// heavier.
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

/// Builds the page: sets up what is missing, compiles, shrinks, writes. The caller
/// holds what it weighs against the bars.
///
/// # Errors
/// What went wrong, with what to do about it where that is known.
pub fn build(options: &BuildOptions, steps: &Steps) -> Result<Weight> {
    check_tag(&options.version_tag)?;
    let toolchain = Toolchain::find(Target::Browser, steps)?;
    let optimiser = if options.optimise {
        bring_optimiser(steps)
    } else {
        None
    };
    let parts = parts(&toolchain, optimiser.as_ref(), steps)?;
    let work = workspace_folder().join("target/wasm/texts");
    fs::create_dir_all(&work).map_err(Failure::file("create", &work))?;
    let page = assemble(&parts, &options.version_tag, &|kind, text| {
        optimiser.as_ref().map_or(Ok(text.to_owned()), |tool| {
            tool.shrink_text(kind, text, &work)
        })
    })?;
    write(&page, &options.out)?;
    steps.say(&format!("version {}", page.version));

    let weight = Weight::of(&page.files, toolchain.library(), optimiser.is_some());
    for line in weight.table().lines() {
        steps.say(line);
    }
    Ok(weight)
}

/// The programs, and beside their compilation, which leaves a core idle for long, the
/// first paint by this machine's own compiler.
fn parts(toolchain: &Toolchain, optimiser: Option<&Optimiser>, steps: &Steps) -> Result<Parts> {
    thread::scope(|scope| {
        let first_paint =
            scope.spawn(|| steps.step("rendering the first paint", FirstPaint::render));
        let program = |program| bound::bring(program, toolchain, optimiser, steps);
        let (app, worker) = (program(Program::App), program(Program::Worker));
        let first_paint = first_paint.join();
        Ok(Parts {
            app: app?,
            worker: worker?,
            first_paint: first_paint.unwrap_or_else(|panic| resume_unwind(panic))?,
        })
    })
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
