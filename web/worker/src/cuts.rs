//! Searches for the best cuts.

use tinwave_core::best_cut::{BestCut, BestCutSearch, FreeDimensions, Progress};
use tinwave_core::design::Design;
use tinwave_protocol::cuts::CutsFound;

use crate::Work;
use crate::outsides::kept_outside;

/// Parts that a search is told of in: each takes some milliseconds.
const PARTS: u32 = 12;

/// A search on its way.
pub struct CutsWork {
    /// `None` where nothing can be worked out.
    search: Option<BestCutSearch>,
    part: u32,
    found: Option<Vec<BestCut>>,
    with_outside: bool,
}

impl CutsWork {
    /// Sets a search up.
    #[must_use]
    pub fn new(design: &Design, free: FreeDimensions) -> Self {
        let outside = kept_outside(design);
        Self {
            search: BestCutSearch::with_outside(design, free, outside.as_ref()).ok(),
            part: 0,
            found: None,
            with_outside: outside.is_some(),
        }
    }

    /// Searches on until the next part is done.
    fn search_on(&mut self) -> Option<Vec<BestCut>> {
        let Some(search) = &mut self.search else {
            return Some(Vec::new());
        };
        self.part += 1;
        let share = f64::from(self.part) / f64::from(PARTS);
        loop {
            match search.step() {
                Progress::Done(cuts) => return Some(cuts),
                Progress::Working { done } if done >= share && self.part < PARTS => return None,
                Progress::Working { .. } => {}
            }
        }
    }
}

impl Work for CutsWork {
    type Answer = CutsFound;

    fn total(&self) -> u32 {
        PARTS
    }

    fn step(&mut self) {
        if self.found.is_none() {
            self.found = self.search_on();
        }
    }

    fn finish(mut self) -> CutsFound {
        while self.found.is_none() {
            self.step();
        }
        CutsFound {
            cuts: self.found.unwrap_or_default(),
            with_outside: self.with_outside,
        }
    }
}
