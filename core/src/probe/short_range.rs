//! Near part of a wire's reaction with itself: through free space, through its
//! image in the wall it stands on, and a correction for the wall's curvature.
//!
//! The wire is a tube: its static kernel is the exact one, a complete elliptic
//! integral. What the modes already carry (the field of the same current on the
//! axis, smoothed by the split's width) is taken off. Source of the kernel:
//! W. Wang, "The exact kernel for cylindrical antenna", *IEEE Trans. Antennas
//! Propag.* 39, 1991, 434-435. The curvature terms follow from the heat kernel
//! near a wall of mean curvature 1/(2a), to first order in the width.

use core::f64::consts::PI;

use super::expansion::{BasisValues, Expansion, TERMS};
use super::reaction::{Block, Nodes};
use super::sleeve::Sleeve;
use crate::elliptic::complete_first;
use crate::math;
use crate::quadrature::GaussLegendre;

/// Points along the distance between two elements; the kernel's logarithm sits at
/// the densest end.
const DISTANCE_POINTS: usize = 16;
/// Points of the image's tail, beyond one wire length.
const TAIL_POINTS: usize = 8;
/// Beyond this many widths the near part is below 1e-7.
const NOTHING_BEYOND: f64 = 8.0;
/// Points over the widths of the curvature's effect.
const CURVATURE_POINTS: usize = 4;
/// How deep under the wall it acts on the current, in widths: 16/(15 sqrt π); on
/// the charge twice as deep.
const CURVATURE_DEPTH: f64 = 0.601_8;

/// Potentials of two elements: at `k` = 0 for current and charge, and the common
/// coefficient of `k²`.
#[derive(Clone, Copy, Debug)]
pub(super) struct Potentials {
    pub(super) current: f64,
    pub(super) charge: f64,
    pub(super) dynamic: f64,
}

/// The same of two point elements at the distance `r`, for a width `e`.
pub(super) fn point_potentials(r: f64, e: f64) -> Potentials {
    let x = 0.5 * r / e;
    let outside = math::erfc(x);
    let fixed = outside / (4.0 * PI * r);
    let dynamic = dynamic_part(r, e, x, outside);
    Potentials {
        current: fixed,
        charge: fixed,
        dynamic,
    }
}

/// Derivatives of [`point_potentials`] with the distance.
pub(super) fn point_slopes(r: f64, e: f64) -> Potentials {
    let x = 0.5 * r / e;
    let outside = math::erfc(x);
    let bell = math::exp(-x * x) / (math::sqrt(PI) * e);
    let fixed = -(outside / r + bell) / (4.0 * PI * r);
    Potentials {
        current: fixed,
        charge: fixed,
        dynamic: -outside / (8.0 * PI),
    }
}

/// `(4π)^(-3/2) [2E e^(-R²/4E²) - R sqrt(π) erfc(R/2E)]`, the coefficient of `k²`.
fn dynamic_part(r: f64, e: f64, x: f64, outside: f64) -> f64 {
    let scale = 1.0 / (4.0 * PI * math::sqrt(4.0 * PI));
    scale * (2.0 * e * math::exp(-x * x) - r * math::sqrt(PI) * outside)
}

/// Potentials of two rings of a wire at the distance `t` along it.
pub(super) struct TubeKernel<'a> {
    pub(super) radius: f64,
    pub(super) width: f64,
    pub(super) sleeve: Option<&'a Sleeve>,
}

impl TubeKernel<'_> {
    fn at(&self, t: f64) -> Potentials {
        let (r, e) = (self.radius, self.width);
        let smooth = math::erf(0.5 * t / e) / (4.0 * PI * t);
        let fixed = ring_potential(r, r, t) - smooth;
        let from_sleeve = self
            .sleeve
            .map_or(0.0, |sleeve| sleeve.charge_potential(r, t));
        let distance = math::sqrt(t * t + r * r);
        let x = 0.5 * distance / e;
        Potentials {
            current: fixed,
            charge: fixed + from_sleeve,
            dynamic: dynamic_part(distance, e, x, math::erfc(x)),
        }
    }
}

/// Mean of `1/(4πR)` between a point on a tube of radius `r` and a ring of radius
/// `c` at the axial distance `t`, 1/m.
pub(super) fn ring_potential(c: f64, r: f64, t: f64) -> f64 {
    let (sum, difference) = (c + r, c - r);
    let far_sqr = sum * sum + t * t;
    let m1 = (difference * difference + t * t) / far_sqr;
    complete_first(m1) / (2.0 * PI * PI * math::sqrt(far_sqr))
}

/// A wire whose reaction with itself is wanted.
pub(super) struct SelfReaction<'a> {
    pub(super) expansion: &'a Expansion,
    pub(super) radius: f64,
    pub(super) width: f64,
    pub(super) nodes: &'a Nodes,
}

impl SelfReaction<'_> {
    /// The wire as it stands on its wall.
    pub(super) fn add_direct(&self, block: &mut Block, sleeve: Option<&Sleeve>) {
        let kernel = TubeKernel {
            radius: self.radius,
            width: self.width,
            sleeve,
        };
        self.add(block, 1.0, self.radius, |t| kernel.at(t));
    }

    /// The wire with its image in the back wall, `distance` away.
    pub(super) fn add_back_image(&self, block: &mut Block, distance: f64) {
        self.add(block, -1.0, distance, |t| {
            point_potentials(math::hypot(t, distance), self.width)
        });
    }

    /// Adds `sign` times the double integral of a kernel of the distance along the
    /// wire, direct and through the wall it stands on. `scale` is the distance
    /// within which the kernel is steep.
    fn add(&self, block: &mut Block, sign: f64, scale: f64, kernel: impl Fn(f64) -> Potentials) {
        let length = self.expansion.length;
        let inner = GaussLegendre::new(TERMS + 1);
        let stretch = math::asinh(length / scale);
        for (y, w) in GaussLegendre::new(DISTANCE_POINTS).on(0.0, 1.0) {
            let v = stretch * y * y;
            let t = scale * math::sinh(v);
            let weight = sign * w * scale * math::cosh(v) * 2.0 * stretch * y;
            let at_t = kernel(t);
            let direct = Overlap::direct(self.expansion, &inner, t);
            self.add_overlap(block, weight, 1.0, at_t, &direct);
            let image = Overlap::image(self.expansion, &inner, 0.0, t);
            self.add_overlap(block, weight, -1.0, at_t, &image);
        }
        let end = (2.0 * length).min(NOTHING_BEYOND * self.width);
        if end > length {
            for (t, w) in GaussLegendre::new(TAIL_POINTS).on(length, end) {
                let image = Overlap::image(self.expansion, &inner, t - length, length);
                self.add_overlap(block, sign * w, -1.0, kernel(t), &image);
            }
        }
    }

    fn add_overlap(
        &self,
        block: &mut Block,
        weight: f64,
        charge_sign: f64,
        at_t: Potentials,
        overlap: &Overlap,
    ) {
        let current = self
            .nodes
            .k_sqr
            .map(|q| weight * q * (at_t.current + q * at_t.dynamic));
        let charge = self
            .nodes
            .k_sqr
            .map(|q| -charge_sign * weight * (at_t.charge + q * at_t.dynamic));
        block.add_matrix(current, &overlap.value);
        block.add_matrix(charge, &overlap.slope);
    }

    /// First-order effect of the curvature of the wall, in a guide of radius `a`, on
    /// the wire and (`sign` -1) on its image at the axial distance `z`.
    pub(super) fn add_curvature(&self, block: &mut Block, a: f64, z: f64, sign: f64) {
        let length = self.expansion.length;
        for (s, w) in GaussLegendre::new(CURVATURE_POINTS).on(0.0, self.width) {
            let x = 0.5 * z / s;
            let share = sign * w * s * math::exp(-x * x) / (4.0 * PI * a);
            let depth = CURVATURE_DEPTH * s;
            let value = self.expansion.at(depth.min(length)).value;
            block.add_product(self.nodes.k_sqr.map(|q| -share * q), &value, &value);
            let slope = self.expansion.at((2.0 * depth).min(length)).slope;
            block.add_product([0.25 * share; 3], &slope, &slope);
        }
    }
}

/// Integrals of products of two polynomials, and of their slopes, over all pairs
/// of places at one distance.
struct Overlap {
    value: [[f64; TERMS]; TERMS],
    slope: [[f64; TERMS]; TERMS],
}

impl Overlap {
    const EMPTY: Self = Self {
        value: [[0.0; TERMS]; TERMS],
        slope: [[0.0; TERMS]; TERMS],
    };

    /// Pairs `|s - s'| = t`.
    fn direct(expansion: &Expansion, rule: &GaussLegendre, t: f64) -> Self {
        let mut out = Self::EMPTY;
        for (s, w) in rule.on(0.0, expansion.length - t) {
            let (near, far) = (expansion.at(s), expansion.at(s + t));
            out.add(w, &near, &far);
            out.add(w, &far, &near);
        }
        out
    }

    /// Pairs `s + s' = low + high` with both between `low` and `high`.
    fn image(expansion: &Expansion, rule: &GaussLegendre, low: f64, high: f64) -> Self {
        let mut out = Self::EMPTY;
        for (s, w) in rule.on(low, high) {
            out.add(w, &expansion.at(s), &expansion.at(low + high - s));
        }
        out
    }

    fn add(&mut self, w: f64, one: &BasisValues, other: &BasisValues) {
        for i in 0..TERMS {
            let (value, slope) = (w * one.value[i], w * one.slope[i]);
            for j in 0..TERMS {
                self.value[i][j] += value * other.value[j];
                self.slope[i][j] += slope * other.slope[j];
            }
        }
    }
}
