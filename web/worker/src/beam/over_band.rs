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
pub struct OverBandWork {
    /// Taken once it is solved.
    outside: Option<Outside>,
    /// Steps that the outside takes; then one a frequency.
    first: u32,
    frequencies: Vec<u32>,
    done: u32,
    can: Option<(Arc<OutsideSpectrum>, Option<WholeCan>)>,
    beams: Vec<(u32, CanBeam)>,
}

impl OverBandWork {
    /// Prepares the outside.
    #[must_use]
    pub fn new(question: BeamOverBand) -> Self {
        let frequencies = band_frequencies(question.design.band, POINTS);
        let outside = Outside::new(question.design);
        Self {
            first: outside.total(),
            outside: Some(outside),
            frequencies,
            done: 0,
            can: None,
            beams: Vec::new(),
        }
    }

    /// The beam at the next frequency; the can is put together before the first.
    fn point(&mut self) {
        if let Some(outside) = self.outside.take() {
            self.can = outside.finish().map(|(design, outside)| {
                let can = whole_can(&design, &outside);
                (outside, can)
            });
        }
        let khz = self.frequencies.get((self.done - self.first) as usize);
        if let (Some((outside, can)), Some(khz)) = (&self.can, khz) {
            let beam = CanBeam::new(outside, can.as_ref(), hertz(*khz));
            self.beams.extend(beam.map(|beam| (*khz, beam)));
        }
    }
}

impl Work for OverBandWork {
    type Answer = Option<BeamOverBandFound>;

    fn total(&self) -> u32 {
        let points = u32::try_from(self.frequencies.len()).unwrap_or(0);
        self.first.saturating_add(points)
    }

    fn step(&mut self) {
        if self.done < self.first {
            if let Some(outside) = &mut self.outside {
                outside.step();
            }
        } else {
            self.point();
        }
        self.done += 1;
    }

    fn finish(self) -> Self::Answer {
        let (_, centre) = self.beams.get(self.beams.len() / 2)?;
        let feed = FeedPattern::new(&centre.pattern);
        Some(BeamOverBandFound {
            points: self
                .beams
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
