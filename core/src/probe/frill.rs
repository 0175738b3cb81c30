//! The coaxial feed: the field of a coaxial line's open end in a wall.
//!
//! The line's principal-mode field in the hole acts on the wire as a ring of
//! magnetic current ("frill"). Source: L. L. Tsai, "A numerical solution for the
//! near and far fields of an annular ring of magnetic current", *IEEE Trans.
//! Antennas Propag.* 20, 1972, 569-576. Near the hole the wall is taken as flat;
//! what the guide's modes see of the frill is a radial dipole at the wall, and
//! what they already carry is taken off here.

use core::f64::consts::PI;

use super::expansion::{Expansion, TERMS};
use super::reaction::{Block, Nodes};
use crate::elliptic::{complete_first, complete_second};
use crate::math;
use crate::quadrature::GaussLegendre;

/// Points along the wire.
const POINTS: usize = 20;
/// Row of the frill in the fed wire's block.
pub(super) const FRILL_ROW: [f64; TERMS + 1] = [0.0, 0.0, 0.0, 0.0, 0.0, 1.0];

/// The mouth of the coaxial line.
#[derive(Clone, Copy, Debug)]
pub(super) struct Frill {
    inner: f64,
    outer: f64,
    /// `ln(b/r)`.
    log_ratio: f64,
}

impl Frill {
    /// Of an inner conductor of radius `inner` in a hole of radius `outer`.
    pub(super) fn new(inner: f64, outer: f64) -> Self {
        Self {
            inner,
            outer,
            log_ratio: math::log(outer / inner),
        }
    }

    /// Area of the equivalent dipole: moment `jωε · area · V`, m².
    pub(super) fn dipole_area(&self) -> f64 {
        PI * (self.outer * self.outer - self.inner * self.inner) / (2.0 * self.log_ratio)
    }

    /// The frill's own susceptance over `k/η`, m: its capacitance is this times
    /// the permittivity of vacuum.
    pub(super) fn capacitance_length(&self) -> f64 {
        let sum = self.inner + self.outer;
        let ratio = (self.outer - self.inner) / sum;
        8.0 * sum * (complete_second(ratio * ratio) - 1.0) / (self.log_ratio * self.log_ratio)
    }

    /// Adds the near part of the field along the wire to the frill's row, for a
    /// split of width `e`.
    pub(super) fn add_excitation(
        &self,
        block: &mut Block,
        wire: &Expansion,
        e: f64,
        nodes: &Nodes,
    ) {
        let stretch = math::asinh(wire.length / self.inner);
        for (y, w) in GaussLegendre::new(POINTS).on(0.0, 1.0) {
            let v = stretch * y * y;
            let s = self.inner * math::sinh(v);
            let weight = w * self.inner * math::cosh(v) * 2.0 * stretch * y;
            let fixed = self.static_field(s) - 2.0 * self.dipole_area() * smooth_slope(s, e);
            let dynamic = self.dynamic_field(s, e);
            let at = nodes.k_sqr.map(|q| weight * (fixed + q * dynamic));
            block.add_product(at, &FRILL_ROW, &wire.at(s).value);
        }
        // The closed capacitance holds all that the flat wall does to the frill itself.
        let area = self.dipole_area();
        let taken = nodes
            .k_sqr
            .map(|q| -2.0 * area * area * (smooth_slope(0.0, e) + q * smooth_dynamic(0.0, e)));
        block.add_product(taken, &FRILL_ROW, &FRILL_ROW);
    }

    /// Field of one volt along the wire's surface at rest, 1/m.
    fn static_field(&self, s: f64) -> f64 {
        let ring = |c: f64| {
            let (sum, difference) = (c + self.inner, c - self.inner);
            let far_sqr = sum * sum + s * s;
            let m1 = (difference * difference + s * s) / far_sqr;
            2.0 / PI * complete_first(m1) / math::sqrt(far_sqr)
        };
        (ring(self.inner) - ring(self.outer)) / self.log_ratio
    }

    /// Coefficient of `k²` of that field, m.
    fn dynamic_field(&self, s: f64, e: f64) -> f64 {
        let r_sqr = self.inner * self.inner;
        let over =
            math::sqrt(s * s + self.outer * self.outer + r_sqr) - math::sqrt(s * s + 2.0 * r_sqr);
        over / (2.0 * self.log_ratio) - 2.0 * self.dipole_area() * smooth_dynamic(s, e)
    }
}

/// `erf(s/2E)/(4πs)`, 1/m: the potential of a point charge smoothed by the split.
fn smooth_potential(s: f64, e: f64) -> f64 {
    let x = 0.5 * s / e;
    let over = if x < 1e-4 {
        2.0 / math::sqrt(PI) * (1.0 - x * x / 3.0)
    } else {
        math::erf(x) / x
    };
    over / (8.0 * PI * e)
}

/// What goes with `k²` in the field of the smoothed dipole, 1/m.
fn smooth_dynamic(s: f64, e: f64) -> f64 {
    let x = 0.5 * s / e;
    smooth_potential(s, e) - math::exp(-x * x) / (e * 4.0 * PI * math::sqrt(4.0 * PI))
}

/// Second derivative of [`smooth_potential`], 1/m³.
fn smooth_slope(s: f64, e: f64) -> f64 {
    let x = 0.5 * s / e;
    let t = x * x;
    let bracket = if x < 0.3 {
        // Power series; the closed form loses digits here.
        let mut sum = 0.0;
        let mut power = -1.0;
        for n in 1..9 {
            let m = f64::from(n);
            sum += power * (m - 1.0 + 1.0 / (2.0 * m + 1.0));
            power *= -t / (m + 1.0);
        }
        4.0 / math::sqrt(PI) * sum
    } else {
        2.0 * math::erf(x) / (t * x) - 4.0 / math::sqrt(PI) * math::exp(-t) * (1.0 / t + 1.0)
    };
    bracket / (32.0 * PI * e * e * e)
}
