//! The can's parts in section: which outline each has on the sheet.

use std::f64::consts::PI;

use tinwave_core::design::{Design, Mouth, Screw};
use tinwave_core::math;
use tinwave_core::si::SiDesign;

use super::knob::Tip;
use super::scale::SectionScale;
use crate::path_text::PathText;

/// Narrowest wire that can be seen and grasped, px.
const LEAST_WIRE: f64 = 3.0;
/// Height of the connector's stub below the wall: not to scale.
const STUB: f64 = 13.0;
/// Of which the plate on the wall.
const PLATE: f64 = 3.0;

/// Path data by kind of line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SectionOutline {
    /// Cut metal: hatched, wide outline.
    pub cut: PathText,
    /// Edges seen behind the cut, and the connector's body.
    pub edges: PathText,
    /// The probe's wire: filled.
    pub wire: PathText,
    /// The sleeve over it.
    pub sleeve: PathText,
    /// Tuning screws.
    pub screws: PathText,
    /// Another cut, to compare with: dashed.
    pub other: PathText,
    /// The width that would do: dashed.
    pub would_do: PathText,
    /// Centre lines: long dash, short dash.
    pub centre: PathText,
}

/// Places of the probe on the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ProbePlace {
    /// Its axis.
    pub x: f64,
    /// Its tip, kept on the sheet.
    pub tip_y: f64,
    /// Half the drawn width of the wire.
    pub half_wire: f64,
    /// Half the drawn width of the hole.
    pub half_hole: f64,
    /// Bottom of the connector's stub.
    pub stub_y: f64,
}

impl ProbePlace {
    /// Where the wire of a design stands.
    #[must_use]
    pub fn new(design: &Design, scale: &SectionScale) -> Self {
        Self::of_tip(design, Tip::of(design), scale)
    }

    /// Where it would stand with another cut.
    #[must_use]
    pub fn of_tip(design: &Design, tip: Tip, scale: &SectionScale) -> Self {
        let probe = &design.probe;
        let wire = scale.px(probe.wire_diameter_um).max(LEAST_WIRE);
        let sleeve = probe
            .sleeve
            .map_or(0.0, |s| scale.px(s.outside_diameter_um).max(wire + 4.0));
        let hole_um = SiDesign::new(design).hole_radius_m * 2e6;
        let hole = (hole_um * scale.px_per_um).max(wire + 4.0).max(sleeve);
        Self {
            x: scale.along(tip.distance_um).min(scale.sheet.width),
            tip_y: (scale.near_wall_y - scale.px(tip.length_um)).max(8.0),
            half_wire: wire / 2.0,
            half_hole: hole / 2.0,
            stub_y: scale.near_wall_y + scale.wall + STUB,
        }
    }
}

impl SectionOutline {
    /// All outlines of a design with its cut.
    #[must_use]
    pub fn new(design: &Design, scale: &SectionScale, probe: &ProbePlace) -> Self {
        let mut outline = Self::default();
        outline.walls(scale, Some(probe));
        outline.mouth(design, scale);
        outline.probe(design, scale, probe);
        for screw in &design.screws {
            outline.screw(screw, scale);
        }
        outline.axis(scale);
        outline
    }

    /// All outlines of a can that has no cut.
    #[must_use]
    pub fn uncut(design: &Design, scale: &SectionScale) -> Self {
        let mut outline = Self::default();
        outline.walls(scale, None);
        outline.mouth(design, scale);
        outline.axis(scale);
        outline
    }

    /// Adds the wire of another cut.
    pub fn add_other(&mut self, scale: &SectionScale, probe: &ProbePlace) {
        let (left, right) = (probe.x - probe.half_wire, probe.x + probe.half_wire);
        self.other.polyline([
            (left, scale.near_wall_y),
            (left, probe.tip_y),
            (right, probe.tip_y),
            (right, scale.near_wall_y),
        ]);
    }

    /// Adds the walls of a width that would do, from the back wall to the mouth.
    pub fn add_would_do(&mut self, scale: &SectionScale, inside_um: u32) {
        let half = scale.px(inside_um) / 2.0;
        for y in [scale.axis_y() - half, scale.axis_y() + half] {
            self.would_do.segment(scale.back_x, y, scale.mouth_x, y);
        }
    }

    fn walls(&mut self, scale: &SectionScale, probe: Option<&ProbePlace>) {
        let s = scale;
        let outer_top = s.far_wall_y - s.wall;
        let outer_bottom = s.near_wall_y + s.wall;
        let base = s.back_x - s.wall;
        let (hole_left, hole_right) = probe.map_or((s.mouth_x, s.mouth_x), |probe| {
            let left = (probe.x - probe.half_hole).max(s.back_x);
            (left, probe.x + probe.half_hole)
        });
        let hole_meets_wall = hole_left < s.mouth_x;
        let end = if hole_meets_wall {
            hole_left
        } else {
            s.mouth_x
        };
        // Far wall, base and the near wall up to the hole are one cut piece;
        // the base sits in from the rim by its recess.
        self.cut.polygon(&[
            (s.rim_x, outer_top),
            (s.mouth_x, outer_top),
            (s.mouth_x, s.far_wall_y),
            (s.back_x, s.far_wall_y),
            (s.back_x, s.near_wall_y),
            (end, s.near_wall_y),
            (end, outer_bottom),
            (s.rim_x, outer_bottom),
            (s.rim_x, s.near_wall_y),
            (base, s.near_wall_y),
            (base, s.far_wall_y),
            (s.rim_x, s.far_wall_y),
        ]);
        if hole_meets_wall && hole_right < s.mouth_x {
            self.cut
                .rectangle(hole_right, s.near_wall_y, s.mouth_x, outer_bottom);
        }
        if base - s.rim_x > 1.0 {
            self.edges
                .segment(s.rim_x, s.far_wall_y, s.rim_x, s.near_wall_y);
        }
    }

    fn mouth(&mut self, design: &Design, scale: &SectionScale) {
        let s = scale;
        let (past_rim, past_wall) = s.mouth_extent(design);
        let sides = [(s.far_wall_y, -1.0), (s.near_wall_y, 1.0)];
        if design.mouth != Mouth::Absorbing {
            self.edges
                .segment(s.mouth_x, s.far_wall_y, s.mouth_x, s.near_wall_y);
        }
        match design.mouth {
            Mouth::Open => {}
            Mouth::Absorbing => {
                // The guide goes on: the free-hand break line of ISO 128, as a zigzag.
                let mid = scale.axis_y();
                self.edges.polyline([
                    (s.mouth_x + 4.0, s.far_wall_y - 10.0),
                    (s.mouth_x + 4.0, mid - 8.0),
                    (s.mouth_x - 2.0, mid - 3.0),
                    (s.mouth_x + 10.0, mid + 3.0),
                    (s.mouth_x + 4.0, mid + 8.0),
                    (s.mouth_x + 4.0, s.near_wall_y + 10.0),
                ]);
            }
            Mouth::Funnel { .. } => {
                for (y, out) in sides {
                    let far = (s.mouth_x + past_rim, y + out * past_wall);
                    self.cut.polygon(&[
                        (s.mouth_x, y),
                        far,
                        (far.0, far.1 + out * s.wall),
                        (s.mouth_x, y + out * s.wall),
                    ]);
                }
                let far_x = s.mouth_x + past_rim;
                let (top, bottom) = (s.far_wall_y - past_wall, s.near_wall_y + past_wall);
                self.edges.segment(far_x, top, far_x, bottom);
            }
            Mouth::Flange { .. } => {
                for (y, out) in sides {
                    let (from, to) = (y + out * s.wall, y + out * past_wall.max(s.wall));
                    self.cut.rectangle(s.mouth_x - s.wall, from, s.mouth_x, to);
                }
            }
            Mouth::Choke { depth_um, .. } => {
                let bottom_x = s.mouth_x - s.px(depth_um);
                for (y, out) in sides {
                    let (inner, outer) = (y + out * s.wall, y + out * past_wall.max(2.0 * s.wall));
                    self.cut.polygon(&[
                        (bottom_x, inner),
                        (bottom_x, outer),
                        (s.mouth_x, outer),
                        (s.mouth_x, outer + out * s.wall),
                        (bottom_x - s.wall, outer + out * s.wall),
                        (bottom_x - s.wall, inner),
                    ]);
                }
            }
        }
    }

    fn probe(&mut self, design: &Design, scale: &SectionScale, probe: &ProbePlace) {
        let outer = scale.near_wall_y + scale.wall;
        let x = probe.x;
        let (plate, body) = (
            (probe.half_hole + 6.0).max(11.0),
            (probe.half_hole + 1.0).max(5.0),
        );
        self.edges
            .rectangle(x - plate, outer, x + plate, outer + PLATE);
        self.edges
            .rectangle(x - body, outer + PLATE, x + body, probe.stub_y);
        if let Some(sleeve) = design.probe.sleeve {
            let half = scale.px(sleeve.outside_diameter_um) / 2.0;
            let half = half.max(probe.half_wire + 2.0);
            self.sleeve
                .rectangle(x - half, probe.tip_y, x + half, scale.near_wall_y);
        }
        self.wire
            .rectangle(x - probe.half_wire, probe.tip_y, x + probe.half_wire, outer);
    }

    /// A screw is a radial rod: its ends stand where the cosine of its angle
    /// puts them. Out of the drawing's plane only what sticks in is seen.
    fn screw(&mut self, screw: &Screw, scale: &SectionScale) {
        let x = scale.along(screw.axial_um);
        let half = (scale.px(screw.diameter_um) / 2.0).max(1.5);
        let radius = (scale.near_wall_y - scale.far_wall_y) / 2.0;
        let angle = f64::from(screw.angle_millideg) * (PI / 180_000.0);
        let cosine = math::sin_cos(angle).1;
        let at = |from_axis: f64| scale.axis_y() + from_axis * cosine;
        let (wall, tip) = (at(radius), at(radius - scale.px(screw.depth_um)));
        if (wall - tip).abs() < half && cosine.abs() < 0.5 {
            self.screws.circle(x, wall, half);
        } else if cosine.abs() < 0.98 {
            self.screws.rectangle(x - half, wall, x + half, tip);
        } else {
            let neck = at(radius + scale.wall + 4.0);
            let head = at(radius + scale.wall + 8.0);
            self.screws.rectangle(x - half, neck, x + half, tip);
            self.screws
                .rectangle(x - half - 2.5, head, x + half + 2.5, neck);
        }
    }

    fn axis(&mut self, scale: &SectionScale) {
        let y = scale.axis_y();
        self.centre
            .segment(scale.rim_x - 8.0, y, scale.mouth_x + 8.0, y);
    }
}
