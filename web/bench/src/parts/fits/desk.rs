//! What was matched, kept for the next question, and the work in hand.

use std::cell::RefCell;

use tinwave_core::best_cut::BestCut;
use tinwave_core::design::Design;

use crate::request::Request;

/// So many are kept: the sizes of several bands and wires.
const MOST_KEPT: usize = 400;

#[derive(Default)]
struct Desk {
    latest: Option<Request>,
    /// The latest last.
    matched: Vec<(Design, Option<BestCut>)>,
    /// The trial designs of the job in hand.
    in_hand: Option<Vec<Design>>,
    /// The trial designs of the job that the maker stopped.
    stopped: Option<Vec<Design>>,
}

thread_local! {
    static DESK: RefCell<Desk> = RefCell::new(Desk::default());
}

/// The best cut of a trial design: `None` if it was not searched for, `Some(None)` if
/// there is none.
pub(super) fn known(trial: &Design) -> Option<Option<BestCut>> {
    DESK.with_borrow(|desk| {
        let found = desk.matched.iter().find(|(known, _)| known == trial);
        found.map(|(_, cut)| *cut)
    })
}

pub(super) fn keep(trial: Design, cut: Option<BestCut>) {
    DESK.with_borrow_mut(|desk| {
        desk.matched.push((trial, cut));
        let excess = desk.matched.len().saturating_sub(MOST_KEPT);
        desk.matched.drain(..excess);
    });
}

/// While it lives, a job for these sizes is in hand.
pub(super) struct InHand;

impl InHand {
    pub(super) fn new(trials: Vec<Design>) -> Self {
        DESK.with_borrow_mut(|desk| desk.in_hand = Some(trials));
        Self
    }
}

impl Drop for InHand {
    fn drop(&mut self) {
        DESK.with_borrow_mut(|desk| desk.in_hand = None);
    }
}

/// Whether it is these sizes that are being matched; `None` if none are.
pub(super) fn is_in_hand(trials: &[Design]) -> Option<bool> {
    DESK.with_borrow(|desk| desk.in_hand.as_ref().map(|known| known == trials))
}

/// The newest question: what a job shows follows it.
pub(super) fn set_latest(request: &Request) {
    DESK.with_borrow_mut(|desk| desk.latest = Some(request.clone()));
}

pub(super) fn latest() -> Option<Request> {
    DESK.with_borrow(|desk| desk.latest.clone())
}

/// The maker wants these sizes no further.
pub(super) fn stop(trials: &[Design]) {
    DESK.with_borrow_mut(|desk| desk.stopped = Some(trials.to_vec()));
}

pub(super) fn is_stopped(trials: &[Design]) -> bool {
    DESK.with_borrow(|desk| desk.stopped.as_deref() == Some(trials))
}

pub(super) fn forget_stop() {
    DESK.with_borrow_mut(|desk| desk.stopped = None);
}
