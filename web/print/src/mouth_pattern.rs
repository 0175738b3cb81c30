//! Flat patterns of what is made for the mouth: funnel, ring, choke cup, cap.

use crate::cone::{Frustum, degrees};
use crate::drawing::{Drawing, Shape, Text};
use crate::geometry::{MM, Point, Um, at, nearest, um};
use crate::layer::Layer;
use crate::letters::Weight;
use crate::pattern::Pattern;
use crate::tabs::{Side, TAB, along_arc, below_edge};
use crate::typesetting::Typesetter;
use crate::words;
use crate::wrap_strip::circumference;
use tinwave_protocol::print::PrintError;
use tinwave_protocol::print::{Cap, JobNumber, Mouth, Part, PrintJob};

/// Capitals on the patterns.
const CAPITAL: Um = 2_000;
/// Width of the words.
const WORDS: Um = 140 * MM;

/// The pattern of what the design has at its mouth, if anything is made of
/// sheet there.
///
/// # Errors
/// [`PrintError::OutOfRange`] where it is no wider than the can.
pub fn mouth_pattern(job: &PrintJob, set: Typesetter) -> Result<Option<Pattern>, PrintError> {
    let outside = job.can.outside_diameter_um;
    let wider = |diameter: u32| {
        if diameter > outside.saturating_add(1_000) {
            return Ok(());
        }
        Err(PrintError::OutOfRange {
            number: JobNumber::Mouth,
            value: diameter,
            low: outside.saturating_add(1_001),
            high: 5_000_000,
        })
    };
    match job.mouth {
        Mouth::Open => Ok(None),
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
            sheet_um,
        } => {
            wider(mouth_diameter_um)?;
            let frustum = Frustum::of_inside(
                f64::from(outside) / 2.0,
                f64::from(mouth_diameter_um) / 2.0,
                degrees(half_angle_millideg),
                f64::from(sheet_um),
            );
            Ok(Some(funnel(job, frustum, set)))
        }
        Mouth::Ring {
            outside_diameter_um,
            sheet_um,
        } => {
            wider(outside_diameter_um)?;
            let mut drawing = Drawing::default();
            ring(&mut drawing, job, outside_diameter_um, sheet_um, at(0, 0));
            let use_words = [words::RING_USE];
            Ok(Some(finished(
                Part::MouthPattern,
                drawing,
                words::RING,
                &use_words,
                set,
            )))
        }
        Mouth::Choke {
            inside_diameter_um,
            depth_um,
            sheet_um,
        } => {
            wider(inside_diameter_um)?;
            let mut drawing = Drawing::default();
            let strip = cup_wall(&mut drawing, inside_diameter_um, depth_um, sheet_um);
            let radius = um(inside_diameter_um) / 2;
            let centre = at(radius, -TAB - 6 * MM - radius);
            ring(&mut drawing, job, inside_diameter_um, sheet_um, centre);
            let said = words::choke_use(job, strip);
            Ok(Some(finished(
                Part::MouthPattern,
                drawing,
                words::CHOKE,
                &[&said],
                set,
            )))
        }
    }
}

/// Adds what to do and which line means what, and makes a pattern of it.
fn finished(
    part: Part,
    mut drawing: Drawing,
    title: &'static str,
    sentences: &[&str],
    set: Typesetter,
) -> Pattern {
    let bounds = drawing.bounds();
    let mut place = at(bounds.low.x, bounds.low.y - 5 * MM);
    let sample = 15 * MM;
    for (layer, label) in [
        (Layer::Cut, words::CUT_LINE),
        (Layer::Fold, words::FOLD_LINE),
    ] {
        let y = place.y - CAPITAL / 2;
        drawing.line(layer, at(place.x, y), at(place.x + sample, y));
        let words_at = at(place.x + sample + 2 * MM, place.y - CAPITAL);
        drawing.text(Text::new(words_at, CAPITAL, label));
        place = place.by(40 * MM, 0);
    }
    place = at(bounds.low.x, place.y - 5 * MM);
    for sentence in sentences {
        let paragraph = set.paragraph(sentence, CAPITAL, Weight::Regular, WORDS);
        place = place.by(0, -set.draw(&mut drawing, &paragraph, place));
    }
    Pattern {
        part,
        title,
        drawing,
        keep_whole: Vec::new(),
    }
}

/// The funnel about the cone's tip, its middle line upwards.
fn funnel(job: &PrintJob, frustum: Frustum, set: Typesetter) -> Pattern {
    let flat = frustum.develop();
    let (start, end) = (90.0 - flat.sector_deg / 2.0, 90.0 + flat.sector_deg / 2.0);
    let tip = Point::default();
    let arc = |radius: f64| Shape::Arc {
        centre: tip,
        radius: nearest(radius),
        start_deg: start,
        sweep_deg: flat.sector_deg,
    };
    let mut drawing = Drawing::default();
    drawing.add(Layer::Cut, arc(flat.outer));
    drawing.add(Layer::Fold, arc(flat.inner));
    let inner_tabs = along_arc(flat.inner, start, flat.sector_deg, Side::Inwards);
    drawing.path(Layer::Cut, inner_tabs);
    drawing.line(
        Layer::Cut,
        tip.polar(flat.inner, start),
        tip.polar(flat.outer, start),
    );
    // The tab past the other edge goes under the first; its ends are cut back
    // so that it does not show.
    let (inner, outer) = (tip.polar(flat.inner, end), tip.polar(flat.outer, end));
    let back = f64::from(TAB).min((flat.outer - flat.inner) / 3.0);
    let aside = |point: Point| point.polar(f64::from(TAB), end + 90.0);
    drawing.line(Layer::Dimension, inner, outer);
    drawing.path(
        Layer::Cut,
        vec![
            inner,
            aside(tip.polar(flat.inner + back, end)),
            aside(tip.polar(flat.outer - back, end)),
            outer,
        ],
    );
    let said = words::funnel_use(job, flat);
    finished(Part::MouthPattern, drawing, words::FUNNEL, &[&said], set)
}

/// A ring that fits round the can, with tabs inwards to be bent along its wall.
fn ring(drawing: &mut Drawing, job: &PrintJob, outside_um: u32, sheet_um: u32, centre: Point) {
    let bend = f64::from(job.can.outside_diameter_um) / 2.0 + f64::from(sheet_um) / 2.0;
    let mut part = Drawing::default();
    let tip = Point::default();
    part.circle(Layer::Cut, tip, um(outside_um) / 2);
    part.circle(Layer::Fold, tip, nearest(bend));
    part.cross(Layer::Centre, tip, 3 * MM);
    part.outline(Layer::Cut, along_arc(bend, 0.0, 360.0, Side::Inwards));
    drawing.place(part, centre.x, centre.y);
}

/// The wall of a choke cup: a strip as long as its circumference in the middle
/// of the sheet, with tabs below for the ring and one at its end for the seam.
/// Gives its length.
fn cup_wall(drawing: &mut Drawing, inside_um: u32, depth_um: u32, sheet_um: u32) -> Um {
    let length = circumference(inside_um, sheet_um);
    let height = um(depth_um);
    let mut outline = vec![
        at(0, 0),
        at(0, height),
        at(length, height),
        at(length + TAB, height - height / 8),
        at(length + TAB, height / 8),
    ];
    outline.extend(below_edge(length));
    drawing.outline(Layer::Cut, outline);
    drawing.line(Layer::Fold, at(0, 0), at(length, 0));
    drawing.line(Layer::Dimension, at(length, 0), at(length, height));
    length
}

/// Diameter that the cap lies on.
#[must_use]
pub fn covered_um(job: &PrintJob) -> u32 {
    match job.mouth {
        Mouth::Open => job.can.outside_diameter_um,
        Mouth::Funnel {
            mouth_diameter_um: inside,
            sheet_um,
            ..
        }
        | Mouth::Choke {
            inside_diameter_um: inside,
            sheet_um,
            ..
        } => inside.saturating_add(sheet_um.saturating_mul(2)),
        Mouth::Ring {
            outside_diameter_um,
            ..
        } => outside_diameter_um,
    }
}

/// The disc over the mouth, with tabs to be bent back over the wall.
#[must_use]
pub fn cap_pattern(job: &PrintJob, cap: Cap, set: Typesetter) -> Pattern {
    let bend = f64::from(covered_um(job)) / 2.0 + f64::from(cap.sheet_um) / 2.0;
    let mut drawing = Drawing::default();
    drawing.circle(Layer::Fold, Point::default(), nearest(bend));
    drawing.cross(Layer::Centre, Point::default(), 3 * MM);
    drawing.outline(Layer::Cut, along_arc(bend, 0.0, 360.0, Side::Outwards));
    let said = words::cap_of(job, cap);
    finished(
        Part::Cap,
        drawing,
        words::CAP,
        &[&said, words::CAP_USE],
        set,
    )
}
