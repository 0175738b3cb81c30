//! The probe wire at true size: lay the wire on it and cut.

use crate::drawing::{Drawing, OVERRUN, Text};
use crate::fill::fill;
use crate::geometry::{MM, Rect, Um, at, um};
use crate::layer::Layer;
use crate::letters::Weight;
use crate::pattern::Pattern;
use crate::typesetting::Typesetter;
use crate::words;
use tinwave_protocol::print::{CutLimits, Part, PrintJob};

/// Capitals on the gauge.
const CAPITAL: Um = 2_000;
/// Width of the words beside a short wire.
const WORDS: Um = 150 * MM;

/// The gauge of a job: one bar measured from the inside of the wall, one from
/// the connector's face, which lies on the wall's outside.
#[must_use]
pub fn cut_gauge(job: &PrintJob, set: Typesetter) -> Pattern {
    let mut drawing = Drawing::default();
    let head = Text::new(at(0, -3_000), 3_000, &words::say(job, words::WIRE_OF)).bold();
    drawing.text(set.fitted(head, WORDS));
    let usage = set.paragraph(words::GAUGE_USE, CAPITAL, Weight::Regular, WORDS);
    let mut y = -6 * MM - set.draw(&mut drawing, &usage, at(0, -6 * MM));
    for (title, extra) in words::GAUGE_ROWS.into_iter().zip([0, job.can.wall_um]) {
        y = row(&mut drawing, job, title, um(extra), y);
    }
    Pattern {
        part: Part::CutGauge,
        title: words::CUT_GAUGE,
        drawing,
        keep_whole: Vec::new(),
    }
}

/// One bar with its datum, its tip and its limits under `top`; gives where it
/// ends below.
fn row(drawing: &mut Drawing, job: &PrintJob, title: &str, extra: Um, top: Um) -> Um {
    let wire = um(job.probe.wire_diameter_um);
    let tip = um(job.probe.length_um) + extra;
    let title = words::say(job, title);
    drawing.text(Text::new(at(0, top - 5 * MM), CAPITAL, &title));
    let axis = top - 8 * MM - wire / 2;
    drawing.rectangle(
        Layer::Dimension,
        Rect::new(at(0, axis - wire / 2), at(tip, axis + wire / 2)),
    );
    let reach = wire / 2 + OVERRUN;
    drawing.line(Layer::Outline, at(0, axis - reach), at(0, axis + reach));
    drawing.line(Layer::Cut, at(tip, axis - reach), at(tip, axis + reach));
    drawing.line(Layer::Centre, at(-OVERRUN, axis), at(tip + OVERRUN, axis));
    drawing.text(Text::new(
        at(tip + OVERRUN + MM, axis - CAPITAL / 2),
        CAPITAL,
        words::TIP,
    ));
    let mut y = axis - reach - MM;
    for (limits, label) in [
        (job.probe.within_1_5, words::WITHIN_1_5),
        (job.probe.within_2, words::WITHIN_2),
    ] {
        limit_bar(drawing, limits, label, extra, tip, y);
        y -= 4 * MM;
    }
    y - MM
}

/// The span of lengths that keeps the match, with a mark at either end.
fn limit_bar(
    drawing: &mut Drawing,
    limits: Option<CutLimits>,
    label: &str,
    extra: Um,
    tip: Um,
    y: Um,
) {
    let mut words_from = tip;
    let mut words = fill("{}: {}", &[label, words::NO_LIMITS]);
    if let Some(CutLimits {
        shortest_um,
        longest_um,
    }) = limits
    {
        let (short, long) = (um(shortest_um) + extra, um(longest_um) + extra);
        drawing.line(Layer::Dimension, at(short, y), at(long, y));
        for end in [short, long] {
            drawing.line(Layer::Dimension, at(end, y - MM), at(end, y + MM));
        }
        words_from = tip.max(long);
        label.clone_into(&mut words);
    }
    let place = at(words_from + OVERRUN + MM, y - CAPITAL / 2);
    drawing.text(Text::new(place, CAPITAL, &words));
}
