//! How well a feed lights a parabolic dish, against its focal ratio.
//!
//! Source: C. A. Balanis, *Antenna Theory*, 3rd ed. 2005, section 15.4.1 (eqs.
//! 15-55 to 15-57, from memory), with the phase of the feed kept. The feed and its
//! holders shade nothing here.

use core::f64::consts::PI;

use super::feed_pattern::FeedPattern;
use crate::complex::Complex;
use crate::math;

/// Focal ratios f/D that are looked at.
pub const FOCAL_RATIOS: (f64, f64) = (0.2, 2.0);

/// Efficiencies of a dish with a feed, each 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct DishEfficiency {
    /// Focal length over diameter.
    pub focal_ratio: f64,
    /// Angle from the axis to the dish's edge, seen from the focus, rad.
    pub edge_angle_rad: f64,
    /// Share of the feed's power that meets the dish.
    pub spillover: f64,
    /// How evenly that power is spread, in the wanted polarisation.
    pub illumination: f64,
    /// What uneven phase leaves, the focus at its best place.
    pub phase: f64,
    /// All together: gain over that of an evenly lit dish.
    pub total: f64,
    /// The feed's field towards the edge over that on the axis, mean of E and H
    /// plane, dB; negative.
    pub edge_taper_db: f64,
    /// The same at the dish's surface, where the edge is farther away.
    pub edge_taper_on_dish_db: f64,
    /// Where the dish's focus must lie, m in front of the can's rim.
    pub focus_m: f64,
}

/// Angle from the axis to the edge of a dish, rad: `2 atan(1/(4 f/D))`.
#[must_use]
pub fn edge_angle_rad(focal_ratio: f64) -> f64 {
    2.0 * math::atan(0.25 / focal_ratio)
}

/// Gain of a dish, dB over isotropic, from its diameter and the wavelength (same
/// unit) and an efficiency.
#[must_use]
pub fn dish_gain_dbi(diameter_m: f64, wavelength_m: f64, efficiency: f64) -> f64 {
    let ratio = PI * diameter_m / wavelength_m;
    10.0 * math::log10(ratio * ratio * efficiency)
}

/// Steps of the focus over the range looked at.
const FOCUS_STEPS: i32 = 40;
/// Half that range, wavelengths.
const FOCUS_RANGE: f64 = 2.0;
/// Steps of the focal ratio.
const RATIO_STEPS: i32 = 36;
const GOLDEN: f64 = 0.618_033_988_749_894_9;

impl FeedPattern {
    /// `∫ F tan(θ/2) dθ` up to the edge, the phase taken about a point in front of
    /// the rim: with the phase and by magnitude.
    fn lit(&self, edge: f64, focus_m: f64) -> (Complex, f64) {
        let (whole, part) = Self::place(edge);
        let value = |n: usize| {
            let theta = Self::angle(n);
            let field = self.wanted.get(n).copied().unwrap_or_default();
            let turn = -self.wavenumber * focus_m * math::cos(theta);
            let weight = math::tan(0.5 * theta.min(3.1));
            (
                field * Complex::from_polar(weight, turn),
                field.abs() * weight,
            )
        };
        let step = Self::angle(1);
        let (mut sum, mut size) = (Complex::ZERO, 0.0);
        let mut before = value(0);
        for n in 0..=whole {
            let after = value(n + 1);
            let width = if n == whole { part } else { 1.0 };
            // Trapezoid, the last cut off where its straight line meets the edge.
            let end = before.0 + (after.0 - before.0).scale(width);
            let end_size = before.1 + (after.1 - before.1) * width;
            sum += (before.0 + end).scale(0.5 * width * step);
            size += (before.1 + end_size) * (0.5 * width * step);
            before = after;
        }
        (sum, size)
    }

    /// Best place of the focus for an edge angle, m in front of the rim.
    fn focus(&self, edge: f64) -> f64 {
        let wavelength = 2.0 * PI / self.wavenumber;
        let level = |focus: f64| self.lit(edge, focus).0.norm_sqr();
        let step = FOCUS_RANGE * wavelength / f64::from(FOCUS_STEPS);
        let mut best = (0.0, level(0.0));
        for n in -FOCUS_STEPS..=FOCUS_STEPS {
            let focus = f64::from(n) * step;
            let found = level(focus);
            if found > best.1 {
                best = (focus, found);
            }
        }
        golden((best.0 - step, best.0 + step), 1e-4 * wavelength, level)
    }

    /// Efficiencies of a dish of a focal ratio f/D (0.1 and more), the focus where
    /// the feed lights it best.
    #[must_use]
    pub fn efficiency(&self, focal_ratio: f64) -> DishEfficiency {
        let edge = edge_angle_rad(focal_ratio.max(0.1));
        let (whole, part) = Self::place(edge);
        let at = |n: usize| self.power.get(n).copied().unwrap_or(2.0);
        let caught = at(whole) + (at(whole + 1) - at(whole)) * part;
        let focus_m = self.focus(edge);
        let (sum, size) = self.lit(edge, focus_m);
        let cotangent = 1.0 / math::tan(0.5 * edge);
        let scale = cotangent * cotangent;
        let field = |n: usize| self.wanted.get(n).map_or(0.0, |field| field.abs());
        let on_edge = field(whole) + (field(whole + 1) - field(whole)) * part;
        let edge_taper_db = 20.0 * math::log10(on_edge / field(0));
        let space = 0.5 * (1.0 + math::cos(edge));
        DishEfficiency {
            focal_ratio,
            edge_angle_rad: edge,
            spillover: 0.5 * caught,
            illumination: 2.0 * scale * size * size / caught,
            phase: sum.norm_sqr() / (size * size),
            total: scale * sum.norm_sqr(),
            edge_taper_db,
            edge_taper_on_dish_db: edge_taper_db + 20.0 * math::log10(space),
            focus_m,
        }
    }

    /// The dish that the feed lights best, f/D within [`FOCAL_RATIOS`].
    #[must_use]
    pub fn best(&self) -> DishEfficiency {
        let (low, high) = FOCAL_RATIOS;
        let step = (high - low) / f64::from(RATIO_STEPS);
        let level = |ratio: f64| self.efficiency(ratio).total;
        let mut best = (low, level(low));
        for n in 1..=RATIO_STEPS {
            let ratio = low + f64::from(n) * step;
            let found = level(ratio);
            if found > best.1 {
                best = (ratio, found);
            }
        }
        let range = ((best.0 - step).max(low), (best.0 + step).min(high));
        self.efficiency(golden(range, 1e-3, level))
    }
}

/// Where a function with one maximum in a range has it, by golden section.
fn golden((mut low, mut high): (f64, f64), fine: f64, level: impl Fn(f64) -> f64) -> f64 {
    let (mut left, mut right) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
    let (mut at_left, mut at_right) = (level(left), level(right));
    while high - low > fine {
        if at_left >= at_right {
            (high, right, at_right) = (right, left, at_left);
            left = high - GOLDEN * (high - low);
            at_left = level(left);
        } else {
            (low, left, at_left) = (left, right, at_right);
            right = low + GOLDEN * (high - low);
            at_right = level(right);
        }
    }
    0.5 * (low + high)
}
