//! The search for the best cut in parts, between which the worker hears what else is
//! wanted.

use std::sync::Arc;

use tinwave_core::best_cut::{BestCut, BestCutSearch, FreeDimensions, Progress};
use tinwave_core::design::Design;
use tinwave_core::outside::OutsideSpectrum;

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

/// The two searches that the page shows, one after the other.
#[derive(Clone, Debug)]
pub struct BothCuts {
    searches: [CutSearch; 2],
    found: [Option<Vec<BestCut>>; 2],
}

impl BothCuts {
    /// Parts of each search.
    const PARTS: u32 = 20;

    /// The best length, and the best length and distance.
    #[must_use]
    pub fn new(design: &Design, outside: Option<&Arc<OutsideSpectrum>>) -> Self {
        let search = |free| CutSearch::new(design, free, outside, Self::PARTS);
        Self {
            searches: [
                search(FreeDimensions::Length),
                search(FreeDimensions::LengthAndDistance),
            ],
            found: [None, None],
        }
    }

    /// Steps in all.
    #[must_use]
    pub const fn total(&self) -> u32 {
        2 * Self::PARTS
    }

    /// Takes a step.
    pub fn step(&mut self) {
        for (search, found) in self.searches.iter_mut().zip(&mut self.found) {
            if found.is_none() {
                *found = search.next_part();
                return;
            }
        }
    }

    /// What was found, as numbers: of each search how many cuts, and each cut's own
    /// ([`BestCut::to_numbers`]).
    #[must_use]
    pub fn to_numbers(&self) -> Vec<f64> {
        let mut numbers = Vec::new();
        for found in &self.found {
            let cuts = found.as_deref().unwrap_or_default();
            numbers.push(cuts.len() as f64);
            numbers.extend(cuts.iter().flat_map(BestCut::to_numbers));
        }
        numbers
    }
}
