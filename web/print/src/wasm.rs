//! The door for the browser.

use wasm_bindgen::prelude::wasm_bindgen;

use crate::job_text::read_job;
use crate::print::{Kind, print};

/// Prints a job that is given as text (see [`crate::job_text`]). Kinds: `pdf`,
/// `svg-pages`, `svg`, `dxf`, `facts`.
///
/// # Errors
/// The message of [`crate::PrintError`]: one line, or `needs-images` and then
/// one line for each text to be drawn.
#[wasm_bindgen(js_name = print)]
pub fn print_text(job: &str, kind: &str) -> Result<Vec<u8>, String> {
    let kind = Kind::from_key(kind).ok_or("unknown kind of file")?;
    let job = read_job(job).map_err(|error| error.message())?;
    let output = print(&job, kind).map_err(|error| error.message())?;
    Ok(output.bytes)
}
