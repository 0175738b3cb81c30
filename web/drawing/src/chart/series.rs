//! What is drawn over the grid.

use tinwave_words::chart as words;

/// How a curve is drawn; told apart by dash as well as by colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Style {
    /// This design: full, blue, heavy.
    This,
    /// Measured: full, ink.
    Measured,
    /// What it is compared with, or what was predicted: dashed, thin.
    Compared,
    /// A third curve: dotted, thin.
    Other,
}

impl Style {
    /// Its class in the styles.
    #[must_use]
    pub const fn class(self) -> &'static str {
        match self {
            Self::This => "of-this",
            Self::Measured => "of-measured",
            Self::Compared => "of-compared",
            Self::Other => "of-other",
        }
    }
}

/// One curve.
#[derive(Clone, Debug, PartialEq)]
pub struct Series {
    /// What it is, beside the curve and in the readout; empty where the chart has but one.
    pub name: String,
    /// How it is drawn.
    pub style: Style,
    /// Points, ascending in x. A value that is not a number breaks the curve.
    pub points: Vec<(f64, f64)>,
    /// What is said in its gaps and beyond its ends.
    pub gap: String,
}

impl Series {
    /// A curve.
    #[must_use]
    pub fn new(name: impl Into<String>, style: Style, points: Vec<(f64, f64)>) -> Self {
        Self {
            name: name.into(),
            style,
            points,
            gap: words::no_value().to_owned(),
        }
    }

    /// With other words where it has no value.
    #[must_use]
    pub fn with_gap(mut self, gap: impl Into<String>) -> Self {
        self.gap = gap.into();
        self
    }

    /// The curve's value between its points, along straight lines; `None` beyond its
    /// ends and in its gaps.
    #[must_use]
    pub fn at(&self, x: f64) -> Option<f64> {
        let after = self.points.partition_point(|point| point.0 < x);
        let right = self.points.get(after);
        if let Some(exact) = right.filter(|point| point.0 == x) {
            return Some(exact.1).filter(|y| y.is_finite());
        }
        let (left, right) = (self.points.get(after.checked_sub(1)?)?, right?);
        let part = (x - left.0) / (right.0 - left.0);
        Some(left.1 + part * (right.1 - left.1)).filter(|y| y.is_finite())
    }
}

/// A shaded stretch between two curves: what most of many cans lie in.
#[derive(Clone, Debug, PartialEq)]
pub struct Range {
    /// What it is.
    pub name: String,
    /// x, lower and upper value, ascending in x.
    pub points: Vec<(f64, f64, f64)>,
}

/// A single point that stands out.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Its place.
    pub at: (f64, f64),
    /// What it is, written beside it where there is room.
    pub name: String,
}

#[cfg(test)]
mod tests {
    use super::{Series, Style};

    #[test]
    fn between_points_a_curve_runs_straight() {
        let points = vec![(1.0, 2.0), (2.0, 4.0), (3.0, f64::NAN), (4.0, 1.0)];
        let series = Series::new("", Style::This, points);
        assert_eq!(series.at(1.0), Some(2.0));
        assert_eq!(series.at(1.25), Some(2.5));
        assert_eq!(series.at(2.0), Some(4.0));
        assert_eq!(series.at(2.5), None);
        assert_eq!(series.at(4.0), Some(1.0));
        assert_eq!(series.at(0.9), None);
        assert_eq!(series.at(4.1), None);
    }
}
