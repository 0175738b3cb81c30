//! Design files: what is read, what is refused and how it is said.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test may stop, and say what it found"
)]

mod support;

use proptest::prelude::*;
use support::orchard_gate;
use tinwave_core::design::{Band, Can, Design, Mouth, Probe, Screw, Sleeve, Sweep};
use tinwave_core::json::{JsonError, design_from_json, design_to_json, report_json};
use tinwave_core::metal::Metal;

fn refused(text: &str) -> String {
    design_from_json(text)
        .expect_err("must be refused")
        .to_string()
}

fn edited(from: &str, to: &str) -> String {
    let text = include_str!("data/orchard_gate.json");
    assert!(text.contains(from), "the example has {from}");
    text.replacen(from, to, 1)
}

#[test]
fn refusals_name_the_field_and_the_range() {
    for (from, to, words) in [
        ("87.0", "9000.0", ["can.inside_diameter_mm", "10 to 500"]),
        ("87.0", "\"wide\"", ["can.inside_diameter_mm", "a number"]),
        ("87.0", "null", ["can.inside_diameter_mm", "missing"]),
        ("87.0", "-87", ["can.inside_diameter_mm", "10 to 500"]),
        ("87.0", "1e308", ["can.inside_diameter_mm", "10 to 500"]),
        ("\"tinplate\"", "\"gold leaf\"", ["can.metal", "tinplate"]),
        ("2483.5", "2400.0", ["band.high_mhz", "2401.001"]),
        (
            "\"length_mm\": 28.4",
            "\"length\": 28.4",
            ["probe.length_mm", "missing"],
        ),
        ("\"schema\": 1", "\"schema\": 7", ["schema", "1"]),
        (
            "\"probe\": {",
            "\"probe\": [], \"p\": {",
            ["probe", "an object"],
        ),
    ] {
        let line = refused(&edited(from, to));
        for word in words {
            assert!(line.contains(word), "{from} -> {to}: {line}");
        }
        assert!(!line.contains('\n'), "one line: {line}");
    }
}

#[test]
fn what_is_not_json_says_where() {
    assert_eq!(
        design_from_json("{\n  \"schema\": 1,,\n}"),
        Err(JsonError::Syntax {
            line: 2,
            column: 15
        })
    );
    assert!(refused("").contains("not valid JSON"));
    assert!(refused("[]").contains("an object"));
}

#[test]
fn unknown_keys_pass_and_defaults_hold() {
    let text = edited("\"schema\": 1", "\"schema\": 1, \"colour\": \"green\"");
    let design = design_from_json(&text).expect("unknown keys are passed over");
    assert_eq!(design, orchard_gate());
    let least = r#"{"schema":1,"band":{"low_mhz":2401,"high_mhz":2483.5},
        "can":{"inside_diameter_mm":87,"open_length_mm":190},
        "probe":{"wire_diameter_mm":1,"length_mm":28,"backshort_distance_mm":45}}"#;
    let design = design_from_json(least).expect("the least that is needed");
    assert_eq!(design.can.wall_um, 250);
    assert_eq!(design.probe.reference_milliohm, 50_000);
    assert_eq!(design.mouth, Mouth::Open);
    assert_eq!(design.probe.hole_diameter_um, None);
    let sweep = design.effective_sweep();
    assert_eq!(
        (sweep.low_khz, sweep.high_khz, sweep.points),
        (2_318_500, 2_566_000, 101)
    );
}

#[test]
fn the_report_has_every_key_of_its_schema() {
    let text = report_json(&orchard_gate()).expect("in range");
    let report: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    for key in [
        "schema",
        "modes",
        "guide",
        "verdict",
        "sweep",
        "match",
        "best_cut",
        "one_mode_diameters_mm",
        "beam",
    ] {
        assert!(!report[key].is_null(), "{key}");
    }
    assert!(report["best_cut"]["length_only"]["length_mm"].is_number());
    assert!(report["best_cut"]["length_and_distance"]["backshort_distance_mm"].is_number());
    assert_eq!(report["sweep"].as_array().map(Vec::len), Some(101));
    let e_plane = report["beam"]["e_plane_dbi"].as_array().expect("a pattern");
    assert_eq!(
        e_plane.first().map(|point| point[0].clone()),
        Some((-180.0).into())
    );
    let h_plane = report["beam"]["h_plane_dbi"].as_array().expect("a pattern");
    assert_eq!(
        h_plane.first().map(|point| point[0].clone()),
        Some(0.0.into())
    );
}

prop_compose! {
    fn any_can()(
        inside_diameter_um in 10_000_u32..=500_000,
        open_length_um in 5_000_u32..=5_000_000,
        wall_um in 0_u32..=20_000,
        base_recess_um in 0_u32..=200_000,
        metal in prop::sample::select(Metal::ALL.to_vec()),
    ) -> Can {
        Can { inside_diameter_um, open_length_um, wall_um, base_recess_um, metal }
    }
}

prop_compose! {
    fn any_probe()(
        wire_diameter_um in 100_u32..=12_000,
        length_um in 1_000_u32..=500_000,
        backshort_distance_um in 500_u32..=5_000_000,
        hole_diameter_um in prop::option::of(100_u32..=60_000),
        reference_milliohm in 5_000_u32..=500_000,
        shunt_ff in 0_u32..=100_000,
        sleeve in prop::option::of((100_u32..=40_000, 1_000_u32..=20_000)),
    ) -> Probe {
        Probe {
            wire_diameter_um, length_um, backshort_distance_um, hole_diameter_um,
            reference_milliohm, shunt_ff,
            sleeve: sleeve.map(|(outside_diameter_um, permittivity_milli)| Sleeve {
                outside_diameter_um, permittivity_milli,
            }),
        }
    }
}

fn any_mouth() -> impl Strategy<Value = Mouth> {
    let size = 10_000_u32..=5_000_000;
    prop_oneof![
        Just(Mouth::Open),
        Just(Mouth::Absorbing),
        (size.clone(), 1_000_u32..=89_000).prop_map(|(mouth_diameter_um, half_angle_millideg)| {
            Mouth::Funnel {
                mouth_diameter_um,
                half_angle_millideg,
            }
        }),
        size.clone().prop_map(|outside_diameter_um| Mouth::Flange {
            outside_diameter_um
        }),
        (size, 500_u32..=1_000_000).prop_map(|(outside_diameter_um, depth_um)| {
            Mouth::Choke {
                outside_diameter_um,
                depth_um,
            }
        }),
    ]
}

prop_compose! {
    fn any_design()(
        name in "\\PC{0,40}",
        low_khz in 300_000_u32..14_999_999,
        width in 1_u32..2_000_000,
        can in any_can(),
        probe in any_probe(),
        mouth in any_mouth(),
        screws in prop::collection::vec(
            (0_u32..=5_000_000, -360_000_i32..=360_000, 0_u32..=500_000, 100_u32..=20_000), 0..4),
        sweep in prop::option::of((1_000_u32..30_000_000, 1_u32..9_000_000, 2_u32..300)),
    ) -> Design {
        Design {
            name,
            band: Band { low_khz, high_khz: (low_khz + width).min(15_000_000) },
            can, probe, mouth,
            screws: screws.into_iter().map(|(axial_um, angle_millideg, depth_um, diameter_um)| {
                Screw { axial_um, angle_millideg, depth_um, diameter_um }
            }).collect(),
            sweep: sweep.map(|(low_khz, width, points)| Sweep {
                low_khz, high_khz: low_khz + width, points,
            }),
        }
    }
}

proptest! {
    #[test]
    fn every_sound_design_comes_back_unchanged(design in any_design()) {
        prop_assert_eq!(design_from_json(&design_to_json(&design)), Ok(design));
    }

    #[test]
    fn no_text_makes_it_panic(text in "\\PC{0,200}") {
        let _ = design_from_json(&text);
    }

    /// Any design that passes its hard ranges gets an analysis: finite numbers
    /// or none, never a panic.
    #[test]
    fn every_sound_design_is_analysed(design in any_design()) {
        let mut design = design;
        design.sweep = None;
        let analysis = tinwave_core::analysis::analyse(&design);
        let analysis = analysis.expect("a sound design");
        for point in analysis.sweep.iter().filter_map(|point| point.at) {
            prop_assert!(point.impedance_ohm.is_finite() && point.vswr.is_finite());
            prop_assert!(point.reflection.is_finite());
        }
        prop_assert!(!analysis.verdict.is_empty());
    }
}
