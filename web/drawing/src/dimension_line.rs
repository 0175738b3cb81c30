//! Dimension lines in the manner of ISO 129-1: thin line, filled arrowheads,
//! figure above the line; arrows outside and figure beside where the room is
//! too small.

use super::path_text::PathText;

/// Length of an arrowhead, px.
pub const ARROW: f64 = 8.0;
/// Half its width: a slender head that still shows on a phone.
const ARROW_HALF: f64 = 1.8;
/// How far an extension line runs past its dimension line.
pub const OVERRUN: f64 = 3.0;
/// Line between arrows that point inwards from outside.
const OUTSIDE_TAIL: f64 = 14.0;
/// Size of figures, px.
pub const FIGURE_PX: f64 = 13.0;
/// Size of words, px.
pub const WORDS_PX: f64 = 12.0;

/// Where a text hangs on its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Starts there.
    Start,
    /// Is centred there.
    Middle,
    /// Ends there.
    End,
}

impl Anchor {
    /// Value of the attribute `text-anchor`.
    #[must_use]
    pub const fn attribute(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// A text on the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// Hanging point, px.
    pub x: f64,
    /// Baseline, px.
    pub y: f64,
    /// Side of the point on which it stands.
    pub anchor: Anchor,
    /// A dimension's figure (strong) or words (softer).
    pub is_figure: bool,
    /// Reads from the right-hand side, upwards.
    pub turned: bool,
    /// What it says.
    pub text: String,
}

/// Thin lines, arrowheads and texts of a sheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drafting {
    /// Dimension, extension and leader lines.
    pub thin: PathText,
    /// Filled arrowheads.
    pub arrows: PathText,
    /// Texts.
    pub labels: Vec<Label>,
}

/// Estimated width of words, px. Sans-serif faces give 0.5 to 0.56 of the size
/// per letter; a little too much is better than two texts that touch.
#[must_use]
pub fn words_width(text: &str) -> f64 {
    text.chars().count() as f64 * WORDS_PX * 0.56
}

/// Estimated width of a figure, px: strong digits are as wide as 0.7 of the size.
#[must_use]
pub fn figure_width(text: &str) -> f64 {
    text.chars().count() as f64 * FIGURE_PX * 0.68
}

impl Drafting {
    /// An extension line between two points.
    pub fn extension(&mut self, x1: f64, y1: f64, x2: f64, y2: f64) {
        self.thin.segment(x1, y1, x2, y2);
    }

    /// A text.
    pub fn label(&mut self, x: f64, y: f64, anchor: Anchor, is_figure: bool, text: String) {
        self.labels.push(Label {
            x,
            y,
            anchor,
            is_figure,
            turned: false,
            text,
        });
    }

    /// A dimension line from `x1` to `x2` (ascending) at height `y`. Returns
    /// whether the arrows fitted inside.
    pub fn horizontal(&mut self, x1: f64, x2: f64, y: f64) -> bool {
        let inside = x2 - x1 >= 2.0 * ARROW + 4.0;
        if inside {
            self.thin.segment(x1, y, x2, y);
            self.arrow_along_x(x1, y, 1.0);
            self.arrow_along_x(x2, y, -1.0);
        } else {
            self.thin
                .segment(x1 - OUTSIDE_TAIL, y, x2 + OUTSIDE_TAIL, y);
            self.arrow_along_x(x1, y, -1.0);
            self.arrow_along_x(x2, y, 1.0);
        }
        inside
    }

    /// A dimension line from `y1` to `y2` (ascending) at `x`. Returns whether
    /// the arrows fitted inside.
    pub fn vertical(&mut self, x: f64, y1: f64, y2: f64) -> bool {
        let inside = y2 - y1 >= 2.0 * ARROW + 4.0;
        if inside {
            self.thin.segment(x, y1, x, y2);
            self.arrow_along_y(x, y1, 1.0);
            self.arrow_along_y(x, y2, -1.0);
        } else {
            self.thin
                .segment(x, y1 - OUTSIDE_TAIL, x, y2 + OUTSIDE_TAIL);
            self.arrow_along_y(x, y1, -1.0);
            self.arrow_along_y(x, y2, 1.0);
        }
        inside
    }

    /// A leader: a line that ends with an arrowhead on what it speaks of.
    pub fn leader(&mut self, from: (f64, f64), to: (f64, f64)) {
        self.thin.segment(from.0, from.1, to.0, to.1);
        let (dx, dy) = (from.0 - to.0, from.1 - to.1);
        let length = (dx * dx + dy * dy).sqrt().max(1.0);
        let (ux, uy) = (dx / length, dy / length);
        let (bx, by) = (to.0 + ux * ARROW, to.1 + uy * ARROW);
        self.arrows.polygon(&[
            to,
            (bx - uy * ARROW_HALF, by + ux * ARROW_HALF),
            (bx + uy * ARROW_HALF, by - ux * ARROW_HALF),
        ]);
    }

    fn arrow_along_x(&mut self, x: f64, y: f64, body: f64) {
        let base = x + body * ARROW;
        self.arrows
            .polygon(&[(x, y), (base, y - ARROW_HALF), (base, y + ARROW_HALF)]);
    }

    fn arrow_along_y(&mut self, x: f64, y: f64, body: f64) {
        let base = y + body * ARROW;
        self.arrows
            .polygon(&[(x, y), (x - ARROW_HALF, base), (x + ARROW_HALF, base)]);
    }
}

/// A figure and the words that say what it is, beside or on a horizontal
/// dimension line.
#[derive(Clone, Copy, Debug)]
pub struct Caption<'a> {
    /// The figure.
    pub figure: &'a str,
    /// The words, in full.
    pub words: &'a str,
    /// The words, short.
    pub short: &'a str,
}

impl Drafting {
    /// Writes a caption to a horizontal dimension line: the figure above the
    /// line where it fits, the words after the line's right end, on the line
    /// too, or on the left, whichever has room first. `right` and `left` are
    /// the sheet's limits.
    pub fn caption(&mut self, x1: f64, x2: f64, y: f64, left: f64, right: f64, caption: Caption) {
        const GAP: f64 = 6.0;
        let figure = figure_width(caption.figure);
        let span = x2 - x1;
        let (full, short) = (words_width(caption.words), words_width(caption.short));
        let baseline = y - 4.0;
        if figure + full + 3.0 * GAP <= span {
            // Both on the line.
            let start = (x1 + x2 - figure - GAP - full) / 2.0;
            self.label(start, baseline, Anchor::Start, true, caption.figure.into());
            let words = start + figure + GAP;
            self.label(words, baseline, Anchor::Start, false, caption.words.into());
            return;
        }
        let tail = if span >= 2.0 * ARROW + 4.0 {
            0.0
        } else {
            OUTSIDE_TAIL
        };
        let on_line = figure + 4.0 <= span;
        let mut after = x2 + GAP + tail;
        if on_line {
            let middle = (x1 + x2) / 2.0;
            self.label(
                middle,
                baseline,
                Anchor::Middle,
                true,
                caption.figure.into(),
            );
        } else if after + figure + GAP + short <= right {
            self.label(after, y + 4.0, Anchor::Start, true, caption.figure.into());
            after += figure + GAP;
        } else {
            let before = x1 - GAP - tail;
            self.label(before, y + 4.0, Anchor::End, true, caption.figure.into());
        }
        let room = right - after;
        if full <= room || short <= room {
            let words = if full <= room {
                caption.words
            } else {
                caption.short
            };
            self.label(after, y + 4.0, Anchor::Start, false, words.into());
        } else if short <= x1 - GAP - left {
            self.label(x1 - GAP, y + 4.0, Anchor::End, false, caption.short.into());
        } else if figure + short + 3.0 * GAP <= span && on_line {
            // Last: both on the line, short words.
            let middle = (x1 + x2 + figure) / 2.0 + GAP;
            self.label(middle, baseline, Anchor::Start, false, caption.short.into());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Anchor, Caption, Drafting};

    #[test]
    fn arrows_turn_outside_when_the_room_is_small() {
        let mut drafting = Drafting::default();
        assert!(drafting.horizontal(10.0, 60.0, 5.0));
        assert_eq!(drafting.thin.as_str(), "M10 5L60 5");
        let mut narrow = Drafting::default();
        assert!(!narrow.horizontal(10.0, 22.0, 5.0));
        assert_eq!(narrow.thin.as_str(), "M-4 5L36 5");
        // Heads outside: their bases lie left of 10 and right of 22.
        assert!(narrow.arrows.as_str().starts_with("M10 5L2 "));
    }

    #[test]
    fn words_go_beside_a_line_that_is_too_short_for_them() {
        let caption = Caption {
            figure: "51.4",
            words: "from the back wall",
            short: "back wall",
        };
        let mut drafting = Drafting::default();
        drafting.caption(20.0, 110.0, 50.0, 0.0, 340.0, caption);
        let seen: Vec<(f64, Anchor, &str)> = drafting
            .labels
            .iter()
            .map(|label| (label.x, label.anchor, label.text.as_str()))
            .collect();
        let expected = [
            (65.0, Anchor::Middle, "51.4"),
            (116.0, Anchor::Start, "from the back wall"),
        ];
        assert_eq!(seen, expected);
    }
}
