//! What the page shows, and the one way to change it.

use std::sync::Arc;

use leptos::prelude::*;
use tinwave_core::analysis::{Analyser, Analysis};
use tinwave_core::design_error::DesignError;

use super::browser::{self, Timer};
use crate::entry::LengthUnit;
use crate::history::{Change, History};
use crate::link;
use crate::store::{self, Kept, Theme};
use crate::workpiece::Workpiece;

/// How the maker states the can's diameter.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum DiameterBy {
    Inside,
    Outside,
    Circumference,
}

/// A message above everything, with text to copy if there is some.
#[derive(Clone, PartialEq)]
pub(super) struct Notice {
    pub(super) sentence: String,
    pub(super) keep: Option<String>,
}

/// The page's state. Every part is a handle, so it is copied freely.
#[derive(Clone, Copy)]
pub(super) struct Page {
    /// The last good work: what every picture and number is about.
    pub(super) work: RwSignal<Workpiece>,
    /// Its analysis; `None` where nothing could be computed.
    pub(super) analysis: RwSignal<Option<Arc<Analysis>>>,
    pub(super) unit: RwSignal<LengthUnit>,
    pub(super) theme: RwSignal<Theme>,
    pub(super) diameter_by: RwSignal<DiameterBy>,
    /// Room for two columns.
    pub(super) wide: RwSignal<bool>,
    /// Entries whose text can't be used at present, by id.
    pub(super) wrong: RwSignal<Vec<&'static str>>,
    /// Counts up when every entry must show the work again, whatever it holds.
    pub(super) refill: RwSignal<u32>,
    pub(super) can_undo: RwSignal<bool>,
    pub(super) can_redo: RwSignal<bool>,
    pub(super) notice: RwSignal<Option<Notice>>,
    /// What the maker asked to have kept on the device.
    pub(super) kept: RwSignal<Kept>,
    inner: StoredValue<Inner, LocalStorage>,
    write_timer: Timer,
    commit_timer: Timer,
}

struct Inner {
    history: History,
    analyser: Analyser,
    /// Parts of the opened link that this version doesn't know; they go out again.
    unknown: Vec<(String, String)>,
    /// Position in `history` that the browser's present entry stands for.
    written_position: Option<usize>,
    written: String,
    last_write_ms: f64,
    /// The design of an earlier visit that a link has covered; put among the
    /// saved ones before its place is taken.
    covered: Option<String>,
}

/// The browser's history may be written this often (WebKit: 100 in 30 s).
const WRITE_EVERY_MS: f64 = 400.0;
/// A run of steps (button, arrow key) counts as one edit until this pause.
const STEP_PAUSE_MS: u32 = 800;

/// What a text of the page is made from.
pub(super) struct Now<'a> {
    pub(super) work: &'a Workpiece,
    pub(super) analysis: Option<&'a Analysis>,
    pub(super) unit: LengthUnit,
}

/// A text that follows the work.
pub(super) type Text = fn(&Now<'_>) -> String;

impl Page {
    pub(super) fn new(work: Workpiece, kept: Kept) -> Self {
        let page = Self {
            work: RwSignal::new(work.clone()),
            analysis: RwSignal::new(None),
            unit: RwSignal::new(kept.unit),
            theme: RwSignal::new(kept.theme),
            diameter_by: RwSignal::new(DiameterBy::Inside),
            wide: browser::media("(min-width: 900px)"),
            wrong: RwSignal::new(Vec::new()),
            refill: RwSignal::new(0),
            can_undo: RwSignal::new(false),
            can_redo: RwSignal::new(false),
            notice: RwSignal::new(None),
            kept: RwSignal::new(kept),
            inner: StoredValue::new_local(Inner {
                history: History::new(work.clone()),
                analyser: Analyser::new(),
                unknown: Vec::new(),
                written_position: None,
                written: String::new(),
                last_write_ms: f64::NEG_INFINITY,
                covered: None,
            }),
            write_timer: Timer::new(),
            commit_timer: Timer::new(),
        };
        page.show(work);
        page
    }

    /// A text that follows the work, the analysis and the unit.
    pub(super) fn text(self, make: Text) -> Signal<String> {
        Signal::derive(move || self.now(make))
    }

    fn now(self, make: Text) -> String {
        let unit = self.unit.get();
        self.work.with(|work| {
            self.analysis.with(|analysis| {
                make(&Now {
                    work,
                    analysis: analysis.as_deref(),
                    unit,
                })
            })
        })
    }

    /// Whether an entry is bad, so that the pictures are those of the last good work.
    pub(super) fn stale(self) -> Signal<bool> {
        Signal::derive(move || self.wrong.with(|wrong| !wrong.is_empty()))
    }

    /// Marks an entry's text as usable or not.
    pub(super) fn mark(self, id: &'static str, is_wrong: bool) {
        let was_wrong = self.wrong.with_untracked(|wrong| wrong.contains(&id));
        if was_wrong != is_wrong {
            self.wrong.update(|wrong| {
                wrong.retain(|other| *other != id);
                if is_wrong {
                    wrong.push(id);
                }
            });
        }
    }

    /// Computes and shows; everything that follows repaints in the same frame.
    fn show(self, work: Workpiece) {
        let analysis = self
            .inner
            .try_update_value(|inner| inner.analyser.analyse(&work.design).ok())
            .flatten();
        self.analysis.set(analysis.map(Arc::new));
        self.work.set(work);
        self.follow_history();
    }

    fn follow_history(self) {
        let (undo, redo) = self
            .inner
            .with_value(|inner| (inner.history.can_undo(), inner.history.can_redo()));
        self.can_undo.set(undo);
        self.can_redo.set(redo);
    }

    /// Changes the work. The link follows within [`WRITE_EVERY_MS`]; the edit
    /// stays open (the next of its kind joins it) until [`Page::commit`].
    ///
    /// # Errors
    /// The number that is out of range; then nothing changes.
    pub(super) fn edit(
        self,
        change: Change,
        alter: &dyn Fn(&mut Workpiece) -> Result<(), DesignError>,
    ) -> Result<(), DesignError> {
        let mut work = self.work.get_untracked();
        alter(&mut work)?;
        work.design.check()?;
        self.put(work, change);
        Ok(())
    }

    /// Shows other work as one edit, left open.
    pub(super) fn put(self, work: Workpiece, change: Change) {
        if self.work.with_untracked(|old| *old == work) {
            return;
        }
        self.inner.update_value(|inner| {
            inner.history.edit(work.clone(), change);
        });
        self.show(work);
        self.write_soon();
    }

    /// Shows other work as one whole edit and fills every entry from it.
    pub(super) fn replace(self, work: Workpiece, change: Change) {
        self.commit();
        self.put(work, change);
        self.refill.update(|count| *count += 1);
        self.commit();
    }

    /// Closes the open edit and brings the link and the device's memory up to date.
    pub(super) fn commit(self) {
        self.commit_timer.clear();
        self.inner.update_value(|inner| inner.history.commit());
        self.write_now();
    }

    /// Closes the edit after a pause: for buttons and keys that come in runs.
    pub(super) fn commit_soon(self) {
        self.commit_timer
            .set(STEP_PAUSE_MS, Box::new(move || self.commit()));
    }

    pub(super) fn undo(self) {
        self.walk(|history| history.undo().cloned());
    }

    pub(super) fn redo(self) {
        self.walk(|history| history.redo().cloned());
    }

    fn walk(self, step: fn(&mut History) -> Option<Workpiece>) {
        self.commit();
        let work = self
            .inner
            .try_update_value(|inner| step(&mut inner.history))
            .flatten();
        if let Some(work) = work {
            self.show(work);
            self.refill.update(|count| *count += 1);
            self.write_now();
        }
    }

    /// The fragment of the link to the present work.
    pub(super) fn fragment(self) -> String {
        let unknown = self.inner.with_value(|inner| inner.unknown.clone());
        self.work
            .with_untracked(|work| link::encode_keeping(work, &unknown))
    }

    /// The whole link to the present work.
    pub(super) fn link(self) -> String {
        [browser::address(), "#".to_owned(), self.fragment()].concat()
    }

    fn write_soon(self) {
        if self.write_timer.waits() {
            return;
        }
        let waited = browser::now_ms() - self.inner.with_value(|inner| inner.last_write_ms);
        let wait = (WRITE_EVERY_MS - waited).clamp(0.0, WRITE_EVERY_MS);
        self.write_timer
            .set(wait as u32, Box::new(move || self.write_now()));
    }

    /// Writes the link into the address and the design into the device's
    /// memory, if they are behind. A new place in our history is a new entry of
    /// the browser's; the entry of an edit that is still open is overwritten.
    pub(super) fn write_now(self) {
        self.write_timer.clear();
        let fragment = self.fragment();
        let written = self.inner.try_update_value(|inner| {
            let position = inner.history.position();
            if inner.written == fragment && inner.written_position == Some(position) {
                return false;
            }
            let new_entry = inner.written_position != Some(position);
            if browser::write_fragment(&fragment, position, new_entry) {
                inner.written_position = Some(position);
                inner.written.clone_from(&fragment);
            }
            inner.last_write_ms = browser::now_ms();
            true
        });
        if written == Some(true) {
            self.keep_design(fragment);
        }
    }

    fn keep_design(self, fragment: String) {
        let covered = self
            .inner
            .try_update_value(|inner| inner.covered.take())
            .flatten();
        self.kept.update(|kept| {
            if let Some(earlier) = covered
                && earlier != fragment
            {
                kept.save("From before the opened link", &earlier);
            }
            kept.link = Some(fragment);
        });
        self.keep();
    }

    /// Writes what is kept to the device's memory.
    pub(super) fn keep(self) {
        self.kept
            .with_untracked(|kept| browser::store(store::KEY, &store::write(kept)));
    }

    /// The address stands for the present work, whatever its spelling: it is
    /// left alone until the next edit.
    pub(super) fn address_stands(self, unknown: Vec<(String, String)>) {
        self.inner.update_value(|inner| inner.unknown = unknown);
        let fragment = self.fragment();
        self.inner.update_value(|inner| {
            inner.written = fragment;
            inner.written_position = Some(inner.history.position());
        });
    }

    /// Puts the present work into an address that holds none.
    pub(super) fn put_in_address(self) {
        browser::write_fragment(&self.fragment(), 0, false);
    }

    /// Remembers the earlier visit's design that an opened link has covered.
    pub(super) fn remember_covered(self, link: Option<String>) {
        self.inner.update_value(|inner| inner.covered = link);
    }

    /// Follows the browser's history: the work of its present entry, at the
    /// place the entry remembers if that is the same work, else as a new edit.
    pub(super) fn follow_browser(self, work: Workpiece, position: Option<usize>) {
        self.commit_timer.clear();
        self.write_timer.clear();
        self.inner.update_value(|inner| {
            inner.history.commit();
            if *inner.history.current() == work {
                return;
            }
            let back = inner.history.position();
            let found = position
                .and_then(|place| inner.history.go_to(place))
                .is_some_and(|there| *there == work);
            if !found {
                inner.history.go_to(back);
                inner.history.edit(work.clone(), Change::Opened);
                inner.history.commit();
            }
        });
        self.show(work);
        self.refill.update(|count| *count += 1);
    }
}
