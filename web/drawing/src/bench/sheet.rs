//! A sheet as it is drawn on: lines by their kind, dimensions, words.

use crate::path_text::PathText;
use crate::section::drafting::{Anchor, Drafting, Label, LetterSize, Tone};

/// Kinds of line, by ISO 128 and by what the colours mean.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum BenchLine {
    /// Bright metal, or the air in a can: a tint.
    Tint,
    /// Cut metal: hatched.
    Cut,
    /// Outlines: wide.
    Outline,
    /// Edges, dimension and extension lines: narrow.
    Thin,
    /// Hidden edges: dashed.
    Hidden,
    /// Centre lines: chain.
    Centre,
    /// Arrowheads.
    Arrow,
    /// The wire: copper.
    Wire,
    /// What this step is about: blue, wide.
    Mark,
    /// Its dimension lines: blue, narrow.
    MarkThin,
    /// Their arrowheads.
    MarkArrow,
}

/// Lines of one kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BenchPath {
    /// Which kind.
    pub line: BenchLine,
    /// Path data.
    pub data: String,
}

/// A text on the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct BenchText {
    /// Hanging point, px.
    pub x: f64,
    /// Baseline, px.
    pub y: f64,
    /// Side of the point on which it stands.
    pub anchor: Anchor,
    /// A figure (strong) or words.
    pub is_figure: bool,
    /// Whether it belongs to what the step is about.
    pub is_mark: bool,
    /// Reads from the right, upwards.
    pub turned: bool,
    /// What it says.
    pub text: String,
}

/// A finished picture.
#[derive(Clone, Debug, PartialEq)]
pub struct BenchScene {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// Lines, in the order in which they are drawn.
    pub paths: Vec<BenchPath>,
    /// Texts, over all lines.
    pub texts: Vec<BenchText>,
}

/// A sheet under the pencil.
pub(super) struct Sheet {
    pub(super) width: f64,
    pub(super) height: f64,
    paths: Vec<(BenchLine, PathText)>,
    /// Dimensions: in ink, and blue those that the step is about.
    drafting: Drafting,
}

/// From one row of dimensions to the next, px.
pub(super) const ROW: f64 = 30.0;

impl Sheet {
    pub(super) fn new(width: f64) -> Self {
        Self {
            width,
            height: 0.0,
            paths: Vec::new(),
            drafting: Drafting::new(LetterSize::USUAL),
        }
    }

    /// Whether there is room for a picture of a desk's size.
    pub(super) fn is_wide(&self) -> bool {
        self.width >= 500.0
    }

    /// The lines of a kind so far.
    pub(super) fn line(&mut self, line: BenchLine) -> &mut PathText {
        let place = match self.paths.iter().position(|(kind, _)| *kind == line) {
            Some(place) => place,
            None => {
                self.paths.push((line, PathText::new()));
                self.paths.len() - 1
            }
        };
        &mut self.paths[place].1
    }

    fn figure(&mut self, (x, y): (f64, f64), anchor: Anchor, tone: Tone, figure: &str) {
        self.drafting.labels.push(Label {
            x,
            y,
            anchor,
            turned: false,
            figure: figure.to_owned(),
            words: String::new(),
            tone,
            field: None,
        });
    }

    /// A dimension along x below `foot`, from where its extension lines come; its figure
    /// stands above the line, or beside it where the room is small.
    pub(super) fn along(
        &mut self,
        (x1, x2): (f64, f64),
        foot: f64,
        y: f64,
        is_mark: bool,
        figure: &str,
    ) {
        let tone = tone(is_mark);
        for x in [x1, x2] {
            let over = if y > foot { 4.0 } else { -4.0 };
            self.drafting.line(tone, (x, foot), (x, y + over));
        }
        let inside = self.drafting.horizontal(tone, x1, x2, y);
        let wide = figure_width(figure);
        let (at, anchor) = if inside && wide + 6.0 <= x2 - x1 {
            (((x1 + x2) / 2.0, y - 5.0), Anchor::Middle)
        } else if x2 + 20.0 + wide <= self.width {
            ((x2 + 20.0, y + 5.0), Anchor::Start)
        } else {
            ((x1 - 20.0, y + 5.0), Anchor::End)
        };
        self.figure(at, anchor, tone, figure);
    }

    /// A dimension along y to the right of `side`; its figure stands beside the line.
    pub(super) fn upright(
        &mut self,
        (y1, y2): (f64, f64),
        side: f64,
        x: f64,
        is_mark: bool,
        figure: &str,
    ) {
        let tone = tone(is_mark);
        for y in [y1, y2] {
            self.drafting.line(tone, (side, y), (x + 4.0, y));
        }
        self.drafting.vertical(tone, x, y1, y2);
        let at = (x + 8.0, (y1 + y2) / 2.0 + 5.0);
        self.figure(at, Anchor::Start, tone, figure);
    }

    /// Words, kept on the sheet.
    pub(super) fn words(&mut self, x: f64, y: f64, anchor: Anchor, words: &str) {
        let wide = words_width(words);
        let x = match anchor {
            Anchor::Start => x.min(self.width - wide),
            Anchor::Middle => x,
            Anchor::End => x.max(wide),
        };
        self.drafting.labels.push(Label {
            x,
            y,
            anchor,
            turned: false,
            figure: String::new(),
            words: words.to_owned(),
            tone: Tone::Ink,
            field: None,
        });
    }

    pub(super) fn finish(mut self) -> BenchScene {
        let Drafting {
            thin,
            arrows,
            labels,
            ..
        } = self.drafting;
        let kinds = |tone: Tone| match tone {
            Tone::Blue => (BenchLine::MarkThin, BenchLine::MarkArrow),
            _ => (BenchLine::Thin, BenchLine::Arrow),
        };
        for ((tone, thin), arrows) in Tone::ALL.into_iter().zip(thin).zip(arrows) {
            let (line, arrow) = kinds(tone);
            self.paths.push((line, thin));
            self.paths.push((arrow, arrows));
        }
        // Tints and hatches lie below all lines.
        self.paths.sort_by_key(|(line, _)| *line);
        BenchScene {
            width: self.width,
            height: self.height,
            paths: self
                .paths
                .iter()
                .filter(|(_, path)| !path.as_str().is_empty())
                .map(|(line, path)| BenchPath {
                    line: *line,
                    data: path.as_str().to_owned(),
                })
                .collect(),
            texts: labels.into_iter().map(text).collect(),
        }
    }
}

fn text(label: Label) -> BenchText {
    let is_figure = !label.figure.is_empty();
    BenchText {
        x: label.x,
        y: label.y,
        anchor: label.anchor,
        is_figure,
        is_mark: label.tone == Tone::Blue,
        turned: label.turned,
        text: if is_figure { label.figure } else { label.words },
    }
}

const fn tone(is_mark: bool) -> Tone {
    if is_mark { Tone::Blue } else { Tone::Ink }
}

/// Estimated width of a figure of 15 px, px: a little too much is better than two texts
/// that touch.
pub(super) fn figure_width(text: &str) -> f64 {
    text.chars().count() as f64 * 15.0 * 0.62
}

/// Estimated width of words of 13 px.
pub(super) fn words_width(text: &str) -> f64 {
    text.chars().count() as f64 * 13.0 * 0.56
}
