//! How close two radial wires come to each other.

use super::wire::Wire;
use crate::math;

/// A point of the cross-section.
type Point = (f64, f64);

/// Shortest distance between the axes of two wires in a guide of radius `a`, m.
pub(super) fn axis_distance(one: &Wire, other: &Wire, a: f64) -> f64 {
    let (p, q) = (ends(one, a), ends(other, a));
    let across = if cross(p, q) {
        0.0
    } else {
        to_segment(p.0, q)
            .min(to_segment(p.1, q))
            .min(to_segment(q.0, p))
            .min(to_segment(q.1, p))
    };
    math::hypot(across, one.axial_m - other.axial_m)
}

/// Foot and tip of a wire in the cross-section.
fn ends(wire: &Wire, a: f64) -> (Point, Point) {
    let (s, c) = math::sin_cos(wire.angle_rad);
    let tip = a - wire.insertion_m;
    ((a * c, a * s), (tip * c, tip * s))
}

/// Twice the signed area of the triangle `o`, `p`, `q`.
fn turn(o: Point, p: Point, q: Point) -> f64 {
    (p.0 - o.0) * (q.1 - o.1) - (p.1 - o.1) * (q.0 - o.0)
}

fn cross(p: (Point, Point), q: (Point, Point)) -> bool {
    turn(p.0, p.1, q.0) * turn(p.0, p.1, q.1) < 0.0
        && turn(q.0, q.1, p.0) * turn(q.0, q.1, p.1) < 0.0
}

fn to_segment(p: Point, (a, b): (Point, Point)) -> f64 {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let length_sqr = (dx * dx + dy * dy).max(f64::MIN_POSITIVE);
    let along = (((p.0 - a.0) * dx + (p.1 - a.1) * dy) / length_sqr).clamp(0.0, 1.0);
    math::hypot(p.0 - a.0 - along * dx, p.1 - a.1 - along * dy)
}
