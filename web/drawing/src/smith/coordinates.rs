//! Places of reflection coefficients on a Smith chart, circles of constant resistance,
//! arcs of constant reactance.
//!
//! Source: P. H. Smith, "Transmission line calculator", Electronics 12 (1939);
//! the circles follow from Γ = (z - 1)/(z + 1).

use tinwave_core::complex::Complex;
use tinwave_core::reflection::magnitude_of_vswr;

use crate::path_text::PathText;

/// Radius of the chart's rim in its own units.
pub const RIM: f64 = 100.0;
/// Resistances and reactances drawn, in units of the reference.
pub(super) const LINES: [f64; 7] = [0.2, 0.5, 0.8, 1.0, 1.25, 2.0, 5.0];

/// A chart from its centre to a largest reflection.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SmithPlane {
    /// Reflection at the rim: 0.5 for the inner half, 1 for all of it.
    pub reach: f64,
}

impl SmithPlane {
    /// The inner half where it holds all of these reflections, else all of the chart.
    #[must_use]
    pub fn holding(mut reflections: impl Iterator<Item = Complex>) -> Self {
        let inner = reflections.all(|reflection| reflection.abs() <= 0.48);
        Self {
            reach: if inner { 0.5 } else { 1.0 },
        }
    }

    /// Whether it is the inner half.
    #[must_use]
    pub fn is_inner(self) -> bool {
        self.reach < 1.0
    }

    /// Place of a reflection from the chart's centre, y downwards.
    #[must_use]
    pub fn place(self, reflection: Complex) -> (f64, f64) {
        let scale = RIM / self.reach;
        (scale * reflection.re, -scale * reflection.im)
    }

    /// Where the circle of resistance `r` crosses the real axis on its left.
    #[must_use]
    pub fn crossing(self, r: f64) -> f64 {
        self.place(Complex::real((r - 1.0) / (r + 1.0))).0
    }

    /// Radius of the circle of a standing-wave ratio.
    #[must_use]
    pub fn vswr_radius(self, vswr: f64) -> f64 {
        RIM / self.reach * magnitude_of_vswr(vswr)
    }

    /// The grid: real axis, circles of resistance, arcs of reactance. Of the inner half
    /// it runs past the rim.
    #[must_use]
    pub fn grid(self) -> String {
        let unit = RIM / self.reach;
        let mut path = PathText::new();
        path.segment(-unit, 0.0, unit, 0.0);
        for r in LINES {
            let (x, y) = self.place(Complex::real(r / (1.0 + r)));
            path.circle(x, y, unit / (1.0 + r));
        }
        for x in LINES {
            for (sign, clockwise) in [(1.0, false), (-1.0, true)] {
                let (start_x, start_y) = self.place(reactance_end(sign * x));
                path.move_to(start_x, start_y);
                path.arc_to(unit / x, clockwise, unit, 0.0);
            }
        }
        path.into_text()
    }

    /// The line through reflections, broken where one is missing.
    #[must_use]
    pub fn locus(self, points: impl IntoIterator<Item = Option<Complex>>) -> String {
        let mut path = PathText::new();
        let mut pen_down = false;
        for point in points {
            let Some(reflection) = point else {
                pen_down = false;
                continue;
            };
            let (x, y) = self.place(reflection);
            if pen_down {
                path.line_to(x, y);
            } else {
                path.move_to(x, y);
            }
            pen_down = true;
        }
        path.into_text()
    }
}

/// Where the arc of reactance `x` meets the circle of total reflection.
#[must_use]
pub(super) fn reactance_end(x: f64) -> Complex {
    let square = x * x;
    Complex::new((square - 1.0) / (square + 1.0), 2.0 * x / (square + 1.0))
}

#[cfg(test)]
mod tests {
    use super::{LINES, RIM, SmithPlane, reactance_end};
    use tinwave_core::complex::Complex;

    const WHOLE: SmithPlane = SmithPlane { reach: 1.0 };

    fn reflection_of(re: f64, im: f64) -> Complex {
        let z = Complex::new(re, im);
        (z - Complex::ONE) / (z + Complex::ONE)
    }

    #[test]
    fn short_match_and_open_stand_left_centre_right() {
        assert_eq!(WHOLE.place(reflection_of(0.0, 0.0)).0, -RIM);
        assert_eq!(WHOLE.place(reflection_of(1.0, 0.0)).0, 0.0);
        assert_eq!(WHOLE.place(Complex::ONE).0, RIM);
        // Inductive is up.
        assert!(WHOLE.place(reflection_of(1.0, 1.0)).1 < 0.0);
    }

    /// Points of one resistance lie on a circle about r/(1+r) of radius 1/(1+r).
    #[test]
    fn resistance_circles_pass_through_their_points() {
        for r in LINES {
            for x in [-3.0, -0.4, 0.0, 0.9, 7.0] {
                let from_centre = reflection_of(r, x) - r / (1.0 + r);
                assert!((from_centre.abs() - 1.0 / (1.0 + r)).abs() < 1e-12);
            }
            assert!((WHOLE.crossing(r) / RIM - reflection_of(r, 0.0).re).abs() < 1e-12);
        }
    }

    #[test]
    fn reactance_arcs_begin_at_pure_reactance() {
        for x in [-5.0, -0.2, 0.5, 2.0] {
            assert!((reactance_end(x) - reflection_of(0.0, x)).abs() < 1e-12);
        }
    }

    /// VSWR 2 is a reflection of one third, 1.5 of one fifth.
    #[test]
    fn vswr_circles_have_the_right_radius() {
        assert!((WHOLE.vswr_radius(2.0) - RIM / 3.0).abs() < 1e-9);
        let inner = SmithPlane { reach: 0.5 };
        assert!((inner.vswr_radius(1.5) - 0.4 * RIM).abs() < 1e-9);
    }

    #[test]
    fn the_inner_half_is_shown_where_it_is_enough() {
        let holding = |size: f64| SmithPlane::holding([Complex::real(size)].into_iter());
        assert!(holding(0.3).is_inner() && !holding(0.6).is_inner());
    }

    #[test]
    fn a_missing_point_breaks_the_line() {
        let at = |re| Some(Complex::real(re));
        let data = WHOLE.locus([at(0.1), None, at(0.2), at(0.3)]);
        assert_eq!(data.matches('M').count(), 2);
        assert_eq!(data.matches('L').count(), 1);
    }
}
