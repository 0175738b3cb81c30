//! An antenna of the plan: a can with its computed beam, or one whose gain and width
//! are stated.

use std::f64::consts::{FRAC_PI_2, PI};

use tinwave_core::analysis::Analysis;
use tinwave_core::beam::Beam;
use tinwave_core::design::{Design, Mouth};
use tinwave_core::radiation::CanBeam;
use tinwave_core::radio_link::{error_for_loss_rad, pointing_loss_db};
use tinwave_core::si::metres;

/// Directions round the axis in which an error of pointing is tried.
const AZIMUTHS: u32 = 8;

/// Most that an error of pointing is counted with, dB: in a null of the pattern the
/// surroundings still send something (common practice, no source).
const MOST_LOSS_DB: f64 = 40.0;

/// Step in which a turn that costs so much is looked for, degrees.
const TURN_STEP_DEG: f64 = 2.0;

/// How well an antenna is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Knowledge {
    /// Field of the whole can, wire included.
    Computed,
    /// Field of the whole can without its wire: the match is not counted.
    WithoutProbe,
    /// From an endless pipe.
    Estimated,
    /// Stated by the maker.
    Stated,
}

/// What a turn off the aim costs in one plane: turns for 1 dB and for 3 dB, degrees.
pub(super) type Turns = [f64; 2];

/// An antenna.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanAntenna {
    /// Gain straight ahead without the loss by reflection, dBi.
    pub gain_dbi: f64,
    /// Loss by reflection at its connector, dB.
    pub mismatch_loss_db: f64,
    /// Gain in the strongest direction without that loss, dBi.
    pub peak_gain_dbi: f64,
    /// Full half-power widths along and across the wire, degrees.
    pub widths_deg: Option<[f64; 2]>,
    /// Angle of the strongest direction along the wire, degrees.
    pub lean_deg: f64,
    /// Diameter of the mouth, m.
    pub mouth_diameter_m: Option<f64>,
    /// Length of the can, m.
    pub length_m: Option<f64>,
    /// How it is known.
    pub knowledge: Knowledge,
    /// Turns along and across the wire.
    pub(super) turns: Option<[Turns; 2]>,
    beam: Option<CanBeam>,
}

impl PlanAntenna {
    /// A can, at the middle of its band. `None` where it has no beam there.
    #[must_use]
    pub fn of_can(design: &Design, analysis: &Analysis) -> Option<Self> {
        let mut antenna = match (&analysis.true_beam, &analysis.beam) {
            (Some(beam), _) => Self::of_beam(beam.clone()),
            (None, Some(beam)) => Self::of_estimate(beam),
            (None, None) => return None,
        };
        let mouth_um = match design.mouth {
            Mouth::Funnel {
                mouth_diameter_um, ..
            } => mouth_diameter_um,
            _ => design.can.inside_diameter_um,
        };
        antenna.mouth_diameter_m = Some(metres(mouth_um));
        antenna.length_m = Some(metres(design.can.open_length_um));
        Some(antenna)
    }

    /// An antenna by its gain (dBi) and half-power width (degrees).
    #[must_use]
    pub fn stated(gain_dbi: f64, width_deg: f64) -> Self {
        Self {
            gain_dbi,
            mismatch_loss_db: 0.0,
            peak_gain_dbi: gain_dbi,
            widths_deg: Some([width_deg, width_deg]),
            lean_deg: 0.0,
            mouth_diameter_m: None,
            length_m: None,
            knowledge: Knowledge::Stated,
            turns: turns_by_law([width_deg, width_deg]),
            beam: None,
        }
    }

    fn of_beam(beam: CanBeam) -> Self {
        let figures = beam.figures;
        let with_probe = beam.realised_gain_dbi.is_some();
        let (walls_db, mismatch_loss_db) = if with_probe {
            let walls = 10.0 * figures.radiated_share.log10();
            (walls, -10.0 * figures.accepted_share.log10())
        } else {
            (0.0, 0.0)
        };
        let mut antenna = Self {
            gain_dbi: figures.directivity_dbi + walls_db,
            mismatch_loss_db: mismatch_loss_db.clamp(0.0, MOST_LOSS_DB),
            peak_gain_dbi: figures.peak_dbi.max(figures.directivity_dbi) + walls_db,
            widths_deg: figures
                .beamwidth_e_deg
                .zip(figures.beamwidth_h_deg)
                .map(|(e, h)| [e, h]),
            lean_deg: figures.e_peak_angle_deg,
            mouth_diameter_m: None,
            length_m: None,
            knowledge: if with_probe {
                Knowledge::Computed
            } else {
                Knowledge::WithoutProbe
            },
            turns: None,
            beam: Some(beam),
        };
        antenna.turns = antenna.turns_of_pattern();
        antenna
    }

    fn of_estimate(beam: &Beam) -> Self {
        let realised = beam.realised_gain_dbi.unwrap_or(beam.directivity_dbi);
        let widths_deg = [beam.beamwidth_e_deg, beam.beamwidth_h_deg];
        Self {
            gain_dbi: beam.directivity_dbi,
            mismatch_loss_db: (beam.directivity_dbi - realised).clamp(0.0, MOST_LOSS_DB),
            widths_deg: Some(widths_deg),
            knowledge: Knowledge::Estimated,
            turns: turns_by_law(widths_deg),
            ..Self::stated(beam.directivity_dbi, beam.beamwidth_e_deg)
        }
    }

    /// Gain straight ahead with the loss by reflection, dBi.
    #[must_use]
    pub fn realised_gain_dbi(&self) -> f64 {
        self.gain_dbi - self.mismatch_loss_db
    }

    /// Whether its pattern is computed, not a law of the main lobe.
    #[must_use]
    pub const fn has_pattern(&self) -> bool {
        self.beam.is_some()
    }

    /// Loss by pointing past the other end, dB: the worst of the directions round the
    /// axis of the computed pattern, or the law of the main lobe.
    #[must_use]
    pub fn pointing_loss_db(&self, error_deg: f64) -> f64 {
        let error = error_deg.abs().to_radians();
        if error == 0.0 {
            return 0.0;
        }
        if self.beam.is_some() {
            let turn = 2.0 * PI / f64::from(AZIMUTHS);
            return self.loss_towards(error, (0..AZIMUTHS).map(|n| f64::from(n) * turn));
        }
        let narrow = self.widths_deg.map_or(360.0, |[e, h]| e.min(h));
        pointing_loss_db(error, narrow.to_radians())
    }

    /// The most that is lost in some directions round the axis, dB.
    fn loss_towards(&self, error_rad: f64, azimuths: impl Iterator<Item = f64>) -> f64 {
        let Some(beam) = &self.beam else {
            return 0.0;
        };
        let least = azimuths
            .map(|azimuth| beam.pattern.directivity_dbi(error_rad, azimuth))
            .fold(f64::INFINITY, f64::min);
        (beam.figures.directivity_dbi - least).clamp(0.0, MOST_LOSS_DB)
    }

    /// The turns of the computed pattern, to the worse side of each plane; `None` where
    /// none costs so much.
    fn turns_of_pattern(&self) -> Option<[Turns; 2]> {
        let plane = |azimuth: f64| {
            let loss = |deg: f64| {
                let sides = [azimuth, azimuth + PI];
                self.loss_towards(deg.to_radians(), sides.into_iter())
            };
            Some([turn_that_costs(1.0, loss)?, turn_that_costs(3.0, loss)?])
        };
        Some([plane(0.0)?, plane(FRAC_PI_2)?])
    }
}

/// The least turn, degrees, at which a loss that begins at zero reaches so many dB.
fn turn_that_costs(db: f64, loss_db: impl Fn(f64) -> f64) -> Option<f64> {
    let mut high = TURN_STEP_DEG;
    while loss_db(high) < db {
        high += TURN_STEP_DEG;
        if high > 180.0 {
            return None;
        }
    }
    let mut low = high - TURN_STEP_DEG;
    for _ in 0..10 {
        let middle = 0.5 * (low + high);
        if loss_db(middle) < db {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(0.5 * (low + high))
}

/// The turns by the law of the main lobe; `None` for what is no beam.
fn turns_by_law(widths_deg: [f64; 2]) -> Option<[Turns; 2]> {
    let is_beam = widths_deg.iter().all(|width| *width < 180.0);
    is_beam.then(|| {
        widths_deg.map(|width| {
            [1.0, 3.0].map(|loss| error_for_loss_rad(loss, width.to_radians()).to_degrees())
        })
    })
}
