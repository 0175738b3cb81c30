//! What every sheet carries: its head, its number, rulers on both axes, and
//! the link at its foot.

use crate::drawing::{Drawing, Text};
use crate::fill::fill;
use crate::geometry::{MM, Point, Rect, Um, at};
use crate::layer::Layer;
use crate::letters::Weight;
use crate::paper::{INCH_RULER, Paper, RULER};
use crate::typesetting::{Paragraph, Typesetter};
use crate::words;
use tinwave_protocol::print::PrintJob;

/// Height of the head.
const HEAD: Um = 11 * MM;
/// Width of the column with the upright ruler.
const COLUMN: Um = 9 * MM;
/// Height of one ruler with its words.
const RULER_ROW: Um = 7 * MM;
/// From the end of one ruler with its words to the next on the same row.
const RULER_STEP: Um = 120 * MM;
/// Longest mark of a ruler.
const MARK: Um = 4 * MM;
/// Capitals in head and foot.
const CAPITAL: Um = 1_800;

/// Room that the furniture leaves, and what its foot says.
#[derive(Debug)]
pub struct Furniture {
    printable: Rect,
    foot: Paragraph,
    side_by_side: bool,
}

/// What the head of a sheet says.
#[derive(Clone, Copy, Debug)]
pub struct Head<'a> {
    /// What is on the sheet.
    pub title: &'a str,
    /// Its number, from 1.
    pub number: usize,
    /// How many sheets there are.
    pub all: usize,
    /// Whether it must be joined to others.
    pub tiled: bool,
}

impl Furniture {
    /// The furniture of a paper.
    #[must_use]
    pub fn new(paper: Paper, job: &PrintJob, set: Typesetter) -> Self {
        let printable = paper.printable();
        Self {
            printable,
            foot: set.paragraph(&job.link, 1_400, Weight::Regular, printable.width()),
            side_by_side: printable.width() >= 2 * RULER_STEP,
        }
    }

    fn foot_height(&self) -> Um {
        let rows = if self.side_by_side { 1 } else { 2 };
        self.foot.height() + rows * RULER_ROW + 2 * MM
    }

    /// Where patterns may stand.
    #[must_use]
    pub fn body(&self) -> Rect {
        let Rect { low, high } = self.printable;
        Rect::new(
            at(low.x, low.y + self.foot_height()),
            at(high.x - COLUMN, high.y - HEAD),
        )
    }

    /// Draws it on a sheet.
    pub fn draw(&self, drawing: &mut Drawing, job: &PrintJob, set: Typesetter, head: Head<'_>) {
        let Head {
            title,
            number,
            all,
            tiled,
        } = head;
        let Rect { low, high } = self.printable;
        let number = words::sheet_of(number, all);
        let number = Text::new(at(high.x, high.y - 3_000), CAPITAL, &number).end();
        let room = self.printable.width() - number.width() - 5 * MM;
        drawing.text(number);
        let half = room / 2;
        let name = Text::new(at(low.x, high.y - 3_000), 3_000, &job.name).bold();
        let name = set.fitted(name, half);
        let after = name.width() + if job.name.is_empty() { 0 } else { 4 * MM };
        drawing.text(name);
        let titled = fill("{}: {}", &[words::PROGRAM, title]);
        let titled = Text::new(at(low.x + after, high.y - 3_000), CAPITAL, &titled);
        drawing.text(set.fitted(titled, room - after));
        let joining = if tiled { words::TAPE_SHEETS } else { "" };
        let advice = fill("{}{}", &[words::PRINT_AT_100, joining]);
        let advice = Text::new(at(low.x, high.y - 7_200), CAPITAL, &advice);
        drawing.text(set.fitted(advice, self.printable.width()));

        let foot = low.y + self.foot.height();
        set.draw(drawing, &self.foot, at(low.x, foot));
        let metric = at(low.x, foot + MM);
        let inch = if self.side_by_side {
            metric.by(RULER_STEP, 0)
        } else {
            metric.by(0, RULER_ROW)
        };
        metric_ruler(drawing, metric, false);
        inch_ruler(drawing, inch);
        metric_ruler(
            drawing,
            at(high.x - 3 * MM, low.y + self.foot_height()),
            true,
        );
    }
}

/// The shapes of a ruler that starts at a place: a line with a mark for every
/// step, longer where a group of steps is full.
#[inline(never)]
fn ruler(
    drawing: &mut Drawing,
    start: Point,
    upright: bool,
    (steps, group): (Um, Um),
    (length, label): (Um, &str),
) {
    let along = |distance: Um, aside: Um| {
        if upright {
            start.by(-aside, distance)
        } else {
            start.by(distance, aside)
        }
    };
    drawing.line(Layer::Ruler, along(0, 0), along(length, 0));
    for step in 0..=steps {
        let distance = length / steps * step;
        let mark = if step % steps == 0 {
            MARK
        } else if step % group == 0 {
            MARK * 3 / 4
        } else {
            MARK / 2
        };
        drawing.line(Layer::Ruler, along(distance, 0), along(distance, mark));
    }
    let mut text = Text::new(along(length, 0).by(2 * MM, MM), CAPITAL, label);
    if upright {
        text.at = along(length + 2 * MM, 0);
        text.turned = true;
    }
    drawing.text(text);
}

/// The ruler of 100 mm, every 5 mm marked.
pub fn metric_ruler(drawing: &mut Drawing, start: Point, upright: bool) {
    let labelled = (RULER, words::METRIC_RULER);
    ruler(drawing, start, upright, (20, 2), labelled);
}

/// The ruler of 4 in, every quarter marked.
pub fn inch_ruler(drawing: &mut Drawing, start: Point) {
    let labelled = (INCH_RULER, words::INCH_RULER);
    ruler(drawing, start, false, (16, 4), labelled);
}
