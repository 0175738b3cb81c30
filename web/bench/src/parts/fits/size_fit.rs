//! A trade size in place of the can at hand.

use tinwave_core::best_cut::BestCut;
use tinwave_core::design::{Band, Design};
use tinwave_core::fit::trial_design;
use tinwave_core::one_mode_diameter::{OneModeMargins, one_mode_margins};
use tinwave_web::trade_sizes::{TRADE_SIZES, TradeSize};
use tinwave_web::workpiece::Workpiece;

use super::desk;

/// A can's length over its seams less its length inside: 5 to 10 mm (common
/// practice, no source).
const SEAMS_UM: u32 = 6_000;

/// A trade size that carries one mode over the band.
#[derive(Clone, Debug)]
pub(super) struct SizeFit {
    /// Its place in the list of trade sizes.
    pub(super) index: usize,
    /// How far the band stays from the cutoffs below and above, as shares.
    pub(super) room: (f64, f64),
    /// The design with this size in place of the can.
    pub(super) design: Design,
    /// `None`: not searched yet; `Some(None)`: can't be matched at all.
    pub(super) cut: Option<Option<BestCut>>,
}

impl SizeFit {
    pub(super) fn size(&self) -> &'static TradeSize {
        &TRADE_SIZES[self.index]
    }

    fn class(&self) -> u8 {
        match &self.cut {
            None => 0,
            Some(Some(cut)) if cut.worst_vswr <= 1.5 => 0,
            Some(Some(cut)) if cut.worst_vswr <= 2.0 => 1,
            Some(_) => 2,
        }
    }
}

/// The trade sizes that carry exactly one mode over the band of a design: first those
/// that match well, then those that match, then the rest; within each the roomiest
/// first. Until all are matched the room alone counts, so that no row jumps.
pub(super) fn fits(design: &Design) -> Vec<SizeFit> {
    let Band { low_khz, high_khz } = design.band;
    let (low_hz, high_hz) = (f64::from(low_khz) * 1e3, f64::from(high_khz) * 1e3);
    let mut fits = Vec::new();
    for (index, size) in TRADE_SIZES.iter().enumerate() {
        let diameter_m = f64::from(size.inside_um) / 1e6;
        let OneModeMargins { lower, upper } = one_mode_margins(diameter_m, low_hz, high_hz);
        if lower > 0.0 && upper > 0.0 {
            let trial = trial(design, size);
            fits.push(SizeFit {
                index,
                room: (lower, upper),
                cut: desk::known(&trial),
                design: trial,
            });
        }
    }
    let room = |fit: &SizeFit| fit.room.0.min(fit.room.1);
    fits.sort_by(|a, b| room(b).total_cmp(&room(a)));
    if fits.iter().all(|fit| fit.cut.is_some()) {
        fits.sort_by_key(SizeFit::class);
    }
    fits
}

/// The design with a trade size for its can, and with nothing in it that the best cut
/// does not depend on.
fn trial(design: &Design, size: &TradeSize) -> Design {
    let inside_length = size
        .length_um
        .map(|overall| overall.saturating_sub(SEAMS_UM));
    let mut fitted = trial_design(design, size.inside_um, inside_length);
    fitted.name.clear();
    fitted.sweep = None;
    fitted.can.wall_um = size.wall_um;
    fitted.can.metal = size.metal;
    // The search sets the cut; the present one does not matter to it.
    fitted.probe.length_um = design.probe.wire_diameter_um.saturating_mul(10);
    fitted.probe.backshort_distance_um = size.inside_um / 2;
    fitted
}

/// The work with a trade size for its can, and its best cut where that is known.
pub(super) fn with_size(work: &Workpiece, size: &TradeSize) -> Workpiece {
    let fitted = trial(&work.design, size);
    let mut work = work.clone();
    let now = &mut work.design;
    now.can.inside_diameter_um = fitted.can.inside_diameter_um;
    now.can.wall_um = fitted.can.wall_um;
    now.can.metal = fitted.can.metal;
    now.can.open_length_um = fitted.can.open_length_um;
    if let Some(Some(cut)) = desk::known(&fitted) {
        now.probe.length_um = cut.length_um;
        now.probe.backshort_distance_um = cut.backshort_distance_um;
    }
    work
}
