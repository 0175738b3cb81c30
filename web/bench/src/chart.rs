//! Line charts as SVG text.

use tinwave_web::drawing::path_text::PathText;
use tinwave_web::entry::format_decimal;

use crate::html::escaped;
use crate::sheet::{Anchor, Sheet, WIDTH, round_values};

/// Height of a chart, px.
pub const HEIGHT: f64 = 230.0;
const LEFT: f64 = 44.0;
const RIGHT: f64 = WIDTH - 12.0;
const TOP: f64 = 24.0;
const BOTTOM: f64 = HEIGHT - 36.0;
/// Least room for one figure along each axis, px.
const ROOM: (f64, f64) = (52.0, 28.0);

const WORDS: &str = "pic-words pic-small";

/// One axis: its ends and what it measures, unit included.
#[derive(Clone, Debug, PartialEq)]
pub struct Axis {
    /// Value at the left or lower end.
    pub low: f64,
    /// Value at the other end, above `low`.
    pub high: f64,
    /// What it measures: `Gain, dBi`.
    pub title: String,
}

/// Kinds of line, told apart by dashes as well as by colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LineKind {
    /// Full and heavy: what the chart is about.
    Main,
    /// Dashed: what it is compared with.
    Other,
    /// Dotted: a limit or a bound.
    Limit,
}

impl LineKind {
    const fn class(self) -> &'static str {
        match self {
            Self::Main => "pic-line-main",
            Self::Other => "pic-line-other",
            Self::Limit => "pic-line-limit",
        }
    }
}

/// A point that can be chosen: a button of the part.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// Its place.
    pub at: (f64, f64),
    /// What pressing it does (`act` of the request).
    pub act: String,
    /// What it is, for those who can't see it.
    pub name: String,
    /// Whether it is the present one.
    pub chosen: bool,
}

/// A chart.
#[derive(Clone, Debug, PartialEq)]
pub struct Chart {
    /// Unique in the page.
    pub id: &'static str,
    /// What it shows.
    pub title: String,
    /// What is to be seen in it, for those who can't.
    pub description: String,
    /// Along.
    pub x: Axis,
    /// Up.
    pub y: Axis,
    /// Lines, each through its points; a point that is not finite breaks it.
    pub lines: Vec<(LineKind, Vec<(f64, f64)>)>,
    /// A stretch of the x axis that is shaded.
    pub shaded: Option<(f64, f64)>,
    /// Points that can be chosen.
    pub choices: Vec<Choice>,
}

impl Chart {
    fn place(&self, at: (f64, f64)) -> (f64, f64) {
        let share = |value: f64, axis: &Axis| {
            ((value - axis.low) / (axis.high - axis.low).max(1e-12)).clamp(0.0, 1.0)
        };
        (
            LEFT + share(at.0, &self.x) * (RIGHT - LEFT),
            BOTTOM - share(at.1, &self.y) * (BOTTOM - TOP),
        )
    }

    fn line(&self, points: &[(f64, f64)]) -> String {
        let mut path = PathText::new();
        let mut drawing = false;
        for point in points {
            if !(point.0.is_finite() && point.1.is_finite()) {
                drawing = false;
                continue;
            }
            let (x, y) = self.place(*point);
            if drawing {
                path.line_to(x, y);
            } else {
                path.move_to(x, y);
            }
            drawing = true;
        }
        path.into_text()
    }

    fn band(&self) -> String {
        let mut path = PathText::new();
        if let Some((from, to)) = self.shaded {
            let (left, top) = self.place((from, self.y.high));
            let (right, bottom) = self.place((to, self.y.low));
            path.polygon(&[(left, top), (right, top), (right, bottom), (left, bottom)]);
        }
        path.into_text()
    }

    fn x_values(&self) -> Vec<(f64, u8)> {
        round_values(self.x.low, self.x.high, (RIGHT - LEFT) / ROOM.0)
    }

    fn y_values(&self) -> Vec<(f64, u8)> {
        round_values(self.y.low, self.y.high, (BOTTOM - TOP) / ROOM.1)
    }

    fn draw_grid(&self, sheet: &mut Sheet) {
        let mut path = PathText::new();
        for (value, _) in self.x_values() {
            let (x, _) = self.place((value, self.y.low));
            path.segment(x, TOP, x, BOTTOM);
        }
        for (value, _) in self.y_values() {
            let (_, y) = self.place((self.x.low, value));
            path.segment(LEFT, y, RIGHT, y);
        }
        sheet.path("pic-grid", path.as_str());
    }

    /// The figures beside the grid, and what the axes measure.
    fn write_figures(&self, sheet: &mut Sheet) {
        let mut write = |anchor, at, words: &str| sheet.text(WORDS, anchor, at, words);
        for (value, digits) in self.x_values() {
            let (x, _) = self.place((value, self.y.low));
            let at = (x, BOTTOM + 15.0);
            write(Anchor::Middle, at, &format_decimal(value, digits));
        }
        for (value, digits) in self.y_values() {
            let (_, y) = self.place((self.x.low, value));
            let at = (LEFT - 5.0, y + 4.0);
            write(Anchor::End, at, &format_decimal(value, digits));
        }
        write(Anchor::Start, (2.0, 13.0), &self.y.title);
        write(Anchor::End, (RIGHT, HEIGHT - 5.0), &self.x.title);
    }

    /// The chart as markup.
    #[must_use]
    pub fn to_svg(&self) -> String {
        let begin = if self.choices.is_empty() {
            Sheet::new
        } else {
            Sheet::with_buttons
        };
        let mut sheet = begin(self.id, HEIGHT, &self.title, &self.description);
        sheet.path("pic-band", &self.band());
        self.draw_grid(&mut sheet);
        for (kind, points) in &self.lines {
            sheet.path(kind.class(), &self.line(points));
        }
        self.write_figures(&mut sheet);
        for choice in &self.choices {
            self.push_choice(&mut sheet, choice);
        }
        sheet.finish()
    }

    fn push_choice(&self, sheet: &mut Sheet, choice: &Choice) {
        let (x, y) = self.place(choice.at);
        let pressed = if choice.chosen { "true" } else { "false" };
        for part in [
            "<g class=\"pic-point\" role=\"button\" tabindex=\"0\" aria-pressed=\"",
            pressed,
            "\" data-act=\"",
            &escaped(&choice.act),
            "\" aria-label=\"",
            &escaped(&choice.name),
            "\" transform=\"translate(",
            &format_plain(x),
            " ",
            &format_plain(y),
            ")\"><circle class=\"pic-reach\" r=\"13\"/><circle class=\"pic-dot\" r=\"5\"/></g>",
        ] {
            sheet.push(part);
        }
    }
}

/// A number of px with one decimal and a plain sign.
fn format_plain(px: f64) -> String {
    let mut text = String::new();
    tinwave_web::drawing::fixed_point::push_tenths(&mut text, px);
    text
}

/// An axis from round value to round value around all that is given, at least
/// `least` long.
#[must_use]
pub fn axis_around(values: impl Iterator<Item = f64>, least: f64, title: String) -> Axis {
    let finite = values.filter(|value| value.is_finite());
    let (low, high) = finite.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
        (low.min(value), high.max(value))
    });
    let (low, high) = if low <= high {
        (low, high)
    } else {
        (0.0, least)
    };
    let missing = (least - (high - low)).max(0.0) / 2.0;
    let (low, high) = (low - missing, high + missing);
    let step = 10_f64.powf(((high - low) / 2.0).log10().floor());
    Axis {
        low: (low / step).floor() * step,
        high: (high / step).ceil() * step,
        title,
    }
}

#[cfg(test)]
mod tests {
    use super::{Axis, Chart, Choice, LineKind, axis_around};

    fn chart() -> Chart {
        Chart {
            id: "t",
            title: "A < B".to_owned(),
            description: String::new(),
            x: Axis {
                low: 0.0,
                high: 10.0,
                title: "m".to_owned(),
            },
            y: Axis {
                low: -5.0,
                high: 5.0,
                title: "dB".to_owned(),
            },
            lines: vec![(
                LineKind::Main,
                vec![(0.0, -5.0), (5.0, f64::NAN), (10.0, 5.0)],
            )],
            shaded: Some((2.0, 4.0)),
            choices: vec![Choice {
                at: (5.0, 0.0),
                act: "take 1".to_owned(),
                name: "\"half\"".to_owned(),
                chosen: false,
            }],
        }
    }

    #[test]
    fn ends_of_the_axes_are_ends_of_the_frame_and_gaps_break_lines() {
        let svg = chart().to_svg();
        assert!(svg.contains("d=\"M44 194M328 24\""), "{svg}");
        assert!(svg.contains("translate(186 109)"), "{svg}");
        assert!(!svg.contains("NaN") && svg.contains("A &lt; B"), "{svg}");
        assert!(svg.contains("&quot;half&quot;"));
    }

    #[test]
    fn an_axis_holds_all_its_values() {
        let axis = axis_around([3.2, f64::NAN, 7.9].into_iter(), 1.0, String::new());
        assert!(axis.low <= 3.2 && axis.high >= 7.9, "{axis:?}");
        let flat = axis_around([2.0].into_iter(), 1.0, String::new());
        assert!(flat.high - flat.low >= 1.0, "{flat:?}");
        assert!(axis_around(core::iter::empty(), 2.0, String::new()).high >= 2.0);
    }
}
