//! The page's way to the workbench: jobs of two kinds, of which the newest counts.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use js_sys::{Array, Float64Array};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{MessageEvent, Worker, WorkerOptions, WorkerType};

use super::browser;

/// What is asked of the workbench.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// The field outside a can.
    Field,
    /// The best cuts.
    Cuts,
}

impl Kind {
    /// Its name in messages.
    const fn name(self) -> &'static str {
        match self {
            Self::Field => "field",
            Self::Cuts => "cuts",
        }
    }
}

/// What is heard of a job.
pub(super) enum Heard {
    Working {
        done: u32,
        total: u32,
    },
    /// The end; no numbers where there is nothing to solve.
    Done(Vec<f64>),
    /// The browser has no worker, or it broke.
    Refused,
}

/// Hears of the newest job of one kind.
type Hear = Rc<dyn Fn(Heard)>;

/// The worker.
#[derive(Clone, Copy)]
pub(super) struct BenchWorker(&'static Inner);

#[derive(Default)]
struct Inner {
    /// Started when first needed.
    worker: RefCell<Option<Worker>>,
    job: Cell<u32>,
    /// The newest job of each kind, and who hears of it.
    hears: RefCell<Vec<(Kind, u32, Hear)>>,
}

impl BenchWorker {
    pub(super) fn new() -> Self {
        Self(Box::leak(Box::default()))
    }

    /// Begins a job about a design in place of the last one of its kind. Before the
    /// page has been touched it is refused.
    pub(super) fn begin(self, kind: Kind, link: &str, hear: Hear) {
        let job = self.0.job.get().wrapping_add(1);
        self.0.job.set(job);
        self.forget(kind);
        if self.post(kind, job, link) {
            self.0.hears.borrow_mut().push((kind, job, hear));
        } else {
            hear(Heard::Refused);
        }
    }

    /// Stops the job of a kind.
    pub(super) fn stop(self, kind: Kind) {
        self.forget(kind);
        if self.0.worker.borrow().is_some() {
            self.post(kind, 0, "");
        }
    }

    fn forget(self, kind: Kind) {
        self.0
            .hears
            .borrow_mut()
            .retain(|(known, _, _)| *known != kind);
    }

    fn post(self, kind: Kind, job: u32, link: &str) -> bool {
        let mut worker = self.0.worker.borrow_mut();
        if worker.is_none() {
            *worker = self.hire();
        }
        let message = Array::of3(&kind.name().into(), &job.into(), &link.into());
        let posted = worker.as_ref().map(|worker| worker.post_message(&message));
        matches!(posted, Some(Ok(())))
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
        let hired = worker.clone();
        let broken = move |_| self.broken(&hired);
        browser::on_event(&worker, "error", Box::new(broken));
        Some(worker)
    }

    /// Whoever waits is told; the next job finds another worker.
    fn broken(self, worker: &Worker) {
        worker.terminate();
        if self.0.worker.borrow().as_ref() != Some(worker) {
            return;
        }
        self.0.worker.take();
        let left = self.0.hears.take();
        for (_, _, hear) in left {
            hear(Heard::Refused);
        }
    }

    /// Hears the worker: kind, job, steps done, steps in all, and at the end the
    /// numbers.
    fn hear(self, message: &Array) {
        let number = |place: u32| message.get(place).as_f64().unwrap_or(0.0) as u32;
        let (job, done, total) = (number(1), number(2), number(3));
        let numbers: JsValue = message.get(4);
        let heard = if total == 0 {
            Heard::Done(Vec::new())
        } else if numbers.is_undefined() {
            Heard::Working { done, total }
        } else {
            Heard::Done(Float64Array::new(&numbers).to_vec())
        };
        let is_done = matches!(heard, Heard::Done(_));
        let mut hears = self.0.hears.borrow_mut();
        let Some(place) = hears.iter().position(|(_, known, _)| *known == job) else {
            return;
        };
        let hear = hears[place].2.clone();
        if is_done {
            hears.swap_remove(place);
        }
        // Who hears may begin the next job.
        drop(hears);
        hear(heard);
    }
}
