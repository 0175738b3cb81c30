//! Points and boxes on a drawing, in whole micrometres, y upwards.

/// A length or coordinate in whole micrometres.
pub type Um = i32;

/// One millimetre.
pub const MM: Um = 1_000;

/// A place on a drawing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Point {
    /// To the right.
    pub x: Um,
    /// Upwards.
    pub y: Um,
}

/// A place, shortly.
#[must_use]
pub const fn at(x: Um, y: Um) -> Point {
    Point { x, y }
}

impl Point {
    /// Moved by a vector.
    #[must_use]
    pub const fn by(self, x: Um, y: Um) -> Self {
        at(self.x.saturating_add(x), self.y.saturating_add(y))
    }

    /// At a distance in a direction, degrees anticlockwise from the right.
    #[must_use]
    #[inline(never)]
    pub fn polar(self, radius: f64, degrees: f64) -> Self {
        let (sin, cos) = crate::turn::sin_cos(degrees);
        self.by(nearest(radius * cos), nearest(radius * sin))
    }
}

/// The nearest whole micrometre, held within the range of [`Um`].
#[must_use]
#[allow(
    clippy::cast_possible_truncation,
    reason = "a float-to-integer cast saturates, and NaN becomes 0"
)]
pub fn nearest(value: f64) -> Um {
    let half = if value < 0.0 { -0.5 } else { 0.5 };
    (value + half) as Um
}

/// A length of a design as a coordinate; beyond two kilometres it is held there.
#[must_use]
pub fn um(length: u32) -> Um {
    Um::try_from(length).unwrap_or(Um::MAX)
}

/// A box whose sides run along the axes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Rect {
    /// Lower left corner.
    pub low: Point,
    /// Upper right corner.
    pub high: Point,
}

impl Rect {
    /// The box of two opposite corners.
    #[must_use]
    pub fn new(a: Point, b: Point) -> Self {
        Self {
            low: at(a.x.min(b.x), a.y.min(b.y)),
            high: at(a.x.max(b.x), a.y.max(b.y)),
        }
    }

    /// Its width.
    #[must_use]
    pub const fn width(self) -> Um {
        self.high.x.saturating_sub(self.low.x)
    }

    /// Its height.
    #[must_use]
    pub const fn height(self) -> Um {
        self.high.y.saturating_sub(self.low.y)
    }

    /// Moved by a vector.
    #[must_use]
    pub const fn by(self, x: Um, y: Um) -> Self {
        Self {
            low: self.low.by(x, y),
            high: self.high.by(x, y),
        }
    }

    /// Larger by a margin on every side; smaller where it is negative.
    #[must_use]
    pub const fn grown(self, margin: Um) -> Self {
        Self {
            low: self.low.by(-margin, -margin),
            high: self.high.by(margin, margin),
        }
    }

    /// The smallest box round both.
    #[must_use]
    pub fn union(self, other: Self) -> Self {
        Self {
            low: at(self.low.x.min(other.low.x), self.low.y.min(other.low.y)),
            high: at(self.high.x.max(other.high.x), self.high.y.max(other.high.y)),
        }
    }

    /// Whether the two share more than an edge.
    #[must_use]
    pub const fn overlaps(self, other: Self) -> bool {
        self.low.x < other.high.x
            && other.low.x < self.high.x
            && self.low.y < other.high.y
            && other.low.y < self.high.y
    }

    /// Whether the other lies within, edges allowed to touch.
    #[must_use]
    pub const fn contains(self, other: Self) -> bool {
        self.low.x <= other.low.x
            && self.low.y <= other.low.y
            && other.high.x <= self.high.x
            && other.high.y <= self.high.y
    }
}
