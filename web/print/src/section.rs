//! The finished antenna in section, reduced, with the dimensions to work by.

use crate::cone::degrees;
use crate::dimension::{across, extension_aside, extension_upright, upright};
use crate::drawing::{Drawing, Text};
use crate::figure::Figures;
use crate::fill::fill;
use crate::geometry::{MM, Rect, Um, at, nearest, um};
use crate::layer::Layer;
use crate::turn::sin_cos;
use crate::typesetting::Typesetter;
use crate::words;
use tinwave_protocol::print::{Mouth, PrintJob, Rim};

/// Scales of reduction (ISO 5455).
const SCALES: [Um; 8] = [1, 2, 5, 10, 20, 50, 100, 200];
/// Room left of the can for the probe's dimension.
const LEFT: Um = 8 * MM;
/// Room right of the mouth for the inside diameter.
const RIGHT: Um = 8 * MM;
/// Most height that the metal itself takes.
const TALLEST: Um = 42 * MM;
/// From one row of dimensions to the next.
const ROW: Um = 5 * MM;
/// Size of the connector's body, which is not drawn to scale.
const BODY: Um = 4 * MM;

/// Places of the can on the drawing.
struct Places {
    scale: Um,
    /// The outer rim of the closed end.
    rim: Um,
    /// The inside of the back wall.
    back: Um,
    /// The rim of the mouth.
    mouth: Um,
    /// Half the can's inside diameter.
    half: Um,
    /// The wire's axis.
    wire: Um,
    /// How far the mouth's parts reach past the rim and past the axis.
    past: (Um, Um),
}

/// The section drawing within a width; its top left corner is the origin, and
/// the can's axis lies along x.
#[must_use]
pub fn section(job: &PrintJob, set: Typesetter, width: Um) -> Drawing {
    let places = Places::new(job, width);
    let mut drawing = Drawing::default();
    draw_can(&mut drawing, &places);
    draw_probe(&mut drawing, job, &places);
    draw_mouth(&mut drawing, job, &places);
    draw_dimensions(&mut drawing, job, &places);
    let low = drawing.bounds().low.y;
    let caption = words::section_caption(job, places.scale);
    drawing.text(set.fitted(Text::new(at(0, low - 3 * MM), 1_800, &caption), width));
    let top = drawing.bounds().high.y;
    let mut placed = Drawing::default();
    placed.place(drawing, 0, -top);
    placed
}

/// How far the mouth's parts reach past the rim, and their half height from
/// the axis, in true size.
fn mouth_reach(job: &PrintJob) -> (Um, Um) {
    let can = um(job.can.outside_diameter_um) / 2;
    match job.mouth {
        Mouth::Open => (0, can),
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
            ..
        } => {
            let half = um(mouth_diameter_um) / 2;
            let (sin, cos) = sin_cos(degrees(half_angle_millideg));
            let rise = f64::from((half - can).max(0)) * cos / sin;
            (nearest(rise), half)
        }
        Mouth::Ring {
            outside_diameter_um: diameter,
            ..
        }
        | Mouth::Choke {
            inside_diameter_um: diameter,
            ..
        } => (0, um(diameter) / 2),
    }
}

impl Places {
    fn new(job: &PrintJob, width: Um) -> Self {
        let (past, half_height) = mouth_reach(job);
        let room = width - LEFT - RIGHT;
        let length = um(job.can.overall_um()).saturating_add(past);
        let fits = |scale: &Um| length / scale <= room && half_height / scale <= TALLEST / 2;
        let scale = SCALES.into_iter().find(fits).unwrap_or(1_000);
        let along = |from_rim: u32| LEFT + um(from_rim) / scale;
        let base = job.can.base_um();
        Self {
            scale,
            rim: LEFT,
            back: along(base),
            mouth: along(job.can.overall_um()),
            half: um(job.can.inside_diameter_um()) / 2 / scale,
            wire: along(base.saturating_add(job.probe.backshort_um)),
            past: (past / scale, half_height / scale),
        }
    }
}

fn draw_can(drawing: &mut Drawing, p: &Places) {
    // At these scales the wall is a line; its inside is what counts.
    for side in [-p.half, p.half] {
        drawing.line(Layer::Outline, at(p.rim, side), at(p.mouth, side));
    }
    drawing.line(Layer::Outline, at(p.back, -p.half), at(p.back, p.half));
    let (left, right) = (p.rim - 2 * MM, p.mouth + p.past.0 + 2 * MM);
    drawing.line(Layer::Centre, at(left, 0), at(right, 0));
}

fn draw_probe(drawing: &mut Drawing, job: &PrintJob, p: &Places) {
    let half_wire = (um(job.probe.wire_diameter_um) / 2 / p.scale).max(250);
    let tip = p.tip(job);
    let wire = Rect::new(
        at(p.wire - half_wire, -p.half - MM),
        at(p.wire + half_wire, tip),
    );
    drawing.rectangle(Layer::Outline, wire);
    let body = Rect::new(
        at(p.wire - BODY / 2, -p.half - BODY),
        at(p.wire + BODY / 2, -p.half - MM / 2),
    );
    drawing.rectangle(Layer::Outline, body);
    for screw in &job.screws {
        let x = p.back + um(screw.axial_um) / p.scale;
        let from_probe = screw.angle_millideg % 360_000;
        let side = if (90_000..270_000).contains(&from_probe) {
            1
        } else {
            -1
        };
        let inner = side * (p.half - um(screw.depth_um) / p.scale);
        drawing.line(
            Layer::Outline,
            at(x, side * (p.half + 2 * MM)),
            at(x, inner),
        );
    }
}

fn draw_mouth(drawing: &mut Drawing, job: &PrintJob, p: &Places) {
    let (past, height) = p.past;
    for side in [-1, 1] {
        let rim = at(p.mouth, side * p.half);
        match job.mouth {
            Mouth::Open => {}
            Mouth::Funnel { .. } | Mouth::Ring { .. } => {
                drawing.line(Layer::Outline, rim, at(p.mouth + past, side * height));
            }
            Mouth::Choke { depth_um, .. } => {
                let floor = p.mouth - um(depth_um) / p.scale;
                drawing.path(
                    Layer::Outline,
                    vec![
                        at(floor, side * p.half),
                        at(floor, side * height),
                        at(p.mouth, side * height),
                    ],
                );
            }
        }
    }
    if job.cap.is_some() {
        let x = p.mouth + past + MM / 2;
        drawing.line(Layer::Hidden, at(x, -height), at(x, height));
    }
}

fn draw_dimensions(drawing: &mut Drawing, job: &PrintJob, p: &Places) {
    let figure = |um: u32| job.unit.figure(i64::from(um));
    let outer = p.half.max(p.past.1);
    let top = outer + 4 * MM;
    for x in [p.back, p.mouth] {
        extension_upright(drawing, x, p.half + MM / 2, top);
    }
    let length = figure(job.can.open_length_um);
    across(drawing, (p.back, p.mouth), top, length);

    let first = -(outer.max(p.half + BODY)) - ROW;
    let second = first - ROW;
    extension_upright(drawing, p.back, -p.half - MM / 2, first);
    extension_upright(drawing, p.wire, -p.half - BODY - MM / 2, second);
    let distance = figure(job.probe.backshort_um);
    across(drawing, (p.back, p.wire), first, distance);
    let edge = match job.rim {
        Rim::Closed => p.rim,
        Rim::Open => p.mouth,
    };
    extension_upright(drawing, edge, -p.half - MM / 2, second);
    let hole = words::hole_from_rim(job);
    across(drawing, (edge, p.wire), second, hole);

    let left = p.rim - 3 * MM;
    let tip = p.tip(job);
    extension_aside(drawing, tip, p.wire - MM, left);
    extension_aside(drawing, -p.half, p.rim - MM / 2, left);
    upright(drawing, (-p.half, tip), left, figure(job.probe.length_um));
    let right = p.mouth + p.past.0 + 5 * MM;
    for side in [-p.half, p.half] {
        extension_aside(drawing, side, p.mouth + MM / 2, right);
    }
    let inside = fill("Ø {}", &[&figure(job.can.inside_diameter_um())]);
    upright(drawing, (-p.half, p.half), right, inside);
}

impl Places {
    /// Height of the probe's tip, kept within the drawing.
    fn tip(&self, job: &PrintJob) -> Um {
        let tip = -self.half + um(job.probe.length_um) / self.scale;
        tip.min(self.half)
    }
}
