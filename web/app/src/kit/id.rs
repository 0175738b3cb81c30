//! Names of elements, for what refers to them.

use std::sync::atomic::{AtomicUsize, Ordering};

static NEXT: AtomicUsize = AtomicUsize::new(1);

/// A name that no other element of the page has.
#[must_use]
pub fn new_id(kind: &str) -> String {
    format!("{kind}-{}", NEXT.fetch_add(1, Ordering::Relaxed))
}
