//! The Smith chart: px of a reflection coefficient, circles of constant
//! resistance, arcs of constant reactance.
//!
//! Source: P. H. Smith, "Transmission line calculator", Electronics 12 (1939);
//! the circles follow from Γ = (z - 1)/(z + 1).

use tinwave_core::complex::Complex;
use tinwave_core::match_band::SweepPoint;
use tinwave_core::reflection::magnitude_of_vswr;

use super::path_text::PathText;

/// Side of the square sheet, px.
pub const SIDE: f64 = 320.0;
/// Centre of the chart, both ways.
pub const CENTRE: f64 = SIDE / 2.0;
/// Radius of the circle of total reflection.
pub const RADIUS: f64 = 142.0;
/// Resistances and reactances drawn, in units of the reference.
pub const LINES: [f64; 5] = [0.2, 0.5, 1.0, 2.0, 5.0];

/// Place of a reflection coefficient.
#[must_use]
pub fn place(reflection: Complex) -> (f64, f64) {
    (
        CENTRE + RADIUS * reflection.re,
        CENTRE - RADIUS * reflection.im,
    )
}

/// Where the circle of resistance `r` crosses the real axis on its left.
#[must_use]
pub fn resistance_label_x(r: f64) -> f64 {
    place(Complex::real((r - 1.0) / (r + 1.0))).0
}

/// The grid: real axis, circles of resistance, arcs of reactance.
#[must_use]
pub fn grid() -> String {
    let mut path = PathText::new();
    path.segment(CENTRE - RADIUS, CENTRE, CENTRE + RADIUS, CENTRE);
    for r in LINES {
        let (x, y) = place(Complex::real(r / (1.0 + r)));
        path.circle(x, y, RADIUS / (1.0 + r));
    }
    for x in LINES {
        for (sign, clockwise) in [(1.0, false), (-1.0, true)] {
            let (start_x, start_y) = place(reactance_end(sign * x));
            path.move_to(start_x, start_y);
            path.arc_to(RADIUS / x, clockwise, CENTRE + RADIUS, CENTRE);
        }
    }
    path.into_text()
}

/// Where the arc of reactance `x` meets the circle of total reflection.
#[must_use]
pub fn reactance_end(x: f64) -> Complex {
    let square = x * x;
    Complex::new((square - 1.0) / (square + 1.0), 2.0 * x / (square + 1.0))
}

/// The circle of total reflection.
#[must_use]
pub fn rim() -> String {
    let mut path = PathText::new();
    path.circle(CENTRE, CENTRE, RADIUS);
    path.into_text()
}

/// Radius of the circle of a standing-wave ratio.
#[must_use]
pub fn vswr_radius(vswr: f64) -> f64 {
    RADIUS * magnitude_of_vswr(vswr)
}

/// The line through the points of a sweep, broken where a point is missing.
#[must_use]
pub fn locus(points: &[SweepPoint]) -> String {
    let mut path = PathText::new();
    let mut pen_down = false;
    for point in points {
        let Some(at) = point.at else {
            pen_down = false;
            continue;
        };
        let (x, y) = place(at.reflection);
        if pen_down {
            path.line_to(x, y);
        } else {
            path.move_to(x, y);
        }
        pen_down = true;
    }
    path.into_text()
}

/// Where the note on one end of a line goes: away from the other end, clear of
/// the mark, on the sheet.
#[must_use]
pub fn note_place(end: Complex, other: Complex) -> (f64, f64) {
    const PUSH: f64 = 17.0;
    let (x, y) = place(end);
    let away = end - other;
    let length = away.abs();
    let (ux, uy) = if length > 1e-6 {
        (away.re / length, -away.im / length)
    } else {
        (0.0, -1.0)
    };
    (
        (x + ux * PUSH * 1.3).clamp(20.0, SIDE - 20.0),
        (y + uy * PUSH + 4.0).clamp(12.0, SIDE - 4.0),
    )
}

#[cfg(test)]
mod tests {
    use super::{
        CENTRE, RADIUS, locus, note_place, place, reactance_end, resistance_label_x, vswr_radius,
    };
    use tinwave_core::complex::Complex;
    use tinwave_core::match_band::SweepPoint;
    use tinwave_core::reflection::PointMatch;

    fn reflection_of(re: f64, im: f64) -> Complex {
        let z = Complex::new(re, im);
        (z - Complex::ONE) / (z + Complex::ONE)
    }

    #[test]
    fn short_match_and_open_stand_left_centre_right() {
        assert_eq!(place(reflection_of(0.0, 0.0)), (CENTRE - RADIUS, CENTRE));
        assert_eq!(place(reflection_of(1.0, 0.0)), (CENTRE, CENTRE));
        let (x, y) = place(Complex::ONE);
        assert_eq!((x, y), (CENTRE + RADIUS, CENTRE));
        // Inductive is up.
        assert!(place(reflection_of(1.0, 1.0)).1 < CENTRE);
    }

    /// Points of one resistance lie on a circle about r/(1+r) of radius 1/(1+r).
    #[test]
    fn resistance_circles_pass_through_their_points() {
        for r in super::LINES {
            for x in [-3.0, -0.4, 0.0, 0.9, 7.0] {
                let from_centre = reflection_of(r, x) - r / (1.0 + r);
                assert!((from_centre.abs() - 1.0 / (1.0 + r)).abs() < 1e-12);
            }
            let crossing = (resistance_label_x(r) - CENTRE) / RADIUS;
            assert!((crossing - reflection_of(r, 0.0).re).abs() < 1e-12);
        }
    }

    #[test]
    fn reactance_arcs_begin_at_pure_reactance() {
        for x in [-5.0, -0.2, 0.5, 2.0] {
            assert!((reactance_end(x) - reflection_of(0.0, x)).abs() < 1e-12);
        }
    }

    /// VSWR 2 is a reflection of one third.
    #[test]
    fn vswr_circles_have_the_right_radius() {
        assert!((vswr_radius(2.0) - RADIUS / 3.0).abs() < 1e-9);
        assert!((vswr_radius(1.5) - RADIUS / 5.0).abs() < 1e-9);
    }

    #[test]
    fn notes_on_both_ends_do_not_meet() {
        for (low, high) in [(0.1, 0.12), (-0.9, 0.95), (0.3, 0.3)] {
            let (low, high) = (Complex::new(low, 0.2), Complex::new(high, -0.2));
            let (a, b) = (note_place(low, high), note_place(high, low));
            assert!((a.1 - b.1).abs() > 30.0);
        }
    }

    #[test]
    fn a_missing_point_breaks_the_line() {
        let at = |conductance| {
            Some(PointMatch::from_admittance(
                Complex::real(conductance),
                50.0,
            ))
        };
        let point = |at| SweepPoint {
            frequency_khz: 1,
            at,
        };
        let points = [
            point(at(0.02)),
            point(None),
            point(at(0.01)),
            point(at(0.02)),
        ];
        let data = locus(&points);
        assert_eq!(data.matches('M').count(), 2);
        assert_eq!(data.matches('L').count(), 1);
    }
}
