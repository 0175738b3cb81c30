//! Line charts as SVG text.

use tinwave_web::drawing::path_text::PathText;
use tinwave_web::entry::format_decimal;

use crate::html::escaped;

/// Size of a chart, px; it fills its column.
pub const WIDTH: f64 = 340.0;
/// Height, px.
pub const HEIGHT: f64 = 230.0;
const LEFT: f64 = 44.0;
const RIGHT: f64 = WIDTH - 12.0;
const TOP: f64 = 24.0;
const BOTTOM: f64 = HEIGHT - 36.0;
/// Least room for one figure along each axis, px.
const ROOM: (f64, f64) = (52.0, 28.0);

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

    /// Grid lines and the figures beside them.
    fn grid(&self) -> (String, String) {
        let mut path = PathText::new();
        let mut figures = String::new();
        for (value, digits) in round_values(&self.x, (RIGHT - LEFT) / ROOM.0) {
            let (x, _) = self.place((value, self.y.low));
            path.segment(x, TOP, x, BOTTOM);
            let figure = format_decimal(value, digits);
            push_text(&mut figures, "middle", (x, BOTTOM + 15.0), &figure);
        }
        for (value, digits) in round_values(&self.y, (BOTTOM - TOP) / ROOM.1) {
            let (_, y) = self.place((self.x.low, value));
            path.segment(LEFT, y, RIGHT, y);
            let figure = format_decimal(value, digits);
            push_text(&mut figures, "end", (LEFT - 5.0, y + 4.0), &figure);
        }
        push_text(&mut figures, "start", (2.0, 13.0), &self.y.title);
        push_text(&mut figures, "end", (RIGHT, HEIGHT - 5.0), &self.x.title);
        (path.into_text(), figures)
    }

    /// The chart as markup.
    #[must_use]
    pub fn to_svg(&self) -> String {
        let (grid, figures) = self.grid();
        let mut svg = String::with_capacity(4_000);
        let role = if self.choices.is_empty() {
            "img"
        } else {
            "group"
        };
        for part in [
            "<svg class=\"pic-sheet pic-chart\" xmlns=\"http://www.w3.org/2000/svg\" role=\"",
            role,
            "\" viewBox=\"0 0 340 230\" aria-labelledby=\"",
            self.id,
            "-title\" aria-describedby=\"",
            self.id,
            "-desc\"><title id=\"",
            self.id,
            "-title\">",
            &escaped(&self.title),
            "</title><desc id=\"",
            self.id,
            "-desc\">",
            &escaped(&self.description),
            "</desc>",
        ] {
            svg.push_str(part);
        }
        push_path(&mut svg, "pic-band", &self.band());
        push_path(&mut svg, "pic-grid", &grid);
        for (kind, points) in &self.lines {
            push_path(&mut svg, kind.class(), &self.line(points));
        }
        svg.push_str(&figures);
        for choice in &self.choices {
            self.push_choice(&mut svg, choice);
        }
        svg.push_str("</svg>");
        svg
    }

    fn push_choice(&self, svg: &mut String, choice: &Choice) {
        let (x, y) = self.place(choice.at);
        let pressed = if choice.chosen { "true" } else { "false" };
        for part in [
            "<g class=\"pic-choice\" role=\"button\" tabindex=\"0\" aria-pressed=\"",
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
            svg.push_str(part);
        }
    }
}

/// A number of px with one decimal and a plain sign.
fn format_plain(px: f64) -> String {
    let mut text = String::new();
    tinwave_web::drawing::fixed_point::push_tenths(&mut text, px);
    text
}

fn push_path(svg: &mut String, class: &str, data: &str) {
    if !data.is_empty() {
        for part in ["<path class=\"", class, "\" d=\"", data, "\"/>"] {
            svg.push_str(part);
        }
    }
}

fn push_text(svg: &mut String, anchor: &str, at: (f64, f64), text: &str) {
    for part in [
        "<text class=\"pic-words pic-small\" text-anchor=\"",
        anchor,
        "\" x=\"",
        &format_plain(at.0),
        "\" y=\"",
        &format_plain(at.1),
        "\">",
        &escaped(text),
        "</text>",
    ] {
        svg.push_str(part);
    }
}

/// Round values on an axis, at most `most` of them, and their decimals.
fn round_values(axis: &Axis, most: f64) -> Vec<(f64, u8)> {
    let span = axis.high - axis.low;
    if !(span.is_finite() && span > 0.0) {
        return Vec::new();
    }
    let wanted = span / most.max(1.0);
    let decade = 10_f64.powf(wanted.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0]
        .map(|factor| factor * decade)
        .into_iter()
        .find(|step| *step >= wanted * 0.999)
        .unwrap_or(10.0 * decade);
    let digits = (-step.log10() - 1e-9).ceil().clamp(0.0, 6.0) as u8;
    let first = (axis.low / step - 1e-6).ceil();
    let count = (axis.high / step + 1e-6).floor() - first;
    (0..=count.clamp(0.0, 60.0) as u32)
        .map(|i| ((first + f64::from(i)) * step, digits))
        .collect()
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
    use super::{Axis, Chart, Choice, LineKind, axis_around, round_values};

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
    fn figures_are_round() {
        let axis = |low, high| Axis {
            low,
            high,
            title: String::new(),
        };
        let values: Vec<f64> = round_values(&axis(0.0, 10.0), 6.0)
            .iter()
            .map(|v| v.0)
            .collect();
        assert_eq!(values, [0.0, 2.0, 4.0, 6.0, 8.0, 10.0]);
        let fine = round_values(&axis(1.0, 1.3), 5.0);
        assert_eq!(fine.first().map(|v| v.1), Some(1));
        assert!(round_values(&axis(1.0, f64::NAN), 5.0).is_empty());
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
