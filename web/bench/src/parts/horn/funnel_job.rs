//! The search for the best funnel, and the points of the trade solved one by one.

use tinwave_core::funnel::{FunnelProgress, FunnelSearch};
use tinwave_core::outside::Rim;

use super::can_key::CanKey;
use super::estimate;
use super::found::{self, FunnelFound, FunnelKey};
use super::funnel::show_found;
use super::funnel_size::{Funnel, Limits};
use crate::job::Job;
use crate::reply::Reply;
use crate::request::Request;

/// Steps that the search may take, and points of both charts.
const SEARCH_STEPS: u32 = 27;
const POINTS: u32 = 16;

/// Search and charts, a body solved in each step.
pub(super) struct FunnelJob {
    request: Request,
    can: CanKey,
    limits: Limits,
    search: FunnelSearch,
    found: FunnelFound,
    /// Something new to show.
    is_news: bool,
}

/// The trade's points by the fit.
pub(super) fn trade_by_fit(
    can: &CanKey,
    limits: &Limits,
    best: Option<&Funnel>,
) -> (Vec<Funnel>, Vec<Funnel>) {
    let by_mouth = best.map_or_else(Vec::new, |best| {
        estimate::by_mouth(can, best.length_m(can), best.mouth_m())
    });
    (estimate::by_length(can, limits), by_mouth)
}

/// Solves for the first point that is not; drops it where that can't be.
fn solve_next(can: &CanKey, points: &mut Vec<Funnel>) -> bool {
    let Some(at) = points.iter().position(|point| !point.is_solved) else {
        return false;
    };
    match points.get(at).and_then(|point| can.solve(point.rim())) {
        Some(solved) => {
            if let Some(point) = points.get_mut(at) {
                point.gain_dbi = solved.gain_dbi;
                point.is_solved = true;
            }
        }
        None => {
            points.remove(at);
        }
    }
    true
}

impl FunnelJob {
    pub(super) fn new(request: &Request, can: CanKey, limits: Limits) -> Self {
        let outline = can.outline(Rim::Bare);
        Self {
            request: request.clone(),
            can,
            limits,
            search: FunnelSearch::new(&outline, can.frequency_hz(), limits.si()),
            // One that was broken off goes on where it was.
            found: found::funnels(&(can, limits)).unwrap_or_default(),
            is_news: false,
        }
    }

    const fn key(&self) -> FunnelKey {
        (self.can, self.limits)
    }

    /// One step of the search; the trade's points once it has ended.
    fn search(&mut self) {
        if let FunnelProgress::Done(choice) = self.search.step() {
            let best = choice.map(|choice| {
                let (mouth, angle) = (choice.mouth_diameter_m, choice.half_angle_rad);
                Funnel::new(mouth, angle, choice.directivity_dbi, true)
            });
            let trade = trade_by_fit(&self.can, &self.limits, best.as_ref());
            (self.found.by_length, self.found.by_mouth) = trade;
            self.found.best = Some(best);
            self.is_news = true;
        }
    }
}

impl Job for FunnelJob {
    fn total(&self) -> u32 {
        1 + SEARCH_STEPS + POINTS
    }

    fn step(&mut self) {
        self.is_news = false;
        if self.found.bare_dbi.is_none() {
            let bare = self.can.solve(Rim::Bare);
            self.found.bare_dbi = Some(bare.map_or(f64::NAN, |bare| bare.gain_dbi));
        } else if self.found.best.is_none() {
            self.search();
        } else {
            self.is_news = solve_next(&self.can, &mut self.found.by_length)
                || solve_next(&self.can, &mut self.found.by_mouth);
        }
        if self.is_news {
            found::keep_funnels(self.key(), self.found.clone());
        }
    }

    fn so_far(&self) -> Option<Reply> {
        self.is_news.then(|| {
            let mut reply = Reply::new();
            let latest = found::latest();
            show_found(latest.as_ref().unwrap_or(&self.request), &mut reply);
            reply
        })
    }

    fn finish(self: Box<Self>) -> Reply {
        found::set_work(None);
        let mut reply = Reply::new();
        let latest = found::latest();
        show_found(latest.as_ref().unwrap_or(&self.request), &mut reply);
        reply
    }
}
