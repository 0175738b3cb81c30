//! The page's half of the full-wave solution: asks the worker for the outside of
//! the present can, and shows what it has found.
//!
//! The outside depends on can, mouth and band alone: a moved probe needs no new
//! one.

use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Arc;

use leptos::prelude::window;
use tinwave_core::design::{Band, Design, Mouth, Sweep};
use tinwave_core::outside::{Outline, OutsideSpectrum};
use tinwave_core::si::SiDesign;

use super::bench_worker::{BenchWorker, Heard, Kind};
use super::browser::{self, Timer};
use super::search::Search;
use super::state::Page;
use crate::link;
use crate::pictures::follow;

/// A solution is asked for when the can has rested this long.
const REST_MS: u32 = 250;
/// So many solutions are kept: undo and comparison find them again.
const MOST_KEPT: usize = 12;

/// What the outside of a can depends on.
#[derive(Clone, PartialEq, Eq)]
pub(super) struct OutsideKey {
    mouth: Mouth,
    inside_diameter_um: u32,
    open_length_um: u32,
    band: Band,
    sweep: Sweep,
}

impl OutsideKey {
    fn new(design: &Design) -> Self {
        Self {
            mouth: design.mouth,
            inside_diameter_um: design.can.inside_diameter_um,
            open_length_um: design.can.open_length_um,
            band: design.band,
            sweep: design.effective_sweep(),
        }
    }
}

/// The solutions at hand, the latest first.
#[derive(Default)]
pub(super) struct Outsides(Vec<(OutsideKey, Arc<OutsideSpectrum>)>);

impl Outsides {
    /// The one of a design.
    pub(super) fn of(&self, design: &Design) -> Option<&Arc<OutsideSpectrum>> {
        let key = OutsideKey::new(design);
        let found = self.0.iter().find(|(known, _)| *known == key);
        found.map(|(_, outside)| outside)
    }

    fn keep(&mut self, key: OutsideKey, outside: Arc<OutsideSpectrum>) {
        self.0.retain(|(known, _)| *known != key);
        self.0.insert(0, (key, outside));
        self.0.truncate(MOST_KEPT);
    }
}

/// How far the solution is.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Solving {
    /// The page has not been touched yet.
    Untouched,
    /// Asked for, or running.
    Working { done: u32, total: u32 },
    /// There, and shown.
    Done,
    /// The maker has stopped it.
    Stopped,
    /// This can has none: too large, or out of range.
    Impossible,
    /// The browser has no worker for it.
    Refused,
}

impl Solving {
    /// Whether more may come of it by itself, or by a touch.
    pub(super) const fn is_awaited(self) -> bool {
        matches!(self, Self::Untouched | Self::Working { .. })
    }
}

/// What the worker is asked for.
#[derive(Clone, Copy)]
pub(super) struct OutsideJob {
    page: Page,
    worker: BenchWorker,
    /// It waits for the outside, or for the word that there is none.
    search: Search,
    /// Whose outside was asked for and has not come yet.
    asked: &'static RefCell<Option<OutsideKey>>,
    rest: Timer,
}

impl OutsideJob {
    pub(super) fn new(page: Page, worker: BenchWorker, search: Search) -> Self {
        let job = Self {
            page,
            worker,
            search,
            asked: Box::leak(Box::new(RefCell::new(None))),
            rest: Timer::new(),
        };
        follow(Box::new(move || {
            page.track_edition();
            job.look_again();
        }));
        // Until the page is touched it fetches no more than it has to.
        let touched = move |_| {
            job.again();
            job.search.restart_soon();
        };
        browser::on_event(&window(), "tinwave-touched", Box::new(touched));
        job
    }

    /// Asks for the present can's outside unless it is at hand or asked for.
    fn look_again(self) {
        let (design, known) = self.page.look(|model| {
            let design = model.work.design.clone();
            let known = model.outsides.of(&design).is_some();
            (design, known)
        });
        let solving = if known || design.mouth == Mouth::Absorbing {
            self.rest.clear();
            self.worker.stop(Kind::Field);
            self.asked.take();
            if known {
                Solving::Done
            } else {
                Solving::Impossible
            }
        } else {
            let key = OutsideKey::new(&design);
            if self.asked.borrow().as_ref() == Some(&key) {
                return;
            }
            // What is solved is another can's by now.
            self.worker.stop(Kind::Field);
            *self.asked.borrow_mut() = Some(key);
            self.rest.set(REST_MS, Box::new(move || self.ask()));
            if browser::worker_script().is_some() {
                Solving::Working { done: 0, total: 0 }
            } else {
                Solving::Untouched
            }
        };
        self.show(solving);
    }

    fn show(self, solving: Solving) {
        if self.page.look(|model| model.solving != solving) {
            self.page.set(&|model| model.solving = solving);
            if !solving.is_awaited() {
                self.search.restart_soon();
            }
        }
    }

    fn ask(self) {
        if browser::worker_script().is_none() || self.asked.borrow().is_none() {
            return;
        }
        let (link, design) = self
            .page
            .look(|model| (link::encode(&model.work), model.work.design.clone()));
        let hear = move |heard| self.hear(&design, heard);
        self.worker.begin(Kind::Field, &link, Rc::new(hear));
    }

    /// Stops the solution in hand; the estimate stands.
    pub(super) fn stop(self) {
        self.rest.clear();
        self.worker.stop(Kind::Field);
        self.show(Solving::Stopped);
    }

    /// Asks once more.
    pub(super) fn again(self) {
        self.asked.take();
        self.look_again();
    }

    fn hear(self, design: &Design, heard: Heard) {
        match heard {
            Heard::Working { done, total } => self.show(Solving::Working { done, total }),
            Heard::Done(numbers) if numbers.is_empty() => self.show(Solving::Impossible),
            Heard::Done(numbers) => self.take(design, &numbers),
            Heard::Refused => {
                // The next change asks again.
                self.asked.take();
                self.show(Solving::Refused);
            }
        }
    }

    /// Takes the solution and shows the design with it.
    fn take(self, design: &Design, numbers: &[f64]) {
        self.asked.take();
        let si = SiDesign::new(design);
        let solved = Outline::new(design, &si)
            .and_then(|outline| OutsideSpectrum::from_numbers(&outline, numbers));
        let Some(solved) = solved.map(Arc::new) else {
            self.show(Solving::Impossible);
            return;
        };
        self.page.change(&|model| {
            model.outsides.keep(OutsideKey::new(design), solved.clone());
            model.solving = Solving::Done;
            model.compute();
        });
        self.page.tell_edition();
    }
}
