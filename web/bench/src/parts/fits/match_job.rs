//! The best pair of each trade size, one after the other.

use std::sync::Arc;

use tinwave_core::best_cut::{BestCut, BestCutSearch, FreeDimensions, Progress};
use tinwave_core::design::Design;
use tinwave_core::outside::OutsideSteps;

use super::desk::{self, InHand};
use super::{show, size_fit};
use crate::job::Job;
use crate::reply::Reply;
use crate::request::Request;

/// Steps that a size is counted for.
const PARTS: u32 = 6;

/// The job.
pub(super) struct MatchJob {
    request: Request,
    /// What is left, the next one last.
    left: Vec<Design>,
    total: u32,
    /// The search for the size in hand, and its step.
    search: Option<BestCutSearch>,
    part: u32,
    news: bool,
    _in_hand: InHand,
}

/// The search for a size with its own mouth, solved now; `None` where the size can't
/// be computed.
fn begun(trial: &Design) -> Option<BestCutSearch> {
    let outside = OutsideSteps::of_design(trial).ok().flatten();
    let solved = outside.and_then(|mut steps| {
        while steps.step() {}
        steps.finish().map(Arc::new)
    });
    let free = FreeDimensions::LengthAndDistance;
    BestCutSearch::with_outside(trial, free, solved.as_ref()).ok()
}

/// Goes on with a search until this share of it is done; what it has found at its end.
fn go_on(search: &mut BestCutSearch, share: f64) -> Option<Option<BestCut>> {
    loop {
        match search.step() {
            Progress::Done(cuts) => return Some(cuts.first().copied()),
            Progress::Working { done } if done >= share => return None,
            Progress::Working { .. } => {}
        }
    }
}

impl MatchJob {
    pub(super) fn new(request: &Request) -> Self {
        let fits = size_fit::fits(request.design());
        let unknown = fits.into_iter().filter(|fit| fit.cut.is_none());
        let mut left: Vec<Design> = unknown.map(|fit| fit.design).collect();
        left.reverse();
        Self {
            request: request.clone(),
            total: PARTS * u32::try_from(left.len()).unwrap_or(0),
            left,
            search: None,
            part: 0,
            news: false,
            _in_hand: InHand::new(request.design()),
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
        self.part += 1;
        let found = if self.part == 1 {
            self.search = begun(trial);
            self.search.is_none().then_some(None)
        } else {
            // The last part goes to the end.
            let share = if self.part < PARTS {
                f64::from(self.part - 1) / f64::from(PARTS - 1)
            } else {
                f64::INFINITY
            };
            self.search.as_mut().and_then(|search| go_on(search, share))
        };
        if let Some(cut) = found {
            desk::keep(trial.clone(), cut);
            self.left.pop();
            self.part = 0;
            self.news = true;
        }
    }

    fn so_far(&self) -> Option<Reply> {
        self.news.then(|| {
            let mut reply = Reply::new();
            show(&self.request, &mut reply);
            reply
        })
    }

    fn finish(self: Box<Self>) -> Reply {
        let mut reply = Reply::new();
        show(&self.request, &mut reply);
        reply.show("work", false);
        reply
    }
}
