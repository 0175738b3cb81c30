//! The door for the browser.

use wasm_bindgen::prelude::wasm_bindgen;

use crate::job_text::read_job;
use crate::print::{Kind, print};
use crate::print_error::PrintError;

/// Prints a job that is given as text (see [`crate::job_text`]). Kinds: `pdf`,
/// `svg-pages`, `svg`, `dxf`, `facts`.
///
/// The first byte that comes back is 0, and the file follows; or it is 1, and
/// the message of [`crate::PrintError`] follows in UTF-8: one line, or
/// `needs-images` and then one line for each text to be drawn.
#[wasm_bindgen(js_name = print)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn print_text(job: &str, kind: &str) -> Vec<u8> {
    let (first, rest) = match printed(job, kind) {
        Ok(file) => (0, file),
        Err(error) => (1, error.message().into_bytes()),
    };
    let mut bytes = vec![first];
    bytes.extend_from_slice(&rest);
    bytes
}

fn printed(job: &str, kind: &str) -> Result<Vec<u8>, PrintError> {
    let kind = Kind::from_key(kind).ok_or(PrintError::UnknownKind)?;
    Ok(print(&read_job(job)?, kind)?.bytes)
}
