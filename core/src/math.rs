//! Every transcendental function the crate uses, through `libm` alone.
//!
//! The standard library's versions come from the platform, so a native test and
//! the page would differ in the last bits; `libm` gives the same bits
//! everywhere. Nothing outside this file may call a `std` float function, and no
//! fused multiply-add is used.

macro_rules! forward {
    ($($name:ident ( $($arg:ident),+ ) : $doc:literal;)+) => {$(
        #[doc = $doc]
        #[must_use]
        pub fn $name($($arg: f64),+) -> f64 { libm::$name($($arg),+) }
    )+};
}

forward! {
    sqrt(x): "Square root.";
    cbrt(x): "Cube root.";
    sin(x): "Sine, argument in radians.";
    cos(x): "Cosine, argument in radians.";
    tan(x): "Tangent, argument in radians.";
    asin(x): "Arc sine, radians.";
    acos(x): "Arc cosine, radians.";
    atan(x): "Arc tangent, radians.";
    atan2(y, x): "Arc tangent of `y/x` in the right quadrant, radians.";
    exp(x): "Exponential.";
    expm1(x): "`exp(x) - 1` without cancellation.";
    log(x): "Natural logarithm.";
    log10(x): "Decimal logarithm.";
    pow(x, y): "`x` to the power `y`.";
    sinh(x): "Hyperbolic sine.";
    cosh(x): "Hyperbolic cosine.";
    tanh(x): "Hyperbolic tangent.";
    asinh(x): "Inverse hyperbolic sine.";
    erf(x): "Error function.";
    erfc(x): "Complementary error function.";
    hypot(x, y): "Length of the vector (x, y).";
    fabs(x): "Absolute value.";
    floor(x): "Largest integer not above `x`.";
    ceil(x): "Smallest integer not below `x`.";
    round(x): "Nearest integer, halves away from zero.";
    j0(x): "Bessel function J0.";
    j1(x): "Bessel function J1.";
}

/// Bessel function of the first kind and integer order, `J_n(x)`, any sign of `n` and `x`.
///
/// Absolute error below 4e-16 for |x| < 40 (checked against mpmath).
#[must_use]
pub fn jn(n: i32, x: f64) -> f64 {
    libm::jn(n, x)
}

/// Bessel function of the second kind and integer order, `Y_n(x)`, x > 0.
#[must_use]
pub fn yn(n: i32, x: f64) -> f64 {
    libm::yn(n, x)
}

/// Sine and cosine of the same argument (radians).
#[must_use]
pub fn sin_cos(x: f64) -> (f64, f64) {
    libm::sincos(x)
}
