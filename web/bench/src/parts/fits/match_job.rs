//! The best pair of each trade size, one after the other.

use std::sync::Arc;

use tinwave_core::best_cut::FreeDimensions;
use tinwave_core::design::Design;
use tinwave_core::outside::{OutsideSpectrum, OutsideSteps};

use super::desk::{self, InHand};
use super::{show, size_fit};
use crate::cut_search::CutSearch;
use crate::job::Job;
use crate::reply::Reply;
use crate::request::Request;

/// Parts of the solution of a size's mouth, and of the search for its cut.
const MOUTH_PARTS: u32 = 10;
const CUT_PARTS: u32 = 5;

/// What is done for the size in hand.
enum Stage {
    Mouth { steps: OutsideSteps, part: u32 },
    Cut(CutSearch),
}

impl Stage {
    fn new(trial: &Design) -> Self {
        match OutsideSteps::of_design(trial) {
            Ok(Some(steps)) => Self::Mouth { steps, part: 0 },
            _ => Self::cut(trial, None),
        }
    }

    fn cut(trial: &Design, outside: Option<OutsideSpectrum>) -> Self {
        let free = FreeDimensions::LengthAndDistance;
        let outside = outside.map(Arc::new);
        Self::Cut(CutSearch::new(trial, free, outside.as_ref(), CUT_PARTS))
    }
}

/// The job.
pub(super) struct MatchJob {
    /// What is left, the next one last.
    left: Vec<Design>,
    total: u32,
    stage: Option<Stage>,
    news: bool,
    _in_hand: InHand,
}

impl MatchJob {
    pub(super) fn new(request: &Request) -> Self {
        desk::set_latest(request);
        let fits = size_fit::fits(request.design());
        let trials = fits.iter().map(|fit| fit.design.clone()).collect();
        let unknown = fits.into_iter().filter(|fit| fit.cut.is_none());
        let left: Vec<Design> = unknown.map(|fit| fit.design).rev().collect();
        Self {
            total: (MOUTH_PARTS + CUT_PARTS) * u32::try_from(left.len()).unwrap_or(0),
            left,
            stage: None,
            news: false,
            _in_hand: InHand::new(trials),
        }
    }
}

impl Job for MatchJob {
    fn total(&self) -> u32 {
        self.total
    }

    fn step(&mut self) {
        self.news = false;
        let Some(trial) = self.left.last() else {
            return;
        };
        match self.stage.take().unwrap_or_else(|| Stage::new(trial)) {
            Stage::Mouth { mut steps, part } => {
                let wanted = steps.total() * (part + 1) as usize / MOUTH_PARTS as usize;
                let mut more = true;
                while more && steps.done() < wanted {
                    more = steps.step();
                }
                self.stage = Some(if part + 1 < MOUTH_PARTS {
                    Stage::Mouth {
                        steps,
                        part: part + 1,
                    }
                } else {
                    Stage::cut(trial, steps.finish())
                });
            }
            Stage::Cut(mut search) => match search.next_part() {
                None => self.stage = Some(Stage::Cut(search)),
                Some(cuts) => {
                    desk::keep(trial.clone(), cuts.first().copied());
                    self.left.pop();
                    self.news = true;
                }
            },
        }
    }

    fn so_far(&self) -> Option<Reply> {
        self.news.then(shown)
    }

    fn finish(self: Box<Self>) -> Reply {
        let mut reply = shown();
        reply.show("work", false);
        reply
    }
}

/// The list as it is asked for by now.
fn shown() -> Reply {
    let mut reply = Reply::new();
    if let Some(request) = desk::latest() {
        show(&size_fit::fits(request.design()), &request, &mut reply);
    }
    reply
}
