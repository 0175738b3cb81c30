//! What else fits: trade sizes for a band, and published bands for a can.
//!
//! Which of them carry one mode is known at once; how well each can be matched, and
//! its grade, is long work and done elsewhere.

use tinwave_core::best_cut::BestCut;
use tinwave_core::design::{Band, Design, Micrometres, Mouth, Sweep};
use tinwave_core::fit::trial_design;
use tinwave_core::grade::{Grade, Graded};
use tinwave_core::metal::Metal;
use tinwave_core::one_mode_diameter::{OneModeMargins, one_mode_margins};

use crate::bands::{BANDS, PublishedBand};
use crate::trade_sizes::{SizeGroup, TRADE_SIZES, TradeSize};
use crate::workpiece::{Cut, Workpiece};

/// A can's length over its seams less its length inside: 5 to 10 mm (common
/// practice, no source).
const SEAMS_UM: Micrometres = 6_000;
/// Frequencies of a trial: only the band matters.
const TRIAL_POINTS: u32 = 11;

/// How far a band stays from the two cutoffs that bound it, as shares.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// Band's lower edge over TE11's cutoff, less one.
    pub below: f64,
    /// TM01's cutoff over the band's upper edge, less one.
    pub above: f64,
}

/// A trade size that carries one mode over a band.
#[derive(Clone, Debug, PartialEq)]
pub struct SizeFit {
    /// Its place in the list of trade sizes.
    pub index: usize,
    /// Its room.
    pub room: Room,
    /// The design with this size in place of the can.
    pub trial: Design,
}

/// A published band over which a can carries one mode.
#[derive(Clone, Debug, PartialEq)]
pub struct BandFit {
    /// The band.
    pub band: &'static PublishedBand,
    /// The design with this band in place of its own.
    pub trial: Design,
}

impl Room {
    /// Of an inside diameter for a band.
    #[must_use]
    pub fn of(inside_diameter_um: Micrometres, band: Band) -> Self {
        let OneModeMargins { lower, upper } = one_mode_margins(
            f64::from(inside_diameter_um) / 1e6,
            f64::from(band.low_khz) * 1e3,
            f64::from(band.high_khz) * 1e3,
        );
        Self {
            below: lower,
            above: upper,
        }
    }

    /// Whether exactly one mode passes over the whole band.
    #[must_use]
    pub fn is_one_mode(self) -> bool {
        self.below > 0.0 && self.above > 0.0
    }

    /// The room below as a share of the band's lower edge: so it is shown.
    #[must_use]
    pub fn of_low_edge(self) -> f64 {
        self.below / (1.0 + self.below)
    }

    fn least(self) -> f64 {
        self.of_low_edge().min(self.above)
    }
}

impl SizeFit {
    /// The size.
    #[must_use]
    pub fn size(&self) -> &'static TradeSize {
        &TRADE_SIZES[self.index]
    }

    /// Its length inside: the size's own, or what the trial was given.
    #[must_use]
    pub fn length_um(&self) -> Micrometres {
        self.trial.can.open_length_um
    }

    /// Its outside diameter.
    #[must_use]
    pub fn outside_um(&self) -> Micrometres {
        let can = &self.trial.can;
        can.inside_diameter_um
            .saturating_add(can.wall_um.saturating_mul(2))
    }

    /// Whether the trial's length is the size's own; a tube is cut to the trial's.
    #[must_use]
    pub fn has_own_length(&self) -> bool {
        self.size().length_um.is_some()
    }

    /// Whether a design has this can already.
    #[must_use]
    pub fn is_can_of(&self, design: &Design) -> bool {
        let (own, trial) = (&design.can, &self.trial.can);
        own.inside_diameter_um == trial.inside_diameter_um
            && own.open_length_um == trial.open_length_um
            && own.wall_um == trial.wall_um
    }
}

/// All of a design that matters to which sizes fit and how well: not its can, its
/// cut, its screws, its name.
#[must_use]
pub fn base_of_sizes(design: &Design) -> Design {
    let mut base = plain(design);
    base.screws.clear();
    base.can.inside_diameter_um = 100_000;
    base.can.open_length_um = 200_000;
    base.can.wall_um = 200;
    base.can.base_recess_um = 0;
    base.can.metal = Metal::Tinplate;
    base.probe.backshort_distance_um = 50_000;
    base
}

/// All of a design that matters to which bands fit and how well: not its band, its
/// cut, its name.
#[must_use]
pub fn base_of_bands(design: &Design) -> Design {
    let mut base = plain(design);
    base.band = Band {
        low_khz: 2_400_000,
        high_khz: 2_483_500,
    };
    base.can.base_recess_um = 0;
    base.probe.backshort_distance_um = base.can.inside_diameter_um / 2;
    base
}

/// A design for trials: without name and chart, with a cut that the search replaces.
fn plain(design: &Design) -> Design {
    let mut plain = design.clone();
    plain.name.clear();
    plain.sweep = None;
    plain.probe.length_um = design.probe.wire_diameter_um.saturating_mul(10);
    plain
}

const fn over_its_band(band: Band) -> Sweep {
    Sweep {
        low_khz: band.low_khz,
        high_khz: band.high_khz,
        points: TRIAL_POINTS,
    }
}

/// The trade sizes that carry exactly one mode over a design's band, the roomiest
/// first.
#[must_use]
pub fn sizes_for(design: &Design) -> Vec<SizeFit> {
    let base = base_of_sizes(design);
    let mut fits: Vec<SizeFit> = TRADE_SIZES
        .iter()
        .enumerate()
        .filter_map(|(index, size)| {
            let room = Room::of(size.inside_um, base.band);
            let trial = with_can(&base, size);
            (room.is_one_mode() && goes_together(&trial)).then_some(SizeFit { index, room, trial })
        })
        .collect();
    fits.sort_by(|a, b| b.room.least().total_cmp(&a.room.least()));
    fits
}

/// Whether can and mouth go together: what stands at the mouth is wider than the can.
fn goes_together(trial: &Design) -> bool {
    let outside = trial
        .can
        .inside_diameter_um
        .saturating_add(trial.can.wall_um.saturating_mul(2));
    let is_wider = match trial.mouth {
        Mouth::Funnel {
            mouth_diameter_um: um,
            ..
        }
        | Mouth::Flange {
            outside_diameter_um: um,
        }
        | Mouth::Choke {
            outside_diameter_um: um,
            ..
        } => um > outside,
        Mouth::Open | Mouth::Absorbing => true,
    };
    is_wider && trial.check().is_ok()
}

fn with_can(base: &Design, size: &TradeSize) -> Design {
    let inside_length = size
        .length_um
        .map(|overall| overall.saturating_sub(SEAMS_UM));
    let mut trial = trial_design(base, size.inside_um, inside_length);
    trial.can.wall_um = size.wall_um;
    trial.can.metal = size.metal;
    trial.probe.backshort_distance_um = size.inside_um / 2;
    trial.sweep = Some(over_its_band(base.band));
    trial
}

/// The published bands over which a design's can carries exactly one mode, the
/// nearest to the design's own first.
#[must_use]
pub fn bands_for(design: &Design) -> Vec<BandFit> {
    let base = base_of_bands(design);
    let mut fits: Vec<BandFit> = BANDS
        .iter()
        .filter(|band| band.band() != design.band)
        .filter_map(|band| {
            let mut trial = base.clone();
            trial.band = band.band();
            trial.sweep = Some(over_its_band(trial.band));
            let room = Room::of(trial.can.inside_diameter_um, trial.band);
            (room.is_one_mode() && goes_together(&trial)).then_some(BandFit { band, trial })
        })
        .collect();
    fits.sort_by(|a, b| {
        let away = |fit: &BandFit| (centre(fit.band.band()) / centre(design.band)).ln().abs();
        away(a).total_cmp(&away(b))
    });
    fits
}

fn centre(band: Band) -> f64 {
    (f64::from(band.low_khz) + f64::from(band.high_khz)) / 2.0
}

/// Where a size or a band stands among those that were matched: the better grade
/// first, then the better match.
#[must_use]
pub fn rank(graded: &Graded, cut: Option<&BestCut>) -> (Grade, f64) {
    let vswr = cut.map_or(f64::INFINITY, |cut| cut.worst_vswr);
    (graded.grade, vswr)
}

/// Which of several sizes is the nearest way on from a can: first those whose length is
/// known, then other cans, then what is cut to length; each the nearest in width.
#[must_use]
pub fn way_from(fit: &SizeFit, inside_diameter_um: Micrometres) -> (u8, Micrometres) {
    let is_can = matches!(fit.size().group, SizeGroup::UsCan | SizeGroup::MetricCan);
    let kind = match (fit.has_own_length(), is_can) {
        (true, _) => 0,
        (false, true) => 1,
        (false, false) => 2,
    };
    (kind, fit.size().inside_um.abs_diff(inside_diameter_um))
}

/// Puts a trade size in place of the can, with its best cut where that is known; the
/// cut follows the best of the new can. Screws belonged to the old one.
pub fn take_size(work: &mut Workpiece, fit: &SizeFit, cut: Option<&BestCut>) {
    let now = &mut work.design;
    let trial = &fit.trial.can;
    now.can.inside_diameter_um = trial.inside_diameter_um;
    now.can.open_length_um = trial.open_length_um;
    now.can.wall_um = trial.wall_um;
    now.can.metal = trial.metal;
    now.screws.clear();
    follow(work, cut);
}

/// Uses the can for another band, with its best cut where that is known.
pub fn take_band(work: &mut Workpiece, band: Band, cut: Option<&BestCut>) {
    work.design.band = band;
    work.design.sweep = None;
    follow(work, cut);
}

fn follow(work: &mut Workpiece, cut: Option<&BestCut>) {
    if let Some(cut) = cut {
        work.design.probe.length_um = cut.length_um;
        work.design.probe.backshort_distance_um = cut.backshort_distance_um;
    }
    work.cut = Cut::FollowsBest;
}
