//! Sine and cosine of an angle in degrees.
//!
//! Drawings need them at whole and broken degrees only, and to a millionth of
//! their size. Nothing but sums and products is used, so that they are the same
//! on every machine, and the program is spared the general functions, which are
//! larger than the rest of a pattern.

use std::f64::consts::PI;

/// Terms of the two power series; at 45 degrees the next ones are below 1e-17.
const TERMS: u32 = 9;

/// Sine and cosine, to 1e-15 for angles of a few turns either way.
#[must_use]
#[inline(never)]
pub fn sin_cos(degrees: f64) -> (f64, f64) {
    // The nearest quarter turn, and what is left: at most 45 degrees.
    let quarters = crate::geometry::nearest(degrees / 90.0);
    let x = (degrees - 90.0 * f64::from(quarters)) * (PI / 180.0);
    let (mut sin, mut cos) = (0.0, 0.0);
    let (mut power, mut n) = (1.0, 0.0);
    for _ in 0..TERMS {
        cos += power;
        power *= x / (n + 1.0);
        sin += power;
        power *= -x / (n + 2.0);
        n += 2.0;
    }
    match quarters.rem_euclid(4) {
        0 => (sin, cos),
        1 => (cos, -sin),
        2 => (-sin, -cos),
        _ => (-cos, sin),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn as_the_general_functions() {
        for step in -14_500..14_500 {
            let degrees = f64::from(step) * 0.05;
            let (sin, cos) = sin_cos(degrees);
            let (other_sin, other_cos) = (degrees.to_radians().sin(), degrees.to_radians().cos());
            assert!(
                (sin - other_sin).abs() < 2e-15,
                "{degrees}: {sin} {other_sin}"
            );
            assert!(
                (cos - other_cos).abs() < 2e-15,
                "{degrees}: {cos} {other_cos}"
            );
        }
        assert_eq!(sin_cos(90.0), (1.0, 0.0));
        assert_eq!(sin_cos(-180.0), (0.0, -1.0));
    }
}
