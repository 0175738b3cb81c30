//! Holes on the drill template: circles of the drill, crosshairs, the
//! connector's flange.

use std::f64::consts::PI;

use crate::drawing::{Drawing, OVERRUN};
use crate::geometry::{MM, Point, Rect, Um, at, nearest, um};
use crate::layer::Layer;
use crate::turn::sin_cos;
use crate::words;
use crate::wrap_strip::WrapStrip;
use tinwave_protocol::print::PrintError;
use tinwave_protocol::print::{Fixing, JobNumber, Panel, PrintJob};

/// A hole with its number on the template and its line in the list of holes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HoleMark {
    /// Its centre, once or, across the paper's ends, twice.
    pub centres: Vec<Point>,
    /// Diameter of the drill.
    pub drill: Um,
    /// The box round all that is drawn for one centre, from the centre.
    pub reach: Um,
    /// Its line in the list.
    pub listed: String,
}

/// Walls at least this thick don't lie flat against a flange when its screws
/// are drawn up. Common practice, no source.
const STIFF_WALL_UM: u32 = 1_000;

/// All holes of a job, the probe's first.
///
/// # Errors
/// [`PrintError::OutOfRange`] for one beyond the open rim.
pub fn hole_marks(job: &PrintJob, strip: WrapStrip) -> Result<Vec<HoleMark>, PrintError> {
    let probe = strip.place(job, JobNumber::Backshort, job.probe.backshort_um, 0)?;
    let drill = um(job.panel.drill_um);
    let mut marks = vec![HoleMark {
        centres: vec![probe],
        drill,
        reach: probe_reach(job),
        listed: words::probe_hole_listed(job),
    }];
    for screw in &job.screws {
        let centre = strip.place(job, JobNumber::Screw, screw.axial_um, screw.angle_millideg)?;
        marks.push(mark(
            strip,
            centre,
            um(screw.hole_um),
            words::screw_hole_listed(job, screw),
        ));
    }
    if let Some((axials, bracket)) = crate::mount::bracket_holes(job) {
        for axial_um in axials {
            let centre = strip.place(job, JobNumber::Bracket, axial_um, bracket.angle_millideg)?;
            marks.push(mark(
                strip,
                centre,
                um(bracket.hole_um),
                words::bracket_hole_listed(job, axial_um, bracket),
            ));
        }
    }
    Ok(marks)
}

fn mark(strip: WrapStrip, centre: Point, drill: Um, listed: String) -> HoleMark {
    let reach = drill / 2 + OVERRUN;
    let mut centres = vec![centre];
    // Across the paper's ends the hole is drawn on both, so that either end
    // may lie on top.
    if centre.x < reach {
        centres.push(centre.by(strip.around, 0));
    } else if centre.x + reach > strip.around {
        centres.push(centre.by(-strip.around, 0));
    }
    HoleMark {
        centres,
        drill,
        reach,
        listed,
    }
}

/// How far from its centre the probe's hole and its connector reach.
fn probe_reach(job: &PrintJob) -> Um {
    let hole = um(job.panel.drill_um) / 2;
    match job.panel.fixing {
        Fixing::Flange { square_um, .. } => hole.max(um(square_um) / 2) + OVERRUN,
        Fixing::Nut | Fixing::Solder => hole + OVERRUN,
    }
}

impl HoleMark {
    /// The boxes that it fills.
    #[must_use]
    pub fn boxes(&self) -> Vec<Rect> {
        let reach = self.reach;
        let boxed = |c: &Point| Rect::new(c.by(-reach, -reach), c.by(reach, reach));
        self.centres.iter().map(boxed).collect()
    }

    /// Draws the circle of the drill and its crosshair.
    pub fn draw(&self, drawing: &mut Drawing) {
        for centre in &self.centres {
            drawing.circle(Layer::Drill, *centre, (self.drill / 2).max(1));
            drawing.cross(Layer::Centre, *centre, self.reach);
        }
    }
}

/// Draws the flange's outline and its screw holes round the probe's hole.
pub fn draw_flange(drawing: &mut Drawing, job: &PrintJob, centre: Point) {
    let Panel {
        fixing:
            Fixing::Flange {
                square_um,
                pitch_um,
                hole_um,
            },
        ..
    } = job.panel
    else {
        return;
    };
    let half = um(square_um) / 2;
    let square = Rect::new(centre.by(-half, -half), centre.by(half, half));
    drawing.rectangle(Layer::Outline, square);
    let up = um(pitch_um) / 2;
    let aside = along_wall(job, up);
    for (x, y) in [(-aside, -up), (aside, -up), (aside, up), (-aside, up)] {
        let hole = centre.by(x, y);
        drawing.circle(Layer::Drill, hole, (um(hole_um) / 2).max(1));
        drawing.cross(Layer::Centre, hole, um(hole_um) / 2 + MM / 2);
    }
}

/// How far round the wall a screw hole is that stands so far aside on the flat
/// flange. A thin wall is drawn flat against the flange by its screws, and
/// nothing changes. A stiff one stays round: the screw, square to the flange,
/// meets it at `R asin(x / R)`.
fn along_wall(job: &PrintJob, aside: Um) -> Um {
    let radius = f64::from(job.can.outside_diameter_um) / 2.0;
    let ratio = f64::from(aside) / radius;
    if job.can.wall_um < STIFF_WALL_UM || ratio > 0.9 {
        return aside;
    }
    // The angle whose sine is the ratio, by Newton's steps.
    let mut angle = ratio;
    for _ in 0..6 {
        let (sin, cos) = sin_cos(angle * (180.0 / PI));
        angle -= (sin - ratio) / cos;
    }
    nearest(radius * angle)
}

/// Draws the line that lies on the can's own seam, from the rim up.
pub fn draw_seam(drawing: &mut Drawing, x: Um, height: Um) {
    drawing.line(Layer::Centre, at(x, 0), at(x, height));
}
