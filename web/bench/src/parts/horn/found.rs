//! What the long searches have found, kept for the next question, and which of them
//! is at work.

use std::cell::RefCell;

use tinwave_core::design::Design;

use super::can_key::CanKey;
use super::funnel_size::{Funnel, Limits};
use super::rim_search::RimTable;
use crate::request::Request;

/// What the search for a funnel depends on.
pub(super) type FunnelKey = (CanKey, Limits);

/// What a search for a funnel has found so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct FunnelFound {
    /// The best within the limits once known; within: none that fits and can be
    /// solved.
    pub(super) best: Option<Option<Funnel>>,
    /// Gain of the bare can, dBi.
    pub(super) bare_dbi: Option<f64>,
    /// Funnels of the charts, the first so many of them solved.
    pub(super) by_length: Vec<Funnel>,
    /// The same against the mouth.
    pub(super) by_mouth: Vec<Funnel>,
}

/// A search at work.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Work {
    /// For the best funnel.
    Funnel(FunnelKey),
    /// For the best ring and cup.
    Rims(CanKey),
    /// For the field of the design itself.
    Beams(Design),
}

/// The long searches, by the name of their jobs.
pub(super) const SEARCHES: [&str; 2] = ["funnel", "rims"];

/// So many are kept of each.
const MOST_KEPT: usize = 8;

#[derive(Default)]
struct Shelf {
    funnels: Vec<(FunnelKey, FunnelFound)>,
    rims: Vec<(CanKey, RimTable)>,
    work: Option<Work>,
    latest: Option<Request>,
    next: Option<&'static str>,
}

thread_local! {
    static SHELF: RefCell<Shelf> = RefCell::new(Shelf::default());
}

fn find<K: PartialEq, V: Clone>(kept: &[(K, V)], key: &K) -> Option<V> {
    let found = kept.iter().find(|(known, _)| known == key);
    found.map(|(_, value)| value.clone())
}

fn keep<K: PartialEq, V>(kept: &mut Vec<(K, V)>, key: K, value: V) {
    kept.retain(|(known, _)| *known != key);
    kept.insert(0, (key, value));
    kept.truncate(MOST_KEPT);
}

pub(super) fn funnels(key: &FunnelKey) -> Option<FunnelFound> {
    SHELF.with_borrow(|shelf| find(&shelf.funnels, key))
}

pub(super) fn keep_funnels(key: FunnelKey, found: FunnelFound) {
    SHELF.with_borrow_mut(|shelf| keep(&mut shelf.funnels, key, found));
}

pub(super) fn rims(key: &CanKey) -> Option<RimTable> {
    SHELF.with_borrow(|shelf| find(&shelf.rims, key))
}

pub(super) fn keep_rims(key: CanKey, table: RimTable) {
    SHELF.with_borrow_mut(|shelf| keep(&mut shelf.rims, key, table));
}

/// The search that was begun last and has neither ended nor been stopped.
pub(super) fn work() -> Option<Work> {
    SHELF.with_borrow(|shelf| shelf.work.clone())
}

pub(super) fn set_work(work: Option<Work>) {
    SHELF.with_borrow_mut(|shelf| shelf.work = work);
}

/// The newest question: what a search finds is shown for it.
pub(super) fn latest() -> Option<Request> {
    SHELF.with_borrow(|shelf| shelf.latest.clone())
}

pub(super) fn set_latest(request: &Request) {
    SHELF.with_borrow_mut(|shelf| shelf.latest = Some(request.clone()));
}

/// The search that waits for the design's own field; taken out.
pub(super) fn take_next() -> Option<&'static str> {
    SHELF.with_borrow_mut(|shelf| shelf.next.take())
}

pub(super) fn set_next(next: Option<&'static str>) {
    SHELF.with_borrow_mut(|shelf| shelf.next = next);
}
