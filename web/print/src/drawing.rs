//! A drawing that knows nothing of paper: shapes and words by layer.

use crate::geometry::{MM, Point, Rect, Um, at};
use crate::layer::Layer;
use crate::letters::{self, DESCENDER_MILLI, Weight};

/// Which part of a text stands at its place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Anchor {
    /// Its start.
    #[default]
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

/// One line of words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Text {
    /// The place, on the line that letters stand on.
    pub at: Point,
    /// Height of a capital (ISO 3098).
    pub capital: Um,
    /// What stands at the place.
    pub anchor: Anchor,
    /// Turned to read from below to above.
    pub turned: bool,
    /// Weight of the letters.
    pub weight: Weight,
    /// Width, where it is not what [`letters::width`] gives: the width of the
    /// image that stands for the text.
    pub image_width: Option<Um>,
    /// The words.
    pub words: String,
}

impl Text {
    /// A text that starts at a place.
    #[must_use]
    #[inline(never)]
    pub fn new(at: Point, capital: Um, words: &str) -> Self {
        Self {
            at,
            capital,
            anchor: Anchor::Start,
            turned: false,
            weight: Weight::Regular,
            image_width: None,
            words: words.to_owned(),
        }
    }

    /// The same with its middle at the place.
    #[must_use]
    #[inline(never)]
    pub const fn middle(mut self) -> Self {
        self.anchor = Anchor::Middle;
        self
    }

    /// The same with its end at the place.
    #[must_use]
    #[inline(never)]
    pub const fn end(mut self) -> Self {
        self.anchor = Anchor::End;
        self
    }

    /// The same, reading upwards.
    #[must_use]
    #[inline(never)]
    pub const fn turned(mut self) -> Self {
        self.turned = true;
        self
    }

    /// The same in bold.
    #[must_use]
    #[inline(never)]
    pub const fn bold(mut self) -> Self {
        self.weight = Weight::Bold;
        self
    }

    /// Its width along its line.
    #[must_use]
    pub fn width(&self) -> Um {
        self.image_width
            .unwrap_or_else(|| letters::width(&self.words, self.capital, self.weight))
    }

    /// From the place back to the text's start, along its line.
    #[must_use]
    pub fn lead(&self) -> Um {
        match self.anchor {
            Anchor::Start => 0,
            Anchor::Middle => self.width() / 2,
            Anchor::End => self.width(),
        }
    }

    /// Where its first letter starts.
    #[must_use]
    pub fn origin(&self) -> Point {
        if self.turned {
            self.at.by(0, -self.lead())
        } else {
            self.at.by(-self.lead(), 0)
        }
    }

    /// The box that it fills, from its lowest letter to its capitals.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        let origin = self.origin();
        let drop = i64::from(letters::font_size(self.capital)) * DESCENDER_MILLI / 1_000;
        let drop = Um::try_from(drop).unwrap_or(0);
        if self.turned {
            Rect::new(origin.by(-self.capital, 0), origin.by(drop, self.width()))
        } else {
            Rect::new(origin.by(0, -drop), origin.by(self.width(), self.capital))
        }
    }
}

/// A shape without thickness.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A straight line.
    Line {
        /// One end.
        from: Point,
        /// The other.
        to: Point,
    },
    /// A full circle.
    Circle {
        /// Its centre.
        centre: Point,
        /// Its radius, positive.
        radius: Um,
    },
    /// A part of a circle, anticlockwise.
    Arc {
        /// Its centre.
        centre: Point,
        /// Its radius, positive.
        radius: Um,
        /// Where it starts, degrees anticlockwise from the right.
        start_deg: f64,
        /// How far it goes, 0 to 360 degrees.
        sweep_deg: f64,
    },
    /// Straight lines joined end to end.
    Polyline {
        /// The corners.
        points: Vec<Point>,
        /// Whether the last corner is joined to the first.
        closed: bool,
    },
    /// Words.
    Text(Text),
}

/// A shape and what it means.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// What it means.
    pub layer: Layer,
    /// What it looks like.
    pub shape: Shape,
}

/// A drawing at true scale.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// What is on it, in the order in which it was drawn.
    pub items: Vec<Item>,
}

impl Shape {
    /// The box round it. An arc counts as its whole circle where it passes the
    /// circle's outermost point on a side.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        match self {
            Self::Line { from, to } => Rect::new(*from, *to),
            Self::Circle { centre, radius } => {
                Rect::new(centre.by(-radius, -radius), centre.by(*radius, *radius))
            }
            Self::Arc {
                centre,
                radius,
                start_deg,
                sweep_deg,
            } => arc_bounds(*centre, *radius, *start_deg, *sweep_deg),
            Self::Polyline { points, .. } => bounds_of(points),
            Self::Text(text) => text.bounds(),
        }
    }
}

fn bounds_of(points: &[Point]) -> Rect {
    let first = points.first().copied().unwrap_or_default();
    points.iter().fold(Rect::new(first, first), |all, point| {
        all.union(Rect::new(*point, *point))
    })
}

fn arc_bounds(centre: Point, radius: Um, start: f64, sweep: f64) -> Rect {
    let radius = f64::from(radius);
    let mut points = vec![
        centre.polar(radius, start),
        centre.polar(radius, start + sweep),
    ];
    for side in -4..=8 {
        let degrees = 90.0 * f64::from(side);
        if degrees > start && degrees < start + sweep {
            points.push(centre.polar(radius, degrees));
        }
    }
    bounds_of(&points)
}

impl Drawing {
    /// Adds a shape.
    #[inline(never)]
    pub fn add(&mut self, layer: Layer, shape: Shape) {
        self.items.push(Item { layer, shape });
    }

    /// Adds a straight line.
    #[inline(never)]
    pub fn line(&mut self, layer: Layer, from: Point, to: Point) {
        self.add(layer, Shape::Line { from, to });
    }

    /// Adds a circle.
    #[inline(never)]
    pub fn circle(&mut self, layer: Layer, centre: Point, radius: Um) {
        self.add(layer, Shape::Circle { centre, radius });
    }

    /// Adds a closed outline.
    #[inline(never)]
    pub fn outline(&mut self, layer: Layer, points: Vec<Point>) {
        self.add(
            layer,
            Shape::Polyline {
                points,
                closed: true,
            },
        );
    }

    /// Adds joined lines.
    #[inline(never)]
    pub fn path(&mut self, layer: Layer, points: Vec<Point>) {
        self.add(
            layer,
            Shape::Polyline {
                points,
                closed: false,
            },
        );
    }

    /// Adds a rectangle.
    #[inline(never)]
    pub fn rectangle(&mut self, layer: Layer, rect: Rect) {
        let Rect { low, high } = rect;
        self.outline(layer, vec![low, at(high.x, low.y), high, at(low.x, high.y)]);
    }

    /// Adds words, if there are any.
    #[inline(never)]
    pub fn text(&mut self, text: Text) {
        if !text.words.is_empty() {
            self.add(Layer::Note, Shape::Text(text));
        }
    }

    /// Adds the cross of two centre lines.
    #[inline(never)]
    pub fn cross(&mut self, layer: Layer, centre: Point, arm: Um) {
        self.line(layer, centre.by(-arm, 0), centre.by(arm, 0));
        self.line(layer, centre.by(0, -arm), centre.by(0, arm));
    }

    /// Adds an arrow head at `tip`, open, that points along a direction
    /// (degrees anticlockwise from the right).
    pub fn arrow_head(&mut self, layer: Layer, tip: Point, degrees: f64, length: Um) {
        let barb = |turn: f64| tip.polar(f64::from(length), degrees + turn);
        self.path(layer, vec![barb(165.0), tip, barb(-165.0)]);
    }

    /// The box round everything; a point of no size where there is nothing.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        self.items
            .iter()
            .map(|item| item.shape.bounds())
            .reduce(Rect::union)
            .unwrap_or(Rect::new(Point::default(), Point::default()))
    }

    /// Adds all of another drawing, moved.
    pub fn place(&mut self, other: Self, x: Um, y: Um) {
        for mut item in other.items {
            item.shape.move_by(x, y);
            self.items.push(item);
        }
    }
}

impl Shape {
    /// Moves it.
    pub fn move_by(&mut self, x: Um, y: Um) {
        match self {
            Self::Line { from, to } => {
                *from = from.by(x, y);
                *to = to.by(x, y);
            }
            Self::Circle { centre, .. } | Self::Arc { centre, .. } => *centre = centre.by(x, y),
            Self::Polyline { points, .. } => {
                for point in points {
                    *point = point.by(x, y);
                }
            }
            Self::Text(text) => text.at = text.at.by(x, y),
        }
    }
}

/// Arms of a crosshair reach this far past what they cross.
pub const OVERRUN: Um = 2 * MM;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_arc_over_the_top_reaches_its_radius() {
        let arc = Shape::Arc {
            centre: at(0, 0),
            radius: 10_000,
            start_deg: 45.0,
            sweep_deg: 90.0,
        };
        // 10 mm × sin 45° = 7.071 mm.
        assert_eq!(
            arc.bounds(),
            Rect::new(at(-7_071, 7_071), at(7_071, 10_000))
        );
    }

    #[test]
    fn a_text_is_boxed_where_it_stands() {
        // Helvetica "HH": 2 × 722 thousandths at a font size of 10 mm.
        let text = Text::new(at(0, 0), 7_180, "HH").middle();
        assert_eq!(text.width(), 14_440);
        assert_eq!(
            text.bounds(),
            Rect::new(at(-7_220, -2_070), at(7_220, 7_180))
        );
        assert_eq!(
            text.turned().bounds(),
            Rect::new(at(-7_180, -7_220), at(2_070, 7_220))
        );
    }
}
