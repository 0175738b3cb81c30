//! Everything set up once, then one scenario file at a time.

use crate::engines::{self, Engines};
use crate::{chromium, poppler, questions};
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::{PoisonError, RwLock};
use tinwave::{BuildOptions, Result, Steps, Weight, node, workspace_folder};

/// Whether a scenario may run beside others, or measures speed and must not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sharing {
    /// May run beside others.
    Shared,
    /// Needs the machine for itself.
    Alone,
}

/// The browser, its driver, and the page in two versions.
#[derive(Debug)]
pub struct Stage {
    node: PathBuf,
    chromium: PathBuf,
    pdftoppm: PathBuf,
    engines: Engines,
    server: PathBuf,
    first: PathBuf,
    second: PathBuf,
    weight: Weight,
    gate: RwLock<()>,
}

impl Stage {
    /// Sets everything up: finds or installs Chromium, Node.js and the driver's
    /// packages, and builds the page twice, the second time as a newer version.
    ///
    /// `work` is a folder for the two builds; `server` is the server's program.
    ///
    /// # Errors
    /// [`tinwave::Failure::Missing`] with what to do, where something cannot
    /// be had; else those of the build.
    pub fn set_up(work: &Path, server: &Path) -> Result<Self> {
        let steps = Steps::new();
        let chromium = steps.step("finding or installing Chromium", chromium::find)?;
        let pdftoppm = steps.step("finding or installing poppler", poppler::find)?;
        let engines = steps.step("finding or installing Firefox and WebKitGTK", engines::find)?;
        let node = node::find(&steps)?;
        let scenarios = scenario_folder();
        if !node::has_locked(&scenarios) {
            steps.step("installing what drives the browser", || {
                node::install_locked(&scenarios)
            })?;
        }
        let build = |name: &str, tag: &str| -> Result<(PathBuf, Weight)> {
            let out = work.join(name);
            let options = BuildOptions {
                out: out.clone(),
                version_tag: tag.to_owned(),
                optimise: true,
            };
            Ok((out, tinwave::build(&options, &steps)?))
        };
        let (first, weight) = build("first", "")?;
        let (second, _) = build("second", "second")?;
        Ok(Self {
            node,
            chromium,
            pdftoppm,
            engines,
            server: server.to_owned(),
            first,
            second,
            weight,
            gate: RwLock::new(()),
        })
    }

    /// Runs one scenario file; passes on what Node's test runner reports, and
    /// tells whether every test in it passed.
    ///
    /// # Errors
    /// In words, when the file's tests did not all pass, or did not run.
    pub fn run(&self, scenario: &str, sharing: Sharing) -> std::result::Result<(), String> {
        let file = scenario_folder().join(format!("{scenario}.test.mjs"));
        let mut command = Command::new(&self.node);
        command
            .args(["--test", "--test-reporter=tap"])
            .arg(&file)
            .env("TINWAVE_CHROMIUM", &self.chromium)
            .env("TINWAVE_PDFTOPPM", &self.pdftoppm)
            .env("TINWAVE_FIREFOX", &self.engines.firefox)
            .env("TINWAVE_WEBKIT_DRIVER", &self.engines.webkit_driver)
            .env("TINWAVE_WEBKIT", &self.engines.webkit)
            .env("TINWAVE_SERVER", &self.server)
            .env("TINWAVE_FIRST", &self.first)
            .env("TINWAVE_SECOND", &self.second)
            .env("TINWAVE_WEIGHT", self.weighed())
            .env("TINWAVE_WORKSPACE", workspace_folder());
        if ["parity", "worker"].contains(&scenario) {
            command.env("TINWAVE_QUESTIONS", questions::lines()?);
            command.env("TINWAVE_STOP", questions::stop());
        }
        let output = {
            // A scenario that panicked harms no other.
            let _alone = (sharing == Sharing::Alone)
                .then(|| self.gate.write().unwrap_or_else(PoisonError::into_inner));
            let _shared = (sharing == Sharing::Shared)
                .then(|| self.gate.read().unwrap_or_else(PoisonError::into_inner));
            command.output()
        };
        let output = output.map_err(|e| format!("{}: {e}", self.node.display()))?;
        let report = String::from_utf8_lossy(&output.stdout);
        let errors = String::from_utf8_lossy(&output.stderr);
        // Not by println: that would be kept back while all is well.
        let _ = write!(std::io::stderr(), "# {scenario}\n{report}{errors}");
        if !output.status.success() {
            return Err(format!("{scenario}: not every test passed, see above"));
        }
        // A file whose tests were all left out must not pass for tested.
        let ran = report.lines().any(|line| {
            line.strip_prefix("# pass ")
                .and_then(|count| count.parse::<u32>().ok())
                .is_some_and(|count| count > 0)
        });
        if ran {
            Ok(())
        } else {
            Err(format!("{scenario}: no test ran"))
        }
    }

    /// A line for each group of files, in the order in which they are fetched: the most
    /// that they may weigh after gzip, and their names.
    fn weighed(&self) -> String {
        let mut lines = String::new();
        for group in &self.weight.groups {
            let names = group.files.iter().map(|(name, _, _)| name.as_str());
            let names: Vec<&str> = names.collect();
            lines.push_str(&format!("{} {}\n", group.bar, names.join(" ")));
        }
        lines
    }
}

fn scenario_folder() -> PathBuf {
    workspace_folder().join("tests").join("browser")
}

/// The names of all scenario files, sorted.
///
/// # Errors
/// When the folder cannot be read.
pub fn scenario_names() -> std::io::Result<Vec<String>> {
    let mut names = Vec::new();
    for entry in fs::read_dir(scenario_folder())? {
        let name = entry?.file_name().to_string_lossy().into_owned();
        if let Some(name) = name.strip_suffix(".test.mjs") {
            names.push(name.to_owned());
        }
    }
    names.sort();
    Ok(names)
}
