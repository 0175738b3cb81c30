//! The search for the best funnel, and the points of the trade solved one by one.

use tinwave_core::funnel::{FunnelProgress, FunnelSearch};
use tinwave_core::outside::Rim;
use tinwave_core::si::metres;
use tinwave_protocol::beam::{FunnelFound, FunnelLimits, FunnelPoint, SearchFunnel};

use super::can::BareCan;
use super::estimate;
use super::funnel_size::{funnel, rim, si};
use crate::Work;

/// Steps that the search may take, and points of both trades.
const SEARCH_STEPS: u32 = 27;
const POINTS: u32 = 16;

/// Search and trades, a body solved in each step.
pub struct FunnelWork {
    can: BareCan,
    limits: FunnelLimits,
    /// `None` where the can is beyond the computation, or nothing limits the funnel.
    search: Option<FunnelSearch>,
    found: FunnelFound,
    /// Something new to show.
    is_news: bool,
}

impl FunnelWork {
    /// Sets the search up; what the quick fit says is there at once.
    #[must_use]
    pub fn new(question: &SearchFunnel) -> Self {
        let (can, limits) = (BareCan::of(&question.design), question.limits);
        let outline = can.outline(Rim::Bare);
        let possible = can.is_covered() && !limits.are_none();
        let mut found = FunnelFound::default();
        if possible {
            let best = estimate::best(&can, &limits);
            found.take_trades(&can, &limits, best.as_ref());
        }
        Self {
            search: possible.then(|| FunnelSearch::new(&outline, can.frequency_hz(), si(&limits))),
            can,
            limits,
            found,
            is_news: true,
        }
    }

    /// One step of the search; the trades' points once it has ended.
    fn search(&mut self) {
        let Some(search) = &mut self.search else {
            return;
        };
        if let FunnelProgress::Done(choice) = search.step() {
            let best = choice.map(|choice| {
                let (mouth, angle) = (choice.mouth_diameter_m, choice.half_angle_rad);
                funnel(&self.can, mouth, angle, choice.directivity_dbi, true)
            });
            self.found
                .take_trades(&self.can, &self.limits, best.as_ref());
            self.found.best = Some(best);
            self.is_news = true;
        }
    }
}

/// Fills in the trades by the fit.
trait Trades {
    fn take_trades(&mut self, can: &BareCan, limits: &FunnelLimits, best: Option<&FunnelPoint>);
}

impl Trades for FunnelFound {
    fn take_trades(&mut self, can: &BareCan, limits: &FunnelLimits, best: Option<&FunnelPoint>) {
        self.by_length = estimate::by_length(can, limits);
        self.by_mouth = best.map_or_else(Vec::new, |best| {
            estimate::by_mouth(can, best.length_m, metres(best.mouth_um))
        });
    }
}

/// Solves for the first point that is not; drops it where that can't be.
fn solve_next(can: &BareCan, points: &mut Vec<FunnelPoint>) -> bool {
    let Some(at) = points.iter().position(|point| !point.is_solved) else {
        return false;
    };
    match points.get(at).and_then(|point| can.solve(rim(point))) {
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

impl Work for FunnelWork {
    type Answer = Option<FunnelFound>;

    fn total(&self) -> u32 {
        if self.search.is_some() {
            1 + SEARCH_STEPS + POINTS
        } else {
            0
        }
    }

    fn step(&mut self) {
        self.is_news = false;
        if self.found.bare_dbi.is_none() {
            let bare = self.can.solve(Rim::Bare);
            self.found.bare_dbi = Some(bare.map_or(f64::NAN, |bare| bare.gain_dbi));
            self.is_news = true;
        } else if self.found.best.is_none() {
            self.search();
        } else {
            self.is_news = solve_next(&self.can, &mut self.found.by_length)
                || solve_next(&self.can, &mut self.found.by_mouth);
        }
    }

    fn so_far(&self) -> Option<Self::Answer> {
        self.is_news.then(|| Some(self.found.clone()))
    }

    fn finish(self) -> Self::Answer {
        self.search.is_some().then_some(self.found)
    }
}
