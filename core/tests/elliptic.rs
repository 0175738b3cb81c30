//! Complete elliptic integrals against published values.

use tinwave_core::elliptic::{complete_first, complete_second};

/// M. Abramowitz and I. A. Stegun, *Handbook of Mathematical Functions*, 1964,
/// table 17.1: m, K, E.
const TABLE: [(f64, f64, f64); 3] = [
    (0.1, 1.612_441_348_720_219, 1.530_757_636_897_763),
    (0.5, 1.854_074_677_301_372, 1.350_643_881_047_676),
    (0.99, 3.695_637_362_989_875, 1.015_993_545_025_224),
];

#[test]
fn agree_with_the_handbook() {
    for (m, k, e) in TABLE {
        assert!((complete_first(1.0 - m) / k - 1.0).abs() < 1e-14, "K({m})");
        assert!((complete_second(1.0 - m) / e - 1.0).abs() < 1e-14, "E({m})");
    }
}

#[test]
fn behave_at_the_end() {
    // K -> ln(4/sqrt(m1)), E -> 1 (A&S 17.3.26).
    let m1 = 1e-12_f64;
    assert!((complete_first(m1) - (4.0 / m1.sqrt()).ln()).abs() < 1e-11);
    assert!((complete_second(0.0) - 1.0).abs() < 1e-13);
}
