//! The state of the bench: the step that is open, the ticks, the choices.

use leptos::prelude::*;
use tinwave_maker::bench::{Stamp, Step, TICKS_KEY, Ticks, steps};
use tinwave_maker::workpiece::Cut;
use tinwave_protocol::print::{Fittings, FittingsFound, PrintJob, SheetDrawn};
use tinwave_words::make::{self as words, BenchFacts, StepWords};

use super::choices::{CHOICES_KEY, PrintChoices};
use super::print_job::print_job;
use crate::browser;
use crate::reactive::memo;
use crate::state::{Freshness, Workshop};
use crate::worker::{Task, TaskState};

/// How surely the open step's figure may be worked to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Readiness {
    /// It may.
    Ready,
    /// It rests on an estimate.
    Estimate,
    /// The best cut is still being searched for.
    Searching,
}

/// The bench. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct Bench {
    /// The work that is made.
    pub workshop: Workshop,
    /// What a maker chose for the print.
    pub choices: RwSignal<PrintChoices>,
    /// What printing wants computed, for the present work.
    pub question: Memo<Fittings>,
    fittings: Task<FittingsFound>,
    fitted: RwSignal<Option<(Fittings, FittingsFound)>>,
    /// Sheets that lie on the browser's paper just now, in place of the build sheet.
    pub on_paper: RwSignal<Option<Vec<SheetDrawn>>>,
    ticks: RwSignal<Ticks>,
    open: RwSignal<Option<Step>>,
    /// The steps of the work.
    pub steps: Memo<Vec<Step>>,
    /// The one that is open.
    pub step: Memo<Step>,
}

impl Bench {
    /// Opens what the device keeps.
    fn open(workshop: Workshop) -> Self {
        let ticks = RwSignal::new(Ticks::read(&browser::stored(TICKS_KEY).unwrap_or_default()));
        let choices = browser::stored(CHOICES_KEY).unwrap_or_default();
        let choices = RwSignal::new(PrintChoices::read(&choices));
        let open = RwSignal::new(None::<Step>);
        let steps = memo(move || workshop.work.with(steps));
        let step = memo(move || {
            let steps = steps.get();
            let chosen = open.get().filter(|step| steps.contains(step));
            chosen.unwrap_or_else(|| first_left(&steps, workshop, ticks))
        });
        let question = memo(move || {
            let choices = choices.get();
            Fittings {
                design: workshop.work.with(|work| work.design.clone()),
                cap: choices.cap.map(|cap| cap.sheet()),
                bracket_millideg: choices.bracket.map(|place| place.millideg()),
            }
        });
        keep(CHOICES_KEY, move || choices.with(PrintChoices::write));
        keep(TICKS_KEY, move || ticks.with(Ticks::write));
        Self {
            workshop,
            choices,
            question,
            fittings: Task::new(),
            fitted: RwSignal::new(None),
            on_paper: RwSignal::new(None),
            ticks,
            open,
            steps,
            step,
        }
    }

    /// The page's bench. It opens when it is first asked for.
    #[must_use]
    pub fn of_page() -> Self {
        use_context().unwrap_or_else(|| {
            let workshop = expect_context::<Workshop>();
            workshop.for_good(|| {
                let bench = Self::open(workshop);
                provide_context(bench);
                bench
            })
        })
    }

    /// A step in words, in the unit of the page.
    #[must_use]
    pub fn words(self, step: Step) -> StepWords {
        let cap = self.choices.with(|choices| choices.cap);
        self.workshop.work.with(|work| {
            let facts = BenchFacts {
                work,
                unit: self.workshop.unit.get(),
                cap,
            };
            words::step(step, &facts)
        })
    }

    /// Which step is open, from 1, and how many there are.
    #[must_use]
    pub fn place(self) -> (usize, usize) {
        let step = self.step.get();
        self.steps.with(|steps| {
            let at = steps.iter().position(|one| *one == step);
            (at.map_or(1, |at| at + 1), steps.len())
        })
    }

    /// Opens a step.
    pub fn go_to(self, step: Step) {
        self.open.set(Some(step));
    }

    /// The step so many places from the open one.
    #[must_use]
    pub fn beside(self, by: isize) -> Option<Step> {
        let (number, _) = self.place();
        let at = number.checked_sub(1)?.checked_add_signed(by)?;
        self.steps.with(|steps| steps.get(at).copied())
    }

    /// Whether a step is done to what is asked now.
    #[must_use]
    pub fn is_done(self, step: Step) -> bool {
        let work = self.workshop.work;
        work.with(|work| self.ticks.with(|ticks| ticks.holds(work, step)))
    }

    /// How many steps are done.
    #[must_use]
    pub fn count_done(self) -> usize {
        let steps = self.steps.get();
        steps.into_iter().filter(|step| self.is_done(*step)).count()
    }

    /// What a step was done to, where that is not what is asked now.
    #[must_use]
    pub fn done_to_other(self, step: Step) -> Option<Stamp> {
        self.workshop.work.with(|work| {
            self.ticks.with(|ticks| {
                let done = ticks.done(work, step)?;
                (*done != step.stamp(work)).then(|| done.clone())
            })
        })
    }

    /// Ticks a step, or takes its tick away. A step that changes the metal makes the
    /// cut: from then on it stays.
    pub fn tick(self, step: Step, done: bool) {
        let is_made = done && step.makes_the_cut();
        if is_made && untrack(|| self.readiness() == Readiness::Ready && self.follows_best()) {
            self.workshop.cut_stays();
        }
        let work = self.workshop.work.get_untracked();
        self.ticks.update(|ticks| ticks.set(&work, step, done));
    }

    /// Ticks the open step and goes on to the next.
    pub fn done_and_on(self) {
        let step = self.step.get_untracked();
        // Before the tick: with no step chosen the open one is the first that is left.
        let next = self.beside(1);
        self.tick(step, true);
        self.open.set(Some(next.unwrap_or(step)));
    }

    /// How surely figures may be worked to.
    #[must_use]
    pub fn readiness(self) -> Readiness {
        match self.workshop.answers.freshness.get() {
            Freshness::Final => Readiness::Ready,
            Freshness::Estimate => Readiness::Estimate,
            Freshness::Pending => Readiness::Searching,
        }
    }

    /// Whether the cut follows the best still.
    #[must_use]
    pub fn follows_best(self) -> bool {
        let work = self.workshop.work;
        work.with(|work| work.cut == Cut::FollowsBest)
    }

    /// What a cap and a bracket do, and how far the wire may be off; `None` until the
    /// worker has it for the present work.
    #[must_use]
    pub fn fittings(self) -> Option<FittingsFound> {
        let question = self.question.get();
        self.fitted.with(|fitted| {
            let (asked, found) = fitted.as_ref()?;
            (*asked == question).then(|| found.clone())
        })
    }

    /// Asks the worker for it, if it is not there, and goes on with it.
    pub fn fit_then(self, then: impl Fn(FittingsFound) + 'static) {
        if let Some(found) = untrack(|| self.fittings()) {
            then(found);
            return;
        }
        let question = self.question.get_untracked();
        let asked = question.clone();
        self.fittings.run_then(question, move |found| {
            self.fitted.set(Some((asked.clone(), found.clone())));
            then(found.clone());
        });
    }

    /// Whether the worker did not come.
    #[must_use]
    pub fn is_alone(self) -> bool {
        self.fittings
            .state()
            .with(|state| matches!(state, TaskState::Refused))
    }

    /// What is to be printed; `None` where the connector has no hole of a known size.
    #[must_use]
    pub fn print_job(self, found: &FittingsFound) -> Option<PrintJob> {
        let (link, unit) = (self.workshop.link(), self.workshop.unit.get());
        self.choices.with(|choices| {
            let work = self.workshop.work;
            work.with(|work| print_job(work, found, choices, &link, unit))
        })
    }
}

/// The first step that is not done, else the last.
fn first_left(steps: &[Step], workshop: Workshop, ticks: RwSignal<Ticks>) -> Step {
    let left = workshop.work.with(|work| {
        ticks.with(|ticks| {
            let mut steps = steps.iter().copied();
            steps.find(|step| !ticks.holds(work, *step))
        })
    });
    left.or(steps.last().copied()).unwrap_or(Step::Mark)
}

/// Keeps a text on the device whenever it changes.
fn keep(key: &'static str, text: impl Fn() -> String + Send + Sync + 'static) {
    Effect::new(move |before: Option<String>| {
        let now = text();
        if before.is_some_and(|before| before != now) {
            browser::store(key, &now);
        }
        now
    });
}
