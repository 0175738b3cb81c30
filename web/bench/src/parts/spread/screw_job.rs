//! The search for screws, and their depth curves, step by step.

use tinwave_core::design::{Design, Screw};
use tinwave_core::screw_search::{DepthPoint, ScrewProgress, ScrewSearch, depth_curve};

use super::desk::{self, InHand, Work, nameless};
use super::screw_entries::ScrewChoice;
use super::screw_found::ScrewsFound;
use super::show_all;
use crate::job::Job;
use crate::outsides::outside_of;
use crate::reply::Reply;
use crate::request::Request;

/// Steps of the search; one more for each screw's curve.
const PARTS: u32 = 80;
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

/// VSWR against the depth of one of the screws, the others in place.
fn curve(found: &ScrewsFound, screw: &Screw) -> Vec<DepthPoint> {
    let mut design: Design = found.with_screws();
    design.screws.retain(|other| other != screw);
    let outside = outside_of(&found.design);
    let pitch_um = found.choice.thread.pitch_um;
    let deepest_um = screw.depth_um.saturating_add(DEEPER_UM);
    depth_curve(&design, outside.as_ref(), *screw, pitch_um, deepest_um).unwrap_or_default()
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

    /// Searches until so much is done; 1: to the end.
    fn search(&mut self, share: f64) {
        while !self.ended {
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
        PARTS + self.found.choice.count
    }

    fn step(&mut self) {
        self.taken += 1;
        if self.taken <= PARTS {
            self.search(f64::from(self.taken) / f64::from(PARTS));
            return;
        }
        let which = self.found.curves.len();
        if let Some(screw) = self.found.screws().get(which).copied() {
            let curve = curve(&self.found, &screw);
            self.found.curves.push(curve);
        }
    }

    fn finish(self: Box<Self>) -> Reply {
        desk::keep_screws(self.found.clone());
        let mut reply = Reply::new();
        let latest = desk::latest();
        show_all(latest.as_ref().unwrap_or(&self.request), &mut reply);
        reply
    }
}
