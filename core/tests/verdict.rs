//! The verdict on cans whose answer is known from the trade and from cutoffs.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test may stop, and say what it found"
)]

mod support;

use support::{assert_near, bare, orchard_gate, um};
use tinwave_core::analysis::{Analysis, analyse};
use tinwave_core::design::{Design, Mouth, Sleeve};
use tinwave_core::verdict::{Finding, Severity};

fn codes(analysis: &Analysis) -> Vec<&'static str> {
    analysis.verdict.iter().map(Finding::code).collect()
}

fn verdict(design: &Design) -> Analysis {
    analyse(design).expect("in range")
}

#[test]
fn diameters_from_too_small_to_too_large() {
    // Cutoffs: f_c D = 175.698 (TE11) and 229.485 (TM01) GHz mm, from the
    // roots of J1' and J0 (Abramowitz and Stegun 1964, table 9.5) and c.
    for (diameter, wanted) in [
        (60.0, "no_mode"),
        (73.0, "no_mode"),
        (76.0, "near_cutoff"),
        (83.0, "one_mode"),
        (87.0, "one_mode"),
        (92.0, "one_mode"),
        (95.0, "several_modes"),
        (100.0, "several_modes"),
        (153.0, "several_modes"),
    ] {
        let analysis = verdict(&bare((diameter, 1.0, 29.0, 45.0), Mouth::Open, 200.0));
        assert!(
            codes(&analysis).contains(&wanted),
            "{diameter} mm: {:?}",
            codes(&analysis)
        );
        let range = analysis
            .one_mode_diameters
            .expect("one mode fits this band");
        assert_near("smallest, mm", range.low_m * 1e3, 175.698_466 / 2.401, 1e-3);
        assert_near(
            "largest, mm",
            range.high_m * 1e3,
            229.485_056 / 2.4835,
            1e-3,
        );
    }
}

#[test]
fn near_cutoff_says_how_much_a_millimetre_counts() {
    let analysis = verdict(&bare((76.0, 1.0, 29.0, 45.0), Mouth::Open, 300.0));
    let slope = analysis.verdict.iter().find_map(|finding| match finding {
        Finding::NearCutoff {
            wavelength_per_diameter,
            ..
        } => Some(*wavelength_per_diameter),
        _ => None,
    });
    let wavelength = |diameter| {
        let analysis = verdict(&bare((diameter, 1.0, 29.0, 45.0), Mouth::Open, 300.0));
        analysis.guide.guide_wavelength_m.expect("it passes")
    };
    let difference = (wavelength(76.05) - wavelength(75.95)) / 1e-4;
    assert_near(
        "slope, m/m",
        slope.expect("near cutoff"),
        difference,
        0.01 * difference.abs(),
    );
}

#[test]
fn impossible_feeds_stop_and_give_no_match() {
    let sound = bare((87.0, 1.0, 29.0, 45.0), Mouth::Open, 190.0);
    let mut deep = sound.clone();
    deep.probe.length_um = um(88.0);
    let mut back = sound.clone();
    back.probe.backshort_distance_um = um(1.0);
    let mut mouth = sound.clone();
    mouth.probe.backshort_distance_um = um(180.0);
    let mut beyond = sound.clone();
    beyond.probe.backshort_distance_um = um(230.0);
    let mut wire = sound.clone();
    wire.probe.hole_diameter_um = Some(um(0.9));
    let mut sleeve = sound.clone();
    sleeve.probe.sleeve = Some(Sleeve {
        outside_diameter_um: um(0.8),
        permittivity_milli: 2_300,
    });
    for (design, code) in [
        (deep, "probe_too_deep"),
        (back, "probe_near_back"),
        (mouth, "probe_near_mouth"),
        (beyond, "probe_near_mouth"),
        (wire, "wire_too_thick_for_hole"),
        (sleeve, "sleeve_thinner_than_wire"),
    ] {
        let analysis = verdict(&design);
        assert_eq!(analysis.severity(), Severity::Stop, "{code}");
        let first = analysis.verdict.first().map(Finding::code);
        assert_eq!(first, Some(code), "the most severe comes first");
        assert!(
            analysis.match_summary.is_none(),
            "{code}: no match is given"
        );
        assert!(
            analysis.sweep.iter().all(|point| point.at.is_none()),
            "{code}: no sweep"
        );
    }
    assert!(
        verdict(&sound).match_summary.is_some(),
        "the sound one is computed"
    );
}

#[test]
fn a_short_can_lets_tm01_reach_the_mouth() {
    let short = verdict(&bare((90.0, 1.2, 30.0, 40.0), Mouth::Open, 100.0));
    assert!(codes(&short).contains(&"too_short"), "{:?}", codes(&short));
    let long = verdict(&bare((83.0, 1.2, 30.0, 60.0), Mouth::Open, 260.0));
    assert!(!codes(&long).contains(&"too_short"), "{:?}", codes(&long));
}

#[test]
fn mouths_without_a_solution_are_null_and_said() {
    let funnel = Mouth::Funnel {
        mouth_diameter_um: um(180.0),
        half_angle_millideg: 30_000,
    };
    let analysis = verdict(&bare((90.0, 1.0, 29.5, 50.0), funnel, 150.0));
    assert!(
        codes(&analysis).contains(&"mouth_not_computed"),
        "{:?}",
        codes(&analysis)
    );
    assert!(
        analysis.beam.is_none() && analysis.match_summary.is_none(),
        "nothing invented"
    );
}

/// A quarter of a wavelength chokes (30.7 mm at 2442 MHz, from c = 299 792 458 m/s);
/// 0.4 wavelengths at the top of the band, 2483.5 MHz, are 48.28 mm.
#[test]
fn a_cup_too_deep_to_choke_is_said() {
    for (depth, said) in [(30.7, false), (48.2, false), (48.4, true)] {
        let choke = Mouth::Choke {
            outside_diameter_um: um(150.0),
            depth_um: um(depth),
        };
        let mut design = bare((90.0, 1.0, 29.5, 50.0), choke, 150.0);
        design.band.low_khz = 2_400_000;
        design.band.high_khz = 2_483_500;
        let analysis = verdict(&design);
        assert_eq!(codes(&analysis).contains(&"cup_rings"), said, "{depth} mm");
    }
}

/// Common practice, no source: a 90 mm can at 2437 MHz has a quarter guide
/// wavelength of 51.4 mm, and a 31 mm probe of 0.81 mm wire there is usable.
#[test]
fn trade_fact() {
    let mut design = bare((90.0, 0.81, 31.0, 51.4), Mouth::Open, 205.0);
    design.band.low_khz = 2_436_500;
    design.band.high_khz = 2_437_500;
    let analysis = verdict(&design);
    let quarter = analysis.guide.quarter_wave_distance_m.expect("it passes") * 1e3;
    assert_near("quarter guide wavelength, mm", quarter, 51.4, 0.05);
    let vswr = analysis.match_summary.expect("computed").worst_vswr_in_band;
    assert!((1.3..=1.6).contains(&vswr), "VSWR {vswr}");
}

#[test]
fn the_worked_example_is_sound() {
    let analysis = verdict(&orchard_gate());
    assert_eq!(analysis.sweep.len(), 101);
    assert!(
        codes(&analysis).contains(&"one_mode"),
        "{:?}",
        codes(&analysis)
    );
    let beam = analysis.beam.expect("an open can has a beam");
    let gain = beam.realised_gain_dbi.expect("the match is known");
    assert!(gain < beam.directivity_dbi, "some is lost: {gain}");
}
