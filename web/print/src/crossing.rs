//! Whether a shape enters a window.

use crate::drawing::Shape;
use crate::geometry::{Point, Rect};

/// Longest piece that stands for a bit of an arc, degrees.
const PIECE_DEG: f64 = 3.0;

impl Shape {
    /// Whether any of the shape lies in the window. Curves are followed in
    /// pieces of at most 3 degrees, and the window is taken wide enough for
    /// the curve between them.
    #[must_use]
    pub fn enters(&self, window: Rect) -> bool {
        if !self.bounds().grown(1).overlaps(window) {
            return false;
        }
        match self {
            Self::Line { from, to } => segment_enters(*from, *to, window),
            Self::Circle { centre, radius } => {
                arc_enters(*centre, f64::from(*radius), 0.0, 360.0, window)
            }
            Self::Arc {
                centre,
                radius,
                start_deg,
                sweep_deg,
            } => arc_enters(*centre, f64::from(*radius), *start_deg, *sweep_deg, window),
            Self::Polyline { points, closed } => {
                let mut last = points.last().filter(|_| *closed);
                for point in points {
                    if last.is_some_and(|last| segment_enters(*last, *point, window)) {
                        return true;
                    }
                    last = Some(point);
                }
                false
            }
            Self::Text(_) => true,
        }
    }
}

fn arc_enters(centre: Point, radius: f64, start: f64, sweep: f64, window: Rect) -> bool {
    // The sagitta of 3 degrees is r (1 - cos 1.5°) = 0.00035 r.
    let margin = crate::geometry::nearest(radius * 0.000_4) + 1;
    let window = window.grown(margin);
    let pieces = crate::geometry::nearest(sweep / PIECE_DEG).max(1);
    let step = sweep / f64::from(pieces);
    let place = |piece: i32| centre.polar(radius, start + step * f64::from(piece));
    (0..pieces).any(|piece| segment_enters(place(piece), place(piece + 1), window))
}

/// Liang and Barsky's test: what remains of the line after each side of the
/// window has cut it. (Y.-D. Liang, B. A. Barsky, ACM Transactions on Graphics
/// 3 (1), 1984, pages 1 to 22.)
fn segment_enters(from: Point, to: Point, window: Rect) -> bool {
    let (x, y) = (f64::from(from.x), f64::from(from.y));
    let (dx, dy) = (f64::from(to.x) - x, f64::from(to.y) - y);
    let sides = [
        (-dx, x - f64::from(window.low.x)),
        (dx, f64::from(window.high.x) - x),
        (-dy, y - f64::from(window.low.y)),
        (dy, f64::from(window.high.y) - y),
    ];
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    for (slope, room) in sides {
        if slope == 0.0 {
            if room < 0.0 {
                return false;
            }
        } else if slope < 0.0 {
            enters = enters.max(room / slope);
        } else {
            leaves = leaves.min(room / slope);
        }
    }
    enters <= leaves
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::at;

    #[test]
    fn a_ring_round_a_window_does_not_enter_it() {
        let ring = Shape::Circle {
            centre: at(0, 0),
            radius: 100_000,
        };
        let middle = Rect::new(at(-50_000, -50_000), at(50_000, 50_000));
        assert!(!ring.enters(middle));
        assert!(ring.enters(middle.by(60_000, 0)));
        let corner = Rect::new(at(75_000, 75_000), at(95_000, 95_000));
        assert!(!ring.enters(corner), "in the box, outside the circle");
        assert!(ring.enters(Rect::new(at(70_000, 70_000), at(90_000, 90_000))));
    }

    #[test]
    fn a_long_line_enters_where_it_passes() {
        let line = Shape::Line {
            from: at(-1_000_000, -1_000_000),
            to: at(1_000_000, 1_000_000),
        };
        assert!(line.enters(Rect::new(at(0, 0), at(10, 10))));
        assert!(!line.enters(Rect::new(at(20_000, 0), at(30_000, 10_000))));
    }
}
