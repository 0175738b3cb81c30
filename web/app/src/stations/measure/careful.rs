//! How careful must I be: tolerances, which dimension deserves the care, many cans.

use leptos::prelude::*;
use tinwave_core::design::Design;
use tinwave_core::tolerance::Yield;
use tinwave_protocol::tolerance::{DrawCans, RankDimensions, Ranking};
use tinwave_words::tolerance as words;

use super::cans::Cans;
use super::ranking::RankingPart;
use super::tolerances::{ToleranceEntries, Tolerances};
use crate::kit::Fold;
use crate::reactive::{effect, memo};
use crate::state::{Freshness, Workshop};
use crate::worker::Task;

/// What is worked out of tolerances. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct Careful {
    /// What is entered.
    pub(super) tolerances: Tolerances,
    /// What each dimension does.
    pub(super) ranking: Task<Option<Ranking>>,
    /// Cans that are drawn.
    pub(super) drawing: Task<Option<Yield>>,
    /// The last that was drawn of the present design and settings: stays when the work
    /// is stopped.
    pub(super) drawn: RwSignal<Option<Yield>>,
    question: Memo<Option<DrawCans>>,
}

impl Careful {
    fn open(workshop: Workshop, open: RwSignal<bool>) -> Self {
        let tolerances = Tolerances::usual();
        let design = memo(move || {
            let is_final = workshop.answers.freshness.get() == Freshness::Final;
            (open.get() && is_final).then(|| workshop.work.with(|work| nameless(&work.design)))
        });
        let question = memo(move || {
            Some(DrawCans {
                design: design.get()?,
                settings: tolerances.settings(),
            })
        });
        let careful = Self {
            tolerances,
            ranking: Task::new(),
            drawing: Task::new(),
            drawn: RwSignal::new(None),
            question,
        };
        careful.follow(design);
        careful
    }

    fn follow(self, design: Memo<Option<Design>>) {
        let ranked = memo(move || Some((design.get()?, self.tolerances.all())));
        effect(move || match ranked.get() {
            Some((design, tolerances)) => self.ranking.run(RankDimensions { design, tolerances }),
            None => self.ranking.clear(),
        });
        effect(move || {
            self.question.track();
            self.drawn.set(None);
            self.draw();
        });
        let state = self.drawing.state();
        effect(move || {
            let news = state.with(|state| match state {
                crate::worker::TaskState::Working { so_far, .. } => so_far.clone().flatten(),
                state => state.answer().cloned().flatten(),
            });
            if news.is_some() {
                self.drawn.set(news);
            }
        });
    }

    /// Draws the cans.
    pub(super) fn draw(self) {
        match self.question.get_untracked() {
            Some(question) if !question.settings.spreads.is_empty() => self.drawing.run(question),
            _ => self.drawing.clear(),
        }
    }
}

/// A design without the name, which changes nothing.
pub(super) fn nameless(design: &Design) -> Design {
    let mut design = design.clone();
    design.name.clear();
    design
}

/// The fold; nothing is worked out before it is opened.
#[component]
pub fn HowCareful() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let open = RwSignal::new(false);
    let careful = Careful::open(workshop, open);
    let tolerances = careful.tolerances;
    let summary = move || {
        let drawn = careful.drawn.get();
        drawn.map_or_else(
            || words::careful_summary().to_owned(),
            |drawn| words::careful_found(drawn.pass, tolerances.limit.get()),
        )
    };
    view! {
        <Fold title=words::careful_title() summary=summary on_toggle=move |is: bool| open.set(is)>
            <ToleranceEntries tolerances/>
            <RankingPart careful/>
            <Cans careful/>
        </Fold>
    }
}
