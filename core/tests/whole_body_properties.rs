//! What must hold for every outside.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod support;

use std::f64::consts::{FRAC_PI_2, PI};
use std::sync::Arc;

use proptest::prelude::*;
use support::{assert_near, bare, tolerance};
use tinwave_core::analysis::Analyser;
use tinwave_core::best_cut::{FreeDimensions, best_cut_with};
use tinwave_core::complex::Complex;
use tinwave_core::constants::SPEED_OF_LIGHT;
use tinwave_core::design::{Design, Mouth, Screw};
use tinwave_core::mouth::{OpenPipe, reflection_of_admittance};
use tinwave_core::outside::{
    MODES, Outline, OutsideSolution, OutsideSpectrum, OutsideSteps, PreparedOutside, Rim,
};
use tinwave_core::phasor::{LARGEST_ANGLE, sine_and_cosine};
use tinwave_core::radiation::{BeamFigures, CanBeam, Cut, SumPattern};
use tinwave_core::si::SiDesign;
use tinwave_core::waveguide_mode::Mode;
use tinwave_core::whole_can::{CanBody, WholeCan, probe_geometry};

#[test]
fn quick_phases() {
    let most = tolerance(
        "phasor::sine_and_cosine",
        "whole_body_properties::quick_phases",
    );
    let mut angle = -1.01 * PI;
    let mut worst: f64 = 0.0;
    while angle < LARGEST_ANGLE {
        let (s, c) = sine_and_cosine(angle);
        let (sine, cosine) = angle.sin_cos();
        worst = worst.max((s - sine).abs()).max((c - cosine).abs());
        angle = angle * 1.000_37 + 0.011;
    }
    assert!(worst <= most, "{worst}");
    assert_eq!(sine_and_cosine(0.0), (0.0, 1.0));
}

#[test]
fn admittance_gives_the_reflection_back() {
    let most = tolerance(
        "mouth::reflection_of_admittance",
        "whole_body_properties::admittance_gives_the_reflection_back",
    );
    for mode in MODES {
        for ka in [1.3, 2.0, 2.7, 3.3, 3.8] {
            let pipe = OpenPipe::new(mode, ka).expect("in range");
            let back = reflection_of_admittance(mode, ka, pipe.aperture_admittance());
            let off = (back - pipe.reflection()).abs();
            assert!(off <= most, "{mode} at {ka}: {off}");
        }
    }
    // At cutoff itself whatever the admittance is.
    let y = Complex::new(0.4, 0.3);
    let root = Mode::TE11.root().expect("a root");
    assert!((reflection_of_admittance(Mode::TE11, root, y) + 1.0).abs() < 1e-6);
    let root = Mode::TM01.root().expect("a root");
    assert!((reflection_of_admittance(Mode::TM01, root, y) - 1.0).abs() < 1e-6);
}

/// A rim from four shares: kind, width, angle or depth.
fn any_rim(radius: f64, length: f64) -> impl Strategy<Value = Rim> {
    let width = move |share: f64| radius * (1.05 + 2.0 * share);
    prop_oneof![
        Just(Rim::Bare),
        (0.0..1.0_f64, 0.15..1.5_f64).prop_map(move |(share, half_angle_rad)| Rim::Funnel {
            mouth_radius_m: width(share),
            half_angle_rad,
        }),
        (0.0..1.0_f64).prop_map(move |share| Rim::Flange {
            outside_radius_m: width(share),
        }),
        (0.1..1.0_f64, 0.1..0.9_f64).prop_map(move |(share, depth)| Rim::Choke {
            outside_radius_m: width(share),
            depth_m: depth * length,
        }),
    ]
}

/// Outlines of 90 mm cans with the electrical radius to solve at.
fn any_body() -> impl Strategy<Value = (Outline, f64)> {
    let sizes = (0.09..0.35_f64, 1.95..3.7_f64);
    sizes.prop_flat_map(|(length_m, ka)| {
        any_rim(0.045, length_m).prop_map(move |rim| {
            let outline = Outline {
                radius_m: 0.045,
                length_m,
                rim,
            };
            (outline, ka)
        })
    })
}

fn solve(outline: &Outline, ka: f64) -> OutsideSolution {
    let hz = ka * SPEED_OF_LIGHT / (2.0 * PI * outline.radius_m);
    let prepared = PreparedOutside::new(outline, hz).expect("a body that can be");
    prepared.solve(hz).expect("in range")
}

/// A choke's cup is a quarter of a wavelength deep; deeper than this it is a cavity.
const DEEP: f64 = 0.4;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// What a mode brings is reflected or radiated, for every rim. Modes below
    /// cutoff bring power only together with their echo, and little of it; cups of
    /// chokes resonate, which costs accuracy. In cups deeper than a choke needs, a
    /// resonance of a higher order may be so sharp that only TE11 is held to account.
    #[test]
    fn power_goes_back_or_out((outline, ka) in any_body()) {
        let solution = solve(&outline, ka);
        let cup = matches!(outline.rim, Rim::Choke { .. });
        let wavelength_m = 2.0 * PI * outline.radius_m / ka;
        let deep = matches!(outline.rim, Rim::Choke { depth_m, .. } if depth_m > DEEP * wavelength_m);
        for mode in &solution.modes {
            if deep && mode.mode() != Mode::TE11 {
                continue;
            }
            let gamma = mode.reflection();
            let root = mode.mode().root().expect("a root");
            let out = mode.radiated_power();
            prop_assert!(out.is_finite() && gamma.is_finite());
            let (passed, most) = match (ka > root, mode.mode() == Mode::TM01) {
                (true, _) => (1.0 - gamma.norm_sqr(), if cup { 0.04 } else { 0.012 }),
                (false, true) => (2.0 * gamma.im, if cup { 0.15 } else { 0.08 }),
                (false, false) => (-2.0 * gamma.im, if cup { 0.15 } else { 0.08 }),
            };
            let most = match (mode.mode() == Mode::TE11, cup) {
                (true, true) if deep => 0.05,
                (true, true) => 0.01,
                (true, false) => 0.0015,
                _ => most,
            };
            prop_assert!(
                (out - passed).abs() <= most * (1.0 + gamma.norm_sqr()),
                "{} at ka {}: {} out, {} passed", mode.mode(), ka, out, passed
            );
        }
    }

    /// A beam of TE11 alone is symmetric, and its figures are finite.
    #[test]
    fn one_mode_makes_an_even_beam((outline, ka) in any_body(), theta in 0.0..PI, azimuth in 0.0..PI) {
        let pattern = SumPattern::of_te11(&solve(&outline, ka));
        let gain = |theta: f64, azimuth: f64| pattern.field(theta, azimuth).gain();
        let here = gain(theta, azimuth);
        for same in [-azimuth, PI - azimuth, PI + azimuth] {
            prop_assert!((gain(theta, same) - here).abs() <= 1e-9 * (1.0 + here));
        }
        let figures = BeamFigures::new(&pattern, Complex::ZERO);
        prop_assert!(figures.directivity_dbi.is_finite());
        prop_assert!(figures.peak_dbi >= figures.directivity_dbi - 1e-9);
        prop_assert!(figures.front_to_back_db.is_finite());
        prop_assert!((pattern.field(PI, 0.0).gain() - pattern.field(PI, FRAC_PI_2).gain()).abs() < 1e-9);
    }
}

#[test]
fn similar_bodies_are_alike() {
    let most = tolerance(
        "outside::Outline::new",
        "whole_body_properties::similar_bodies_are_alike",
    );
    let funnel = |size: f64| Outline {
        radius_m: 0.045 * size,
        length_m: 0.15 * size,
        rim: Rim::Funnel {
            mouth_radius_m: 0.08 * size,
            half_angle_rad: 0.6,
        },
    };
    let (one, two) = (solve(&funnel(1.0), 2.6), solve(&funnel(2.0), 2.6));
    for (a, b) in one.modes.iter().zip(&two.modes) {
        assert!(
            (a.reflection() - b.reflection()).abs() <= most,
            "{}",
            a.mode()
        );
        let (a, b) = (a.far_field(0.7), b.far_field(0.7));
        assert!((a.theta - b.theta).abs().max((a.phi - b.phi).abs()) <= 10.0 * most);
    }
}

#[test]
fn lobes_are_where_the_pattern_has_them() {
    let most = tolerance(
        "radiation::Cut::first_side_lobe",
        "whole_body_properties::lobes_are_where_the_pattern_has_them",
    );
    let outline = Outline {
        radius_m: 0.045,
        length_m: 0.235,
        rim: Rim::Funnel {
            mouth_radius_m: 0.15,
            half_angle_rad: 0.35,
        },
    };
    let pattern = SumPattern::of_te11(&solve(&outline, 2.3));
    let cut = Cut::new(&pattern, 0.0);
    let lobe = cut.first_side_lobe().expect("a horn has lobes");
    let degrees: Vec<f64> = (0..1800).map(|n| f64::from(n) * 0.1).collect();
    let angles: Vec<f64> = degrees.iter().map(|deg| deg.to_radians()).collect();
    let levels = pattern.cut_dbi(0.0, &angles);
    let valley = levels
        .windows(2)
        .position(|w| w[1] > w[0])
        .expect("a valley");
    let rest = &levels[valley..];
    let top = rest.windows(2).position(|w| w[1] < w[0]).expect("a lobe") + valley;
    assert_near("level", lobe.level_db, levels[top] - levels[0], most);
    assert_near(
        "angle",
        lobe.angle_rad.abs().to_degrees(),
        degrees[top],
        0.1,
    );
}

/// The design's outside solved over its sweep.
fn outside_of(design: &Design) -> Arc<OutsideSpectrum> {
    let mut steps = OutsideSteps::of_design(design)
        .expect("a body that can be")
        .expect("a mouth");
    while steps.step() {}
    Arc::new(steps.finish().expect("all solved"))
}

fn funnel_design() -> Design {
    let mouth = Mouth::Funnel {
        mouth_diameter_um: 160_000,
        half_angle_millideg: 30_000,
    };
    bare((90.0, 1.0, 27.0, 45.0), mouth, 150.0)
}

#[test]
fn best_cut_of_a_funnel() {
    let most = tolerance(
        "best_cut::best_cut_with",
        "whole_body_properties::best_cut_of_a_funnel",
    );
    let design = funnel_design();
    let outside = outside_of(&design);
    let cuts = best_cut_with(&design, FreeDimensions::Length, Some(&outside)).expect("in range");
    let best = cuts.first().expect("a cut");
    let worst_of = |length_um: u32| {
        let mut trial = design.clone();
        trial.probe.length_um = length_um;
        let analysis = Analyser::new()
            .analyse_with(&trial, Some(&outside))
            .expect("in range");
        analysis.match_summary.expect("computed").worst_vswr_in_band
    };
    assert_near(
        "its own VSWR",
        best.worst_vswr,
        worst_of(best.length_um),
        most,
    );
    let grid = (22_000..36_000).step_by(200).map(worst_of);
    let least = grid.fold(f64::INFINITY, f64::min);
    assert!(
        best.worst_vswr <= least + most,
        "{} on a grid, {} found",
        least,
        best.worst_vswr
    );
    // Without the outside there is nothing to search.
    let none = best_cut_with(&design, FreeDimensions::Length, None).expect("in range");
    assert!(none.is_empty());
}

#[test]
fn crossed_modes_turn_the_beam() {
    // A screw at 45 degrees to the probe excites the crossed polarisation; the mirror
    // image of the can has the mirror image of the beam.
    let with_screw = |millideg: i32| {
        let mut design = bare((98.0, 1.6, 29.0, 46.0), Mouth::Open, 180.0);
        design.screws.push(Screw {
            axial_um: 80_000,
            angle_millideg: millideg,
            depth_um: 16_000,
            diameter_um: 4_000,
        });
        let si = SiDesign::new(&design);
        let outside = outside_of(&design);
        let body = CanBody::with_outside(&design, &si, Arc::clone(&outside));
        let can = WholeCan::from_parts(body, &probe_geometry(&si), 50.0).expect("a probe");
        CanBeam::new(&outside, Some(&can), 2.48e9).expect("a beam")
    };
    let (right, left) = (with_screw(45_000), with_screw(-45_000));
    for theta in [0.2, 0.6, 1.5, 2.5] {
        for azimuth in [0.3, 1.1, 2.0, 4.4] {
            let a = right.pattern.directivity(theta, azimuth);
            let b = left.pattern.directivity(theta, -azimuth);
            assert_near("mirror", a, b, 1e-9);
        }
    }
    // And the mirror matters: the crossed part is there.
    let uneven = right.pattern.directivity(0.6, 1.1) - right.pattern.directivity(0.6, -1.1);
    assert!(uneven.abs() > 1e-3, "{uneven}");
    assert_near("power", right.figures.radiated_share, 1.0, 2e-3);
}

/// Designs at the ends of what may be stated, with every mouth.
fn far_out_designs() -> Vec<Design> {
    let mouths = [
        Mouth::Open,
        Mouth::Funnel {
            mouth_diameter_um: 5_000_000,
            half_angle_millideg: 1_000,
        },
        Mouth::Funnel {
            mouth_diameter_um: 90_100,
            half_angle_millideg: 89_000,
        },
        Mouth::Flange {
            outside_diameter_um: 10_000,
        },
        Mouth::Flange {
            outside_diameter_um: 1_000_000,
        },
        Mouth::Choke {
            outside_diameter_um: 91_000,
            depth_um: 1_000_000,
        },
        Mouth::Choke {
            outside_diameter_um: 95_000,
            depth_um: 500,
        },
    ];
    let cans = [
        (90.0, 55.0),
        (90.0, 1000.0),
        (10.0, 5.0),
        (500.0, 5000.0),
        (60.0, 120.0),
    ];
    let mut designs = Vec::new();
    for mouth in mouths {
        for (diameter, length) in cans {
            let probe = 0.33 * diameter;
            designs.push(bare((diameter, 1.0, probe, 0.4 * length), mouth, length));
        }
    }
    designs
}

#[test]
fn far_out_designs_are_answered() {
    let mut beams = 0;
    for design in far_out_designs() {
        design.check().expect("within the hard ranges");
        let steps = OutsideSteps::of_design(&design);
        let outside = steps.ok().flatten().and_then(|mut steps| {
            while steps.step() {}
            steps.finish().map(Arc::new)
        });
        let analysis = Analyser::new()
            .analyse_with(&design, outside.as_ref())
            .expect("checked");
        let Some(beam) = analysis.true_beam else {
            continue;
        };
        let figures = &beam.figures;
        assert!(
            figures.directivity_dbi.is_finite() && figures.peak_dbi.is_finite(),
            "{design:?}"
        );
        assert!(figures.front_to_back_db.is_finite(), "{design:?}");
        assert!(
            beam.realised_gain_dbi.is_none_or(|gain| !gain.is_nan()),
            "{design:?}"
        );
        beams += 1;
    }
    assert!(beams >= 8, "{beams} of them have a beam");
}
