//! What the worker adds to the work: the field outside the can, and its best cuts.

use std::sync::Arc;

use leptos::prelude::*;
use tinwave_core::best_cut::BestCut;
use tinwave_core::outside::OutsideSpectrum;
use tinwave_maker::workpiece::{Cut, Workpiece};
use tinwave_protocol::cuts::{BestCuts, CutsFound, CutsKey};
use tinwave_protocol::outside::{OutsideKey, SolveOutside};

use super::Workshop;
use crate::browser;
use crate::reactive::{effect, memo};
use crate::worker::{Task, TaskState};

/// How the search for the best cuts of the present can stands.
#[derive(Clone, Debug, PartialEq)]
pub enum BestCutState {
    /// Nothing is known of this can yet.
    Unknown,
    /// Found with the mouth of an endless pipe; the outside is being solved.
    Estimate(CutsFound),
    /// Found; with no cut in it where none can be worked out.
    Final(CutsFound),
}

impl BestCutState {
    /// The best of both dimensions.
    #[must_use]
    pub fn best(&self) -> Option<BestCut> {
        self.found()?.cuts.first().copied()
    }

    /// All that was found.
    #[must_use]
    pub const fn found(&self) -> Option<&CutsFound> {
        match self {
            Self::Unknown => None,
            Self::Estimate(found) | Self::Final(found) => Some(found),
        }
    }
}

/// What the worker found for all designs of one key.
#[derive(Clone, Debug, PartialEq)]
struct Known<K, T> {
    key: K,
    what: T,
}

/// An outside; `None` where it can't be solved.
type Solved = Known<OutsideKey, Option<Arc<OutsideSpectrum>>>;

/// The searches. A handle, copied freely.
#[derive(Clone, Copy)]
pub(super) struct Search {
    work: Memo<Workpiece>,
    /// A page that nobody has touched fetches no worker.
    awake: RwSignal<bool>,
    outside_task: Task<Option<OutsideSpectrum>>,
    cuts_task: Task<CutsFound>,
    outside_key: Memo<OutsideKey>,
    cuts_key: Memo<CutsKey>,
    solved: RwSignal<Option<Solved>>,
    found: RwSignal<Option<Known<CutsKey, CutsFound>>>,
    pub(super) outside: Memo<Option<Arc<OutsideSpectrum>>>,
    pub(super) best_state: Memo<BestCutState>,
}

const TOUCHES: [&str; 5] = ["pointerdown", "keydown", "wheel", "touchstart", "input"];

impl Search {
    pub(super) fn new(work: Memo<Workpiece>) -> Self {
        let solved = RwSignal::new(None::<Solved>);
        let found = RwSignal::new(None::<Known<CutsKey, CutsFound>>);
        let outside_key = memo(move || work.with(|work| OutsideKey::of(&work.design)));
        let cuts_key = memo(move || work.with(|work| CutsKey::of(&work.design)));
        let outside = memo(move || {
            let key = outside_key.get();
            solved.with(|known| {
                let known = known.as_ref().filter(|known| known.key == key)?;
                known.what.clone()
            })
        });
        let unsolvable = memo(move || {
            let key = outside_key.get();
            solved.with(|known| {
                let known = known.as_ref().filter(|known| known.key == key);
                known.is_some_and(|known| known.what.is_none())
            })
        });
        let best_state = memo(move || {
            let known = found.with(|known| {
                let known = known.as_ref()?;
                cuts_key
                    .with(|key| known.key == *key)
                    .then(|| known.what.clone())
            });
            match known {
                Some(known) => {
                    if known.with_outside || unsolvable.get() {
                        BestCutState::Final(known)
                    } else {
                        BestCutState::Estimate(known)
                    }
                }
                None => BestCutState::Unknown,
            }
        });
        Self {
            work,
            awake: RwSignal::new(false),
            outside_task: Task::new(),
            cuts_task: Task::new(),
            outside_key,
            cuts_key,
            solved,
            found,
            outside,
            best_state,
        }
    }

    /// Whether the worker is looking for a cut, or should be.
    pub(super) fn is_awake(self) -> bool {
        self.awake.get()
    }

    /// How the search for the cuts stands.
    pub(super) fn cuts(self) -> ReadSignal<TaskState<CutsFound>> {
        self.cuts_task.state()
    }

    /// Whether the present can has no outside that could be solved.
    pub(super) fn has_no_outside(self) -> bool {
        let key = self.outside_key.get();
        self.solved.with(|known| {
            known
                .as_ref()
                .is_some_and(|known| known.key == key && known.what.is_none())
        })
    }

    pub(super) fn wake(self) {
        if !self.awake.get_untracked() {
            self.awake.set(true);
        }
    }

    pub(super) fn stop(self) {
        self.outside_task.stop();
        self.cuts_task.stop();
    }

    /// Asks at every change that matters; writes the best cut into work that follows it.
    pub(super) fn follow(self, workshop: Workshop) {
        for name in TOUCHES {
            browser::on_window(name, move |_| self.wake());
        }
        // A first visit fetches no worker before it is touched; a link does at once.
        if !browser::fragment().is_empty() || !untrack(|| workshop.is_example()) {
            self.wake();
        }
        effect(move || {
            let key = self.outside_key.get();
            if self.awake.get() {
                self.solve(key);
            }
        });
        // The newest job is done first: an estimate comes before the outside is solved.
        effect(move || {
            let key = self.cuts_key.get();
            let has_outside = self.outside.with(Option::is_some);
            if self.awake.get() {
                self.search(key, has_outside);
            }
        });
        effect(move || {
            let follows = self.work.with(|work| work.cut == Cut::FollowsBest);
            let best = self.best_state.with(BestCutState::best);
            if let (true, Some(best)) = (follows, best) {
                workshop.follow_best(best.length_um, best.backshort_distance_um);
            }
        });
    }

    fn solve(self, key: OutsideKey) {
        let known = self
            .solved
            .with_untracked(|known| known.as_ref().is_some_and(|known| known.key == key));
        if known {
            return;
        }
        let design = self.work.with_untracked(|work| work.design.clone());
        let question = SolveOutside { design };
        self.outside_task.run_then(question, move |answer| {
            self.solved.set(Some(Known {
                key,
                what: answer.clone().map(Arc::new),
            }));
        });
    }

    fn search(self, key: CutsKey, has_outside: bool) {
        let known = self.found.with_untracked(|known| {
            known
                .as_ref()
                .is_some_and(|known| known.key == key && (known.what.with_outside || !has_outside))
        });
        if known {
            return;
        }
        let design = self.work.with_untracked(|work| work.design.clone());
        self.cuts_task.run_then(BestCuts { design }, move |found| {
            self.found.set(Some(Known {
                key: key.clone(),
                what: found.clone(),
            }));
        });
    }
}
