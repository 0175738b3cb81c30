//! Jobs that several tests print.
#![allow(dead_code, reason = "each test program uses a part of this")]

use std::path::{Path, PathBuf};

use tinwave_print::{PrintJob, read_job};

/// The jobs of `tests/jobs`.
pub(crate) const JOBS: [&str; 3] = ["orchard-gate", "barn-roof", "beehive-camera"];

/// A folder beside this one.
pub(crate) fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests")
        .join(name)
}

/// The text of a job.
pub(crate) fn job_text(name: &str) -> Result<String, String> {
    let file = folder("jobs").join(name).with_extension("txt");
    std::fs::read_to_string(&file).map_err(|error| format!("{}: {error}", file.display()))
}

/// A job.
pub(crate) fn job(name: &str) -> Result<PrintJob, String> {
    read_job(&job_text(name)?).map_err(|error| error.to_string())
}
