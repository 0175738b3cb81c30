//! What the parts of the Feed station share.

use std::sync::Arc;

use leptos::prelude::*;
use tinwave_core::analysis::{Analyser, Analysis};
use tinwave_core::best_cut::BestCut;
use tinwave_core::design::Design;
use tinwave_core::match_band::MatchSummary;
use tinwave_drawing::section::knob::Tip;
use tinwave_maker::workpiece::Cut;
use tinwave_protocol::matters::{Matters, WhatMatters};
use tinwave_words::feed::{self as words, CutSaid};

use crate::browser::Timer;
use crate::reactive::{effect, memo};
use crate::state::{Freshness, Workshop};
use crate::worker::{Task, TaskState};

/// What each millimetre matters is asked this long after the last change, in
/// milliseconds: not while the tip is dragged.
const REST_MS: u32 = 300;

/// The station's own state. A handle, copied freely.
#[derive(Clone, Copy)]
pub(super) struct Feed {
    pub(super) workshop: Workshop,
    /// A cut that was left for the best, to compare with.
    former: RwSignal<Option<Tip>>,
    former_analysis: Memo<Option<Arc<Analysis>>>,
    /// Frequency that is read off both charts, MHz.
    pub(super) reading: RwSignal<Option<f64>>,
    task: Task<Matters>,
    /// What each millimetre matters, and of which design.
    known: RwSignal<Option<(Design, Matters)>>,
}

/// Two cuts of one can, to be drawn over each other.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Compared {
    /// What it is called.
    pub(super) name: String,
    pub(super) analysis: Arc<Analysis>,
}

impl Feed {
    pub(super) fn new(workshop: Workshop) -> Self {
        let former = RwSignal::new(None::<Tip>);
        let analyser = StoredValue::new(Analyser::new());
        let former_analysis = memo(move || {
            let tip = former.get()?;
            let mut design = workshop.work.with(|work| work.design.clone());
            design.probe.length_um = tip.length_um;
            design.probe.backshort_distance_um = tip.distance_um;
            let outside = workshop.answers.outside.get();
            let analysis = analyser
                .try_update_value(|analyser| analyser.analyse_with(&design, outside.as_ref()).ok());
            analysis.flatten().map(Arc::new)
        });
        let feed = Self {
            workshop,
            former,
            former_analysis,
            reading: RwSignal::new(None),
            task: Task::new(),
            known: RwSignal::new(None),
        };
        feed.keep_asking();
        feed
    }

    /// Asks what matters whenever the design, or what is known of its outside, rests.
    fn keep_asking(self) {
        let rest = Timer::new();
        let answers = self.workshop.answers;
        effect(move || {
            let design = self.workshop.work.with(|work| work.design.clone());
            answers.outside.track();
            if answers.is_awake() && answers.freshness.get() != Freshness::Pending {
                rest.set(REST_MS, move || self.ask(design));
            }
        });
    }

    fn ask(self, design: Design) {
        let question = WhatMatters {
            design: design.clone(),
        };
        self.task.run_then(question, move |found| {
            self.known.try_set(Some((design.clone(), found.clone())));
        });
    }

    /// What matters, of the design as it is now; `None` while it is worked out.
    pub(super) fn matters(self) -> Option<Matters> {
        self.workshop.work.with(|work| {
            self.known.with(|known| {
                let (_, matters) = known
                    .as_ref()
                    .filter(|(design, _)| *design == work.design)?;
                Some(matters.clone())
            })
        })
    }

    /// What was last worked out, also of a design that has changed since.
    pub(super) fn last_matters(self) -> Option<Matters> {
        self.known.with(|known| Some(known.as_ref()?.1.clone()))
    }

    pub(super) fn is_asking(self) -> bool {
        self.task.state().with(TaskState::is_working)
    }

    pub(super) fn is_as_cut(self) -> bool {
        self.workshop.work.with(|work| work.cut == Cut::AsCut)
    }

    pub(super) fn cut(self) -> CutSaid {
        self.workshop.work.with(|work| said(Tip::of(&work.design)))
    }

    /// The best cut, where it is another than the present one.
    pub(super) fn other_best(self) -> Option<BestCut> {
        let best = self.workshop.answers.best.get()?;
        let is_it = self
            .workshop
            .work
            .with(|work| Tip::of(&work.design) == tip(&best));
        (!is_it).then_some(best)
    }

    /// The present cut, where it is the best.
    pub(super) fn present_best(self) -> Option<BestCut> {
        let best = self.workshop.answers.best.get()?;
        let is_it = self
            .workshop
            .work
            .with(|work| Tip::of(&work.design) == tip(&best));
        is_it.then_some(best)
    }

    /// The cut that is drawn dashed: the best beside one's own, the former beside the best.
    pub(super) fn other(self) -> Option<Tip> {
        if self.is_as_cut() {
            self.other_best().map(|best| tip(&best))
        } else {
            self.former.get()
        }
    }

    /// The present cut's match and its name.
    pub(super) fn this(self) -> Option<Compared> {
        let name = if self.is_as_cut() {
            words::pair_bare(self.cut(), self.workshop.unit.get())
        } else {
            words::curve_best().to_owned()
        };
        let analysis = self.workshop.answers.analysis.get()?;
        Some(Compared { name, analysis })
    }

    /// The match of the cut that is drawn dashed.
    pub(super) fn compared(self) -> Option<Compared> {
        let other = self.other()?;
        if self.is_as_cut() {
            let analysis = self.workshop.answers.best_analysis.get()?;
            let name = words::curve_best().to_owned();
            return Some(Compared { name, analysis });
        }
        let analysis = self.former_analysis.get()?;
        let name = words::pair_bare(said(other), self.workshop.unit.get());
        Some(Compared { name, analysis })
    }

    /// The match over the band of the present cut.
    pub(super) fn summary(self) -> Option<MatchSummary> {
        let analysis = self.workshop.answers.analysis.get()?;
        analysis.match_summary
    }

    /// The cut was made: it stays.
    pub(super) fn stays(self) {
        self.workshop.cut_stays();
    }

    /// The cut follows the best again; the one that is left stays to compare with.
    pub(super) fn follows(self) {
        self.former.set(Some(
            self.workshop
                .work
                .with_untracked(|work| Tip::of(&work.design)),
        ));
        self.workshop.cut_follows();
    }

    pub(super) fn answer(self) -> String {
        words::answer(self.cut(), self.workshop.unit.get())
    }

    pub(super) fn reason(self) -> String {
        let answers = self.workshop.answers;
        if answers.freshness.get() == Freshness::Pending {
            return words::searching_reason().to_owned();
        }
        if !self.is_as_cut() {
            return words::follows_reason().to_owned();
        }
        let worst = self.summary().map(|summary| summary.worst_vswr_in_band);
        match (worst, self.present_best()) {
            (Some(worst), Some(_)) => words::as_cut_is_best(worst),
            _ => {
                let best = self
                    .other_best()
                    .map(|best| (said(tip(&best)), best.worst_vswr));
                words::as_cut_reason(worst, best, self.workshop.unit.get())
            }
        }
    }

    /// The first figures, for those who hear the page.
    pub(super) fn told(self) -> Option<String> {
        let worst = self.summary()?.worst_vswr_in_band;
        Some(words::told(self.cut(), worst, self.workshop.unit.get()))
    }
}

/// A best cut as a tip.
pub(super) const fn tip(best: &BestCut) -> Tip {
    Tip {
        length_um: best.length_um,
        distance_um: best.backshort_distance_um,
    }
}

/// A tip in words' terms.
pub(super) const fn said(tip: Tip) -> CutSaid {
    CutSaid {
        length_um: tip.length_um,
        distance_um: tip.distance_um,
    }
}
