//! The best pair of each trade size, one after the other.

use std::sync::Arc;

use tinwave_core::best_cut::FreeDimensions;
use tinwave_core::design::Design;
use tinwave_core::outside::OutsideSteps;

use super::desk::{self, InHand};
use super::{show, size_fit};
use crate::cut_search::CutSearch;
use crate::job::Job;
use crate::reply::Reply;
use crate::request::Request;

/// Parts of each search; solving the mouth before it counts as one more.
const PARTS: u32 = 5;

/// The job.
pub(super) struct MatchJob {
    request: Request,
    /// What is left, the next one last.
    left: Vec<Design>,
    total: u32,
    /// The search for the size in hand.
    search: Option<CutSearch>,
    news: bool,
    _in_hand: InHand,
}

/// The search for a size with its own mouth, solved now.
fn begun(trial: &Design) -> CutSearch {
    let outside = OutsideSteps::of_design(trial).ok().flatten();
    let solved = outside.and_then(|mut steps| {
        while steps.step() {}
        steps.finish().map(Arc::new)
    });
    let free = FreeDimensions::LengthAndDistance;
    CutSearch::new(trial, free, solved.as_ref(), PARTS)
}

impl MatchJob {
    pub(super) fn new(request: &Request) -> Self {
        let fits = size_fit::fits(request.design());
        let unknown = fits.into_iter().filter(|fit| fit.cut.is_none());
        let mut left: Vec<Design> = unknown.map(|fit| fit.design).collect();
        left.reverse();
        Self {
            request: request.clone(),
            total: (1 + PARTS) * u32::try_from(left.len()).unwrap_or(0),
            left,
            search: None,
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
        let Some(search) = &mut self.search else {
            self.search = Some(begun(trial));
            return;
        };
        if let Some(cuts) = search.next_part() {
            desk::keep(trial.clone(), cuts.first().copied());
            self.left.pop();
            self.search = None;
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
