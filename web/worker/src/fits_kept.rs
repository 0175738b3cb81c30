//! Trials that were matched, kept for the next question.

use std::cell::RefCell;

use tinwave_core::design::Design;
use tinwave_protocol::fits::Matched;

/// So many are kept: the sizes of several bands and wires.
const MOST_KEPT: usize = 400;

thread_local! {
    /// The latest last.
    static KEPT: RefCell<Vec<(Design, Matched)>> = const { RefCell::new(Vec::new()) };
}

/// What came out of a trial, if it was made.
pub(crate) fn known(trial: &Design) -> Option<Matched> {
    KEPT.with_borrow(|kept| {
        let found = kept.iter().find(|(known, _)| known == trial);
        found.map(|(_, matched)| matched.clone())
    })
}

/// Keeps what came out of a trial.
pub(crate) fn keep(trial: Design, matched: Matched) {
    KEPT.with_borrow_mut(|kept| {
        kept.push((trial, matched));
        let excess = kept.len().saturating_sub(MOST_KEPT);
        kept.drain(..excess);
    });
}
