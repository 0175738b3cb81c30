//! A drawing of this part: SVG with a title and a description.

use tinwave_web::drawing::fixed_point::push_tenths;

use crate::html::escaped;

/// Width of a drawing, px; it fills its column, 340 px on a phone.
pub(super) const WIDTH: f64 = 340.0;

/// Where a text begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

/// A drawing under construction.
pub(super) struct Sheet(String);

impl Sheet {
    /// An empty drawing of a height; the id is unique in the page.
    pub(super) fn new(id: &str, height: f64, title: &str, description: &str) -> Self {
        let mut size = String::new();
        push_tenths(&mut size, WIDTH);
        size.push(' ');
        push_tenths(&mut size, height);
        Self(
            [
                "<svg class=\"pic-sheet pic-chart\" xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"0 0 ",
                &size,
                "\" aria-labelledby=\"",
                id,
                "-title\" aria-describedby=\"",
                id,
                "-desc\"><title id=\"",
                id,
                "-title\">",
                &escaped(title),
                "</title><desc id=\"",
                id,
                "-desc\">",
                &escaped(description),
                "</desc>",
            ]
            .concat(),
        )
    }

    /// A path of a class.
    pub(super) fn path(&mut self, class: &str, data: &str) {
        if !data.is_empty() {
            for part in ["<path class=\"", class, "\" d=\"", data, "\"/>"] {
                self.0.push_str(part);
            }
        }
    }

    /// A text at a place.
    pub(super) fn text(&mut self, class: &str, anchor: Anchor, at: (f64, f64), text: &str) {
        let anchor = match anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        for part in [
            "<text class=\"",
            class,
            "\" text-anchor=\"",
            anchor,
            "\" x=\"",
        ] {
            self.0.push_str(part);
        }
        push_tenths(&mut self.0, at.0);
        self.0.push_str("\" y=\"");
        push_tenths(&mut self.0, at.1);
        self.0.push_str("\">");
        self.0.push_str(&escaped(text));
        self.0.push_str("</text>");
    }

    /// The whole markup.
    pub(super) fn finish(mut self) -> String {
        self.0.push_str("</svg>");
        self.0
    }
}

/// Round values from a low to a high one, at most so many.
pub(super) fn round_values(low: f64, high: f64, most: f64) -> Vec<f64> {
    let span = high - low;
    if !(span.is_finite() && span > 0.0) {
        return Vec::new();
    }
    let wanted = span / most.max(1.0);
    let decade = 10_f64.powf(wanted.log10().floor());
    let step = [1.0, 2.0, 5.0]
        .map(|factor| factor * decade)
        .into_iter()
        .find(|step| *step >= wanted * 0.999)
        .unwrap_or(10.0 * decade);
    let first = (low / step - 1e-6).ceil();
    let count = ((high / step + 1e-6).floor() - first).clamp(0.0, 60.0);
    (0..=count as u32)
        .map(|n| (first + f64::from(n)) * step)
        .collect()
}
