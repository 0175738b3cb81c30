//! Reads a design file on standard input and writes its report.
//!
//! Exit status 0 with a report, whatever the verdict; 2 with one line on
//! standard error when the design can't be understood.

use std::io::{self, Read, Write};
use std::process::ExitCode;

use tinwave_core::json::{design_from_json, report_json};

fn report() -> Result<String, String> {
    let mut text = String::new();
    io::stdin()
        .read_to_string(&mut text)
        .map_err(|error| format!("standard input: {error}"))?;
    let design = design_from_json(&text).map_err(|error| error.to_string())?;
    report_json(&design).map_err(|error| error.to_string())
}

fn main() -> ExitCode {
    match report() {
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
