//! `cargo run`: builds the Tinwave page and serves it on this machine.

use std::process::ExitCode;

fn main() -> ExitCode {
    tinwave::run(std::env::args().skip(1))
}
