//! Names of elements, for what refers to them.

use std::sync::atomic::{AtomicUsize, Ordering};

/// Parts of the first paint stay in the page for a while: the program's names begin
/// above theirs.
const FIRST: usize = if cfg!(target_arch = "wasm32") {
    1_000
} else {
    1
};

static NEXT: AtomicUsize = AtomicUsize::new(FIRST);

/// A name that no other element of the page has.
#[must_use]
pub fn new_id(kind: &str) -> String {
    format!("{kind}-{}", NEXT.fetch_add(1, Ordering::Relaxed))
}
