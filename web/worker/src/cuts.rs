//! Searches for the best cuts.

use std::sync::Arc;

use tinwave_core::best_cut::{BestCut, BestCutSearch, FreeDimensions, Progress};
use tinwave_core::design::Design;
use tinwave_core::outside::OutsideSpectrum;
use tinwave_protocol::cuts::{BestCuts, CutsFound};

use crate::Work;
use crate::outsides::kept_outside;

/// A search in so many parts.
#[derive(Clone, Debug)]
pub struct CutSearch {
    /// `None` where nothing can be computed.
    search: Option<BestCutSearch>,
    part: u32,
    parts: u32,
}

impl CutSearch {
    /// Sets a search up.
    #[must_use]
    pub fn new(
        design: &Design,
        free: FreeDimensions,
        outside: Option<&Arc<OutsideSpectrum>>,
        parts: u32,
    ) -> Self {
        Self {
            search: BestCutSearch::with_outside(design, free, outside).ok(),
            part: 0,
            parts,
        }
    }

    /// Works on the next part; what was found, at the latest in the last part.
    pub fn next_part(&mut self) -> Option<Vec<BestCut>> {
        self.part += 1;
        let Some(search) = &mut self.search else {
            return Some(Vec::new());
        };
        let share = f64::from(self.part) / f64::from(self.parts);
        loop {
            match search.step() {
                Progress::Done(cuts) => return Some(cuts),
                Progress::Working { done } if done >= share && self.part < self.parts => {
                    return None;
                }
                Progress::Working { .. } => {}
            }
        }
    }
}

/// Parts of each search.
const PARTS: u32 = 12;

/// Both searches: the pair first, because the page shows it first.
pub struct CutsWork {
    pair: CutSearch,
    length: CutSearch,
    found: CutsFound,
    pair_done: bool,
    length_done: bool,
}

impl CutsWork {
    /// Sets both searches up.
    #[must_use]
    pub fn new(question: &BestCuts) -> Self {
        let outside = kept_outside(&question.design);
        let search = |free| CutSearch::new(&question.design, free, outside.as_ref(), PARTS);
        Self {
            pair: search(FreeDimensions::LengthAndDistance),
            length: search(FreeDimensions::Length),
            found: CutsFound {
                with_outside: outside.is_some(),
                ..CutsFound::default()
            },
            pair_done: false,
            length_done: false,
        }
    }
}

impl Work for CutsWork {
    type Answer = CutsFound;

    fn total(&self) -> u32 {
        2 * PARTS
    }

    fn step(&mut self) {
        if !self.pair_done {
            if let Some(cuts) = self.pair.next_part() {
                self.found.pair = cuts;
                self.pair_done = true;
            }
        } else if !self.length_done
            && let Some(cuts) = self.length.next_part()
        {
            self.found.length_only = cuts;
            self.length_done = true;
        }
    }

    fn finish(mut self) -> CutsFound {
        // A search may have needed fewer parts than it was given; none needs more.
        while !self.length_done {
            self.step();
        }
        self.found
    }
}
