//! The page's server, for the browser tests to start and stop.

use std::process::ExitCode;

fn main() -> ExitCode {
    tinwave::run(std::env::args().skip(1))
}
