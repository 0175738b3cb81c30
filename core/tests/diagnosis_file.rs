//! The diagnosis, screws and sensitivities as JSON.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod support;

use serde_json::Value;
use support::orchard_gate;
use tinwave_core::complex::Complex;
use tinwave_core::design::Design;
use tinwave_core::diagnosis::{DiagnosisSettings, Measurement};
use tinwave_core::json::{diagnosis_json, report_json};
use tinwave_core::touchstone::{Ports, read_touchstone, write_one_port};
use tinwave_core::whole_can::WholeCan;

/// A sweep of a can, through a Touchstone file.
fn measured(design: &Design) -> Measurement {
    let can = WholeCan::new(design).expect("computed");
    let points: Vec<(f64, Complex)> = (0..51)
        .map(|i| 2.3e9 + 6e6 * f64::from(i))
        .map(|hz| (hz, can.match_at(hz).expect("covered").reflection))
        .collect();
    let file = write_one_port(&points, 50.0);
    let read = read_touchstone(&file, Some(Ports::One)).expect("own file");
    Measurement::Reflection(read.reflections(50.0))
}

#[test]
fn a_wire_too_long_is_told_in_json() {
    let drawn = orchard_gate();
    let mut built = drawn.clone();
    built.probe.length_um += 1200;
    // Both taken as absorbing: the same model on either side, quickly solved.
    let matched = |design: &Design| Design {
        mouth: tinwave_core::design::Mouth::Absorbing,
        ..design.clone()
    };
    let measurement = measured(&matched(&built));
    let text = diagnosis_json(&matched(&drawn), &measurement, DiagnosisSettings::default())
        .expect("a diagnosis");
    let out: Value = serde_json::from_str(&text).expect("JSON");
    assert_eq!(out["schema"], 1);
    let length = out["deviations"]
        .as_array()
        .expect("a list")
        .iter()
        .find(|one| one["dimension"] == "length")
        .expect("the length");
    let change = length["change"].as_f64().expect("a number");
    let bound = length["plus_minus_95_percent"].as_f64().expect("a number");
    assert!((change - 1.2).abs() <= bound, "{change} +- {bound}");
    assert!(out["port_length_mm"][0].as_f64().expect("phase").abs() < 3.0);
    assert!(out["remedies"][0]["do"].is_string(), "{text}");
    assert_ne!(out["conclusion"], "unexplained");
}

#[test]
fn the_report_has_screws_and_sensitivities() {
    let mut design = orchard_gate();
    design.mouth = tinwave_core::design::Mouth::Absorbing;
    design.probe.length_um = 26_500;
    let text = report_json(&design).expect("a report");
    let out: Value = serde_json::from_str(&text).expect("JSON");
    let screws = &out["screws"];
    let number = |value: &Value| value.as_f64().expect("a number");
    assert!(number(&screws["worst_vswr_in_band"]) < number(&screws["worst_vswr_without"]));
    let screw = &screws["screws"][0];
    let curve = screw["quarter_turns"].as_array().expect("a curve");
    assert_eq!(
        number(&curve[4][0]),
        0.7,
        "four quarter turns are one pitch"
    );
    assert!((number(&curve[0][1]) / number(&screws["worst_vswr_without"]) - 1.0).abs() < 1e-6);
    let sensitivity = out["sensitivity"].as_array().expect("a list");
    assert_eq!(sensitivity.len(), 7);
    let can_length = sensitivity
        .iter()
        .find(|one| one["dimension"] == "open_length")
        .expect("the can's length");
    // A guide that goes on for ever has no length.
    assert_eq!(number(&can_length["reflection_per_unit"]), 0.0);
    assert!(number(&sensitivity[0]["reflection_per_unit"]) > 0.01);
}
