//! Tabs to be bent: teeth along a circle, a sector or a straight edge.

use crate::geometry::{MM, Point, Um, at};

/// How far a tab reaches past the bending line.
pub const TAB: Um = 8 * MM;
/// Usual width of a tab along the bending line.
const WIDTH: f64 = 18_000.0;
/// A tab's free end, as part of its width at the bending line: narrower, so
/// that bent tabs don't meet.
const FREE_END: f64 = 0.7;

/// Which way tabs along an arc point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Towards the centre.
    Inwards,
    /// Away from the centre.
    Outwards,
}

/// How many tabs an edge of that length gets: at least 3.
fn count(length: f64) -> u32 {
    let count = crate::geometry::nearest(length / WIDTH).max(3);
    count.unsigned_abs()
}

/// The outline of tabs along an arc about the origin, from one end of the arc
/// to the other. Tabs towards the centre reach at most half the radius in.
#[must_use]
pub fn along_arc(radius: f64, start_deg: f64, sweep_deg: f64, side: Side) -> Vec<Point> {
    let tab = f64::from(TAB);
    let end = match side {
        Side::Inwards => (radius - tab).max(radius / 2.0),
        Side::Outwards => radius + tab,
    };
    let length = radius * sweep_deg * (std::f64::consts::PI / 180.0);
    let tabs = count(length);
    let step = sweep_deg / f64::from(tabs);
    // Half the angle of the free end, at its own radius.
    let half = 0.5 * FREE_END * step * (radius / end);
    let origin = Point::default();
    let mut points = Vec::new();
    for tab in 0..tabs {
        let from = start_deg + step * f64::from(tab);
        let middle = from + step / 2.0;
        points.push(origin.polar(radius, from));
        points.push(origin.polar(end, middle - half));
        points.push(origin.polar(end, middle + half));
    }
    points.push(origin.polar(radius, start_deg + sweep_deg));
    points
}

/// The outline of tabs below a straight edge, from the right end at
/// (`length`, 0) to the origin.
#[must_use]
pub fn below_edge(length: Um) -> Vec<Point> {
    let tabs = count(f64::from(length));
    let step = f64::from(length) / f64::from(tabs);
    let inset = step * (1.0 - FREE_END) / 2.0;
    let x = crate::geometry::nearest;
    let mut points = Vec::new();
    for tab in (0..tabs).rev() {
        let left = step * f64::from(tab);
        points.push(at(x(left + step), 0));
        points.push(at(x(left + step - inset), -TAB));
        points.push(at(x(left + inset), -TAB));
    }
    points.push(at(0, 0));
    points
}
