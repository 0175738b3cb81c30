//! Dimension lines after ISO 129: a narrow line between two arrow heads, the
//! figure above it.

use crate::drawing::{Anchor, Drawing, Text};
use crate::geometry::{MM, Um, at};
use crate::layer::Layer;

/// Capitals of a figure.
const CAPITAL: Um = 1_800;
/// Length of an arrow head.
const HEAD: Um = 1_500;
/// Between the line and its figure.
const GAP: Um = 600;
/// How far an extension line goes past the dimension line.
const PAST: Um = MM;

/// A dimension along x at height `y`. A figure that is wider than the span
/// stands on its right.
pub(crate) fn across(drawing: &mut Drawing, (from, to): (Um, Um), y: Um, figure: String) {
    let (from, to) = (from.min(to), from.max(to));
    drawing.line(Layer::Dimension, at(from, y), at(to, y));
    let outside = to - from < 4 * HEAD;
    let (left, right) = if outside { (0.0, 180.0) } else { (180.0, 0.0) };
    drawing.arrow_head(Layer::Dimension, at(from, y), left, HEAD);
    drawing.arrow_head(Layer::Dimension, at(to, y), right, HEAD);
    let text = Text::new(at((from + to) / 2, y + GAP), CAPITAL, &figure).middle();
    if text.width() + 2 * GAP <= to - from {
        drawing.text(text);
        return;
    }
    drawing.text(Text {
        at: at(to + 2 * HEAD, y - CAPITAL / 2),
        anchor: Anchor::Start,
        ..text
    });
}

/// A dimension along y at `x`, its figure turned and to the left.
pub(crate) fn upright(drawing: &mut Drawing, (from, to): (Um, Um), x: Um, figure: String) {
    let (from, to) = (from.min(to), from.max(to));
    drawing.line(Layer::Dimension, at(x, from), at(x, to));
    let outside = to - from < 4 * HEAD;
    let (low, high) = if outside {
        (90.0, -90.0)
    } else {
        (-90.0, 90.0)
    };
    drawing.arrow_head(Layer::Dimension, at(x, from), low, HEAD);
    drawing.arrow_head(Layer::Dimension, at(x, to), high, HEAD);
    let middle = at(x - GAP, (from + to) / 2);
    drawing.text(Text::new(middle, CAPITAL, &figure).middle().turned());
}

/// An extension line from a part to just past a dimension line.
pub(crate) fn extension_upright(drawing: &mut Drawing, x: Um, from: Um, to: Um) {
    let past = if to < from { -PAST } else { PAST };
    drawing.line(Layer::Dimension, at(x, from), at(x, to + past));
}

/// The same sideways.
pub(crate) fn extension_aside(drawing: &mut Drawing, y: Um, from: Um, to: Um) {
    let past = if to < from { -PAST } else { PAST };
    drawing.line(Layer::Dimension, at(from, y), at(to + past, y));
}
