//! The search for screws, and their depth curves, step by step.

use tinwave_core::design::Design;
use tinwave_core::screw_search::{ScrewProgress, ScrewSearch, depth_curve_part, depth_points};

use super::desk::{self, InHand, Work, nameless};
use super::screw_entries::ScrewChoice;
use super::screw_found::ScrewsFound;
use super::show_all;
use crate::job::Job;
use crate::outsides::outside_of;
use crate::reply::Reply;
use crate::request::Request;

/// Steps of the search, and of each screw's curve, which has so many points a step:
/// enough for the most that a curve has.
const PARTS: u32 = 100;
/// By this part the search's own guess of what is done should have reached its end;
/// the rest is for what the guess left out.
const GUESSED: u32 = 80;
/// Most cans of a part but the last.
const MOST_CANS: u32 = 12;
const CURVE_PARTS: u32 = 20;
const PER_PART: u32 = 20;
/// A curve goes so much deeper than the best depth, micrometres.
const DEEPER_UM: u32 = 3_000;

/// The job.
pub(super) struct ScrewJob {
    request: Request,
    search: ScrewSearch,
    ended: bool,
    found: ScrewsFound,
    taken: u32,
    _in_hand: InHand,
}

/// More of VSWR against the depth of one of the screws, the others in place.
fn lengthen_curve(found: &mut ScrewsFound, which: usize) {
    let Some(screw) = found.screws().get(which).copied() else {
        return;
    };
    let mut design: Design = found.with_screws();
    design.screws.retain(|other| *other != screw);
    let outside = outside_of(&found.design);
    let pitch_um = found.choice.thread.pitch_um;
    let deepest_um = screw.depth_um.saturating_add(DEEPER_UM);
    let points = depth_points(pitch_um, deepest_um);
    if found.curves.len() <= which {
        found.curves.push(Vec::new());
    }
    let Some(curve) = found.curves.get_mut(which) else {
        return;
    };
    let begun = u32::try_from(curve.len()).unwrap_or(points);
    let range = begun..points.min(begun.saturating_add(PER_PART));
    let more = depth_curve_part(&design, outside.as_ref(), screw, pitch_um, range);
    curve.extend(more.unwrap_or_default());
}

impl ScrewJob {
    /// `None` where the design is out of range.
    pub(super) fn new(request: &Request) -> Option<Self> {
        let choice = ScrewChoice::read(request);
        let design = nameless(request.design());
        let outside = outside_of(&design);
        let search = ScrewSearch::new(&design, outside.as_ref(), choice.settings()).ok()?;
        Some(Self {
            request: request.clone(),
            search,
            ended: false,
            _in_hand: InHand::new(Work::Screws(design.clone(), choice)),
            found: ScrewsFound {
                design,
                choice,
                tuned: None,
                curves: Vec::new(),
            },
            taken: 0,
        })
    }

    /// Searches until so much is done, with at most so many cans.
    fn search(&mut self, share: f64, most: u32) {
        for _ in 0..most {
            if self.ended {
                return;
            }
            match self.search.step() {
                ScrewProgress::Working { done } if done >= share => return,
                ScrewProgress::Working { .. } => {}
                ScrewProgress::Done(tuned) => {
                    self.found.tuned = tuned;
                    self.ended = true;
                }
            }
        }
    }
}

impl Job for ScrewJob {
    fn total(&self) -> u32 {
        PARTS + CURVE_PARTS * self.found.choice.count
    }

    fn step(&mut self) {
        self.taken += 1;
        if self.taken <= PARTS {
            let most = if self.taken < PARTS {
                MOST_CANS
            } else {
                u32::MAX
            };
            self.search(f64::from(self.taken) / f64::from(GUESSED), most);
            return;
        }
        let which = (self.taken - PARTS - 1) / CURVE_PARTS;
        lengthen_curve(&mut self.found, which as usize);
    }

    fn finish(self: Box<Self>) -> Reply {
        desk::keep_screws(self.found.clone());
        let mut reply = Reply::new();
        let latest = desk::latest();
        show_all(latest.as_ref().unwrap_or(&self.request), &mut reply);
        reply
    }
}
