//! Whole open cans against full-wave finite-element results.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test may stop, and say what it found"
)]

mod support;

use serde_json::Value;
use support::{bare, numbers, tolerance};
use tinwave_core::complex::Complex;
use tinwave_core::design::Mouth;
use tinwave_core::reflection::reflection_coefficient;
use tinwave_core::waveguide_mode::Mode;
use tinwave_core::whole_can::WholeCan;

/// Half width, Hz, over which a point near a narrow TM01 feature is compared:
/// there 0.1 % of frequency moves the reflection more than the tolerance.
const FEATURE_HZ: f64 = 3e6;

fn cases() -> Vec<Value> {
    let data: Value = serde_json::from_str(include_str!("data/probe_finite_element.json"))
        .expect("the data are sound");
    data["cases"]
        .as_array()
        .expect("cases")
        .iter()
        .filter(|case| case["mouth"]["kind"] == "open")
        .cloned()
        .collect()
}

fn can_of(case: &Value) -> WholeCan {
    let mm = |key: &str| case[key].as_f64().expect("a length");
    let design = bare(
        (
            mm("inside_diameter_mm"),
            mm("wire_diameter_mm"),
            mm("probe_length_mm"),
            mm("backshort_distance_mm"),
        ),
        Mouth::Open,
        mm("open_length_mm"),
    );
    WholeCan::new(&design).expect("a can that can be computed")
}

/// Largest |ΔΓ| over a case's frequencies, below and above TM01's cutoff.
fn worst_differences(case: &Value) -> (f64, f64) {
    let can = can_of(case);
    let radius_m = case["inside_diameter_mm"].as_f64().expect("a length") / 2e3;
    let tm01_hz = Mode::TM01.cutoff_frequency_hz(radius_m);
    let (mut one_mode, mut two_modes): (f64, f64) = (0.0, 0.0);
    let resistances = numbers(&case["z_re_ohm"]);
    let reactances = numbers(&case["z_im_ohm"]);
    for ((ghz, re), im) in numbers(&case["f_ghz"])
        .iter()
        .zip(resistances)
        .zip(reactances)
    {
        let wanted = reflection_coefficient(Complex::new(re, im), 50.0);
        let hz = ghz * 1e9;
        let difference = |hz: f64| {
            let got = can.match_at(hz).expect("in range").reflection;
            (got - wanted).abs()
        };
        if hz < tm01_hz {
            one_mode = one_mode.max(difference(hz));
        } else {
            let nearest = (-10..=10)
                .map(|step| difference(hz + f64::from(step) / 10.0 * FEATURE_HZ))
                .fold(f64::INFINITY, f64::min);
            two_modes = two_modes.max(nearest);
        }
    }
    (one_mode, two_modes)
}

#[test]
fn finite_elements() {
    let quantity = "whole_can::WholeCan::match_at";
    let one = tolerance(quantity, "open_can::finite_elements");
    let two = tolerance(
        "whole_can::WholeCan::match_at (two modes)",
        "open_can::finite_elements",
    );
    let cases = cases();
    assert!(cases.len() >= 4, "the open cans are there");
    for case in cases {
        let (one_mode, two_modes) = worst_differences(&case);
        println!("{}: {one_mode:.4} one mode, {two_modes:.4} two", case["id"]);
        assert!(
            one_mode <= one,
            "{}: |ΔΓ| {one_mode} with one mode",
            case["id"]
        );
        assert!(
            two_modes <= two,
            "{}: |ΔΓ| {two_modes} with two",
            case["id"]
        );
    }
}
