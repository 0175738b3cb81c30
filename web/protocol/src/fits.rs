//! What else fits: trade sizes for a band, bands for a can, each matched and graded.

use serde::{Deserialize, Serialize};
use tinwave_core::best_cut::BestCut;
use tinwave_core::design::Design;
use tinwave_core::grade::Graded;

use crate::{Job, Question};

/// Matches every trade size that carries one mode over a design's band. The design's
/// own can and cut do not count.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct MatchSizes {
    /// The design.
    pub design: Design,
}

/// Matches a design's can to every published band over which it carries one mode.
/// The design's own band and cut do not count.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct MatchBands {
    /// The design.
    pub design: Design,
}

/// How well one of them does.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Matched {
    /// Its best cut, with its own mouth; `None` where none can be worked out.
    pub cut: Option<BestCut>,
    /// Its grade.
    pub graded: Graded,
}

/// Sizes that were matched, by their places in the list of trade sizes.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct SizesMatched(pub Vec<(usize, Matched)>);

/// Bands that were matched, by their keys.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct BandsMatched(pub Vec<(String, Matched)>);

impl SizesMatched {
    /// Of one size, if it was matched yet.
    #[must_use]
    pub fn of(&self, index: usize) -> Option<&Matched> {
        let found = self.0.iter().find(|(known, _)| *known == index);
        found.map(|(_, matched)| matched)
    }
}

impl BandsMatched {
    /// Of one band, if it was matched yet.
    #[must_use]
    pub fn of(&self, key: &str) -> Option<&Matched> {
        let found = self.0.iter().find(|(known, _)| known == key);
        found.map(|(_, matched)| matched)
    }
}

impl Question for MatchSizes {
    type Answer = SizesMatched;

    fn into_job(self) -> Job {
        Job::MatchSizes(self)
    }
}

impl Question for MatchBands {
    type Answer = BandsMatched;

    fn into_job(self) -> Job {
        Job::MatchBands(self)
    }
}
