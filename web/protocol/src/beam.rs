//! Beams and what may stand at a can's mouth.

use serde::{Deserialize, Serialize};
use tinwave_core::design::{Design, Kilohertz, Micrometres, Mouth};
use tinwave_core::dish::DishEfficiency;

pub use tinwave_maker::mouth_goal::MouthGoal;

use crate::{Job, Question};

/// Asks for the beam of a design over its band, and for the design as a dish's feed.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct BeamOverBand {
    /// The design.
    pub design: Design,
}

/// The beam at one frequency, straight ahead.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct BeamPoint {
    /// Frequency.
    pub khz: Kilohertz,
    /// Directivity, dB over isotropic.
    pub directivity_dbi: f64,
    /// With what the match sends back and the walls take; `None` where the probe can't
    /// be computed.
    pub realised_gain_dbi: Option<f64>,
    /// Share of the power that is not reflected at the connector, 0 to 1.
    pub accepted_share: f64,
    /// Share of the accepted power that is radiated, 0 to 1.
    pub radiated_share: f64,
}

/// What was found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct BeamOverBandFound {
    /// Over the band, ascending; the centre in the middle.
    pub points: Vec<BeamPoint>,
    /// Efficiency as a dish's feed against the focal ratio, ascending.
    pub dishes: Vec<DishEfficiency>,
    /// The dish that it lights best.
    pub best_dish: DishEfficiency,
}

impl Question for BeamOverBand {
    /// `None` where the can is beyond the computation.
    type Answer = Option<BeamOverBandFound>;

    fn into_job(self) -> Job {
        Job::BeamOverBand(self)
    }
}

/// Asks how a design feeds one dish.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct FeedDish {
    /// The design.
    pub design: Design,
    /// Focal length over diameter, 0.2 to 2.
    pub focal_ratio: f64,
}

impl Question for FeedDish {
    type Answer = Option<DishEfficiency>;

    fn into_job(self) -> Job {
        Job::FeedDish(self)
    }
}

/// What a solved body radiates in TE11.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Radiated {
    /// Directivity straight ahead, dB over isotropic.
    pub gain_dbi: f64,
    /// Straight ahead over straight back.
    pub front_to_back_db: f64,
    /// Straight ahead over the highest level of the rear half.
    pub front_to_rear_db: f64,
}

/// Searches for what could stand at the mouth of a design's can: a ring, a cup, and a
/// funnel of moderate size, each with what it radiates at the band's centre.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct MouthChoices {
    /// The design; what stands at its mouth now does not count.
    pub design: Design,
}

/// One choice at the mouth.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct MouthChoice {
    /// What it is best for.
    pub goal: MouthGoal,
    /// What stands there.
    pub mouth: Mouth,
    /// What it radiates.
    pub radiated: Radiated,
}

impl Question for MouthChoices {
    /// What could be solved, nothing at the mouth first; empty where the can is beyond
    /// the computation.
    type Answer = Vec<MouthChoice>;

    fn into_job(self) -> Job {
        Job::MouthChoices(self)
    }
}

/// What limits a funnel; at least one is given.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct FunnelLimits {
    /// Widest mouth, inside.
    pub mouth_um: Option<Micrometres>,
    /// Longest along the axis.
    pub length_um: Option<Micrometres>,
    /// Sides of the sheet that it is cut from.
    pub sheet_um: Option<(Micrometres, Micrometres)>,
    /// Added along one edge.
    pub seam_um: Micrometres,
}

impl FunnelLimits {
    /// Whether nothing limits it.
    #[must_use]
    pub const fn are_none(&self) -> bool {
        self.mouth_um.is_none() && self.length_um.is_none() && self.sheet_um.is_none()
    }
}

/// Searches for the funnel with the most gain within limits, and for the trade of gain
/// against length and mouth.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct SearchFunnel {
    /// The design; what stands at its mouth now does not count.
    pub design: Design,
    /// What limits the funnel.
    pub limits: FunnelLimits,
}

/// A funnel that may stand at the can's rim.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct FunnelPoint {
    /// Inside diameter of the mouth.
    pub mouth_um: Micrometres,
    /// Half angle, thousandths of a degree.
    pub half_angle_millideg: u32,
    /// Along the axis, metres.
    pub length_m: f64,
    /// Directivity straight ahead, dB over isotropic.
    pub gain_dbi: f64,
    /// Whether the gain was solved for; else it is from a fit, give or take 0.4 dB.
    pub is_solved: bool,
}

impl FunnelPoint {
    /// As what stands at a mouth.
    #[must_use]
    pub const fn mouth(&self) -> Mouth {
        Mouth::Funnel {
            mouth_diameter_um: self.mouth_um,
            half_angle_millideg: self.half_angle_millideg,
        }
    }
}

/// What the search for a funnel has found so far.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct FunnelFound {
    /// The best within the limits once known; within: none that fits and can be solved.
    pub best: Option<Option<FunnelPoint>>,
    /// Gain of the bare can, dB over isotropic.
    pub bare_dbi: Option<f64>,
    /// The best of each length.
    pub by_length: Vec<FunnelPoint>,
    /// Each mouth at the best one's length.
    pub by_mouth: Vec<FunnelPoint>,
}

impl Question for SearchFunnel {
    /// `None` where the can is beyond the computation.
    type Answer = Option<FunnelFound>;

    fn into_job(self) -> Job {
        Job::SearchFunnel(self)
    }
}
