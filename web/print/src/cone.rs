//! The flat development of a cone's frustum.

use crate::turn::sin_cos;

/// A frustum by the radii of its two ends and the angle of its wall to the
/// axis, all measured in the middle of the sheet, which bending neither
/// stretches nor shrinks. Radii in any unit, wide above small, angle in degrees
/// between 0 and 90.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frustum {
    /// Radius of the small end.
    pub small: f64,
    /// Radius of the wide end.
    pub wide: f64,
    /// Angle of the wall to the axis.
    pub half_angle: f64,
}

/// A sector of a ring: what the frustum's wall is before it is bent.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Development {
    /// Radius of the inner arc, which becomes the small end.
    pub inner: f64,
    /// Radius of the outer arc, which becomes the wide end.
    pub outer: f64,
    /// Angle of the sector, degrees.
    pub sector_deg: f64,
}

impl Frustum {
    /// The development: a wall line of the whole cone is `r / sin α` long, and
    /// the arc of that radius is as long as the end's circle, so the sector is
    /// `360° sin α` (radial-line development; any text book of sheet-metal
    /// pattern drafting).
    #[must_use]
    pub fn develop(self) -> Development {
        let sine = sin_cos(self.half_angle).0;
        Development {
            inner: self.small / sine,
            outer: self.wide / sine,
            sector_deg: 360.0 * sine,
        }
    }

    /// The frustum in the middle of a sheet whose inside has the given radii:
    /// the middle lies half a thickness outside, square to the wall.
    #[must_use]
    pub fn of_inside(small: f64, wide: f64, half_angle: f64, sheet: f64) -> Self {
        let outwards = 0.5 * sheet * sin_cos(half_angle).1;
        Self {
            small: small + outwards,
            wide: wide + outwards,
            half_angle,
        }
    }
}

/// Degrees of thousandths of a degree.
#[must_use]
pub fn degrees(millideg: u32) -> f64 {
    f64::from(millideg) / 1e3
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    /// A cone whose wall line and base radius are those of the 3-4-5 triangle:
    /// base radius 30, height 40, wall line 50; its half is cut off. The sector
    /// is 30/50 of a full turn, 216°, and its radii are 50 and 25.
    #[test]
    fn the_three_four_five_cone() {
        let frustum = Frustum {
            small: 15.0,
            wide: 30.0,
            half_angle: 30.0_f64.atan2(40.0).to_degrees(),
        };
        let flat = frustum.develop();
        assert!((flat.outer - 50.0).abs() < 1e-12);
        assert!((flat.inner - 25.0).abs() < 1e-12);
        assert!((flat.sector_deg - 216.0).abs() < 1e-12);
    }

    /// Rolled out step by step: a chord of a small turn about the axis is the
    /// same chord of the flat arc. The sum over a turn must give the sector,
    /// and the wall's length in space that in the plane.
    #[test]
    fn rolled_out_numerically() {
        for degrees in [1.0_f64, 12.5, 30.0, 60.0, 89.0] {
            let (small, wide) = (41.7, 93.2);
            let flat = Frustum {
                small,
                wide,
                half_angle: degrees,
            }
            .develop();
            let height = (wide - small) / degrees.to_radians().tan();
            let slant = height.hypot(wide - small);
            assert!((flat.outer - flat.inner - slant).abs() < 1e-9 * slant);
            let steps = 100_000;
            for (radius, arc) in [(small, flat.inner), (wide, flat.outer)] {
                let turn = 2.0 * PI / f64::from(steps);
                let chord = 2.0 * radius * (turn / 2.0).sin();
                let rolled = 2.0 * (chord / (2.0 * arc)).asin() * f64::from(steps);
                let sector = flat.sector_deg * PI / 180.0;
                assert!(
                    (rolled - sector).abs() < 1e-6,
                    "{degrees}: {rolled} {sector}"
                );
            }
        }
    }
}
