//! Diameters that carry one mode.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use tinwave_core::one_mode_diameter::{one_mode_diameters_m, one_mode_margins};
use tinwave_core::waveguide_mode::{Mode, modes_up_to};

/// Cutoff frequency times diameter, GHz mm: 175.698466 (TE11), 229.485056 (TM01),
/// from the zeros of Abramowitz and Stegun 1964, table 9.5, and the exact c.
#[test]
fn ends_sit_on_the_two_cutoffs() {
    let (smallest, largest) = one_mode_diameters_m(2.4e9, 2.4835e9).unwrap();
    assert!((smallest * 1e3 - 175.698466 / 2.4).abs() < 1e-6);
    assert!((largest * 1e3 - 229.485056 / 2.4835).abs() < 1e-6);
    for (diameter, low, high) in [
        (smallest * 1.0001, 1, 1),
        (largest * 0.9999, 1, 1),
        (largest * 1.0001, 1, 2),
    ] {
        assert_eq!(modes_up_to(diameter / 2.0, 2.4e9).len(), low);
        assert_eq!(modes_up_to(diameter / 2.0, 2.4835e9).len(), high);
    }
    assert_eq!(modes_up_to(smallest * 0.9999 / 2.0, 2.4e9), []);
}

#[test]
fn margins_vanish_at_the_ends() {
    let (low, high) = (2.4e9, 2.4835e9);
    let (smallest, largest) = one_mode_diameters_m(low, high).unwrap();
    assert!(one_mode_margins(smallest, low, high).lower.abs() < 1e-12);
    assert!(one_mode_margins(largest, low, high).upper.abs() < 1e-12);
    let margins = one_mode_margins(0.085, low, high);
    let te11 = Mode::TE11.cutoff_frequency_hz(0.0425);
    let tm01 = Mode::TM01.cutoff_frequency_hz(0.0425);
    assert!((margins.lower - (low / te11 - 1.0)).abs() < 1e-12);
    assert!((margins.upper - (tm01 / high - 1.0)).abs() < 1e-12);
    assert!(one_mode_margins(0.1, low, high).upper < 0.0);
    assert!(one_mode_margins(0.07, low, high).lower < 0.0);
}

/// The two cutoffs are a factor 1.30613 apart (zeros as above).
#[test]
fn a_band_wider_than_the_gap_has_no_diameter() {
    assert!(one_mode_diameters_m(1e9, 1.306e9).is_some());
    assert_eq!(one_mode_diameters_m(1e9, 1.3062e9), None);
    for (low, high) in [
        (0.0, 1.0),
        (-1.0, 1.0),
        (2e9, 1e9),
        (f64::NAN, 1e9),
        (1e9, f64::INFINITY),
    ] {
        assert_eq!(one_mode_diameters_m(low, high), None);
    }
}
