//! The beams of the present design over the band, and its feed pattern, kept for
//! the next question.

use std::cell::RefCell;
use std::rc::Rc;

use tinwave_core::constants::SPEED_OF_LIGHT;
use tinwave_core::design::Design;
use tinwave_core::dish::{DishEfficiency, FeedPattern};
use tinwave_core::match_band::band_frequencies;
use tinwave_core::outside::{Outline, OutsideSteps};
use tinwave_core::radiation::CanBeam;
use tinwave_core::si::{SiDesign, hertz};

use crate::job::Job;
use crate::outsides::{keep_outside, kept_outside, outside_of};
use crate::reply::Reply;
use crate::request::Request;
use crate::whole::whole_can;

/// Frequencies over the band; odd, so that the centre is one.
const POINTS: u32 = 11;
/// Focal ratios of the chart, hundredths.
const RATIOS: [u32; 13] = [20, 25, 30, 35, 40, 45, 50, 55, 60, 70, 80, 100, 120];

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

fn kept(design: &Design) -> Option<Option<Rc<Beams>>> {
    KEPT.with_borrow(|kept| {
        let found = kept.as_ref().filter(|(known, _)| known == design);
        found.map(|(_, beams)| beams.clone())
    })
}

fn compute(design: &Design) -> Option<Rc<Beams>> {
    let beams = Beams::new(design).map(Rc::new);
    KEPT.set(Some((design.clone(), beams.clone())));
    beams
}

/// The beams of a design as far as they are known.
pub(super) enum Known {
    /// Computed.
    Yes(Rc<Beams>),
    /// Beyond the computation.
    Never,
    /// A job has to solve for the field first.
    NotYet,
}

/// Longest wall, from the middle of the back to the last edge, that is solved for
/// while the page waits, wavelengths.
const SHORT: f64 = 2.0;

/// Whether to solve for a design takes longer than an answer may.
fn takes_long(design: &Design) -> bool {
    let si = SiDesign::new(design);
    Outline::new(design, &si).is_some_and(|outline| {
        let out = outline.widest_m() - outline.radius_m;
        let wall = outline.radius_m + outline.length_m + out.hypot(outline.front_m());
        wall * si.band_high_hz > SHORT * SPEED_OF_LIGHT
    })
}

/// Those of a design: kept, or computed now where that is quick.
pub(super) fn beams_of(design: &Design) -> Known {
    let beams = match kept(design) {
        Some(beams) => beams,
        None if kept_outside(design).is_none() && takes_long(design) => return Known::NotYet,
        None => compute(design),
    };
    beams.map_or(Known::Never, Known::Yes)
}

/// Solves for the field of a large body, a frequency in each step.
pub(super) struct BeamsJob {
    request: Request,
    steps: Option<OutsideSteps>,
    total: u32,
}

impl BeamsJob {
    pub(super) fn new(request: &Request) -> Self {
        let steps = OutsideSteps::of_design(request.design()).ok().flatten();
        let total = steps.as_ref().map_or(0, OutsideSteps::total);
        Self {
            request: request.clone(),
            steps,
            total: u32::try_from(total).unwrap_or(0),
        }
    }
}

impl Job for BeamsJob {
    fn total(&self) -> u32 {
        self.total + 1
    }

    fn step(&mut self) {
        let goes_on = self.steps.as_mut().is_some_and(OutsideSteps::step);
        if goes_on {
            return;
        }
        let solved = self.steps.take().and_then(OutsideSteps::finish);
        if let Some(solved) = solved {
            keep_outside(self.request.design(), solved);
        }
    }

    fn finish(mut self: Box<Self>) -> Reply {
        self.step();
        let design = self.request.design();
        if kept(design).is_none() {
            // A field that could not be solved for is not tried again.
            if kept_outside(design).is_some() {
                compute(design);
            } else {
                KEPT.set(Some((design.clone(), None)));
            }
        }
        super::after_beams(&self.request)
    }
}
