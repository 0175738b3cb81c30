//! Bessel functions of complex argument against two independent libraries.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod common;

use common::{complex, number, parse, rows};
use tinwave_core::complex::Complex;
use tinwave_core::mouth::modified_bessel::ScaledModifiedBessel;
use tinwave_core::mouth::real_bessel::hankel_second;

/// Largest error relative to the size of the function round about (its zeros on
/// the imaginary axis would make a plain relative error meaningless).
fn error(got: Complex, expected: Complex, neighbour: Complex) -> f64 {
    (got - expected).abs() / expected.abs().max(neighbour.abs())
}

#[test]
fn match_a_table_of_thirty_digits() {
    let data = parse(include_str!("data/modified_bessel.json"));
    let mut worst = 0.0_f64;
    for row in rows(&data, "rows") {
        let z = complex(&row["z"]);
        let bessel = ScaledModifiedBessel::new(z);
        for m in 0..3_u8 {
            let at = |key: &str| complex(&row[key][usize::from(m)]);
            let (i, di, k, dk) = (at("i"), at("di"), at("k"), at("dk"));
            for (got, expected, neighbour) in [
                (bessel.i[usize::from(m)], i, di),
                (bessel.i_slope(m), di, i),
                (bessel.k[usize::from(m)], k, Complex::ZERO),
                (bessel.k_slope(m), dk, Complex::ZERO),
            ] {
                let off = error(got, expected, neighbour);
                worst = worst.max(off);
                assert!(off < 2e-14, "order {m} at {z:?}: {off:e}");
            }
        }
    }
    eprintln!("largest error {worst:e}");
}

#[test]
fn hankel_functions_match_a_table_of_thirty_digits() {
    let data = parse(include_str!("data/modified_bessel.json"));
    for row in rows(&data, "hankel") {
        let (m, x) = (number(row, "m") as u8, number(row, "x"));
        let (h, slope) = hankel_second(m, x);
        for (got, key) in [(h, "h"), (slope, "dh")] {
            let expected = complex(&row[key]);
            let off = (got - expected).abs() / expected.abs();
            assert!(off < 2e-14, "{key} {m} {x}: {off:e}");
        }
    }
}

#[test]
fn match_the_amos_algorithm() {
    use num_complex::Complex as Other;
    let mut worst = 0.0_f64;
    for size in 1..400 {
        for tenth in 0..=10 {
            let z = Complex::from_polar(
                0.1 * f64::from(size),
                0.05 * std::f64::consts::PI * f64::from(tenth),
            );
            let other = Other::new(z.re.max(0.0), z.im);
            let ours = ScaledModifiedBessel::new(Complex::new(other.re, other.im));
            let (mut i, mut k) = ([Other::new(0.0, 0.0); 4], [Other::new(0.0, 0.0); 4]);
            // Amos scales I by the real part of the exponent alone.
            let turn = Other::from_polar(1.0, -other.im);
            for m in 0..4 {
                i[m] = complex_bessel::besseli_scaled(m as f64, other).unwrap() * turn;
                k[m] = complex_bessel::besselk_scaled(m as f64, other).unwrap();
            }
            for m in 0..3 {
                let pairs = [(ours.i[m], i[m], i[m + 1]), (ours.k[m], k[m], k[m])];
                for (got, expected, neighbour) in pairs {
                    let off = (Other::new(got.re, got.im) - expected).norm()
                        / expected.norm().max(neighbour.norm());
                    worst = worst.max(off);
                    assert!(off < 3e-14, "order {m} at {z:?}: {off:e}");
                }
            }
        }
    }
    eprintln!("largest difference {worst:e}");
}
