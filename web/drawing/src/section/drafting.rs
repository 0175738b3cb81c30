//! Dimension lines in the manner of ISO 129-1: thin line, filled arrowheads,
//! figure above the line; arrows outside and figure beside where the room is
//! too small.

use tinwave_core::design_error::Field;

use crate::path_text::PathText;

/// Length of an arrowhead, px.
pub const ARROW: f64 = 8.0;
/// Half its width: a slender head that still shows on a phone.
const ARROW_HALF: f64 = 2.2;
/// How far an extension line runs past its dimension line.
pub const OVERRUN: f64 = 4.0;
/// Line between arrows that point inwards from outside.
const OUTSIDE_TAIL: f64 = 14.0;
/// Between a line's end and the words beside it.
const GAP: f64 = 6.0;

/// What a dimension is, told by its colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Tone {
    /// What is, and what came out.
    Ink,
    /// What is yours to change.
    Blue,
    /// The wire.
    Copper,
    /// What would do.
    Go,
}

impl Tone {
    /// Every tone, in the order of drawing.
    pub const ALL: [Self; 4] = [Self::Ink, Self::Blue, Self::Copper, Self::Go];

    /// Its class in the styles.
    #[must_use]
    pub const fn class(self) -> &'static str {
        match self {
            Self::Ink => "in-ink",
            Self::Blue => "in-blue",
            Self::Copper => "in-copper",
            Self::Go => "in-go",
        }
    }
}

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

/// A text on the sheet: a figure, words after it, or one of both.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// Hanging point, px.
    pub x: f64,
    /// Baseline, px.
    pub y: f64,
    /// Side of the point on which it stands.
    pub anchor: Anchor,
    /// Reads from the right-hand side, upwards.
    pub turned: bool,
    /// The dimension's figure; may be empty.
    pub figure: String,
    /// Words after it; may be empty.
    pub words: String,
    /// What it is.
    pub tone: Tone,
    /// The number of the design that it shows, where it can be changed.
    pub field: Option<Field>,
}

/// Sizes of letters on a sheet, px.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LetterSize {
    /// Of words.
    pub words: f64,
    /// Of figures.
    pub figure: f64,
}

impl LetterSize {
    /// At the usual letter size.
    pub const USUAL: Self = Self::of_words(13.0);
    /// Largest: beyond it a drawing has no room.
    const MOST_FIGURE: f64 = 18.0;

    /// For words of such a size.
    #[must_use]
    pub const fn of_words(px: f64) -> Self {
        let figure = px * 15.0 / 13.0;
        let figure = if figure > Self::MOST_FIGURE {
            Self::MOST_FIGURE
        } else {
            figure
        };
        Self {
            words: figure * 13.0 / 15.0,
            figure,
        }
    }

    /// Estimated width of words, px. Sans-serif faces give 0.5 to 0.56 of the size
    /// per letter; a little too much is better than two texts that touch.
    #[must_use]
    pub fn words_width(self, text: &str) -> f64 {
        text.chars().count() as f64 * self.words * 0.55
    }

    /// Estimated width of a figure, px: strong digits are wider.
    #[must_use]
    pub fn figure_width(self, text: &str) -> f64 {
        text.chars().count() as f64 * self.figure * 0.6
    }

    /// Estimated width of a label.
    #[must_use]
    pub fn width(self, label: &Label) -> f64 {
        let both = !label.figure.is_empty() && !label.words.is_empty();
        let space = if both { self.words * 0.3 } else { 0.0 };
        self.figure_width(&label.figure) + space + self.words_width(&label.words)
    }
}

/// Thin lines, arrowheads and texts of a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Drafting {
    /// Sizes of its letters.
    pub letter: LetterSize,
    /// Dimension, extension and leader lines, by tone.
    pub thin: [PathText; Tone::ALL.len()],
    /// Filled arrowheads, by tone.
    pub arrows: [PathText; Tone::ALL.len()],
    /// Texts.
    pub labels: Vec<Label>,
}

/// A figure and the words that say what it is.
#[derive(Clone, Copy, Debug)]
pub struct Caption<'a> {
    /// The figure.
    pub figure: &'a str,
    /// The words, in full.
    pub words: &'a str,
    /// The words, short; may be empty.
    pub short: &'a str,
    /// What it is.
    pub tone: Tone,
    /// The number of the design that it shows, where it can be changed.
    pub field: Option<Field>,
}

impl Caption<'_> {
    /// A text of it at a point.
    #[must_use]
    pub fn label(&self, x: f64, y: f64, anchor: Anchor, figure: &str, words: &str) -> Label {
        Label {
            x,
            y,
            anchor,
            turned: false,
            figure: figure.to_owned(),
            words: words.to_owned(),
            tone: self.tone,
            field: self.field,
        }
    }
}

impl Drafting {
    /// An empty sheet.
    #[must_use]
    pub fn new(letter: LetterSize) -> Self {
        Self {
            letter,
            thin: Default::default(),
            arrows: Default::default(),
            labels: Vec::new(),
        }
    }

    /// A thin line between two points.
    pub fn line(&mut self, tone: Tone, from: (f64, f64), to: (f64, f64)) {
        if let Some(path) = self.thin.get_mut(tone as usize) {
            path.segment(from.0, from.1, to.0, to.1);
        }
    }

    fn head(&mut self, tone: Tone, corners: &[(f64, f64)]) {
        if let Some(path) = self.arrows.get_mut(tone as usize) {
            path.polygon(corners);
        }
    }

    /// A dimension line from `x1` to `x2` (ascending) at height `y`. Returns
    /// whether the arrows fitted inside.
    pub fn horizontal(&mut self, tone: Tone, x1: f64, x2: f64, y: f64) -> bool {
        let inside = x2 - x1 >= 2.0 * ARROW + 4.0;
        let (tail, way) = if inside {
            (0.0, 1.0)
        } else {
            (OUTSIDE_TAIL, -1.0)
        };
        self.line(tone, (x1 - tail, y), (x2 + tail, y));
        for (x, body) in [(x1, way), (x2, -way)] {
            let base = x + body * ARROW;
            self.head(
                tone,
                &[(x, y), (base, y - ARROW_HALF), (base, y + ARROW_HALF)],
            );
        }
        inside
    }

    /// A dimension line from `y1` to `y2` (ascending) at `x`.
    pub fn vertical(&mut self, tone: Tone, x: f64, y1: f64, y2: f64) {
        let inside = y2 - y1 >= 2.0 * ARROW + 4.0;
        let (tail, way) = if inside {
            (0.0, 1.0)
        } else {
            (OUTSIDE_TAIL, -1.0)
        };
        self.line(tone, (x, y1 - tail), (x, y2 + tail));
        for (y, body) in [(y1, way), (y2, -way)] {
            let base = y + body * ARROW;
            self.head(
                tone,
                &[(x, y), (x - ARROW_HALF, base), (x + ARROW_HALF, base)],
            );
        }
    }

    /// Writes a caption onto its line where it fits: all of it, else the figure alone;
    /// else all of it after the line's end.
    pub fn caption_on(&mut self, x1: f64, x2: f64, y: f64, limit: f64, caption: Caption) {
        let letter = self.letter;
        let middle = (x1 + x2) / 2.0;
        let fits = |label: &Label| letter.width(label) + 2.0 * GAP <= x2 - x1;
        let all = caption.label(
            middle,
            y - 5.0,
            Anchor::Middle,
            caption.figure,
            caption.words,
        );
        if fits(&all) {
            self.labels.push(all);
            return;
        }
        let figure = caption.label(middle, y - 5.0, Anchor::Middle, caption.figure, "");
        if fits(&figure) {
            self.labels.push(figure);
        } else {
            self.caption_after(x1, x2 + OUTSIDE_TAIL, y, limit, caption);
        }
    }

    /// Writes the figure on its line where it fits, and the words after the line's end
    /// where they fit, before `limit`.
    pub fn caption(&mut self, x1: f64, x2: f64, y: f64, limit: f64, caption: Caption) {
        let letter = self.letter;
        // Clear of the connector that stands over the line's end.
        let on_line = letter.figure_width(caption.figure) + 30.0 <= x2 - x1;
        if !on_line {
            let inside = x2 - x1 >= 2.0 * ARROW + 4.0;
            let end = if inside { x2 } else { x2 + OUTSIDE_TAIL };
            self.caption_after(x1, end, y, limit, caption);
            return;
        }
        let middle = (x1 + x2) / 2.0;
        self.labels
            .push(caption.label(middle, y - 5.0, Anchor::Middle, caption.figure, ""));
        let words = [caption.words, caption.short]
            .into_iter()
            .find(|words| !words.is_empty() && x2 + GAP + letter.words_width(words) <= limit);
        if let Some(words) = words {
            let at = y + letter.words * 0.35;
            self.labels
                .push(caption.label(x2 + GAP, at, Anchor::Start, "", words));
        }
    }

    fn caption_after(&mut self, start: f64, end: f64, y: f64, limit: f64, caption: Caption) {
        let letter = self.letter;
        let at = y + letter.words * 0.35;
        for words in [caption.words, caption.short, ""] {
            let label = caption.label(end + GAP, at, Anchor::Start, caption.figure, words);
            if end + GAP + letter.width(&label) <= limit {
                self.labels.push(label);
                return;
            }
        }
        let before = start - GAP - OUTSIDE_TAIL;
        self.labels
            .push(caption.label(before, at, Anchor::End, caption.figure, ""));
    }
}

#[cfg(test)]
mod tests {
    use super::{Anchor, Caption, Drafting, LetterSize, Tone};

    fn caption<'a>(figure: &'a str, words: &'a str, short: &'a str) -> Caption<'a> {
        Caption {
            figure,
            words,
            short,
            tone: Tone::Ink,
            field: None,
        }
    }

    #[test]
    fn arrows_turn_outside_when_the_room_is_small() {
        let mut drafting = Drafting::new(LetterSize::USUAL);
        assert!(drafting.horizontal(Tone::Ink, 10.0, 60.0, 5.0));
        assert_eq!(drafting.thin[0].as_str(), "M10 5L60 5");
        let mut narrow = Drafting::new(LetterSize::USUAL);
        assert!(!narrow.horizontal(Tone::Blue, 10.0, 22.0, 5.0));
        assert_eq!(narrow.thin[1].as_str(), "M-4 5L36 5");
        // Heads outside: their bases lie left of 10 and right of 22.
        assert!(narrow.arrows[1].as_str().starts_with("M10 5L2 "));
        assert_eq!(narrow.thin[0].as_str(), "");
    }

    #[test]
    fn words_go_beside_a_line_that_is_too_short_for_them() {
        let mut drafting = Drafting::new(LetterSize::USUAL);
        let said = caption("51.4", "from the back wall", "back wall");
        drafting.caption(20.0, 110.0, 50.0, 340.0, said);
        let seen: Vec<(f64, Anchor, &str)> = drafting
            .labels
            .iter()
            .map(|label| {
                (
                    label.x,
                    label.anchor,
                    [&label.figure, &label.words][usize::from(label.figure.is_empty())].as_str(),
                )
            })
            .collect();
        let expected = [
            (65.0, Anchor::Middle, "51.4"),
            (116.0, Anchor::Start, "from the back wall"),
        ];
        assert_eq!(seen, expected);
    }

    #[test]
    fn a_line_too_short_for_its_figure_has_it_after_its_end() {
        let mut drafting = Drafting::new(LetterSize::USUAL);
        drafting.caption(
            20.0,
            32.0,
            50.0,
            340.0,
            caption("4.0", "from the back wall", ""),
        );
        let [label] = drafting.labels.as_slice() else {
            unreachable!("one label");
        };
        assert_eq!(
            (label.figure.as_str(), label.words.as_str()),
            ("4.0", "from the back wall")
        );
        assert!(label.x > 32.0 && label.anchor == Anchor::Start);
    }

    #[test]
    fn letters_grow_with_the_users_up_to_a_limit() {
        assert_eq!(LetterSize::of_words(13.0).figure, 15.0);
        assert_eq!(LetterSize::of_words(26.0).figure, 18.0);
    }
}
