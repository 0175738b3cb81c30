//! Tune with a screw: what is looked for, and the search.

use leptos::prelude::*;
use tinwave_core::screw_search::ScrewSettings;
use tinwave_maker::history::Change;
use tinwave_maker::threads::{THREADS, Thread, of_key};
use tinwave_protocol::screws::{ScrewsFound, SearchScrews};
use tinwave_words::tolerance as words;

use super::careful::nameless;
use super::screw_found::Found;
use crate::kit::{Action, Choice, FindingBlock, FindingTone, Fold, Pick, ProgressBar, ShortList};
use crate::reactive::{effect, live, memo};
use crate::state::Workshop;
use crate::worker::{Task, TaskState};

/// Sides that are offered: thousandths of a degree from the wire.
const SIDES: [i32; 7] = [180_000, 150_000, 135_000, 0, 30_000, 45_000, 90_000];

/// What was looked for, and what was found. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct Screws {
    count: RwSignal<u32>,
    thread: RwSignal<Thread>,
    angle: RwSignal<i32>,
    task: Task<ScrewsFound>,
    /// The question that the present answer belongs to.
    pub(super) asked: RwSignal<Option<(SearchScrews, Thread)>>,
}

impl Screws {
    fn open() -> Self {
        Self {
            count: RwSignal::new(1),
            thread: RwSignal::new(THREADS[0]),
            angle: RwSignal::new(SIDES[0]),
            task: Task::new(),
            asked: RwSignal::new(None),
        }
    }

    fn settings(self) -> ScrewSettings {
        ScrewSettings {
            count: self.count.get(),
            diameter_um: self.thread.get().diameter_um,
            angle_millideg: self.angle.get(),
        }
    }

    fn search(self, workshop: Workshop) {
        let thread = self.thread.get_untracked();
        let question = SearchScrews {
            design: workshop.work.with_untracked(|work| nameless(&work.design)),
            settings: untrack(|| self.settings()),
            pitch_um: thread.pitch_um,
        };
        self.asked.set(Some((question.clone(), thread)));
        self.task.run(question);
    }
}

/// The fold.
#[component]
pub fn TuneWithAScrew() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let screws = Screws::open();
    let present = memo(move || workshop.work.with(|work| work.design.screws.len()));
    let remove = move |()| workshop.edit(Change::Screws, |work| work.design.screws.clear());
    let cautions = words::screw_cautions().map(|(headline, text, source)| {
        view! { <FindingBlock tone=FindingTone::Caution headline text source/> }
    });
    view! {
        <Fold title=words::screws_title() summary=move || words::screws_summary(present.get())>
            <p class="note">{words::screws_note()}</p>
            <Show when=move || { present.get() > 0 }>
                <Action text=words::remove_screws() on_press=remove/>
            </Show>
            <Wanted screws/>
            <Searching screws/>
            {cautions.into_iter().collect_view()}
        </Fold>
    }
}

/// How many, of which thread, on which side.
#[component]
fn Wanted(screws: Screws) -> impl IntoView {
    let unit = expect_context::<Workshop>().unit;
    let (label, [one, two]) = words::how_many();
    let counts = vec![Pick::new("1", one), Pick::new("2", two)];
    let threads = move || {
        let named = |thread: Thread| Pick::new(thread.key, words::thread_name(thread, unit.get()));
        THREADS.map(named).to_vec()
    };
    let sides = SIDES.map(|angle| Pick::new(angle.to_string(), words::side(angle)));
    let choose_side = move |key: String| {
        if let Ok(angle) = key.parse() {
            screws.angle.set(angle);
        }
    };
    view! {
        <Choice label picks=counts chosen=move || screws.count.get().to_string()
            on_choose=move |key: String| screws.count.set(if key == "2" { 2 } else { 1 })/>
        <ShortList label=words::thread_label() picks=Signal::derive(threads)
            chosen=move || screws.thread.get().key.to_owned()
            on_choose=move |key: String| screws.thread.set(of_key(&key))/>
        <ShortList label=words::side_label() picks=sides.to_vec()
            chosen=move || screws.angle.get().to_string() on_choose=choose_side/>
    }
}

/// The search on its way, and what it found for the present design and choice.
#[component]
fn Searching(screws: Screws) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let state = screws.task.state();
    let is_working = move || state.with(TaskState::is_working);
    let done = move || {
        state.with(|state| match state {
            TaskState::Working { done, .. } => *done,
            _ => 1.0,
        })
    };
    let is_current = memo(move || {
        let design = workshop.work.with(|work| nameless(&work.design));
        let settings = screws.settings();
        screws.asked.with(|asked| {
            let asked = asked.as_ref();
            asked.is_some_and(|(asked, _)| asked.design == design && asked.settings == settings)
        })
    });
    // Work about another can or choice is of no use.
    effect(move || {
        if !is_current.get() {
            screws.task.clear();
        }
    });
    let found = memo(move || {
        if !is_current.get() {
            return None;
        }
        state.with(|state| state.answer().cloned())
    });
    view! {
        <Show when=is_working
            fallback=move || view! {
                <Action text=words::search_screws() on_press=move |()| screws.search(workshop)/>
            }>
            <ProgressBar done=Signal::derive(done) text=words::searching_screws()
                on_stop=move |()| screws.task.stop()/>
        </Show>
        <div role="status">
            {live(move || found.get().map(|found| view! { <Found screws found/> }))}
        </div>
    }
}
