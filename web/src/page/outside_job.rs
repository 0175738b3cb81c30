//! The page's half of the full-wave solution: asks the worker for the outside of
//! the present can, and shows what it has found.
//!
//! The outside depends on can, mouth and band alone: a moved probe needs no new
//! one.

use std::cell::RefCell;
use std::sync::Arc;

use js_sys::{Array, Float64Array};
use leptos::prelude::window;
use tinwave_core::design::{Band, Design, Mouth, Sweep};
use tinwave_core::outside::{Outline, OutsideSpectrum};
use tinwave_core::si::SiDesign;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{MessageEvent, Worker, WorkerOptions, WorkerType};

use super::browser::{self, Timer};
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

/// The worker and what it is asked for.
#[derive(Clone, Copy)]
pub(super) struct OutsideJob {
    page: Page,
    desk: &'static RefCell<Desk>,
    rest: Timer,
}

struct Desk {
    /// Started when first needed; `Some(None)` where the browser refuses.
    worker: Option<Option<Worker>>,
    job: u32,
    asked: Option<(OutsideKey, Design)>,
}

impl OutsideJob {
    pub(super) fn new(page: Page) -> Self {
        let job = Self {
            page,
            desk: Box::leak(Box::new(RefCell::new(Desk {
                worker: None,
                job: 0,
                asked: None,
            }))),
            rest: Timer::new(),
        };
        follow(Box::new(move || {
            page.track_edition();
            job.look_again();
        }));
        // Until the page is touched it fetches no more than it has to.
        browser::on_event(&window(), "tinwave-touched", Box::new(move |_| job.again()));
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
            self.desk.borrow_mut().asked = None;
            if known {
                Solving::Done
            } else {
                Solving::Impossible
            }
        } else {
            let key = OutsideKey::new(&design);
            let same = matches!(&self.desk.borrow().asked, Some((asked, _)) if *asked == key);
            if same {
                return;
            }
            self.desk.borrow_mut().asked = Some((key, design));
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
        }
    }

    fn ask(self) {
        let text = match &self.desk.borrow().asked {
            Some(_) => self.page.look(|model| link::encode(&model.work)),
            None => return,
        };
        if browser::worker_script().is_some() && !self.send(&text) {
            self.show(Solving::Refused);
        }
    }

    /// Stops the solution in hand; the estimate stands.
    pub(super) fn stop(self) {
        self.rest.clear();
        self.send("");
        self.show(Solving::Stopped);
    }

    /// Asks once more.
    pub(super) fn again(self) {
        self.desk.borrow_mut().asked = None;
        self.look_again();
    }

    fn send(self, text: &str) -> bool {
        let mut desk = self.desk.borrow_mut();
        desk.job = desk.job.wrapping_add(1);
        let message = Array::of2(&desk.job.into(), &text.into());
        let worker = desk.worker.get_or_insert_with(|| self.hire());
        let sent = worker.as_ref().map(|worker| worker.post_message(&message));
        matches!(sent, Some(Ok(())))
    }

    fn hire(self) -> Option<Worker> {
        let script = browser::worker_script()?;
        let options = WorkerOptions::new();
        options.set_type(WorkerType::Module);
        let worker = Worker::new_with_options(&script, &options).ok()?;
        let hear = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
            self.hear(&Array::from(&event.data()));
        });
        worker.set_onmessage(Some(hear.as_ref().unchecked_ref()));
        hear.forget();
        browser::on_event(
            &worker,
            "error",
            Box::new(move |_| self.show(Solving::Refused)),
        );
        Some(worker)
    }

    /// Hears the worker: job, steps done, steps in all, and at the end the numbers.
    fn hear(self, message: &Array) {
        let number = |place: u32| message.get(place).as_f64().unwrap_or(0.0) as u32;
        if number(0) != self.desk.borrow().job {
            return;
        }
        let (done, total) = (number(1), number(2));
        let numbers: JsValue = message.get(3);
        if total == 0 {
            self.show(Solving::Impossible);
        } else if numbers.is_undefined() {
            self.show(Solving::Working { done, total });
        } else {
            self.take(&Float64Array::new(&numbers).to_vec());
        }
    }

    /// Takes the solution and shows the design with it.
    fn take(self, numbers: &[f64]) {
        let Some((key, design)) = self.desk.borrow_mut().asked.take() else {
            return;
        };
        let si = SiDesign::new(&design);
        let solved = Outline::new(&design, &si)
            .and_then(|outline| OutsideSpectrum::from_numbers(&outline, numbers));
        let Some(solved) = solved.map(Arc::new) else {
            self.show(Solving::Impossible);
            return;
        };
        self.page.change(&|model| {
            model.outsides.keep(key.clone(), solved.clone());
            model.solving = Solving::Done;
            model.compute();
        });
        self.page.tell_edition();
    }
}
