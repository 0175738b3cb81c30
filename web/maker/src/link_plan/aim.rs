//! How exactly an end must be aimed, in movements that a hand can make.

use tinwave_core::radio_link::{degrees_per_mm, sideways_of_turn_m, spot_width_m};

use super::antenna::PlanAntenna;

/// Errors of pointing whose cost is told, degrees.
pub const WRONG_BY_DEG: [f64; 4] = [5.0, 10.0, 20.0, 30.0];

/// What aiming asks for in one plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlaneAim {
    /// Full half-power width, degrees.
    pub width_deg: f64,
    /// Turn that costs 1 dB, degrees.
    pub turn_1_db_deg: f64,
    /// Turn that costs 3 dB, degrees.
    pub turn_3_db_deg: f64,
    /// Movement of the can's mouth that costs 1 dB, m.
    pub mouth_1_db_m: Option<f64>,
    /// Movement at the arm's end that costs 1 dB, m.
    pub arm_1_db_m: f64,
    /// Width of the half-power beam at the far end, m; infinite for half a circle or
    /// more.
    pub spot_m: f64,
}

/// What aiming asks for at one end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AimAnswer {
    /// Along the wire (E plane) and across it (H plane); `None` where the antenna has no
    /// beam to speak of.
    pub planes: Option<[PlaneAim; 2]>,
    /// Turn per millimetre at the can's mouth, degrees.
    pub mouth_deg_per_mm: Option<f64>,
    /// Turn per millimetre at the arm's end, degrees.
    pub arm_deg_per_mm: f64,
    /// How far the axis moves at the other end per millimetre at the mouth, m.
    pub far_end_per_mm_m: Option<f64>,
    /// What is lost off the aim by each of [`WRONG_BY_DEG`], in the worst direction, dB.
    pub loss_db: [f64; WRONG_BY_DEG.len()],
    /// Whether that is of a computed pattern.
    pub of_pattern: bool,
    /// Angle of the strongest direction towards the connector's side, degrees.
    pub lean_deg: f64,
}

impl AimAnswer {
    pub(super) fn new(antenna: &PlanAntenna, arm_m: f64, distance_m: f64) -> Self {
        let length_m = antenna.length_m;
        let both = antenna.widths_deg.zip(antenna.turns);
        let planes = both.map(|([e, h], [of_e, of_h])| {
            [(e, of_e), (h, of_h)].map(|(width_deg, [one, three])| PlaneAim {
                width_deg,
                turn_1_db_deg: one,
                turn_3_db_deg: three,
                mouth_1_db_m: length_m.map(|length| sideways_of_turn_m(one.to_radians(), length)),
                arm_1_db_m: sideways_of_turn_m(one.to_radians(), arm_m),
                spot_m: spot_width_m(distance_m, width_deg.to_radians()),
            })
        });
        Self {
            planes,
            mouth_deg_per_mm: length_m.map(degrees_per_mm),
            arm_deg_per_mm: degrees_per_mm(arm_m),
            far_end_per_mm_m: length_m.map(|length| distance_m * 1e-3 / length),
            loss_db: WRONG_BY_DEG.map(|error| antenna.pointing_loss_db(error)),
            of_pattern: antenna.has_pattern(),
            lean_deg: antenna.lean_deg,
        }
    }

    /// The smaller of both planes' turns that cost 1 dB and 3 dB, degrees.
    #[must_use]
    pub fn within_deg(&self) -> Option<[f64; 2]> {
        let [e, h] = self.planes?;
        Some([
            e.turn_1_db_deg.min(h.turn_1_db_deg),
            e.turn_3_db_deg.min(h.turn_3_db_deg),
        ])
    }
}
