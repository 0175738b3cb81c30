//! The page's way to its worker: typed questions, of which the newest of each task
//! counts.

use std::cell::RefCell;
use std::collections::HashMap;
use std::rc::Rc;

use js_sys::Uint8Array;
use leptos::prelude::*;
use serde::de::DeserializeOwned;
use tinwave_protocol::{Ask, Question, Tell, Told, from_bytes, to_bytes};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{MessageEvent, WorkerOptions, WorkerType};

use crate::browser;

/// How long work stands.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum TaskState<A> {
    /// Nothing was asked, or it was stopped.
    #[default]
    Idle,
    /// The worker is at it.
    Working {
        /// Share done, 0 to 1.
        done: f32,
        /// What there is to show so far.
        so_far: Option<A>,
    },
    /// The answer.
    Done(A),
    /// The worker did not come, or broke.
    Refused,
}

impl<A> TaskState<A> {
    /// The answer, if it is there.
    pub const fn answer(&self) -> Option<&A> {
        match self {
            Self::Done(answer) => Some(answer),
            _ => None,
        }
    }

    /// Whether the worker is at it.
    pub const fn is_working(&self) -> bool {
        matches!(self, Self::Working { .. })
    }
}

/// A place for one question at a time and its answer. Lives as long as the component
/// that makes it; what is asked anew takes the place of what is in hand.
#[derive(Debug)]
pub struct Task<A: Send + Sync + 'static> {
    state: RwSignal<TaskState<A>>,
    job: StoredValue<Option<u32>>,
}

impl<A: Send + Sync + 'static> Clone for Task<A> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<A: Send + Sync + 'static> Copy for Task<A> {}

impl<A: Clone + Send + Sync + DeserializeOwned + 'static> Default for Task<A> {
    fn default() -> Self {
        Self::new()
    }
}

impl<A: Clone + Send + Sync + DeserializeOwned + 'static> Task<A> {
    /// With nothing asked yet. What is in hand is stopped when its component goes.
    #[must_use]
    pub fn new() -> Self {
        let task = Self {
            state: RwSignal::new(TaskState::Idle),
            job: StoredValue::new(None),
        };
        let job = task.job;
        on_cleanup(move || {
            if let Some(id) = job.try_get_value().flatten() {
                forget(id);
            }
        });
        task
    }

    /// Follows how it stands.
    #[must_use]
    pub fn state(self) -> ReadSignal<TaskState<A>> {
        self.state.read_only()
    }

    /// Asks. The answer goes into [`Task::state`].
    pub fn run<Q: Question<Answer = A>>(self, question: Q) {
        self.run_then(question, |_| {});
    }

    /// Asks, and does something with the answer as well. Nobody is asked once the
    /// component has gone.
    pub fn run_then<Q: Question<Answer = A>>(self, question: Q, then: impl Fn(&A) + 'static) {
        if self.job.is_disposed() {
            return;
        }
        if let Some(id) = self.job.get_value() {
            forget(id);
        }
        self.state.set(TaskState::Working {
            done: 0.0,
            so_far: None,
        });
        let hear = move |told: Option<Told>| {
            let state = match told {
                Some(Told::Working { done, so_far }) => TaskState::Working {
                    done,
                    // What was shown stands until there is news.
                    so_far: so_far
                        .and_then(|bytes| from_bytes(&bytes))
                        .or_else(|| self.so_far()),
                },
                Some(Told::Done(bytes)) => {
                    from_bytes(&bytes).map_or(TaskState::Refused, TaskState::Done)
                }
                None => TaskState::Refused,
            };
            // Out of the signal's hands: what follows may ask anew.
            let answer = state.answer().cloned();
            if !state.is_working() {
                self.job.try_set_value(None);
            }
            self.state.try_set(state);
            if let Some(answer) = answer {
                then(&answer);
            }
        };
        self.job
            .set_value(begin(question.into_job(), Rc::new(hear)));
    }

    fn so_far(self) -> Option<A> {
        let state = self.state.try_read_untracked()?;
        match &*state {
            TaskState::Working { so_far, .. } => so_far.clone(),
            _ => None,
        }
    }

    /// Stops what is in hand; an answer that is there stays.
    pub fn stop(self) {
        if let Some(id) = self.job.try_update_value(Option::take).flatten() {
            forget(id);
            self.state.set(TaskState::Idle);
        }
    }

    /// Stops what is in hand and forgets the answer.
    pub fn clear(self) {
        self.stop();
        self.state.set(TaskState::Idle);
    }
}

/// Hears of one job; `None` when the worker is gone.
type Hear = Rc<dyn Fn(Option<Told>)>;

#[derive(Default)]
struct Office {
    worker: Option<web_sys::Worker>,
    last: u32,
    hears: HashMap<u32, Hear>,
}

thread_local! {
    static OFFICE: RefCell<Office> = RefCell::new(Office::default());
}

/// Begins a job; `None` (and `hear` is told) where there is no worker to be had.
fn begin(job: tinwave_protocol::Job, hear: Hear) -> Option<u32> {
    if !browser::is_here() {
        return None;
    }
    let id = OFFICE.with_borrow_mut(|office| {
        office.last = office.last.wrapping_add(1);
        let id = office.last;
        let job = Box::new(job);
        post(office, &Ask::Begin { id, job }).then(|| {
            office.hears.insert(id, Rc::clone(&hear));
            id
        })
    });
    if id.is_none() {
        hear(None);
    }
    id
}

fn forget(id: u32) {
    OFFICE.with_borrow_mut(|office| {
        if office.hears.remove(&id).is_some() {
            post(office, &Ask::Stop { id });
        }
    });
}

fn post(office: &mut Office, ask: &Ask) -> bool {
    if office.worker.is_none() {
        office.worker = open();
    }
    let message = Uint8Array::from(to_bytes(ask).as_slice());
    office
        .worker
        .as_ref()
        .is_some_and(|worker| worker.post_message(&message).is_ok())
}

/// A new worker; `None` where the browser has none.
fn open() -> Option<web_sys::Worker> {
    let script = browser::left_by_start("worker")?;
    let options = WorkerOptions::new();
    options.set_type(WorkerType::Module);
    let worker = web_sys::Worker::new_with_options(&script, &options).ok()?;
    let heard = Closure::<dyn Fn(MessageEvent)>::new(|event: MessageEvent| {
        let bytes = Uint8Array::new(&event.data()).to_vec();
        if let Some(tell) = from_bytes::<Tell>(&bytes) {
            hear(tell);
        }
    });
    worker.set_onmessage(Some(heard.as_ref().unchecked_ref()));
    heard.forget();
    let broke = Closure::<dyn Fn()>::new(broken);
    worker.set_onerror(Some(broke.as_ref().unchecked_ref()));
    broke.forget();
    Some(worker)
}

fn hear(tell: Tell) {
    let ended = matches!(tell.told, Told::Done(_));
    let hear = OFFICE.with_borrow_mut(|office| {
        if ended {
            office.hears.remove(&tell.id)
        } else {
            office.hears.get(&tell.id).cloned()
        }
    });
    // Who hears may begin the next job.
    if let Some(hear) = hear {
        hear(Some(tell.told));
    }
}

/// Whoever waits is told; the next job finds another worker.
fn broken() {
    let left = OFFICE.with_borrow_mut(|office| {
        if let Some(worker) = office.worker.take() {
            worker.terminate();
        }
        std::mem::take(&mut office.hears)
    });
    for hear in left.into_values() {
        hear(None);
    }
}
