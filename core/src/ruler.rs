//! Cut and drill figures from faces that a ruler or caliper can touch.

use crate::design::{Design, Micrometres};

/// Where to measure, in whole micrometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RulerFigures {
    /// Hole centre from the outer rim of the closed end: the distance from the
    /// back wall with the base's thickness and recess added.
    pub hole_from_closed_rim_um: Micrometres,
    /// Hole centre from the open rim; `None` where the hole lies beyond it.
    pub hole_from_open_rim_um: Option<Micrometres>,
    /// Wire that stands free inside, from the inner wall to the tip.
    pub wire_from_inner_wall_um: Micrometres,
    /// Wire from the connector's face, where it rests on the outer wall.
    pub wire_from_connector_face_um: Micrometres,
    /// Whole can from the closed end's outer rim to the open rim.
    pub overall_length_um: Micrometres,
    /// Outside diameter.
    pub outside_diameter_um: Micrometres,
}

impl RulerFigures {
    /// The figures of a design. The base counts as thick as the wall.
    #[must_use]
    pub fn new(design: &Design) -> Self {
        let can = &design.can;
        let probe = &design.probe;
        let base_um = can.base_recess_um.saturating_add(can.wall_um);
        let outside_diameter_um = can
            .inside_diameter_um
            .saturating_add(can.wall_um.saturating_mul(2));
        Self {
            hole_from_closed_rim_um: probe.backshort_distance_um.saturating_add(base_um),
            hole_from_open_rim_um: can
                .open_length_um
                .checked_sub(probe.backshort_distance_um)
                .filter(|um| *um > 0),
            wire_from_inner_wall_um: probe.length_um,
            wire_from_connector_face_um: probe.length_um.saturating_add(can.wall_um),
            overall_length_um: can.open_length_um.saturating_add(base_um),
            outside_diameter_um,
        }
    }
}
