//! Runs other programs.

use crate::failure::{Failure, Result};
use std::process::{Command, Output, Stdio};
use std::time::{Duration, Instant};

/// The command line as a person would type it.
fn spelled(command: &Command) -> String {
    let mut words = vec![command.get_program().to_string_lossy().into_owned()];
    words.extend(command.get_args().map(|a| a.to_string_lossy().into_owned()));
    words.join(" ")
}

fn not_started(command: &Command, error: &std::io::Error) -> Failure {
    Failure::Program {
        command: spelled(command),
        said: error.to_string(),
    }
}

/// Runs a program whose own messages the person should see.
pub(crate) fn run_shown(command: &mut Command) -> Result<()> {
    let status = command
        .stdin(Stdio::null())
        .status()
        .map_err(|e| not_started(command, &e))?;
    if status.success() {
        return Ok(());
    }
    Err(Failure::Program {
        command: spelled(command),
        said: status.to_string(),
    })
}

/// Runs a program quietly; gives its standard output, or all it said if it failed.
pub(crate) fn run_quiet(command: &mut Command) -> Result<String> {
    let Output {
        status,
        stdout,
        stderr,
    } = command
        .stdin(Stdio::null())
        .output()
        .map_err(|e| not_started(command, &e))?;
    let stdout = String::from_utf8_lossy(&stdout).into_owned();
    if status.success() {
        return Ok(stdout);
    }
    Err(Failure::Program {
        command: spelled(command),
        said: format!("{status}\n{stdout}{}", String::from_utf8_lossy(&stderr)),
    })
}

/// Runs a program quietly and ends it after a time limit.
pub(crate) fn succeeds_within(command: &mut Command, limit: Duration) -> bool {
    let started = command
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn();
    let Ok(mut child) = started else { return false };
    let begun = Instant::now();
    loop {
        match child.try_wait() {
            Ok(Some(status)) => return status.success(),
            Ok(None) if begun.elapsed() < limit => {
                std::thread::sleep(Duration::from_millis(50));
            }
            _ => {
                // It may have ended meanwhile; either way it is gone.
                let _ = child.kill();
                let _ = child.wait();
                return false;
            }
        }
    }
}
