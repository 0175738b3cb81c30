//! What was found, kept for the next question, and the work in hand.

use std::cell::RefCell;

use tinwave_core::design::Design;
use tinwave_core::tolerance::{Yield, YieldSettings};

use super::screw_found::ScrewsFound;
use crate::request::Request;

/// What a yield depends on.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct YieldKey {
    design: Design,
    pub(super) settings: YieldSettings,
}

impl YieldKey {
    pub(super) fn new(design: &Design, settings: YieldSettings) -> Self {
        Self {
            design: nameless(design),
            settings,
        }
    }

    /// Whether anything scatters at all.
    pub(super) const fn scatters(&self) -> bool {
        !self.settings.spreads.is_empty()
    }

    pub(super) const fn design(&self) -> &Design {
        &self.design
    }
}

/// A design without the name, which changes nothing.
pub(super) fn nameless(design: &Design) -> Design {
    let mut design = design.clone();
    design.name.clear();
    design
}

/// The long work in hand.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Work {
    Yield(YieldKey),
    Screws(Design, super::screw_entries::ScrewChoice),
}

#[derive(Default)]
struct Desk {
    latest: Option<Request>,
    drawn: Option<(YieldKey, Yield)>,
    screws: Option<ScrewsFound>,
    work: Option<(u32, Work)>,
    begun: u32,
}

thread_local! {
    static DESK: RefCell<Desk> = RefCell::new(Desk::default());
}

/// The newest question: what a job shows follows it.
pub(super) fn set_latest(request: &Request) {
    DESK.with_borrow_mut(|desk| desk.latest = Some(request.clone()));
}

pub(super) fn latest() -> Option<Request> {
    DESK.with_borrow(|desk| desk.latest.clone())
}

/// The yield so far of just this can and these settings.
pub(super) fn drawn(key: &YieldKey) -> Option<Yield> {
    DESK.with_borrow(|desk| {
        let found = desk.drawn.as_ref().filter(|(known, _)| known == key);
        found.map(|(_, drawn)| drawn.clone())
    })
}

pub(super) fn keep_drawn(key: &YieldKey, drawn: Yield) {
    DESK.with_borrow_mut(|desk| desk.drawn = Some((key.clone(), drawn)));
}

pub(super) fn screws() -> Option<ScrewsFound> {
    DESK.with_borrow(|desk| desk.screws.clone())
}

pub(super) fn keep_screws(found: ScrewsFound) {
    DESK.with_borrow_mut(|desk| desk.screws = Some(found));
}

/// The work in hand, if any is.
pub(super) fn work() -> Option<Work> {
    DESK.with_borrow(|desk| desk.work.as_ref().map(|(_, work)| work.clone()))
}

/// Nothing is in hand any more.
pub(super) fn end_work() {
    DESK.with_borrow_mut(|desk| desk.work = None);
}

/// Marks work as in hand for as long as it lives: a newer job that takes its
/// place drops it.
pub(super) struct InHand(u32);

impl InHand {
    pub(super) fn new(work: Work) -> Self {
        DESK.with_borrow_mut(|desk| {
            desk.begun = desk.begun.wrapping_add(1);
            desk.work = Some((desk.begun, work));
            Self(desk.begun)
        })
    }
}

impl Drop for InHand {
    fn drop(&mut self) {
        DESK.with_borrow_mut(|desk| {
            if desk
                .work
                .as_ref()
                .is_some_and(|(number, _)| *number == self.0)
            {
                desk.work = None;
            }
        });
    }
}
