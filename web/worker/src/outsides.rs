//! The solved outsides of cans, kept for the next question.

use std::cell::RefCell;
use std::sync::Arc;

use tinwave_core::design::Design;
use tinwave_core::outside::{OutsideSpectrum, OutsideSteps};
use tinwave_protocol::outside::OutsideKey;

/// So many are kept.
const MOST_KEPT: usize = 16;

thread_local! {
    static KEPT: RefCell<Vec<(OutsideKey, Arc<OutsideSpectrum>)>> = const { RefCell::new(Vec::new()) };
}

/// The outside of a design over its sweep, if it is kept.
#[must_use]
pub fn kept_outside(design: &Design) -> Option<Arc<OutsideSpectrum>> {
    let key = OutsideKey::of(design);
    KEPT.with_borrow(|kept| {
        let found = kept.iter().find(|(known, _)| *known == key);
        found.map(|(_, outside)| Arc::clone(outside))
    })
}

/// Keeps an outside that was solved step by step.
pub fn keep_outside(design: &Design, solved: OutsideSpectrum) -> Arc<OutsideSpectrum> {
    let solved = Arc::new(solved);
    let key = OutsideKey::of(design);
    KEPT.with_borrow_mut(|kept| {
        kept.retain(|(known, _)| *known != key);
        kept.insert(0, (key, Arc::clone(&solved)));
        kept.truncate(MOST_KEPT);
    });
    solved
}

/// The outside of a design over its sweep: kept, or solved now (25 to 130 ms in a
/// browser). `None` where there is none: an absorbing mouth, or a can too large.
#[must_use]
pub fn outside_of(design: &Design) -> Option<Arc<OutsideSpectrum>> {
    if let Some(known) = kept_outside(design) {
        return Some(known);
    }
    let mut steps = OutsideSteps::of_design(design).ok()??;
    while steps.step() {}
    Some(keep_outside(design, steps.finish()?))
}
