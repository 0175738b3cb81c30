//! Path data of SVG, written piece by piece.

use super::fixed_point::push_tenths;

/// The `d` of a path under construction. Coordinates in px, y downwards.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PathText {
    text: String,
}

impl PathText {
    /// An empty path.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// The path data so far.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.text
    }

    /// The finished path data.
    #[must_use]
    pub fn into_text(self) -> String {
        self.text
    }

    /// Lifts the pen to a point.
    pub fn move_to(&mut self, x: f64, y: f64) {
        self.command('M', x, y);
    }

    /// Draws to a point.
    pub fn line_to(&mut self, x: f64, y: f64) {
        self.command('L', x, y);
    }

    /// Closes the outline.
    pub fn close(&mut self) {
        self.text.push('Z');
    }

    /// One straight line.
    pub fn segment(&mut self, x1: f64, y1: f64, x2: f64, y2: f64) {
        self.move_to(x1, y1);
        self.line_to(x2, y2);
    }

    /// A closed outline through points.
    pub fn polygon(&mut self, points: &[(f64, f64)]) {
        self.polyline(points.iter().copied());
        self.close();
    }

    /// An open line through points.
    pub fn polyline(&mut self, points: impl IntoIterator<Item = (f64, f64)>) {
        for (i, (x, y)) in points.into_iter().enumerate() {
            if i == 0 {
                self.move_to(x, y);
            } else {
                self.line_to(x, y);
            }
        }
    }

    /// An upright rectangle between two corners.
    pub fn rectangle(&mut self, x1: f64, y1: f64, x2: f64, y2: f64) {
        self.polygon(&[(x1, y1), (x2, y1), (x2, y2), (x1, y2)]);
    }

    /// Path data of one rectangle.
    #[must_use]
    pub fn of_rectangle(from: (f64, f64), to: (f64, f64)) -> String {
        let mut path = Self::new();
        path.rectangle(from.0, from.1, to.0, to.1);
        path.into_text()
    }

    /// A circle, as two half turns.
    pub fn circle(&mut self, x: f64, y: f64, radius: f64) {
        self.move_to(x - radius, y);
        self.arc_to(radius, true, x + radius, y);
        self.arc_to(radius, true, x - radius, y);
        self.close();
    }

    /// The shorter circular arc to a point, clockwise on the screen or not.
    pub fn arc_to(&mut self, radius: f64, clockwise: bool, x: f64, y: f64) {
        self.text.push('A');
        push_tenths(&mut self.text, radius);
        self.text.push(' ');
        push_tenths(&mut self.text, radius);
        self.text
            .push_str(if clockwise { " 0 0 1 " } else { " 0 0 0 " });
        push_tenths(&mut self.text, x);
        self.text.push(' ');
        push_tenths(&mut self.text, y);
    }

    fn command(&mut self, letter: char, x: f64, y: f64) {
        self.text.push(letter);
        push_tenths(&mut self.text, x);
        self.text.push(' ');
        push_tenths(&mut self.text, y);
    }
}

#[cfg(test)]
mod tests {
    use super::PathText;

    #[test]
    fn a_rectangle_is_closed_and_goes_round() {
        let mut path = PathText::new();
        path.rectangle(1.0, 2.0, 4.5, 6.0);
        assert_eq!(path.as_str(), "M1 2L4.5 2L4.5 6L1 6Z");
    }

    #[test]
    fn a_circle_is_two_half_turns() {
        let mut path = PathText::new();
        path.circle(10.0, 10.0, 4.0);
        assert_eq!(path.as_str(), "M6 10A4 4 0 0 1 14 10A4 4 0 0 1 6 10Z");
    }
}
