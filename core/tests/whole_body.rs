//! Whole cans with their outside against full-wave finite-element results: nothing
//! is fitted, the probe's solution gives every mode's amplitude.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test may stop, and say what it found"
)]

mod common;
mod support;

use std::f64::consts::{FRAC_PI_2, PI};
use std::sync::Arc;

use common::{number, parse};
use serde_json::Value;
use support::{assert_near, bare, numbers, tolerance, um};
use tinwave_core::complex::Complex;
use tinwave_core::design::{Design, Mouth};
use tinwave_core::outside::{Outline, OutsideSpectrum};
use tinwave_core::radiation::CanBeam;
use tinwave_core::reflection::reflection_coefficient;
use tinwave_core::si::SiDesign;
use tinwave_core::whole_can::{CanBody, WholeCan, probe_geometry};

/// One case: its data, the solved outside and the can.
struct Case {
    data: Value,
    outside: Arc<OutsideSpectrum>,
    can: WholeCan,
}

fn mouth_of(case: &Value) -> Mouth {
    let mouth = &case["mouth"];
    let size = |key: &str| um(number(mouth, key));
    match mouth["kind"].as_str() {
        Some("funnel") => Mouth::Funnel {
            mouth_diameter_um: size("mouth_diameter_mm"),
            half_angle_millideg: um(number(mouth, "half_angle_deg")),
        },
        Some("flange") => Mouth::Flange {
            outside_diameter_um: size("outside_diameter_mm"),
        },
        _ => Mouth::Open,
    }
}

fn design_of(case: &Value) -> Design {
    let mm = |key: &str| number(case, key);
    let sizes = (
        mm("inside_diameter_mm"),
        mm("wire_diameter_mm"),
        mm("probe_length_mm"),
        mm("backshort_distance_mm"),
    );
    bare(sizes, mouth_of(case), mm("open_length_mm"))
}

/// The cases with a mouth of their own.
fn cases() -> Vec<Case> {
    let data = parse(include_str!("data/probe_finite_element.json"));
    let cases: Vec<Case> = data["cases"]
        .as_array()
        .expect("cases")
        .iter()
        .filter(|case| case["mouth"]["kind"] != "absorbing")
        .map(|case| {
            let design = design_of(case);
            let si = SiDesign::new(&design);
            let outline = Outline::new(&design, &si).expect("a mouth");
            let ghz = numbers(&case["f_ghz"]);
            let low = ghz.iter().copied().fold(f64::INFINITY, f64::min);
            let high = ghz.iter().copied().fold(0.0, f64::max);
            let outside = OutsideSpectrum::new(&outline, low * 1e9, high * 1e9);
            let outside = Arc::new(outside.expect("a body that can be"));
            let body = CanBody::with_outside(&design, &si, Arc::clone(&outside));
            let can = WholeCan::from_parts(body, &probe_geometry(&si), 50.0);
            Case {
                data: case.clone(),
                outside,
                can: can.expect("a probe that can be"),
            }
        })
        .collect();
    assert!(cases.len() >= 6, "cans, funnel and flange are there");
    cases
}

#[test]
fn reflections_of_finite_elements() {
    let most = tolerance(
        "whole_can::CanBody::with_outside",
        "whole_body::reflections_of_finite_elements",
    );
    for case in cases() {
        let resistances = numbers(&case.data["z_re_ohm"]);
        let reactances = numbers(&case.data["z_im_ohm"]);
        let mut worst: f64 = 0.0;
        for ((ghz, re), im) in numbers(&case.data["f_ghz"])
            .iter()
            .zip(resistances)
            .zip(reactances)
        {
            let wanted = reflection_coefficient(Complex::new(re, im), 50.0);
            let got = case.can.match_at(ghz * 1e9).expect("in range").reflection;
            worst = worst.max((got - wanted).abs());
        }
        println!("{}: |ΔΓ| {worst:.4}", case.data["id"]);
        assert!(worst <= most, "{}: |ΔΓ| {worst}", case.data["id"]);
    }
}

/// Every pattern with the beam at its frequency.
fn beams() -> Vec<(Value, CanBeam)> {
    let mut beams = Vec::new();
    for case in cases() {
        for pattern in case.data["patterns"].as_array().expect("patterns") {
            let hz = number(pattern, "f_ghz") * 1e9;
            let beam = CanBeam::new(&case.outside, Some(&case.can), hz).expect("a beam");
            beams.push((pattern.clone(), beam));
        }
    }
    assert!(beams.len() > 20, "{} patterns", beams.len());
    beams
}

#[test]
fn patterns_of_finite_elements() {
    let most = tolerance(
        "radiation::SumPattern::new",
        "whole_body::patterns_of_finite_elements",
    );
    let angles: Vec<f64> = (-18..=18).map(|n| f64::from(n) * PI / 18.0).collect();
    let mut worst: f64 = 0.0;
    for (data, beam) in beams() {
        let planes = [
            (0.0, &angles[..], "e_plane_dbi_from_-180_step_10"),
            (FRAC_PI_2, &angles[18..], "h_plane_dbi_from_0_step_10"),
        ];
        for (azimuth, angles, key) in planes {
            let wanted = numbers(&data[key]);
            assert_eq!(wanted.len(), angles.len());
            let peak = wanted.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            let got = beam.pattern.cut_dbi(azimuth, angles);
            for (got, wanted) in got.iter().zip(&wanted).filter(|(_, w)| **w > peak - 10.0) {
                worst = worst.max((got - wanted).abs());
                assert_near(key, *got, *wanted, most);
            }
        }
    }
    println!("top 10 dB within {worst:.3} dB");
}

#[test]
fn figures_of_finite_elements() {
    let test = "whole_body::figures_of_finite_elements";
    let gain = tolerance("radiation::BeamFigures::new", test);
    let back = tolerance(
        "radiation::BeamFigures::new (front to back, finite elements)",
        test,
    );
    let squint = tolerance("radiation::Cut::peak_angle_rad", test);
    let width = tolerance("radiation::CanBeam::new", test);
    let power = tolerance("radiation::SumPattern::radiated_share", test);
    for (data, beam) in beams() {
        let figures = &beam.figures;
        let near = |key: &str, got: f64, most: f64| assert_near(key, got, number(&data, key), most);
        near("directivity_axis_dbi", figures.directivity_dbi, gain);
        near("directivity_peak_e_dbi", figures.e_peak_dbi, gain);
        near(
            "realised_gain_axis_dbi",
            beam.realised_gain_dbi.expect("a probe"),
            gain,
        );
        near("peak_angle_e_deg", figures.e_peak_angle_deg, squint);
        near(
            "beamwidth_e_deg",
            figures.beamwidth_e_deg.expect("a width"),
            width,
        );
        near(
            "beamwidth_h_deg",
            figures.beamwidth_h_deg.expect("a width"),
            width,
        );
        near("front_to_back_db", figures.front_to_back_db, back);
        assert_near("radiated", figures.radiated_share, 1.0, power);
        assert!(
            figures.peak_dbi >= figures.e_peak_dbi - 1e-6,
            "peak of all directions"
        );
    }
}
