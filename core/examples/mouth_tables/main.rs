//! Writes `core/src/mouth/table_data.rs` from the exact solution:
//! `cargo run -p tinwave-core --example mouth_tables > core/src/mouth/table_data.rs`.

mod tables;

use std::io::{self, Write};

fn main() -> io::Result<()> {
    let text = tables::text().map_err(|error| io::Error::other(format!("{error:?}")))?;
    io::stdout().write_all(text.as_bytes())
}
