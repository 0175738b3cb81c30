//! Modified Bessel functions I and K of complex argument, orders 0 to 3.
//!
//! The open pipe needs them in the first quadrant, the imaginary axis included,
//! where they run from ordinary Bessel functions to exponentials.

use core::f64::consts::PI;

use crate::complex::Complex;
use crate::math;

/// Orders computed: 0 to 3.
const ORDERS: usize = 4;
/// From this magnitude on the asymptotic series is good to 1e-16.
const ASYMPTOTIC_FROM: f64 = 25.0;
/// Below this magnitude K0 comes from its power series.
const SERIES_BELOW: f64 = 2.0;
/// Euler's constant.
const EULER_GAMMA: f64 = 0.577_215_664_901_532_9;

/// `I_m(z) e^(-z)` and `K_m(z) e^(z)` for m = 0 to 3; the factors keep both in
/// range for large arguments.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScaledModifiedBessel {
    /// The argument z.
    pub argument: Complex,
    /// `I_m(z) e^(-z)`, index m.
    pub i: [Complex; ORDERS],
    /// `K_m(z) e^(z)`, index m.
    pub k: [Complex; ORDERS],
}

impl ScaledModifiedBessel {
    /// All orders at z with `0 <= arg z <= π/2` and `|z| >= 1e-3`; relative error
    /// below 1e-13 (of the larger of `I_m`, `I_(m+1)` near a zero of `I_m`).
    ///
    /// Sources: M. Abramowitz and I. A. Stegun, *Handbook of Mathematical
    /// Functions*, 1964: 9.6.26 and 9.6.37 (recurrence and normalisation of I),
    /// 9.6.13 (series of K0), 9.6.15 (Wronskian), 9.7.1 and 9.7.2 (large
    /// argument); N. M. Temme, *J. Comput. Phys.* 19 (1975) 324-337 (continued
    /// fraction of K1/K0).
    #[must_use]
    pub fn new(z: Complex) -> Self {
        if z.abs() >= ASYMPTOTIC_FROM {
            return Self::large(z);
        }
        let i = scaled_i(z);
        // With K1 = ratio K0 the Wronskian I0 K1 + I1 K0 = 1/z gives K0.
        let (k0, k1) = if z.abs() < SERIES_BELOW {
            // The series gives K0; the scale of K is e^z.
            let scale = z.exp();
            let k0 = k0_series(z, i[0] * scale) * scale;
            (k0, (z.inv() - i[1] * k0) / i[0])
        } else {
            let ratio = k1_over_k0(z);
            let k0 = (z * (i[0] * ratio + i[1])).inv();
            (k0, ratio * k0)
        };
        let k2 = k0 + k1 * z.inv().scale(2.0);
        let k3 = k1 + k2 * z.inv().scale(4.0);
        Self {
            argument: z,
            i,
            k: [k0, k1, k2, k3],
        }
    }

    /// Hankel's expansions, for `|z| >= 25`.
    fn large(z: Complex) -> Self {
        let over_z = z.inv();
        let root = over_z.scale(0.5 / PI).sqrt();
        let mut i = [Complex::ZERO; ORDERS];
        let mut k = [Complex::ZERO; ORDERS];
        for (m, (im, km)) in i.iter_mut().zip(k.iter_mut()).enumerate() {
            let order = m as f64;
            let four = 4.0 * order * order;
            let (mut term, mut even, mut odd) = (Complex::ONE, Complex::ONE, Complex::ZERO);
            for n in 1..26 {
                let step = 2.0 * f64::from(n) - 1.0;
                term *= over_z.scale((four - step * step) / (8.0 * f64::from(n)));
                if n % 2 == 0 {
                    even += term;
                } else {
                    odd += term;
                }
                if term.norm_sqr() < 1e-36 {
                    break;
                }
            }
            // The second exponential of I matters only near the imaginary axis.
            let turn = Complex::from_polar(1.0, PI * (order + 0.5));
            *im = root * (even - odd + (z.scale(-2.0)).exp() * turn * (even + odd));
            *km = root.scale(PI) * (even + odd);
        }
        Self { argument: z, i, k }
    }

    /// `I_m'(z) e^(-z)`, m = 0 to 2; zero for other orders.
    #[must_use]
    pub fn i_slope(&self, m: u8) -> Complex {
        let (here, next) = pair(&self.i, m);
        next + here * self.argument.inv().scale(f64::from(m))
    }

    /// `K_m'(z) e^(z)`, m = 0 to 2; zero for other orders.
    #[must_use]
    pub fn k_slope(&self, m: u8) -> Complex {
        let (here, next) = pair(&self.k, m);
        here * self.argument.inv().scale(f64::from(m)) - next
    }

    /// The product `I_m(z) K_m(z)`, m = 0 to 2; zero for other orders.
    #[must_use]
    pub fn product(&self, m: u8) -> Complex {
        pair(&self.i, m).0 * pair(&self.k, m).0
    }
}

/// Entries m and m + 1; zeros past the end.
fn pair(values: &[Complex; ORDERS], m: u8) -> (Complex, Complex) {
    match values.get(usize::from(m)..) {
        Some([here, next, ..]) => (*here, *next),
        _ => (Complex::ZERO, Complex::ZERO),
    }
}

/// `I_m(z) e^(-z)` by downward recurrence, normalised by `e^z = I0 + 2 Σ I_k`.
fn scaled_i(z: Complex) -> [Complex; ORDERS] {
    let size = z.abs();
    let start = (16.0 + size + 12.0 * math::cbrt(size)) as usize;
    let two_over_z = z.inv().scale(2.0);
    let mut out = [Complex::ZERO; ORDERS];
    let (mut above, mut here) = (Complex::ZERO, Complex::real(1e-30));
    let mut sum = Complex::ZERO;
    for order in (0..=start).rev() {
        // `here` is I_order up to a factor.
        if let Some(slot) = out.get_mut(order) {
            *slot = here;
        }
        sum += if order == 0 { here } else { here.scale(2.0) };
        (above, here) = (here, above + here * two_over_z.scale(order as f64));
        if math::fabs(here.re) + math::fabs(here.im) > 1e50 {
            let shrink = 1e-80;
            here = here.scale(shrink);
            above = above.scale(shrink);
            sum = sum.scale(shrink);
            for slot in &mut out {
                *slot = slot.scale(shrink);
            }
        }
    }
    let norm = sum.inv();
    out.map(|value| value * norm)
}

/// `K0(z)` for small `|z|`, given `I0(z)`.
fn k0_series(z: Complex, i0: Complex) -> Complex {
    let quarter = (z * z).scale(0.25);
    let (mut term, mut harmonic) = (Complex::ONE, 0.0);
    let mut sum = -(z.scale(0.5).ln() + EULER_GAMMA) * i0;
    for n in 1..30 {
        let nf = f64::from(n);
        term *= quarter.scale(1.0 / (nf * nf));
        harmonic += 1.0 / nf;
        sum += term.scale(harmonic);
        if term.norm_sqr() < 1e-40 {
            break;
        }
    }
    sum
}

/// `K1(z)/K0(z)` by its continued fraction, `|z| >= 2`.
fn k1_over_k0(z: Complex) -> Complex {
    // Lentz's method on f = 1/(b1 + a2/(b2 + ...)), a_n = -(n - 1/2)², b_n = 2(n + z).
    let b = |n: f64| (z + n).scale(2.0);
    let mut d = b(1.0).inv();
    let mut c_inv = Complex::ZERO;
    let mut f = d;
    for n in 2..2000 {
        let nf = f64::from(n);
        let a = -(nf - 0.5) * (nf - 0.5);
        d = (b(nf) + d.scale(a)).inv();
        let c = b(nf) + c_inv.scale(a);
        c_inv = c.inv();
        let change = c * d;
        f *= change;
        if (change - 1.0).norm_sqr() < 1e-33 {
            break;
        }
    }
    (z + 0.5 - f.scale(0.25)) / z
}
