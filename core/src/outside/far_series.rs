//! Far field of one azimuthal order as a sum of sines or cosines of multiples of
//! the polar angle.
//!
//! Continued past the axis, the components of an odd order are even in θ and those
//! of an even order odd; a body of size R about its middle needs little more than
//! kR terms.

use alloc::vec::Vec;
use core::f64::consts::PI;

use super::arc::Panel;
use super::mode_probe::Share;
use crate::complex::Complex;
use crate::math;
use crate::quadrature::GaussLegendre;

/// Field components `E_θ` (times cos nφ) and `E_φ` (times sin nφ) at polar angles;
/// phase about the point `centre_m` on the axis.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub(super) struct FarSeries {
    pub(super) order: usize,
    pub(super) theta: Vec<Complex>,
    pub(super) phi: Vec<Complex>,
}

/// Current of a panel at one frequency.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct PanelCurrent {
    /// Along the arc, times the distance from the axis, at start and end.
    pub(super) along: [Complex; 2],
    /// Round the axis.
    pub(super) round: Complex,
}

impl PanelCurrent {
    pub(super) fn add(&mut self, share: &Share, factor: Complex) {
        for (place, part) in self.along.iter_mut().zip(share.along) {
            *place += factor.scale(part);
        }
        self.round += factor.scale(share.round);
    }
}

/// Terms that a body of the half size `radius` (m, about its middle) needs.
pub(super) fn terms(k: f64, radius: f64) -> usize {
    let size = k * radius;
    math::ceil(size + 5.0 * math::cbrt(size) + 6.0) as usize
}

/// `J_n`, `J_n'` and `n J_n/x` of order 0, 1 or 2.
fn bessel(order: usize, x: f64) -> (f64, f64, f64) {
    let x = x.max(1e-6);
    let (j0, j1) = (math::j0(x), math::j1(x));
    match order {
        0 => (j0, -j1, 0.0),
        1 => (j1, j0 - j1 / x, j1 / x),
        _ => {
            let j2 = 2.0 * j1 / x - j0;
            (j2, j1 - 2.0 * j2 / x, 2.0 * j2 / x)
        }
    }
}

impl FarSeries {
    /// Of currents on panels, `-jk/(4π)` and `e^(-jkR)/R` included in the former
    /// and left out in the latter sense, η = 1.
    pub(super) fn new(
        order: usize,
        terms: usize,
        k: f64,
        centre: f64,
        currents: &[(&Panel, PanelCurrent)],
    ) -> Self {
        let rule: Vec<(f64, f64)> = GaussLegendre::new(2).on(0.0, 1.0).collect();
        let samples: Vec<(Complex, Complex)> = (0..terms)
            .map(|i| {
                let theta = PI * (i as f64 + 0.5) / terms as f64;
                sample(order, k, centre, theta, currents, &rule)
            })
            .collect();
        let mut series = Self {
            order,
            theta: Vec::with_capacity(terms),
            phi: Vec::with_capacity(terms),
        };
        for m in 0..terms {
            let (mut theta, mut phi) = (Complex::ZERO, Complex::ZERO);
            for (i, sample) in samples.iter().enumerate() {
                // The angle reduced by whole turns, so that it stays exact.
                let step = (series.number(m) * (2 * i + 1)) % (4 * terms);
                let (sine, cosine) = math::sin_cos(PI * step as f64 / (2 * terms) as f64);
                let factor = if order % 2 == 1 { cosine } else { sine };
                theta += sample.0.scale(factor);
                phi += sample.1.scale(factor);
            }
            let single = (order % 2 == 1 && m == 0) || (order.is_multiple_of(2) && m + 1 == terms);
            let norm = if single { 1.0 } else { 2.0 } / terms as f64;
            series.theta.push(theta.scale(norm));
            series.phi.push(phi.scale(norm));
        }
        series
    }

    /// Multiple of θ of the term m.
    const fn number(&self, m: usize) -> usize {
        if self.order % 2 == 1 { m } else { m + 1 }
    }

    /// `E_θ` and `E_φ` at an angle, rad.
    pub(super) fn at(&self, theta: f64) -> (Complex, Complex) {
        let (sine, cosine) = math::sin_cos(theta);
        let turn = Complex::new(cosine, sine);
        let mut power = if self.order % 2 == 1 {
            Complex::ONE
        } else {
            turn
        };
        let (mut e_theta, mut e_phi) = (Complex::ZERO, Complex::ZERO);
        for (t, p) in self.theta.iter().zip(&self.phi) {
            let factor = if self.order % 2 == 1 {
                power.re
            } else {
                power.im
            };
            e_theta += t.scale(factor);
            e_phi += p.scale(factor);
            power *= turn;
        }
        (e_theta, e_phi)
    }

    /// Radiated power, `½∫(|E_θ|² + |E_φ|²) dΩ`, η = 1.
    pub(super) fn power(&self) -> f64 {
        let turn = if self.order == 0 { 2.0 * PI } else { PI };
        let rule = GaussLegendre::new(self.theta.len() + 8);
        let integral = rule.integrate(0.0, PI, |theta| {
            let (t, p) = self.at(theta);
            (t.norm_sqr() + p.norm_sqr()) * math::sin(theta)
        });
        0.5 * turn * integral
    }

    pub(super) fn scale(&mut self, factor: Complex) {
        for term in self.theta.iter_mut().chain(&mut self.phi) {
            *term *= factor;
        }
    }
}

/// The field at one angle.
fn sample(
    order: usize,
    k: f64,
    centre: f64,
    theta: f64,
    currents: &[(&Panel, PanelCurrent)],
    rule: &[(f64, f64)],
) -> (Complex, Complex) {
    let (sine, cosine) = math::sin_cos(theta);
    let (mut n_theta, mut n_phi) = (Complex::ZERO, Complex::ZERO);
    let mut last = (f64::NAN, (0.0, 0.0, 0.0));
    for (panel, current) in currents {
        for &(s, w) in rule {
            let (rho, z) = panel.at(s);
            if rho != last.0 {
                last = (rho, bessel(order, k * rho * sine));
            }
            let (j, slope, over) = last.1;
            let [start, end] = current.along;
            let along = start.scale(1.0 - s) + end.scale(s);
            let round = current.round.scale(rho);
            let phase = Complex::from_polar(w * panel.length, k * (z - centre) * cosine);
            let lengthwise = Complex::new(cosine * panel.across * slope, -sine * panel.along * j);
            n_theta += phase * (along * lengthwise - round.scale(cosine * over));
            n_phi += phase * (round.scale(slope) - along.scale(panel.across * over));
        }
    }
    // 2π j^(n-1), and -jk/(4π) of the vector potential.
    let turn = match order {
        0 => -Complex::J,
        1 => Complex::ONE,
        _ => Complex::J,
    };
    let factor = turn * Complex::new(0.0, -0.5 * k);
    (n_theta * factor, n_phi * factor)
}
