//! A drawing as SVG text, with a title and a description.

use tinwave_web::drawing::fixed_point::push_tenths;

use crate::html::escaped;

/// Width of a drawing, px; it fills its column, 340 px on a phone.
pub const WIDTH: f64 = 340.0;

/// Where a text begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// At its place.
    Start,
    /// In the middle of it.
    Middle,
    /// It ends there.
    End,
}

/// A drawing under construction.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet(String);

impl Sheet {
    /// An empty picture of a height; the id is unique in the page.
    #[must_use]
    pub fn new(id: &str, height: f64, title: &str, description: &str) -> Self {
        Self::of_role("img", id, height, title, description)
    }

    /// The same for a drawing with buttons in it.
    #[must_use]
    pub fn with_buttons(id: &str, height: f64, title: &str, description: &str) -> Self {
        Self::of_role("group", id, height, title, description)
    }

    fn of_role(role: &str, id: &str, height: f64, title: &str, description: &str) -> Self {
        let mut size = String::new();
        push_tenths(&mut size, WIDTH);
        size.push(' ');
        push_tenths(&mut size, height);
        Self(
            [
                "<svg class=\"pic-sheet pic-chart\" xmlns=\"http://www.w3.org/2000/svg\" role=\"",
                role,
                "\" viewBox=\"0 0 ",
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
    pub fn path(&mut self, class: &str, data: &str) {
        if !data.is_empty() {
            for part in ["<path class=\"", class, "\" d=\"", data, "\"/>"] {
                self.0.push_str(part);
            }
        }
    }

    /// A text at a place.
    pub fn text(&mut self, class: &str, anchor: Anchor, at: (f64, f64), text: &str) {
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

    /// Markup of another kind, escaped where it has to be.
    pub fn push(&mut self, markup: &str) {
        self.0.push_str(markup);
    }

    /// The whole markup.
    #[must_use]
    pub fn finish(mut self) -> String {
        self.0.push_str("</svg>");
        self.0
    }
}

/// Round values from a low to a high one, at most so many, and their decimals.
#[must_use]
pub fn round_values(low: f64, high: f64, most: f64) -> Vec<(f64, u8)> {
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
    let digits = (-step.log10() - 1e-9).ceil().clamp(0.0, 6.0) as u8;
    let first = (low / step - 1e-6).ceil();
    let count = ((high / step + 1e-6).floor() - first).clamp(0.0, 60.0);
    (0..=count as u32)
        .map(|n| ((first + f64::from(n)) * step, digits))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::round_values;

    #[test]
    fn figures_are_round() {
        let values = round_values(0.0, 10.0, 6.0).into_iter().map(|v| v.0);
        assert_eq!(values.collect::<Vec<_>>(), [0.0, 2.0, 4.0, 6.0, 8.0, 10.0]);
        assert_eq!(round_values(1.0, 1.3, 5.0).first().map(|v| v.1), Some(1));
        assert!(round_values(1.0, f64::NAN, 5.0).is_empty());
    }
}
