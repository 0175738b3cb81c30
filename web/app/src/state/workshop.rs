//! The page's state: one handle, copied freely.

use leptos::prelude::*;
use tinwave_core::design::Micrometres;
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::example::example;
use tinwave_maker::history::{Change, History};
use tinwave_maker::link;
use tinwave_maker::station::Station;
use tinwave_maker::workpiece::{Cut, Workpiece};

use super::address::Address;
use super::answers::Answers;
use super::measured::Measuring;
use super::memory::Memory;
use super::opening::{self, Notice};
use super::plan::Plan;
use crate::browser::{self, Timer};
use crate::reactive::memo;

/// A run of steps (a button, an arrow key) counts as one edit until this pause.
const STEP_PAUSE_MS: u32 = 800;

/// The work before it was changed otherwise than by an entry.
#[derive(Clone, Debug, PartialEq)]
pub struct Before {
    /// As it was.
    pub work: Workpiece,
    /// Whether a link changed it; else undo or redo did.
    pub by_link: bool,
}

/// The page's state.
#[derive(Clone, Copy)]
pub struct Workshop {
    history: RwSignal<History>,
    /// The last good work: what every picture and figure is about.
    pub work: Memo<Workpiece>,
    /// Unit of the lengths that people read and type.
    pub unit: RwSignal<LengthUnit>,
    /// The station that is open.
    pub station: RwSignal<Station>,
    /// What follows from the work.
    pub answers: Answers,
    /// What the device keeps between visits.
    pub memory: Memory,
    /// Something to be said above everything.
    pub notice: RwSignal<Option<Notice>>,
    /// Counts up when every entry must show the work again, whatever it holds.
    pub refill: RwSignal<u32>,
    /// What undo, redo or a link has just changed, until the next edit: entries mark it.
    pub before: RwSignal<Option<Before>>,
    address: Address,
    rest: Timer,
    plan: StoredValue<Option<Plan>>,
    measuring: StoredValue<Option<Measuring>>,
    /// Whoever opened the workshop: what opens late lives as long.
    owner: StoredValue<Owner>,
}

impl Workshop {
    /// Opens what the link, the device's memory or the first visit has.
    #[must_use]
    pub fn open() -> Self {
        let memory = Memory::open();
        let opened = opening::open(memory);
        let history = RwSignal::new(History::new(opened.work));
        let work = memo(move || history.with(|history| history.current().clone()));
        let station = RwSignal::new(opened.station);
        let answers = Answers::new(work);
        let workshop = Self {
            history,
            work,
            unit: RwSignal::new(memory.unit()),
            station,
            answers,
            memory,
            notice: RwSignal::new(opened.notice),
            refill: RwSignal::new(0),
            before: RwSignal::new(None),
            address: Address::new(opened.unknown),
            rest: Timer::new(),
            plan: StoredValue::new(None),
            measuring: StoredValue::new(None),
            owner: StoredValue::new(Owner::current().unwrap_or_default()),
        };
        workshop.answers.follow(workshop);
        workshop.address.follow(workshop);
        memory.follow(workshop);
        workshop
    }

    /// Makes what lives as long as the workshop, whatever part of the page is the first to
    /// want it.
    pub fn for_good<T>(self, make: impl FnOnce() -> T) -> T {
        self.owner.get_value().with(|| untrack(make))
    }

    /// The plan of a link with the work. It opens when it is first asked for: the first
    /// station does without.
    #[must_use]
    pub fn plan(self) -> Plan {
        self.plan.get_value().unwrap_or_else(|| {
            let plan = self.for_good(|| Plan::open(self.work, self.answers, self.memory));
            self.plan.set_value(Some(plan));
            plan
        })
    }

    /// The measurement, what it told, the can's log. It opens when it is first asked for.
    #[must_use]
    pub fn measuring(self) -> Measuring {
        self.measuring.get_value().unwrap_or_else(|| {
            let measuring = self.for_good(|| Measuring::open(self.work, self.answers));
            self.measuring.set_value(Some(measuring));
            measuring
        })
    }

    /// Shows other work as an edit that stays open: the next of its kind joins it. For
    /// typing and dragging; [`Workshop::commit`] closes it.
    pub fn put(self, change: Change, alter: impl FnOnce(&mut Workpiece)) {
        let mut work = self.work.get_untracked();
        alter(&mut work);
        self.put_work(change, work);
    }

    /// The same with the changed work itself.
    pub fn put_work(self, change: Change, work: Workpiece) {
        let changed = self.work.with_untracked(|present| *present != work);
        if changed && work.design.check().is_ok() {
            self.history.update(|history| {
                history.edit(work, change);
            });
        }
    }

    /// Closes the open edit: the next one begins anew, and the address gets its entry.
    pub fn commit(self) {
        self.rest.clear();
        self.history.update_untracked(History::commit);
        self.address.write(self);
    }

    /// Closes the edit after a pause: for buttons and keys that come in runs.
    pub fn commit_soon(self) {
        self.rest.set(STEP_PAUSE_MS, move || self.commit());
    }

    /// One whole edit; every entry then shows the work.
    pub fn edit(self, change: Change, alter: impl FnOnce(&mut Workpiece)) {
        self.commit();
        self.put(change, alter);
        self.commit();
        self.fill();
    }

    /// Opens other work as one edit, which can be undone.
    pub fn open_work(self, work: Workpiece) {
        self.edit(Change::Opened, move |present| *present = work);
    }

    /// The best cut as it is found, while the cut follows it: no edit of the maker's.
    pub(super) fn follow_best(self, length_um: Micrometres, backshort_distance_um: Micrometres) {
        let mut work = self.work.get_untracked();
        let probe = &mut work.design.probe;
        probe.length_um = length_um;
        probe.backshort_distance_um = backshort_distance_um;
        let changed = self.work.with_untracked(|present| *present != work);
        if changed && work.design.check().is_ok() {
            // No refill: somebody may be typing in another entry.
            self.history.update(|history| history.amend(work));
        }
    }

    /// The cut stays as it is: it was made.
    pub fn cut_stays(self) {
        self.edit(Change::BestCut, |work| work.cut = Cut::AsCut);
    }

    /// The cut follows the best (again).
    pub fn cut_follows(self) {
        let best = self.answers.best.get_untracked();
        self.edit(Change::BestCut, |work| {
            work.cut = Cut::FollowsBest;
            if let Some(best) = best {
                work.design.probe.length_um = best.length_um;
                work.design.probe.backshort_distance_um = best.backshort_distance_um;
            }
        });
    }

    /// One step back.
    pub fn undo(self) {
        self.walk(|history| history.undo().is_some());
    }

    /// One step forward again.
    pub fn redo(self) {
        self.walk(|history| history.redo().is_some());
    }

    /// Undo and redo add nothing to the browser's own history.
    fn walk(self, step: fn(&mut History) -> bool) {
        self.commit();
        let work = self.work.get_untracked();
        let moved = self.history.try_update(step).unwrap_or(false);
        if moved {
            self.before.set(Some(Before {
                work,
                by_link: false,
            }));
            self.address.stands_for(self);
            self.fill();
        }
    }

    /// Whether there is a step back.
    #[must_use]
    pub fn can_undo(self) -> bool {
        self.history.with(History::can_undo)
    }

    /// Whether there is a step forward.
    #[must_use]
    pub fn can_redo(self) -> bool {
        self.history.with(History::can_redo)
    }

    /// What the next undo takes back.
    #[must_use]
    pub fn undo_change(self) -> Option<Change> {
        self.history.with(History::undo_change)
    }

    /// What the next redo brings back.
    #[must_use]
    pub fn redo_change(self) -> Option<Change> {
        self.history.with(History::redo_change)
    }

    /// Where in the history the work is.
    pub(super) fn position(self) -> usize {
        self.history.with_untracked(History::position)
    }

    /// The work of an entry of the browser's history: at its place in ours if it is
    /// there, else as a new edit.
    pub(super) fn follow_browser(self, work: &Workpiece, position: Option<usize>) {
        self.rest.clear();
        self.before.set(Some(Before {
            work: self.work.get_untracked(),
            by_link: position.is_none(),
        }));
        self.history.update(|history| {
            history.commit();
            if history.current() == work {
                return;
            }
            let back = history.position();
            let found = position
                .and_then(|place| history.go_to(place))
                .is_some_and(|there| same_but_for_best(there, work));
            if !found {
                history.go_to(back);
                history.edit(work.clone(), Change::Opened);
                history.commit();
            }
        });
        self.fill();
    }

    /// Opens a station; the browser's back comes back from it.
    pub fn go_to(self, station: Station) {
        if self.station.get_untracked() != station {
            self.commit();
            self.station.set(station);
            self.address.write(self);
        }
    }

    /// Every entry shows the work again.
    pub fn fill(self) {
        self.refill.update(|count| *count = count.wrapping_add(1));
    }

    /// Whether this is still the example of a first visit.
    #[must_use]
    pub fn is_example(self) -> bool {
        self.work.with(|work| same_but_for_best(work, &example()))
    }

    /// The whole link to the present work and station.
    #[must_use]
    pub fn link(self) -> String {
        [&browser::address(), "#", &self.fragment()].concat()
    }

    /// The fragment of that link.
    #[must_use]
    pub fn fragment(self) -> String {
        self.fragment_at(self.station.get())
    }

    /// The fragment of the present work at another station.
    #[must_use]
    pub fn fragment_at(self, station: Station) -> String {
        self.work
            .with(|work| link::encode_at(work, station, &self.address.unknown()))
    }
}

/// Whether two works are the same, a cut that follows the best left aside: it may have
/// been found anew.
pub(super) fn same_but_for_best(one: &Workpiece, other: &Workpiece) -> bool {
    let mut one = one.clone();
    if one.cut == Cut::FollowsBest && other.cut == Cut::FollowsBest {
        one.design.probe.length_um = other.design.probe.length_um;
        one.design.probe.backshort_distance_um = other.design.probe.backshort_distance_um;
    }
    one == *other
}
