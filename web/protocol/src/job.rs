//! Everything that the worker does, one line a question.

use serde::{Deserialize, Serialize};

use crate::beam::{BeamOverBand, FeedDish, MouthChoices, SearchFunnel};
use crate::cuts::{BestCuts, BestLength};
use crate::fits::{MatchBands, MatchSizes};
use crate::matters::WhatMatters;
use crate::measure::{Advise, Diagnose, ReadFile};
use crate::outside::SolveOutside;
use crate::print::{DrawSheets, Fittings, WriteFile};
use crate::screws::SearchScrews;
use crate::tolerance::{DrawCans, RankDimensions};

/// A question of any topic.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub enum Job {
    /// The field outside a can.
    SolveOutside(SolveOutside),
    /// The best cuts of a can.
    BestCuts(BestCuts),
    /// The best length with the distance kept.
    BestLength(BestLength),
    /// What the making of a design wants computed.
    Fittings(Fittings),
    /// Sheets at true scale, to look at and for the browser's print.
    DrawSheets(DrawSheets),
    /// Sheets at true scale as a file.
    WriteFile(WriteFile),
    /// What each millimetre of a cut matters.
    WhatMatters(WhatMatters),
    /// Trade sizes for a band.
    MatchSizes(MatchSizes),
    /// Published bands for a can.
    MatchBands(MatchBands),
    /// The beam over the band.
    BeamOverBand(BeamOverBand),
    /// A design as one dish's feed.
    FeedDish(FeedDish),
    /// What could stand at the mouth.
    MouthChoices(MouthChoices),
    /// The best funnel.
    SearchFunnel(SearchFunnel),
    /// An analyser's file.
    ReadFile(ReadFile),
    /// Why a measured can differs from its drawing.
    Diagnose(Diagnose),
    /// What to do about a measured can.
    Advise(Advise),
    /// What each dimension does within its tolerance.
    RankDimensions(RankDimensions),
    /// Many cans within their tolerances.
    DrawCans(DrawCans),
    /// The best tuning screws.
    SearchScrews(SearchScrews),
}
