//! Complex numbers: only what the field computation needs, with every
//! transcendental part through [`crate::math`].

use core::ops::{Add, AddAssign, Div, Mul, MulAssign, Neg, Sub, SubAssign};

use crate::math;

/// A complex number `re + j im`. Time convention everywhere: `e^(+jωt)`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Complex {
    /// Real part.
    pub re: f64,
    /// Imaginary part.
    pub im: f64,
}

impl Complex {
    /// Zero.
    pub const ZERO: Self = Self::new(0.0, 0.0);
    /// One.
    pub const ONE: Self = Self::new(1.0, 0.0);
    /// The imaginary unit.
    pub const J: Self = Self::new(0.0, 1.0);

    /// `re + j im`.
    #[must_use]
    pub const fn new(re: f64, im: f64) -> Self {
        Self { re, im }
    }

    /// A real number.
    #[must_use]
    pub const fn real(re: f64) -> Self {
        Self::new(re, 0.0)
    }

    /// `magnitude · e^(j angle)`, angle in radians.
    #[must_use]
    pub fn from_polar(magnitude: f64, angle_rad: f64) -> Self {
        let (s, c) = math::sin_cos(angle_rad);
        Self::new(magnitude * c, magnitude * s)
    }

    /// Complex conjugate.
    #[must_use]
    pub const fn conj(self) -> Self {
        Self::new(self.re, -self.im)
    }

    /// Squared magnitude.
    #[must_use]
    pub fn norm_sqr(self) -> f64 {
        self.re * self.re + self.im * self.im
    }

    /// Magnitude, without overflow in between.
    #[must_use]
    pub fn abs(self) -> f64 {
        math::hypot(self.re, self.im)
    }

    /// Angle in radians, in (-π, π].
    #[must_use]
    pub fn arg(self) -> f64 {
        math::atan2(self.im, self.re)
    }

    /// Principal square root (real part not negative).
    #[must_use]
    pub fn sqrt(self) -> Self {
        if self.re == 0.0 && self.im == 0.0 {
            return Self::ZERO;
        }
        let t = math::sqrt(0.5 * (self.abs() + math::fabs(self.re)));
        if self.re >= 0.0 {
            Self::new(t, 0.5 * self.im / t)
        } else {
            let im = if self.im < 0.0 { -t } else { t };
            Self::new(0.5 * math::fabs(self.im) / t, im)
        }
    }

    /// Exponential.
    #[must_use]
    pub fn exp(self) -> Self {
        Self::from_polar(math::exp(self.re), self.im)
    }

    /// Principal natural logarithm.
    #[must_use]
    pub fn ln(self) -> Self {
        Self::new(math::log(self.abs()), self.arg())
    }

    /// Reciprocal.
    #[must_use]
    pub fn inv(self) -> Self {
        let d = self.norm_sqr();
        Self::new(self.re / d, -self.im / d)
    }

    /// Product with a real number.
    #[must_use]
    pub fn scale(self, factor: f64) -> Self {
        Self::new(self.re * factor, self.im * factor)
    }

    /// Whether both parts are finite.
    #[must_use]
    pub fn is_finite(self) -> bool {
        self.re.is_finite() && self.im.is_finite()
    }
}

impl From<f64> for Complex {
    fn from(re: f64) -> Self {
        Self::real(re)
    }
}

impl Neg for Complex {
    type Output = Self;
    fn neg(self) -> Self {
        Self::new(-self.re, -self.im)
    }
}

impl Add for Complex {
    type Output = Self;
    fn add(self, o: Self) -> Self {
        Self::new(self.re + o.re, self.im + o.im)
    }
}

impl Sub for Complex {
    type Output = Self;
    fn sub(self, o: Self) -> Self {
        Self::new(self.re - o.re, self.im - o.im)
    }
}

impl Mul for Complex {
    type Output = Self;
    fn mul(self, o: Self) -> Self {
        Self::new(
            self.re * o.re - self.im * o.im,
            self.re * o.im + self.im * o.re,
        )
    }
}

impl Div for Complex {
    type Output = Self;
    #[allow(
        clippy::suspicious_arithmetic_impl,
        reason = "division is multiplication by the reciprocal"
    )]
    fn div(self, o: Self) -> Self {
        self * o.inv()
    }
}

impl Add<f64> for Complex {
    type Output = Self;
    fn add(self, o: f64) -> Self {
        Self::new(self.re + o, self.im)
    }
}

impl Sub<f64> for Complex {
    type Output = Self;
    fn sub(self, o: f64) -> Self {
        Self::new(self.re - o, self.im)
    }
}

impl Mul<f64> for Complex {
    type Output = Self;
    fn mul(self, o: f64) -> Self {
        self.scale(o)
    }
}

impl Mul<Complex> for f64 {
    type Output = Complex;
    fn mul(self, o: Complex) -> Complex {
        o.scale(self)
    }
}

impl Div<f64> for Complex {
    type Output = Self;
    fn div(self, o: f64) -> Self {
        Self::new(self.re / o, self.im / o)
    }
}

impl AddAssign for Complex {
    fn add_assign(&mut self, o: Self) {
        *self = *self + o;
    }
}

impl SubAssign for Complex {
    fn sub_assign(&mut self, o: Self) {
        *self = *self - o;
    }
}

impl MulAssign for Complex {
    fn mul_assign(&mut self, o: Self) {
        *self = *self * o;
    }
}
