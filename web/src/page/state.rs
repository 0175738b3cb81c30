//! The page's handle: one model, the signals that tell of its changes, and the
//! address and memory that follow it.

use std::sync::{PoisonError, RwLock, RwLockReadGuard, RwLockWriteGuard};

use leptos::prelude::*;

use super::browser::{self, Timer};
use super::model::Model;
use crate::history::{Change, History};
use crate::store;
use crate::workpiece::Workpiece;

/// The page's state. A handle, copied freely.
#[derive(Clone, Copy)]
pub(super) struct Page {
    /// Lives as long as the page. Never locked across a call that locks it too.
    model: &'static RwLock<Model>,
    /// Counts every change; what is written in the page follows it.
    pulse: RwSignal<u32>,
    /// Counts changes of the work or the unit; the pictures follow it.
    edition: RwSignal<u32>,
    /// Counts changes of the curve that stands behind the present one.
    ghost: RwSignal<u32>,
    address: &'static RwLock<Address>,
    write_timer: Timer,
    commit_timer: Timer,
}

/// What the address bar holds.
struct Address {
    fragment: String,
    /// Position in our history that the browser's present entry stands for.
    position: usize,
    written_ms: f64,
}

/// The browser's history may be written this often (WebKit: 100 in 30 s).
const WRITE_EVERY_MS: f64 = 400.0;
/// A run of steps (button, arrow key) counts as one edit until this pause.
const STEP_PAUSE_MS: u32 = 800;

impl Page {
    pub(super) fn new(model: Model) -> Self {
        let page = Self {
            model: Box::leak(Box::new(RwLock::new(model))),
            pulse: RwSignal::new(0),
            edition: RwSignal::new(0),
            ghost: RwSignal::new(0),
            address: Box::leak(Box::new(RwLock::new(Address {
                fragment: String::new(),
                position: 0,
                written_ms: f64::NEG_INFINITY,
            }))),
            write_timer: Timer::new(),
            commit_timer: Timer::new(),
        };
        page.address_stands();
        page
    }

    #[inline(never)]
    fn read(self) -> RwLockReadGuard<'static, Model> {
        self.model.read().unwrap_or_else(PoisonError::into_inner)
    }

    #[inline(never)]
    fn write(self) -> RwLockWriteGuard<'static, Model> {
        self.model.write().unwrap_or_else(PoisonError::into_inner)
    }

    fn address(self) -> RwLockWriteGuard<'static, Address> {
        self.address.write().unwrap_or_else(PoisonError::into_inner)
    }

    /// Looks at the model.
    pub(super) fn look<T>(self, look: impl FnOnce(&Model) -> T) -> T {
        look(&self.read())
    }

    /// Follows every change, within an effect.
    pub(super) fn track(self) {
        self.pulse.track();
    }

    /// Follows changes of the work or the unit, within an effect or a signal.
    pub(super) fn track_edition(self) {
        self.edition.track();
    }

    /// Follows changes of the curve behind the present one.
    pub(super) fn track_ghost(self) {
        self.ghost.track();
    }

    pub(super) fn tell_ghost(self) {
        self.ghost.update(|count| *count = count.wrapping_add(1));
    }

    /// Changes what is not the work.
    #[inline(never)]
    pub(super) fn set(self, change: &dyn Fn(&mut Model)) {
        change(&mut self.write());
        self.tell();
    }

    /// Changes what is not the work and leaves the telling for later.
    #[inline(never)]
    pub(super) fn change(self, change: &dyn Fn(&mut Model)) {
        change(&mut self.write());
    }

    #[inline(never)]
    pub(super) fn tell(self) {
        self.pulse.update(|count| *count = count.wrapping_add(1));
    }

    /// The work or the unit changed: everything repaints in the same frame.
    #[inline(never)]
    pub(super) fn tell_edition(self) {
        self.look(|model| browser::stand(&model.fragment(), model.unit));
        self.edition.update(|count| *count = count.wrapping_add(1));
        self.tell();
    }

    /// Shows other work as an edit that stays open; the link follows within
    /// [`WRITE_EVERY_MS`].
    #[inline(never)]
    pub(super) fn put(self, work: &Workpiece, change: Change) {
        self.write().put(work.clone(), change);
        self.tell_edition();
        self.write_soon();
    }

    /// Shows other work as one whole edit.
    #[inline(never)]
    pub(super) fn replace(self, work: &Workpiece, change: Change) {
        self.commit();
        self.write().replace(work.clone(), change);
        self.tell_edition();
        self.commit();
    }

    /// Shows a changed copy of the work as one whole edit.
    #[inline(never)]
    pub(super) fn alter(self, change: Change, alter: &dyn Fn(&mut Workpiece)) {
        let mut work = self.look(|model| model.work.clone());
        alter(&mut work);
        if work.design.check().is_ok() {
            self.replace(&work, change);
        }
    }

    /// Closes the open edit and brings the link and the device's memory up to date.
    #[inline(never)]
    pub(super) fn commit(self) {
        self.commit_timer.clear();
        self.write().history.commit();
        self.write_now();
    }

    /// Closes the edit after a pause: for buttons and keys that come in runs.
    pub(super) fn commit_soon(self) {
        self.commit_timer
            .set(STEP_PAUSE_MS, Box::new(move || self.commit()));
    }

    /// One step back or forth in the history.
    #[inline(never)]
    pub(super) fn walk(self, step: fn(&mut History) -> Option<&Workpiece>) {
        self.commit();
        self.write().walk(step);
        self.tell_edition();
        self.write_now();
    }

    /// The work of the browser's present entry.
    pub(super) fn follow_browser(self, work: &Workpiece, unknown: &[(String, String)]) {
        self.commit_timer.clear();
        self.write_timer.clear();
        let position = browser::history_position();
        {
            let mut model = self.write();
            model.follow_browser(work.clone(), position);
            model.unknown = unknown.to_vec();
        }
        self.address_stands();
        self.tell_edition();
    }

    /// The whole link to the present work.
    pub(super) fn link(self) -> String {
        [&browser::address(), "#", &self.look(Model::fragment)].concat()
    }

    fn write_soon(self) {
        if self.write_timer.waits() {
            return;
        }
        let waited = browser::now_ms() - self.address().written_ms;
        let wait = (WRITE_EVERY_MS - waited).clamp(0.0, WRITE_EVERY_MS);
        self.write_timer
            .set(wait as u32, Box::new(move || self.write_now()));
    }

    /// Writes the link into the address and the design into the device's
    /// memory, if they are behind. A new place in our history is a new entry of
    /// the browser's; the entry of an edit that is still open is overwritten.
    fn write_now(self) {
        self.write_timer.clear();
        let (fragment, position) = self.look(|model| (model.fragment(), model.history.position()));
        {
            let mut address = self.address();
            if address.fragment == fragment && address.position == position {
                return;
            }
            browser::write_fragment(&fragment, position, position != address.position);
            address.fragment.clone_from(&fragment);
            address.position = position;
            address.written_ms = browser::now_ms();
        }
        self.write().keep_design(fragment);
        self.keep();
    }

    /// Writes what is kept to the device's memory.
    pub(super) fn keep(self) {
        let text = self.look(|model| store::write(&model.kept));
        browser::store(store::KEY, &text);
    }

    /// The address stands for the present work, whatever its spelling: it is
    /// left alone until the next edit.
    fn address_stands(self) {
        let (fragment, position) = self.look(|model| (model.fragment(), model.history.position()));
        let mut address = self.address();
        address.fragment = fragment;
        address.position = position;
    }
}
