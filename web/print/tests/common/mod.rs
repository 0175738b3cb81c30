//! Jobs that several tests print.
#![allow(dead_code, reason = "each test program uses a part of this")]

pub(crate) mod jobs;

use std::path::{Path, PathBuf};

use tinwave_print::{PrintJob, draw_sheets};

/// A job by its name.
pub(crate) type Named = (&'static str, fn() -> PrintJob);

/// The jobs of the golden prints.
pub(crate) const JOBS: [Named; 3] = [
    ("orchard-gate", jobs::orchard_gate),
    ("barn-roof", jobs::barn_roof),
    ("beehive-camera", jobs::beehive_camera),
];

/// A folder beside this one.
pub(crate) fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests")
        .join(name)
}

/// The sheets of a job as SVG, one after the other.
pub(crate) fn svg_sheets(job: &PrintJob) -> Result<String, String> {
    let drawn = draw_sheets(job).map_err(|error| error.to_string())?;
    Ok(drawn.sheets.into_iter().map(|sheet| sheet.svg).collect())
}
