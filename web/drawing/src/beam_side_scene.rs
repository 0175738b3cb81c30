//! A beam from the side, before its can: angles and the can to scale, the beam's reach not.

use std::f64::consts::PI;

use tinwave_core::design::{Design, Mouth};

use crate::beam_scene::{BeamCuts, BeamWidth, angle_deg};
use crate::path_text::PathText;

/// The box that it is drawn in; letters are placed by per cent over it.
pub const SIDE_BOX: (f64, f64) = (340.0, 240.0);
/// The mouth's middle, and how far the beam is drawn.
const MOUTH: (f64, f64) = (92.0, 120.0);
const REACH: f64 = 228.0;
/// Room round the box's edge.
const EDGE: f64 = 4.0;
/// Most of the can's length and width.
const CAN_ROOM: (f64, f64) = (82.0, 96.0);

/// The beam from the side, as path data in a box of [`SIDE_BOX`].
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SideScene {
    /// The field's strength in each direction.
    pub lobe: String,
    /// The edges of the half-power beam.
    pub half_power: String,
    /// Where the upper edge ends, for the angle's figure.
    pub upper_end: Option<(f64, f64)>,
    /// The can's axis.
    pub axis: String,
    /// The can's outline with what stands at its mouth.
    pub can: String,
    /// Its wire.
    pub wire: String,
}

impl SideScene {
    /// The beam of a design along its wire (E plane); nothing for no levels.
    #[must_use]
    pub fn new(cuts: &BeamCuts, along: BeamWidth, design: &Design) -> Option<Self> {
        let highest = cuts.e_dbi.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        if !highest.is_finite() {
            return None;
        }
        let points: Vec<(f64, f64)> = cuts
            .e_dbi
            .iter()
            .enumerate()
            .map(|(index, level)| {
                // As far as the field is strong: half the field, half the distance.
                let share = 10.0_f64.powf((level - highest) / 20.0);
                let angle = angle_deg(index);
                towards(angle, (REACH * share).min(room(angle)))
            })
            .collect();
        let mut lobe = PathText::new();
        lobe.polygon(&points);
        let ends = half_power_ends(along);
        let mut half_power = PathText::new();
        for (x, y) in ends.iter().flatten() {
            half_power.segment(MOUTH.0, MOUTH.1, *x, *y);
        }
        let mut axis = PathText::new();
        axis.segment(EDGE, MOUTH.1, SIDE_BOX.0 - EDGE, MOUTH.1);
        let (can, wire) = can(design);
        Some(Self {
            lobe: lobe.into_text(),
            half_power: half_power.into_text(),
            upper_end: ends.map(|[upper, _]| upper),
            axis: axis.into_text(),
            can,
            wire,
        })
    }
}

/// Ahead to the right, the wire's side below, as in the section.
fn towards(angle_deg: f64, distance: f64) -> (f64, f64) {
    let (sine, cosine) = (angle_deg * (PI / 180.0)).sin_cos();
    (MOUTH.0 + distance * cosine, MOUTH.1 + distance * sine)
}

/// How far it is from the mouth to the box's edge in a direction.
fn room(angle_deg: f64) -> f64 {
    let (sine, cosine) = (angle_deg * (PI / 180.0)).sin_cos();
    let along = if cosine > 0.0 {
        (SIDE_BOX.0 - EDGE - MOUTH.0) / cosine
    } else {
        (MOUTH.0 - EDGE) / -cosine
    };
    along.min((MOUTH.1 - EDGE) / sine.abs().max(1e-9))
}

/// Ends of the upper and the lower half-power line, cut off at the box's edge without
/// a change of their angle.
fn half_power_ends(along: BeamWidth) -> Option<[(f64, f64); 2]> {
    let width = along.width_deg.filter(|width| *width < 180.0)?;
    Some([-0.5, 0.5].map(|side| {
        let angle = along.peak_deg + side * width;
        towards(angle, REACH.min(room(angle)))
    }))
}

/// Outline and wire of a can, one scale for all of it.
fn can(design: &Design) -> (String, String) {
    let um = f64::from;
    let (length, diameter) = (
        um(design.can.open_length_um),
        um(design.can.inside_diameter_um),
    );
    let (ahead, widest) = at_mouth(design);
    let scale = (CAN_ROOM.0 / (length + ahead)).min(CAN_ROOM.1 / widest);
    let rim = MOUTH.0 - ahead * scale;
    let (back, half) = (rim - length * scale, 0.5 * diameter * scale);
    let outer = 0.5 * widest * scale;
    let mut path = PathText::new();
    path.polyline([
        (rim, MOUTH.1 - half),
        (back, MOUTH.1 - half),
        (back, MOUTH.1 + half),
        (rim, MOUTH.1 + half),
    ]);
    for side in [-1.0, 1.0] {
        let at = |x: f64, out: f64| (x, MOUTH.1 + side * out);
        match design.mouth {
            Mouth::Open | Mouth::Absorbing => {}
            Mouth::Funnel { .. } | Mouth::Flange { .. } => {
                path.polyline([at(rim, half), at(MOUTH.0, outer)]);
            }
            Mouth::Choke { depth_um, .. } => {
                let bottom = rim - um(depth_um) * scale;
                path.polyline([at(bottom, half), at(bottom, outer), at(rim, outer)]);
            }
        }
    }
    let place = back + um(design.probe.backshort_distance_um) * scale;
    let mut wire = PathText::new();
    let tip = MOUTH.1 + half - um(design.probe.length_um) * scale;
    wire.segment(place, MOUTH.1 + half, place, tip);
    (path.into_text(), wire.into_text())
}

/// How far what stands at the mouth goes ahead of the rim, and the widest of it.
fn at_mouth(design: &Design) -> (f64, f64) {
    let diameter = f64::from(design.can.inside_diameter_um);
    match design.mouth {
        Mouth::Open | Mouth::Absorbing => (0.0, diameter),
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
        } => {
            let mouth = f64::from(mouth_diameter_um);
            let slope = (f64::from(half_angle_millideg) * (PI / 180_000.0)).tan();
            let ahead = 0.5 * (mouth - diameter).max(0.0) / slope.max(1e-3);
            (ahead, mouth.max(diameter))
        }
        Mouth::Flange {
            outside_diameter_um,
        }
        | Mouth::Choke {
            outside_diameter_um,
            ..
        } => (0.0, f64::from(outside_diameter_um).max(diameter)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_maker::example::example;

    fn width(width_deg: f64, peak_deg: f64) -> BeamWidth {
        BeamWidth {
            width_deg: Some(width_deg),
            peak_deg,
        }
    }

    /// A beam that falls off like the cosine's square ahead, and 20 dB down behind.
    fn cuts() -> BeamCuts {
        let level = |index: usize| {
            let cosine = (angle_deg(index) * PI / 180.0).cos();
            8.0 + (20.0 * cosine.max(0.1).log10()).max(-20.0)
        };
        let levels: Vec<f64> = (0..=180).map(level).collect();
        BeamCuts {
            e_dbi: levels.clone(),
            h_dbi: levels,
        }
    }

    fn scene(along: BeamWidth, design: &Design) -> SideScene {
        SideScene::new(&cuts(), along, design).unwrap_or_default()
    }

    fn numbers(path: &str) -> Vec<f64> {
        path.split(|c: char| c.is_ascii_alphabetic() || c == ' ' || c == ',')
            .filter_map(|number| number.parse().ok())
            .collect()
    }

    #[test]
    fn half_power_lines_keep_their_angle_at_the_edge_of_the_box() {
        for (full, peak) in [
            (20.0, 0.0),
            (71.0, 0.0),
            (110.0, 0.0),
            (170.0, 0.0),
            (60.0, 15.0),
        ] {
            let ends = half_power_ends(width(full, peak)).unwrap_or_default();
            for ((x, y), wanted) in ends.into_iter().zip([peak - full / 2.0, peak + full / 2.0]) {
                let angle = (y - MOUTH.1).atan2(x - MOUTH.0) * (180.0 / PI);
                assert!((angle - wanted).abs() < 1e-6, "{angle}, not {wanted}");
                assert!((0.0..=SIDE_BOX.0).contains(&x) && (0.0..=SIDE_BOX.1).contains(&y));
            }
        }
        assert_eq!(half_power_ends(BeamWidth::default()), None);
        assert_eq!(half_power_ends(width(200.0, 0.0)), None);
    }

    #[test]
    fn the_strongest_direction_reaches_farthest() {
        let lobe = numbers(&scene(width(90.0, 0.0), &example().design).lobe);
        let farthest = lobe.iter().step_by(2).copied().fold(0.0, f64::max);
        assert!((farthest - (MOUTH.0 + REACH)).abs() < 0.1, "{farthest}");
    }

    #[test]
    fn every_can_and_mouth_stays_in_its_room() {
        let mut design = example().design;
        let mouths = [
            Mouth::Open,
            Mouth::Funnel {
                mouth_diameter_um: 450_000,
                half_angle_millideg: 12_000,
            },
            Mouth::Flange {
                outside_diameter_um: 300_000,
            },
            Mouth::Choke {
                outside_diameter_um: 180_000,
                depth_um: 31_000,
            },
        ];
        for length in [60_000, 190_000, 900_000] {
            design.can.open_length_um = length;
            for mouth in mouths {
                design.mouth = mouth;
                let path = numbers(&scene(width(70.0, 0.0), &design).can);
                let xs = || path.iter().step_by(2).copied();
                let ys = || path.iter().skip(1).step_by(2).copied();
                assert!(
                    xs().all(|x| (EDGE..=MOUTH.0 + 0.1).contains(&x)),
                    "{mouth:?}"
                );
                let half = CAN_ROOM.1 / 2.0 + 0.1;
                assert!(ys().all(|y| (y - MOUTH.1).abs() <= half), "{mouth:?}");
                // The mouth is where the beam begins.
                assert!(xs().any(|x| (x - MOUTH.0).abs() < 0.1), "{mouth:?}");
            }
        }
    }
}
