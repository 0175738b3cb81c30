//! The plan of a link: what was entered, the antennas at its ends, and what follows.

use std::sync::Arc;

use leptos::prelude::*;
use tinwave_core::analysis::Analyser;
use tinwave_core::design::Design;
use tinwave_core::grade::{Best, Grade, grade};
use tinwave_core::outside::OutsideSpectrum;
use tinwave_core::radio_link::End;
use tinwave_maker::link;
use tinwave_maker::link_plan::{EndAntenna, LinkPlan, PlanAnswer, PlanAntenna, text};
use tinwave_maker::workpiece::Workpiece;
use tinwave_protocol::outside::{OutsideKey, SolveOutside};

use super::{Answers, Memory};
use crate::reactive::{effect, memo};
use crate::worker::Task;

/// An antenna, as far as it is known.
type Antenna = Option<Arc<PlanAntenna>>;

/// The plan of a link. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct Plan {
    /// What was entered.
    pub entries: RwSignal<LinkPlan>,
    /// What follows from it; `None` where one of its numbers can't be worked with at this
    /// band.
    pub answer: Memo<Option<Arc<PlanAnswer>>>,
    work: Memo<Workpiece>,
    kept: [KeptEnd; 2],
}

impl Plan {
    /// The plan that the device keeps, or the usual one.
    pub(super) fn open(work: Memo<Workpiece>, answers: Answers, memory: Memory) -> Self {
        let kept_text = memory.kept.with_untracked(|kept| kept.plan.clone());
        let plan = kept_text.and_then(|kept| text::read(&kept));
        let entries = RwSignal::new(plan.unwrap_or_default());
        let this_can = memo(move || {
            if !answers.has_cut() {
                return None;
            }
            let analysis = answers.analysis.get()?;
            let antenna = work.with(|work| PlanAntenna::of_can(&work.design, &analysis))?;
            Some(Arc::new(antenna))
        });
        let kept = [End::A, End::B].map(|end| KeptEnd::new(end, entries, work));
        let antennas = kept.map(|kept| {
            memo(move || {
                entries.with(|plan| match &plan.end(kept.end).antenna {
                    EndAntenna::ThisDesign => this_can.get(),
                    EndAntenna::Kept(_) => kept.antenna.get(),
                    EndAntenna::Stated => {
                        let entered = plan.end(kept.end);
                        let stated = PlanAntenna::stated(entered.gain_dbi, entered.width_deg);
                        Some(Arc::new(stated))
                    }
                })
            })
        });
        let band = memo(move || work.with(|work| work.design.band));
        let answer = memo(move || {
            let [here, far] = antennas.map(|antenna: Memo<Antenna>| antenna.get());
            let ends = [here.as_deref(), far.as_deref()];
            let answer = entries.with(|plan| PlanAnswer::new(plan, band.get(), ends));
            answer.ok().map(Arc::new)
        });
        let plan = Self {
            entries,
            answer,
            work,
            kept,
        };
        plan.follow(answers, memory);
        plan
    }

    /// Keeps what is entered, and asks the worker for what kept designs need.
    fn follow(self, answers: Answers, memory: Memory) {
        Effect::new(move |before: Option<()>| {
            let entered = self.entries.with(text::write);
            if before.is_some() {
                memory.change(|kept| kept.plan = Some(entered));
            }
        });
        for kept in self.kept {
            kept.follow(answers);
        }
    }

    /// Changes what is entered.
    pub fn change(self, change: impl FnOnce(&mut LinkPlan)) {
        self.entries.update(change);
    }

    /// Distance between the ends, m.
    #[must_use]
    pub fn distance_m(self) -> f64 {
        self.entries.with(|plan| plan.distance_m)
    }

    /// Whether an end waits for the present design, which will not do.
    #[must_use]
    pub fn waits_for_this_can(self) -> bool {
        let is_this = |end| {
            self.entries
                .with(|plan| plan.end(end).antenna == EndAntenna::ThisDesign)
        };
        let lacks = |end| {
            self.answer.with(|answer| {
                answer
                    .as_ref()
                    .is_some_and(|answer| answer.end(end).antenna.is_none())
            })
        };
        [End::A, End::B]
            .into_iter()
            .any(|end| is_this(end) && lacks(end))
    }

    /// Middle of the present band, Hz.
    #[must_use]
    pub fn frequency_hz(self) -> f64 {
        self.work.with(|work| {
            let band = work.design.band;
            500.0 * (f64::from(band.low_khz) + f64::from(band.high_khz))
        })
    }
}

/// A kept design at an end: worked out at the present band.
#[derive(Clone, Copy)]
struct KeptEnd {
    end: End,
    /// The design with the present band, if one is chosen that can be opened.
    design: Memo<Option<Design>>,
    /// The field outside it, once the worker has it.
    outside: RwSignal<Option<(OutsideKey, Option<Arc<OutsideSpectrum>>)>>,
    antenna: Memo<Antenna>,
    task: Task<Option<OutsideSpectrum>>,
}

impl KeptEnd {
    fn new(end: End, entries: RwSignal<LinkPlan>, work: Memo<Workpiece>) -> Self {
        let design = memo(move || {
            let fragment = entries.with(|plan| match &plan.end(end).antenna {
                EndAntenna::Kept(fragment) => Some(fragment.clone()),
                EndAntenna::ThisDesign | EndAntenna::Stated => None,
            })?;
            let mut design = link::decode(&fragment).ok()?.work.design;
            design.band = work.with(|work| work.design.band);
            design.sweep = None;
            // Its modes alone decide: how well it is cut shows in its match.
            let is_none = grade(&design, Best::Unknown).grade == Grade::WillNotDo;
            (!is_none && design.check().is_ok()).then_some(design)
        });
        let outside = RwSignal::new(None::<(OutsideKey, Option<Arc<OutsideSpectrum>>)>);
        let antenna = memo(move || {
            let design = design.get()?;
            let key = OutsideKey::of(&design);
            let solved = outside.with(|known| {
                let known = known.as_ref().filter(|(known, _)| *known == key)?;
                known.1.clone()
            });
            let analysis = Analyser::new().analyse_with(&design, solved.as_ref());
            PlanAntenna::of_can(&design, &analysis.ok()?).map(Arc::new)
        });
        Self {
            end,
            design,
            outside,
            antenna,
            task: Task::new(),
        }
    }

    fn follow(self, answers: Answers) {
        effect(move || {
            let Some(design) = self.design.get() else {
                return;
            };
            let key = OutsideKey::of(&design);
            let known = self
                .outside
                .with_untracked(|known| known.as_ref().is_some_and(|(known, _)| *known == key));
            if known || !answers.is_awake() {
                return;
            }
            self.task.run_then(SolveOutside { design }, move |solved| {
                self.outside.set(Some((key, solved.clone().map(Arc::new))));
            });
        });
    }
}
