//! The beams of the present design over the band, and its feed pattern, kept for
//! the next question.

use std::cell::RefCell;
use std::rc::Rc;

use tinwave_core::design::Design;
use tinwave_core::dish::{DishEfficiency, FeedPattern};
use tinwave_core::match_band::band_frequencies;
use tinwave_core::radiation::CanBeam;
use tinwave_core::si::hertz;

use crate::outsides::outside_of;
use crate::whole::whole_can;

/// Frequencies over the band; odd, so that the centre is one.
const POINTS: u32 = 13;
/// Focal ratios of the chart, hundredths.
const RATIOS: [u32; 15] = [
    20, 25, 30, 35, 40, 45, 50, 55, 60, 70, 80, 90, 100, 110, 120,
];

/// What is computed once for a design.
pub(super) struct Beams {
    /// Over the band, ascending: kilohertz and beam.
    pub(super) over_band: Vec<(u32, CanBeam)>,
    /// As the feed of a dish, band centre.
    pub(super) feed: FeedPattern,
    /// Efficiency against the focal ratio.
    pub(super) dishes: Vec<DishEfficiency>,
    /// The dish it lights best.
    pub(super) best_dish: DishEfficiency,
}

impl Beams {
    /// The beam nearest the band's centre.
    pub(super) fn centre(&self) -> Option<&(u32, CanBeam)> {
        self.over_band.get(self.over_band.len() / 2)
    }

    fn new(design: &Design) -> Option<Self> {
        let outside = outside_of(design)?;
        let can = whole_can(design, Some(&outside));
        let at = |khz: u32| Some((khz, CanBeam::new(&outside, can.as_ref(), hertz(khz))?));
        let over_band: Vec<_> = band_frequencies(design.band, POINTS)
            .into_iter()
            .filter_map(at)
            .collect();
        let (_, centre) = over_band.get(over_band.len() / 2)?;
        let feed = FeedPattern::new(&centre.pattern);
        Some(Self {
            dishes: RATIOS
                .iter()
                .map(|hundredths| feed.efficiency(f64::from(*hundredths) / 100.0))
                .collect(),
            best_dish: feed.best(),
            feed,
            over_band,
        })
    }
}

type Kept = Option<(Design, Option<Rc<Beams>>)>;

thread_local! {
    static KEPT: RefCell<Kept> = const { RefCell::new(None) };
}

/// Those of a design: kept, or computed now. `None` where the can is beyond the
/// computation.
pub(super) fn beams_of(design: &Design) -> Option<Rc<Beams>> {
    let known = KEPT.with_borrow(|kept| {
        let found = kept.as_ref().filter(|(known, _)| known == design);
        found.map(|(_, beams)| beams.clone())
    });
    if let Some(beams) = known {
        return beams;
    }
    let beams = Beams::new(design).map(Rc::new);
    KEPT.set(Some((design.clone(), beams.clone())));
    beams
}
