//! Input impedance of the probe against full-wave finite elements (guide matched
//! ahead) and against the same formulas at a fine setting.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod probe_cases;

use probe_cases::{Case, read, reflection};
use tinwave_core::probe::{GuideCondition, PreparedProbe};

/// Largest error of the reflection coefficient over a case's frequencies.
fn worst(case: &Case) -> f64 {
    let probe = PreparedProbe::new(&case.geometry).expect("a possible geometry");
    let errors = case.impedance.iter().map(|(f, z)| {
        let y = probe.input_admittance(*f, &GuideCondition::MATCHED);
        (reflection(y) - reflection(z.inv())).abs()
    });
    errors.fold(0.0, f64::max)
}

#[test]
fn agrees_with_finite_elements() {
    let cases = read(include_str!("data/probe_finite_element.json"));
    let mut seen = Vec::new();
    for case in cases.iter().filter(|case| case.far_end == "matched") {
        let allowed = if case.geometry.screws.is_empty() {
            0.003
        } else {
            0.004
        };
        let error = worst(case);
        assert!(error <= allowed, "{}: {error} > {allowed}", case.id);
        seen.push(case.id.as_str());
    }
    assert_eq!(
        seen,
        ["C1", "C3", "C4", "C5", "C6", "C8", "S1", "S2", "T1", "H8"]
    );
}

#[test]
fn agrees_with_the_formulas_at_a_fine_setting() {
    let cases = read(include_str!("data/probe_grid.json"));
    assert_eq!(cases.len(), 24);
    for case in &cases {
        let error = worst(case);
        assert!(error <= 0.0015, "{:?}: {error}", case.geometry);
    }
}
