//! The flat sheet of a cone's frustum: part of a ring.

use core::f64::consts::PI;

use crate::math;

/// The sheet of a funnel, m and rad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlatPattern {
    /// Radius of the arc that becomes the throat.
    pub inner_radius_m: f64,
    /// Radius of the arc that becomes the mouth.
    pub outer_radius_m: f64,
    /// Angle of the ring's part, without the seam.
    pub angle_rad: f64,
    /// Width of the strip along one straight edge that goes under the other.
    pub seam_m: f64,
}

impl FlatPattern {
    /// For radii of throat and mouth (mouth the larger), the half angle of the cone
    /// (above 0, below a right angle) and the seam's width. `None` for other
    /// numbers.
    #[must_use]
    pub fn new(
        throat_radius_m: f64,
        mouth_radius_m: f64,
        half_angle_rad: f64,
        seam_m: f64,
    ) -> Option<Self> {
        let sine = math::sin(half_angle_rad);
        let possible = throat_radius_m > 0.0
            && mouth_radius_m > throat_radius_m
            && half_angle_rad > 0.0
            && half_angle_rad < 0.5 * PI
            && seam_m >= 0.0;
        possible.then(|| Self {
            inner_radius_m: throat_radius_m / sine,
            outer_radius_m: mouth_radius_m / sine,
            angle_rad: 2.0 * PI * sine,
            seam_m,
        })
    }

    /// Width of the ring's part, along the funnel's wall.
    #[must_use]
    pub fn slant_m(&self) -> f64 {
        self.outer_radius_m - self.inner_radius_m
    }

    /// Chord across the outer arc: what to measure between the corners of the mouth,
    /// without the seam.
    #[must_use]
    pub fn chord_m(&self) -> f64 {
        2.0 * self.outer_radius_m * math::sin(0.5 * self.angle_rad)
    }

    /// Area of the sheet, seam included, m².
    #[must_use]
    pub fn area_m2(&self) -> f64 {
        let (inner, outer) = (self.inner_radius_m, self.outer_radius_m);
        0.5 * self.angle_rad * (outer - inner) * (outer + inner) + self.seam_m * self.slant_m()
    }

    /// Width and height of the upright rectangle that holds the sheet, seam
    /// included, the ring's part standing with its middle straight up.
    #[must_use]
    pub fn rectangle_m(&self) -> (f64, f64) {
        let half = 0.5 * self.angle_rad;
        let (sine, cosine) = math::sin_cos(half);
        let (inner, outer) = (self.inner_radius_m, self.outer_radius_m);
        // The strip stands off the right edge, along (cos, -sin) of the half angle.
        let (across, down) = (self.seam_m * cosine, -self.seam_m * sine);
        let widest = if half >= 0.5 * PI {
            outer
        } else {
            outer * sine
        };
        let ends = [inner, outer];
        let right = ends
            .iter()
            .fold(widest, |most, radius| most.max(radius * sine + across));
        let lowest = ends.iter().fold(f64::INFINITY, |least, radius| {
            let edge = radius * cosine;
            least.min(edge).min(edge + down)
        });
        (widest + right, outer - lowest)
    }
}
