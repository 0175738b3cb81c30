//! The search for tuning screws, and their depth curves.

use tinwave_core::design::Design;
use tinwave_core::screw_search::{
    ScrewProgress, ScrewSearch, TunedScrews, depth_curve_part, depth_points,
};
use tinwave_protocol::screws::{ScrewsFound, SearchScrews};

use crate::Work;
use crate::outside_first::OutsideFirst;

/// Steps of the search, and of each screw's curve, which has so many points a step:
/// enough for the most that a curve has.
const PARTS: u32 = 100;
/// By this part the search's own guess of what is done should have reached its end;
/// the rest is for what the guess left out.
const GUESSED: u32 = 80;
/// Most cans of a part but the last.
const MOST_CANS: u32 = 12;
const CURVE_PARTS: u32 = 40;
const PER_PART: u32 = 10;
/// A curve goes so much deeper than the best depth, micrometres.
const DEEPER_UM: u32 = 3_000;

/// A search on its way.
pub struct ScrewsWork {
    question: SearchScrews,
    outside: OutsideFirst,
    /// Set up once the outside is there; `None` when it has ended.
    search: Option<ScrewSearch>,
    found: ScrewsFound,
    taken: u32,
}

impl ScrewsWork {
    /// Prepares it.
    #[must_use]
    pub fn new(question: SearchScrews) -> Self {
        Self {
            outside: OutsideFirst::new(&question.design),
            question,
            search: None,
            found: ScrewsFound::default(),
            taken: 0,
        }
    }

    fn begin(&mut self) {
        let SearchScrews {
            design, settings, ..
        } = &self.question;
        let outside = self.outside.outside();
        self.search = ScrewSearch::new(design, outside.as_ref(), *settings).ok();
    }

    /// Searches until so much is done, with at most so many cans.
    fn search(&mut self, share: f64, most: u32) {
        for _ in 0..most {
            let Some(search) = &mut self.search else {
                return;
            };
            match search.step() {
                ScrewProgress::Working { done } if done >= share => return,
                ScrewProgress::Working { .. } => {}
                ScrewProgress::Done(tuned) => {
                    self.found.tuned = tuned;
                    self.search = None;
                }
            }
        }
    }

    /// More of VSWR against the depth of one of the screws, the others in place.
    fn lengthen_curve(&mut self, which: usize) -> Option<()> {
        let TunedScrews { screws, .. } = self.found.tuned.as_ref()?;
        let screw = *screws.get(which)?;
        let others = screws.iter().filter(|other| **other != screw).copied();
        let mut design: Design = self.question.design.clone();
        design.screws.extend(others);
        let pitch_um = self.question.pitch_um;
        let points = depth_points(pitch_um, screw.depth_um.saturating_add(DEEPER_UM));
        if self.found.curves.len() <= which {
            self.found.curves.push(Vec::new());
        }
        let curve = self.found.curves.get_mut(which)?;
        let begun = u32::try_from(curve.len()).unwrap_or(points);
        let range = begun..points.min(begun.saturating_add(PER_PART));
        let outside = self.outside.outside();
        let more = depth_curve_part(&design, outside.as_ref(), screw, pitch_um, range);
        curve.extend(more.unwrap_or_default());
        Some(())
    }
}

impl Work for ScrewsWork {
    type Answer = ScrewsFound;

    fn total(&self) -> u32 {
        self.outside.total() + 1 + PARTS + CURVE_PARTS * self.question.settings.count.min(2)
    }

    fn step(&mut self) {
        if self.outside.step() {
            return;
        }
        if self.taken == 0 {
            self.begin();
        } else if self.taken <= PARTS {
            let most = if self.taken < PARTS {
                MOST_CANS
            } else {
                u32::MAX
            };
            self.search(f64::from(self.taken) / f64::from(GUESSED), most);
        } else {
            let which = (self.taken - PARTS - 1) / CURVE_PARTS;
            self.lengthen_curve(which as usize);
        }
        self.taken += 1;
    }

    fn finish(self) -> ScrewsFound {
        self.found
    }
}
