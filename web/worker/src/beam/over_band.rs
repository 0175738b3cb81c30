//! The beam of a design over its band, and the design as a dish's feed.

use std::sync::Arc;

use tinwave_core::design::Design;
use tinwave_core::dish::{DishEfficiency, FeedPattern};
use tinwave_core::match_band::band_frequencies;
use tinwave_core::outside::{OutsideSpectrum, OutsideSteps};
use tinwave_core::radiation::CanBeam;
use tinwave_core::si::{SiDesign, hertz};
use tinwave_core::whole_can::{CanBody, WholeCan, probe_geometry};
use tinwave_protocol::beam::{BeamOverBand, BeamOverBandFound, BeamPoint, FeedDish};

use crate::Work;
use crate::outsides::{keep_outside, kept_outside};

/// Frequencies over the band; odd, so that the centre is one.
const POINTS: u32 = 11;
/// Focal ratios of the chart, hundredths.
const RATIOS: [u32; 13] = [20, 25, 30, 35, 40, 45, 50, 55, 60, 70, 80, 100, 120];

/// The outside of a design: kept, or solved step by step.
struct Outside {
    design: Design,
    steps: Option<OutsideSteps>,
}

impl Outside {
    fn new(design: Design) -> Self {
        let steps = match kept_outside(&design) {
            Some(_) => None,
            None => OutsideSteps::of_design(&design).ok().flatten(),
        };
        Self { design, steps }
    }

    fn total(&self) -> u32 {
        let total = self.steps.as_ref().map_or(0, OutsideSteps::total);
        u32::try_from(total).unwrap_or(u32::MAX)
    }

    fn step(&mut self) {
        if let Some(steps) = &mut self.steps {
            steps.step();
        }
    }

    fn finish(self) -> Option<(Design, Arc<OutsideSpectrum>)> {
        let outside = match self.steps {
            Some(steps) => keep_outside(&self.design, steps.finish()?),
            None => kept_outside(&self.design)?,
        };
        Some((self.design, outside))
    }
}

/// The can with its outside; `None` where the probe can't be computed.
fn whole_can(design: &Design, outside: &Arc<OutsideSpectrum>) -> Option<WholeCan> {
    design.check().ok()?;
    let si = SiDesign::new(design);
    let body = CanBody::of(design, &si, Some(outside)).ok()?;
    WholeCan::from_parts(body, &probe_geometry(&si), si.reference_ohm).ok()
}

/// The beam over the band on its way.
pub struct OverBandWork(Outside);

impl OverBandWork {
    /// Prepares the outside.
    #[must_use]
    pub fn new(question: BeamOverBand) -> Self {
        Self(Outside::new(question.design))
    }
}

impl Work for OverBandWork {
    type Answer = Option<BeamOverBandFound>;

    fn total(&self) -> u32 {
        self.0.total()
    }

    fn step(&mut self) {
        self.0.step();
    }

    fn finish(self) -> Self::Answer {
        let (design, outside) = self.0.finish()?;
        let can = whole_can(&design, &outside);
        let beams: Vec<(u32, CanBeam)> = band_frequencies(design.band, POINTS)
            .into_iter()
            .filter_map(|khz| Some((khz, CanBeam::new(&outside, can.as_ref(), hertz(khz))?)))
            .collect();
        let (_, centre) = beams.get(beams.len() / 2)?;
        let feed = FeedPattern::new(&centre.pattern);
        Some(BeamOverBandFound {
            points: beams
                .iter()
                .map(|(khz, beam)| BeamPoint {
                    khz: *khz,
                    directivity_dbi: beam.figures.directivity_dbi,
                    realised_gain_dbi: beam.realised_gain_dbi,
                    accepted_share: beam.figures.accepted_share,
                    radiated_share: beam.figures.radiated_share,
                })
                .collect(),
            dishes: RATIOS
                .iter()
                .map(|hundredths| feed.efficiency(f64::from(*hundredths) / 100.0))
                .collect(),
            best_dish: feed.best(),
        })
    }
}

/// One dish on its way.
pub struct DishWork {
    outside: Outside,
    focal_ratio: f64,
}

impl DishWork {
    /// Prepares the outside.
    #[must_use]
    pub fn new(question: FeedDish) -> Self {
        Self {
            outside: Outside::new(question.design),
            focal_ratio: question.focal_ratio,
        }
    }
}

impl Work for DishWork {
    type Answer = Option<DishEfficiency>;

    fn total(&self) -> u32 {
        self.outside.total()
    }

    fn step(&mut self) {
        self.outside.step();
    }

    fn finish(self) -> Self::Answer {
        let (design, outside) = self.outside.finish()?;
        let can = whole_can(&design, &outside);
        let centre = hertz(design.band.centre_khz());
        let beam = CanBeam::new(&outside, can.as_ref(), centre)?;
        Some(FeedPattern::new(&beam.pattern).efficiency(self.focal_ratio))
    }
}
