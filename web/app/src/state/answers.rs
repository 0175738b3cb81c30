//! What follows from the work: memos, and what the worker adds to them.

use std::sync::Arc;

use leptos::prelude::*;
use tinwave_core::analysis::{Analyser, Analysis};
use tinwave_core::best_cut::BestCut;
use tinwave_core::design::Design;
use tinwave_core::grade::{Best, Grade, Graded, grade};
use tinwave_core::outside::OutsideSpectrum;
use tinwave_maker::workpiece::{Cut, Workpiece};

use tinwave_protocol::cuts::CutsFound;

use super::Workshop;
use super::search::{BestCutState, Search};
use crate::browser;
use crate::reactive::{effect, memo};
use crate::worker::TaskState;

/// How sure the figures of the present work are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Freshness {
    /// Of the whole can.
    Final,
    /// The mouth taken as that of an endless pipe; the outside is being solved.
    Estimate,
    /// The best cut of this can is still being searched for: figures are those of the
    /// design before.
    Pending,
}

/// What follows from the work. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct Answers {
    search: Search,
    /// The solved outside of the present can, once the worker has it.
    pub outside: Memo<Option<Arc<OutsideSpectrum>>>,
    /// How the search for the best cuts of the present can stands.
    pub best_state: Memo<BestCutState>,
    /// The best cut of the present can, wire and band.
    pub best: Memo<Option<BestCut>>,
    /// The design as it is drawn, analysed; while a cut that follows the best is being
    /// searched for, that of the design before. `None` where nothing can be computed.
    pub analysis: Memo<Option<Arc<Analysis>>>,
    /// The design with its best cut, analysed.
    pub best_analysis: Memo<Option<Arc<Analysis>>>,
    /// The grade of can and band.
    pub graded: Memo<Graded>,
    /// How sure all this is.
    pub freshness: Memo<Freshness>,
}

impl Answers {
    pub(super) fn new(work: Memo<Workpiece>) -> Self {
        let search = Search::new(work);
        let outside = search.outside;
        let best_state = search.best_state;
        let best = memo(move || best_state.with(BestCutState::best));
        let pending = memo(move || {
            work.with(|work| work.cut == Cut::FollowsBest)
                && best_state.with(|state| matches!(state, BestCutState::Unknown))
                && search.is_awake()
        });
        let analyser = StoredValue::new(Analyser::new());
        let analysis = Memo::new(move |before: Option<&Option<Arc<Analysis>>>| {
            if pending.get()
                && let Some(before) = before
            {
                return before.clone();
            }
            let outside = outside.get();
            work.with(|work| analysed(analyser, &work.design, outside.as_ref()))
        });
        let best_analyser = StoredValue::new(Analyser::new());
        let best_analysis = memo(move || {
            let best = best.get()?;
            let mut design = work.with(|work| work.design.clone());
            if is_cut(&design, &best) && !pending.get() {
                return analysis.get();
            }
            set_cut(&mut design, &best);
            analysed(best_analyser, &design, outside.get().as_ref())
        });
        let graded = memo(move || {
            let known = best_analysis.get();
            let best = match (&known, best_state.get()) {
                (Some(analysis), _) => Best::Known(analysis),
                (None, BestCutState::Final(_)) => Best::None,
                _ => Best::Unknown,
            };
            work.with(|work| grade(&work.design, best))
        });
        let freshness = memo(move || {
            if pending.get() {
                Freshness::Pending
            } else if outside.with(Option::is_some) || search.has_no_outside() {
                Freshness::Final
            } else {
                Freshness::Estimate
            }
        });
        Self {
            search,
            outside,
            best_state,
            best,
            analysis,
            best_analysis,
            graded,
            freshness,
        }
    }

    /// Whether figures that rest on a cut may be shown: not for a can that will not do.
    #[must_use]
    pub fn has_cut(self) -> bool {
        self.graded.with(|graded| graded.grade != Grade::WillNotDo)
    }

    pub(super) fn follow(self, workshop: Workshop) {
        self.search.follow(workshop);
        // For styles, and for whoever waits for the last word.
        effect(move || {
            let word = match self.freshness.get() {
                Freshness::Final => "final",
                Freshness::Estimate => "estimate",
                Freshness::Pending => "pending",
            };
            browser::tell_styles("freshness", word);
        });
    }

    /// Whether somebody has touched the page: only then the worker is asked, and what
    /// the first visit does without is fetched.
    #[must_use]
    pub fn is_awake(self) -> bool {
        self.search.is_awake()
    }

    /// Sets the worker to work: somebody has touched the page.
    pub fn wake(self) {
        self.search.wake();
    }

    /// How the search for the best cuts stands: progress, or that the worker did not
    /// come.
    #[must_use]
    pub fn search_state(self) -> ReadSignal<TaskState<CutsFound>> {
        self.search.cuts()
    }

    /// Stops the search for the best cut.
    pub fn stop_search(self) {
        self.search.stop();
    }
}

fn analysed(
    analyser: StoredValue<Analyser>,
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
) -> Option<Arc<Analysis>> {
    analyser
        .try_update_value(|analyser| analyser.analyse_with(design, outside).ok())
        .flatten()
        .map(Arc::new)
}

/// Whether a design has this very cut.
pub(super) fn is_cut(design: &Design, cut: &BestCut) -> bool {
    design.probe.length_um == cut.length_um
        && design.probe.backshort_distance_um == cut.backshort_distance_um
}

fn set_cut(design: &mut Design, cut: &BestCut) {
    design.probe.length_um = cut.length_um;
    design.probe.backshort_distance_um = cut.backshort_distance_um;
}
