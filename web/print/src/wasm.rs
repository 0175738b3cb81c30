//! The door for the browser.

use wasm_bindgen::prelude::wasm_bindgen;

use crate::cut_text::cut_at;
use crate::job_text::read_job;
use crate::print::{Kind, print};
use crate::print_error::PrintError;

/// Gives memory out: a third of the size of the usual one.
#[global_allocator]
static MEMORY: talc::wasm::WasmDynamicTalc = talc::wasm::new_wasm_dynamic_allocator();

/// Prints a job that is given as text in UTF-8: first a line with the kind of
/// file (`pdf`, `svg-pages`, `svg`, `dxf`, `facts`), then the job (see
/// [`crate::job_text`]).
///
/// The first byte that comes back is 0, and the file follows; or it is 1, and
/// the message of [`PrintError`] follows in UTF-8: one line, or `needs-images`
/// and then one line for each text to be drawn.
#[wasm_bindgen(js_name = print, skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn print_text(text: &[u8]) -> Vec<u8> {
    let (first, rest) = match printed(text) {
        Ok(file) => (0, file),
        Err(error) => (1, error.message().into_bytes()),
    };
    let mut bytes = vec![first];
    bytes.extend_from_slice(&rest);
    bytes
}

fn printed(text: &[u8]) -> Result<Vec<u8>, PrintError> {
    let text = core::str::from_utf8(text).unwrap_or_default();
    let (kind, job) = cut_at(text, b'\n').ok_or(PrintError::UnknownKind)?;
    let kind = Kind::from_key(kind).ok_or(PrintError::UnknownKind)?;
    Ok(print(&read_job(job)?, kind)?.bytes)
}
