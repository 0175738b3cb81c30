//! Drawing many cans, step by step.

use tinwave_core::tolerance::YieldSteps;

use super::desk::{self, InHand, Work, YieldKey};
use super::{show_all, yield_part};
use crate::job::Job;
use crate::outsides::outside_of;
use crate::reply::Reply;
use crate::request::Request;

/// Steps before the first can is drawn (pieces of the stand-in and its checks: one
/// and eight beside one for each dimension) and cans of a step; some spare steps do
/// no harm.
const BEFORE: u32 = 9;
const PER_STEP: u32 = 200;
/// Figures are told every so many steps.
const TELL_EVERY: u32 = 5;

/// The job.
pub(super) struct YieldJob {
    request: Request,
    key: YieldKey,
    steps: YieldSteps,
    total: u32,
    taken: u32,
    is_news: bool,
    _in_hand: InHand,
}

impl YieldJob {
    /// `None` where the can is not computed.
    pub(super) fn new(request: &Request, key: YieldKey) -> Option<Self> {
        let outside = outside_of(key.design());
        let steps = YieldSteps::new(key.design(), outside.as_ref(), key.settings.clone()).ok()?;
        let dimensions = u32::try_from(key.settings.spreads.len()).unwrap_or(0);
        Some(Self {
            request: request.clone(),
            total: BEFORE + dimensions + key.settings.samples.div_ceil(PER_STEP),
            steps,
            taken: 0,
            is_news: false,
            _in_hand: InHand::new(Work::Yield(key.clone())),
            key,
        })
    }

    fn keep(&self) {
        if let Some(drawn) = self.steps.clone().finish() {
            desk::keep_drawn(&self.key, drawn);
        }
    }
}

impl Job for YieldJob {
    fn total(&self) -> u32 {
        self.total
    }

    fn step(&mut self) {
        self.taken += 1;
        self.steps.step();
        self.is_news = self.taken.is_multiple_of(TELL_EVERY) && self.steps.done() > 0.0;
        if self.is_news {
            self.keep();
        }
    }

    fn so_far(&self) -> Option<Reply> {
        let drawn = self.is_news.then(|| desk::drawn(&self.key)).flatten()?;
        let mut reply = Reply::new();
        let latest = desk::latest();
        let request = latest.as_ref().unwrap_or(&self.request);
        yield_part::show_figures(request, &self.key, &drawn, &mut reply);
        Some(reply)
    }

    fn finish(mut self: Box<Self>) -> Reply {
        while self.steps.step() {}
        self.keep();
        let mut reply = Reply::new();
        let latest = desk::latest();
        show_all(latest.as_ref().unwrap_or(&self.request), &mut reply);
        reply
    }
}
