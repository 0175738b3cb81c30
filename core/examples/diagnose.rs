//! Reads a design file and a Touchstone file and writes the diagnosis in JSON.
//!
//! `diagnose design.json measured.s1p`. Exit status 0 with a diagnosis; 2 with one line
//! on standard error when one of the files can't be understood.

use std::io::{self, Write};
use std::process::ExitCode;

use tinwave_core::diagnosis::{DiagnosisSettings, Measurement};
use tinwave_core::json::{design_from_json, diagnosis_json};
use tinwave_core::touchstone::{Ports, read_touchstone};

fn read(path: &str) -> Result<String, String> {
    std::fs::read_to_string(path).map_err(|error| format!("{path}: {error}"))
}

fn diagnosis() -> Result<String, String> {
    let paths: Vec<String> = std::env::args().skip(1).collect();
    let [design, measured] = paths.as_slice() else {
        return Err("usage: diagnose design.json measured.s1p".into());
    };
    let design = design_from_json(&read(design)?).map_err(|error| format!("{design}: {error}"))?;
    let name = measured.to_ascii_lowercase();
    let ports = [(".s1p", Ports::One), (".s2p", Ports::Two)]
        .into_iter()
        .find_map(|(end, ports)| name.ends_with(end).then_some(ports));
    let network =
        read_touchstone(&read(measured)?, ports).map_err(|error| format!("{measured}: {error}"))?;
    let reference = f64::from(design.probe.reference_milliohm) / 1e3;
    let measurement = Measurement::Reflection(network.reflections(reference));
    diagnosis_json(&design, &measurement, DiagnosisSettings::default())
        .map_err(|error| format!("{measured}: {error:?}"))
}

fn main() -> ExitCode {
    match diagnosis() {
        Ok(text) => match writeln!(io::stdout(), "{text}") {
            Ok(()) => ExitCode::SUCCESS,
            Err(_) => ExitCode::FAILURE,
        },
        Err(line) => {
            // A broken standard error leaves nothing to say it to.
            let _ = writeln!(io::stderr(), "{line}");
            ExitCode::from(2)
        }
    }
}
