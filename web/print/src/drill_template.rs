//! The strip that goes once round the can and shows where to drill.

use crate::drawing::{Anchor, Drawing, OVERRUN, Text};
use crate::geometry::{MM, Point, Rect, Um, at};
use crate::hole_marks::{HoleMark, draw_flange, draw_seam, hole_marks};
use crate::layer::Layer;
use crate::letters::Weight;
use crate::pattern::{FreePlaces, Pattern};
use crate::typesetting::{Typesetter, line_pitch};
use crate::words;
use crate::wrap_strip::WrapStrip;
use tinwave_protocol::print::PrintError;
use tinwave_protocol::print::{Part, PrintJob, Rim, SideSeam};

/// How far the paper goes on under its own start, to be taped.
pub const TAB: Um = 5 * MM;
/// Air between the band of words and what is drawn.
const AIR: Um = 3 * MM;
/// Widest column of words.
const WIDEST_COLUMN: Um = 120 * MM;
/// Capitals of the words on the strip.
const CAPITAL: Um = 1_800;
/// Capitals of the link.
const LINK_CAPITAL: Um = 1_400;

/// The drill template of a job.
///
/// # Errors
/// [`PrintError::OutOfRange`] for a hole beyond the open rim.
pub fn drill_template(job: &PrintJob, set: Typesetter) -> Result<Pattern, PrintError> {
    let strip = WrapStrip::new(job);
    let marks = hole_marks(job, strip)?;
    let mut drawing = Drawing::default();
    let mut boxes = Vec::new();
    let mut keep_whole = Vec::new();
    for mark in &marks {
        boxes.extend(mark.boxes());
        keep_whole.extend_from_slice(&mark.centres);
    }
    let top = boxes.iter().map(|b| b.high.y).max().unwrap_or(0);
    let floor = top.max(12 * MM) + AIR;

    let probe = marks.first().and_then(|mark| mark.centres.first());
    let probe = probe.copied().unwrap_or_default();
    for mark in &marks {
        mark.draw(&mut drawing);
    }
    draw_flange(&mut drawing, job, probe);

    let height = floor + draw_band(&mut drawing, job, set, strip, &marks, floor);
    let mut free = FreePlaces::new(Rect::new(at(0, 0), at(strip.around + TAB, height)));
    for taken in boxes {
        free.take(taken);
    }
    draw_ends(&mut drawing, &mut free, job, strip, floor, height);
    number_holes(&mut drawing, &mut free, &marks);
    draw_seam_of(&mut drawing, &mut free, job, strip, floor);
    name_edge(&mut drawing, &mut free, job, strip, set);

    Ok(Pattern {
        part: Part::DrillTemplate,
        title: words::DRILL_TEMPLATE,
        drawing,
        keep_whole,
    })
}

/// The outline, the line that the start must fall on, and marks beside it that
/// say by how much it misses.
fn draw_ends(
    drawing: &mut Drawing,
    free: &mut FreePlaces,
    job: &PrintJob,
    strip: WrapStrip,
    floor: Um,
    height: Um,
) {
    let end = strip.around;
    drawing.outline(
        Layer::Cut,
        vec![
            at(0, 0),
            at(end, 0),
            at(end + TAB, 2 * MM),
            at(end + TAB, height - 2 * MM),
            at(end, height),
            at(0, height),
        ],
    );
    drawing.line(Layer::Dimension, at(end, 0), at(end, height));
    let scale = floor - 5 * MM;
    for step in -5..=5 {
        let x = end + step * MM;
        drawing.line(Layer::Dimension, at(x, scale), at(x, scale + 2 * MM));
    }
    free.take(Rect::new(at(end - 6 * MM, scale), at(end + TAB, floor)));
    if job.seam == SideSeam::Opposite {
        let text = Text::new(at(0, 0), CAPITAL, words::SEAM_AT_ENDS).turned();
        let mut places = Vec::new();
        for x in [end - MM, 3 * MM] {
            for y in [2, 6, 10] {
                places.push((at(x, y * MM), Anchor::Start));
            }
        }
        free.write(drawing, &text, &places);
    }
    let y = floor - AIR;
    for (name, near, far, anchor) in [
        ("A", 2 * MM, 6 * MM, Anchor::Start),
        ("B", end - 3 * MM, end - 8 * MM, Anchor::End),
    ] {
        let text = Text::new(at(0, 0), CAPITAL, name);
        free.write(
            drawing,
            &text,
            &[(at(near, y), anchor), (at(far, y), anchor)],
        );
    }
}

fn number_holes(drawing: &mut Drawing, free: &mut FreePlaces, marks: &[HoleMark]) {
    const CAPITAL: Um = 2_500;
    for (index, mark) in marks.iter().enumerate() {
        let text = Text::new(at(0, 0), CAPITAL, &words::hole_number(index)).bold();
        for centre in &mark.centres {
            // Beside, at the corners, above, then farther and farther off.
            let mut places = Vec::new();
            for ring in 0..8 {
                let far = mark.reach + MM / 2 + ring * 2 * MM;
                for y in [MM, -far - CAPITAL, far + MM] {
                    places.push((centre.by(far, y), Anchor::Start));
                    places.push((centre.by(-far, y), Anchor::End));
                }
            }
            free.write(drawing, &text, &places);
        }
    }
}

fn draw_seam_of(
    drawing: &mut Drawing,
    free: &mut FreePlaces,
    job: &PrintJob,
    strip: WrapStrip,
    floor: Um,
) {
    if job.seam != SideSeam::Through {
        return;
    }
    let x = strip.around / 2;
    draw_seam(drawing, x, floor);
    let text = Text::new(at(0, 0), CAPITAL, words::SEAM_THROUGH_HOLE);
    let mut places = Vec::new();
    for step in 1..20 {
        places.push((at(x + MM, step * MM), Anchor::Start));
    }
    free.write(drawing, &text, &places);
}

/// Says which rim the lower edge lies on, where there is room for it.
fn name_edge(
    drawing: &mut Drawing,
    free: &mut FreePlaces,
    job: &PrintJob,
    strip: WrapStrip,
    set: Typesetter,
) {
    let words = match job.rim {
        Rim::Closed => words::EDGE_ON_CLOSED_RIM,
        Rim::Open => words::EDGE_ON_OPEN_RIM,
    };
    let width = set.width(words, CAPITAL, Weight::Bold);
    let steps = (strip.around - width).max(0) / (2 * MM);
    let text = Text::new(at(0, 0), CAPITAL, words).bold();
    let mut places = Vec::new();
    for y in [1_500, 5_000, 9_000, 13_000] {
        for step in 0..=steps {
            places.push((at(MM + step * 2 * MM, y), Anchor::Start));
        }
    }
    free.write(drawing, &text, &places);
}

/// The band above the holes: whose template this is, which way the mouth is,
/// what each number means. Gives its height.
fn draw_band(
    drawing: &mut Drawing,
    job: &PrintJob,
    set: Typesetter,
    strip: WrapStrip,
    marks: &[HoleMark],
    floor: Um,
) -> Um {
    let half = strip.around / 2;
    let column = (half - 8 * MM).min(WIDEST_COLUMN);
    let mut left = Drawing::default();
    let mut y = 0;
    if !job.name.is_empty() {
        let name = Text::new(at(0, -3_000), 3_000, &job.name).bold();
        left.text(set.fitted(name, column));
        y -= line_pitch(3_000) + MM;
    }
    let say = |drawing: &mut Drawing, y: &mut Um, x: Um, words: &str, capital: Um| {
        let set_words = set.paragraph(words, capital, Weight::Regular, column - x);
        *y -= set.draw(drawing, &set_words, at(x, *y));
    };
    say(
        &mut left,
        &mut y,
        0,
        &words::say(job, words::TEMPLATE_OF),
        CAPITAL,
    );
    say(&mut left, &mut y, 0, words::ENDS_MEET, CAPITAL);
    say(&mut left, &mut y, 0, &job.link, LINK_CAPITAL);

    let mut right = Drawing::default();
    let mut below = mouth_arrow(&mut right, job.rim);
    for (index, mark) in marks.iter().enumerate() {
        let number = Text::new(at(0, below - CAPITAL), CAPITAL, &words::hole_number(index));
        right.text(number.bold());
        say(&mut right, &mut below, 4 * MM, &mark.listed, CAPITAL);
    }
    let height = -y.min(below) + 2 * AIR;
    drawing.place(left, 4 * MM, floor + height - AIR);
    drawing.place(right, half + 4 * MM, floor + height - AIR);
    height
}

/// The arrow along the axis, its top at the origin; gives where it ends below.
fn mouth_arrow(drawing: &mut Drawing, rim: Rim) -> Um {
    const LENGTH: Um = 8 * MM;
    let (foot, head) = (at(MM, -LENGTH), at(MM, 0));
    let (tip, degrees): (Point, f64) = match rim {
        Rim::Closed => (head, 90.0),
        Rim::Open => (foot, -90.0),
    };
    drawing.line(Layer::Outline, foot, head);
    drawing.arrow_head(Layer::Outline, tip, degrees, OVERRUN);
    let words = Text::new(at(4 * MM, -LENGTH / 2 - MM), 2_500, words::MOUTH_THIS_WAY);
    drawing.text(words.bold());
    -LENGTH - OVERRUN
}
