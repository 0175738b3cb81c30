//! The search, one can a step.

use alloc::sync::Arc;
use alloc::vec::Vec;

use crate::design::{Design, Micrometres, Mouth, Screw};
use crate::design_error::DesignError;
use crate::judge;
use crate::match_band::band_frequencies;
use crate::outside::OutsideSpectrum;
use crate::probe::{GuideCondition, PreparedProbe};
use crate::reflection::PointMatch;
use crate::si::{SiDesign, hertz, metres, micrometres};
use crate::waveguide_mode::Mode;
use crate::whole_can::{CanBody, probe_geometry};

/// What may be turned in, and where.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct ScrewSettings {
    /// Number of screws, 1 or 2, in one line along the can.
    pub count: u32,
    /// Diameter, 100 to 20,000 micrometres.
    pub diameter_um: Micrometres,
    /// Round the axis from the probe, thousandths of a degree.
    pub angle_millideg: i32,
}

/// What is wrong with the settings or the design.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ScrewSettingsError {
    /// A number outside its hard range.
    Design(DesignError),
    /// One or two screws.
    Count(u32),
}

impl From<DesignError> for ScrewSettingsError {
    fn from(error: DesignError) -> Self {
        Self::Design(error)
    }
}

/// Screws found.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct TunedScrews {
    /// The screws to add; none where none betters the match.
    pub screws: Vec<Screw>,
    /// Largest VSWR over the band with them.
    pub worst_vswr: f64,
    /// The same without.
    pub worst_vswr_without: f64,
}

/// How far the search is.
#[derive(Clone, Debug, PartialEq)]
pub enum ScrewProgress {
    /// Still at it; share done, 0 to 1, a guess.
    Working {
        /// Share done.
        done: f64,
    },
    /// The outcome; `None` where the can is not computed.
    Done(Option<TunedScrews>),
}

/// The band's frequencies with what the guide does there.
#[derive(Clone, Debug)]
pub(crate) struct Band {
    conditions: Vec<(f64, GuideCondition)>,
}

const BAND_POINTS: u32 = 5;

impl Band {
    pub(crate) fn new(design: &Design, outside: Option<&Arc<OutsideSpectrum>>) -> Option<Self> {
        let si = SiDesign::new(design);
        let body = CanBody::of(design, &si, outside).ok()?;
        let conditions = band_frequencies(design.band, BAND_POINTS)
            .into_iter()
            .map(|khz| Some((hertz(khz), body.condition(hertz(khz)).ok()?)));
        Some(Self {
            conditions: conditions.collect::<Option<_>>()?,
        })
    }
}

/// Largest VSWR over the band with these screws added; `None` where they can't be.
pub(crate) fn worst_vswr(design: &Design, band: &Band, added: &[Screw]) -> Option<f64> {
    let mut design = design.clone();
    design.screws.extend_from_slice(added);
    design.check().ok()?;
    let si = SiDesign::new(&design);
    let probe = PreparedProbe::new(&probe_geometry(&si)).ok()?;
    let each = band.conditions.iter().map(|(hz, condition)| {
        let admittance = probe.input_admittance(*hz, condition);
        PointMatch::from_admittance(admittance, si.reference_ohm).vswr
    });
    Some(each.fold(1.0, f64::max))
}

/// Grid of places and depths.
const PLACES: usize = 14;
const DEPTHS: usize = 7;
/// Deepest screw tried, wavelengths: short of its resonance at about a quarter.
pub(crate) const DEEPEST: f64 = 0.19;
/// Smallest step of the walk: depth and place are then good to a twentieth of a
/// millimetre.
const LEAST_STEP_M: f64 = 5e-5;
/// Most cans of the walk.
const MOST_WALK: usize = 120;

#[derive(Clone, Debug)]
enum Stage {
    /// Next cell of the grid.
    Grid(usize),
    /// Which number is tried, which way, and the steps (place, depth), metres.
    Walk {
        number: usize,
        forward: bool,
        bettered: bool,
        steps: (f64, f64),
        tried: usize,
    },
    Done,
}

/// A search that advances step by step; each step computes one can, a few
/// milliseconds.
#[derive(Clone, Debug)]
pub struct ScrewSearch {
    design: Design,
    band: Option<Band>,
    settings: ScrewSettings,
    places_m: (f64, f64),
    depths_m: (f64, f64),
    /// Screws already placed; the last one is the one on the grid.
    fixed: Vec<Screw>,
    best: Vec<Screw>,
    best_vswr: f64,
    without: f64,
    stage: Stage,
}

impl ScrewSearch {
    /// Sets a search up for screws besides those the design has; the work is in
    /// [`Self::step`].
    ///
    /// # Errors
    /// [`ScrewSettingsError`].
    pub fn new(
        design: &Design,
        outside: Option<&Arc<OutsideSpectrum>>,
        settings: ScrewSettings,
    ) -> Result<Self, ScrewSettingsError> {
        design.check()?;
        crate::design_error::Field::ScrewDiameter.check(i64::from(settings.diameter_um))?;
        crate::design_error::Field::ScrewAngle.check(i64::from(settings.angle_millideg))?;
        if !(1..=2).contains(&settings.count) {
            return Err(ScrewSettingsError::Count(settings.count));
        }
        let si = SiDesign::new(design);
        let wavelength = crate::constants::SPEED_OF_LIGHT / si.centre_hz();
        let diameter = metres(settings.diameter_um);
        let guide = Mode::TE11.guide_wavelength_m(si.radius_m, si.centre_hz());
        let farthest =
            si.backshort_distance_m + 0.6 * guide.unwrap_or(wavelength).min(2.0 * wavelength);
        let mouth = if design.mouth == Mouth::Absorbing {
            farthest
        } else {
            si.open_length_m - judge::least_mouth_distance_m(&si)
        };
        let deepest = (DEEPEST * wavelength).min(1.6 * si.radius_m);
        let mut search = Self {
            places_m: (diameter, farthest.min(mouth).max(diameter)),
            depths_m: (deepest / DEPTHS as f64, deepest),
            band: Band::new(design, outside),
            design: design.clone(),
            settings,
            fixed: Vec::new(),
            best: Vec::new(),
            best_vswr: f64::INFINITY,
            without: f64::INFINITY,
            stage: Stage::Done,
        };
        if let Some(vswr) = search.vswr(&[]) {
            search.without = vswr;
            search.best_vswr = vswr;
            search.stage = Stage::Grid(0);
        }
        Ok(search)
    }

    fn vswr(&self, screws: &[Screw]) -> Option<f64> {
        worst_vswr(&self.design, self.band.as_ref()?, screws)
    }

    /// Computes one can.
    pub fn step(&mut self) -> ScrewProgress {
        let stage = core::mem::replace(&mut self.stage, Stage::Done);
        self.stage = match stage {
            Stage::Grid(cell) => self.grid(cell),
            Stage::Walk {
                number,
                forward,
                bettered,
                steps,
                tried,
            } => self.walk(number, forward, bettered, steps, tried),
            Stage::Done => Stage::Done,
        };
        let (grid, most) = (PLACES * DEPTHS, PLACES * DEPTHS + MOST_WALK);
        let cans = match &self.stage {
            Stage::Grid(cell) => *cell,
            Stage::Walk { tried, .. } => grid + tried,
            Stage::Done => return ScrewProgress::Done(self.found()),
        };
        let before = most * self.fixed.len();
        let all = most * self.settings.count as usize;
        ScrewProgress::Working {
            done: ((before + cans) as f64 / all as f64).min(0.99),
        }
    }

    fn found(&self) -> Option<TunedScrews> {
        self.without.is_finite().then(|| TunedScrews {
            screws: self.best.clone(),
            worst_vswr: self.best_vswr,
            worst_vswr_without: self.without,
        })
    }

    fn grid(&mut self, cell: usize) -> Stage {
        let along = |(low, high): (f64, f64), i: usize, last: usize| {
            low + (high - low) * i as f64 / last as f64
        };
        let screw = Screw {
            axial_um: micrometres(along(self.places_m, cell / DEPTHS, PLACES - 1)),
            depth_um: micrometres(along(self.depths_m, cell % DEPTHS, DEPTHS - 1)),
            angle_millideg: self.settings.angle_millideg,
            diameter_um: self.settings.diameter_um,
        };
        let mut screws = self.fixed.clone();
        screws.push(screw);
        self.take_if_better(screws);
        if cell + 1 < PLACES * DEPTHS {
            return Stage::Grid(cell + 1);
        }
        Stage::Walk {
            number: 0,
            forward: true,
            bettered: false,
            steps: (
                0.5 * (self.places_m.1 - self.places_m.0) / PLACES as f64,
                0.5 * self.depths_m.0,
            ),
            tried: 0,
        }
    }

    fn take_if_better(&mut self, screws: Vec<Screw>) -> bool {
        match self.vswr(&screws) {
            Some(vswr) if vswr < self.best_vswr => {
                self.best_vswr = vswr;
                self.best = screws;
                true
            }
            _ => false,
        }
    }

    /// Tries one number of one screw one step further, or back.
    fn walk(
        &mut self,
        number: usize,
        forward: bool,
        mut bettered: bool,
        mut steps: (f64, f64),
        tried: usize,
    ) -> Stage {
        let moved = self.moved(number, forward, steps);
        let better = moved.is_some_and(|screws| self.take_if_better(screws));
        bettered |= better;
        let (mut number, mut forward) = (number, forward);
        if better || !forward {
            number += 1;
            forward = true;
        } else {
            forward = false;
        }
        if number >= 2 * self.best.len() {
            number = 0;
            if !bettered {
                steps = (0.5 * steps.0, 0.5 * steps.1);
            }
            bettered = false;
        }
        let settled = steps.0.max(steps.1) < LEAST_STEP_M;
        if settled || tried + 1 >= MOST_WALK * self.best.len() || self.best.is_empty() {
            return self.next_screw();
        }
        Stage::Walk {
            number,
            forward,
            bettered,
            steps,
            tried: tried + 1,
        }
    }

    fn moved(&self, number: usize, forward: bool, steps: (f64, f64)) -> Option<Vec<Screw>> {
        let mut screws = self.best.clone();
        let screw = screws.get_mut(number / 2)?;
        let sign = if forward { 1.0 } else { -1.0 };
        let within = |value: f64, (low, high): (f64, f64)| micrometres(value.clamp(low, high));
        if number.is_multiple_of(2) {
            let place = metres(screw.axial_um) + sign * steps.0;
            screw.axial_um = within(place, self.places_m);
        } else {
            let depth = metres(screw.depth_um) + sign * steps.1;
            screw.depth_um = within(depth, (0.0, self.depths_m.1));
        }
        Some(screws)
    }

    /// After one screw the next one, if it is wanted and the first was of use.
    fn next_screw(&mut self) -> Stage {
        let placed = self.best.len();
        let wanted = self.settings.count as usize;
        if placed > self.fixed.len() && placed < wanted {
            self.fixed = self.best.clone();
            return Stage::Grid(0);
        }
        Stage::Done
    }
}
