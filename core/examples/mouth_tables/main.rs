//! Writes `core/src/mouth/table_data.rs` from the exact solution:
//! `cargo run -p tinwave-core --example mouth_tables > core/src/mouth/table_data.rs`.

mod tables;

use std::io::{self, Write};

fn main() -> io::Result<()> {
    io::stdout().write_all(tables::text().map_err(io::Error::other)?.as_bytes())
}
