//! The mouth's tables against the exact solution they stand for.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

#[path = "../examples/mouth_tables/tables.rs"]
mod tables;

use tinwave_core::mouth::{
    MouthError, OpenPipe, Plane, mouth_reflection, pipe_beam, pipe_pattern_dbi,
};
use tinwave_core::waveguide_mode::Mode;

/// Electrical radii all over the tables' range, ends and joint included.
fn radii() -> impl Iterator<Item = f64> {
    let joint = [2.6 - 1e-12, 2.6, 2.6 + 1e-12, 3.83];
    (0..263).map(|n| 1.2 + 0.01 * f64::from(n)).chain(joint)
}

#[test]
fn data_file_is_what_the_generator_writes() {
    let generated = tables::text().unwrap();
    assert!(
        generated == include_str!("../src/mouth/table_data.rs"),
        "run the example mouth_tables"
    );
}

#[test]
fn reflection_is_that_of_the_exact_solution() {
    for mode in [Mode::TE11, Mode::TM01, Mode::TE21] {
        let mut worst = (0.0_f64, 0.0);
        for ka in radii() {
            let exact = OpenPipe::new(mode, ka).unwrap().reflection();
            let off = (mouth_reflection(mode, ka).unwrap() - exact).abs();
            if off > worst.0 {
                worst = (off, ka);
            }
            assert!(off < 1e-7, "{mode} at {ka}: {off:e}");
        }
        eprintln!("{mode}: largest deviation {:e} at {}", worst.0, worst.1);
    }
}

#[test]
fn reflection_crosses_cutoff_without_a_step() {
    for (mode, limit) in [(Mode::TE11, -1.0), (Mode::TM01, 1.0), (Mode::TE21, -1.0)] {
        let root = mode.root().unwrap();
        for ka in [root, root * (1.0 - 1e-15), root * (1.0 + 1e-15)] {
            let at = mouth_reflection(mode, ka).unwrap();
            assert!((at - limit).abs() < 1e-6, "{mode}: {at:?}");
        }
        // Close by the deviation grows with the square root of the distance.
        let near = mouth_reflection(mode, root * (1.0 + 1e-6)).unwrap() - limit;
        let nearer = mouth_reflection(mode, root * (1.0 + 1e-8)).unwrap() - limit;
        assert!((near.abs() / nearer.abs() - 10.0).abs() < 0.1);
    }
}

#[test]
fn beam_is_that_of_the_exact_solution() {
    let mut worst = [0.0_f64; 4];
    for ka in radii() {
        let exact = OpenPipe::new(Mode::TE11, ka).unwrap();
        let beam = pipe_beam(ka).unwrap();
        let off = [
            beam.directivity_dbi - exact.directivity_dbi(0.0, Plane::H),
            beam.front_to_back_db - exact.front_to_back_db().unwrap(),
            beam.beamwidth_e_deg - exact.half_power_beamwidth_deg(Plane::E).unwrap(),
            beam.beamwidth_h_deg - exact.half_power_beamwidth_deg(Plane::H).unwrap(),
        ];
        for (worst, off) in worst.iter_mut().zip(off) {
            *worst = worst.max(off.abs());
        }
        assert!(off[0].abs() < 1e-6 && off[1].abs() < 1e-6, "{ka}: {off:?}");
        assert!(off[2].abs() < 1e-5 && off[3].abs() < 1e-5, "{ka}: {off:?}");
    }
    eprintln!("largest deviations: D, F/B dB, E, H degrees {worst:?}");
}

#[test]
fn pattern_is_three_decibels_down_at_half_the_beamwidth() {
    for ka in [1.9, 2.3, 3.1] {
        let beam = pipe_beam(ka).unwrap();
        for (plane, width) in [
            (Plane::E, beam.beamwidth_e_deg),
            (Plane::H, beam.beamwidth_h_deg),
        ] {
            let angles = [0.0, (0.5 * width).to_radians(), std::f64::consts::PI];
            let levels = pipe_pattern_dbi(ka, plane, &angles).unwrap();
            assert!((levels[0] - beam.directivity_dbi).abs() < 1e-4);
            assert!((levels[0] - levels[1] - 10.0 * 2.0_f64.log10()).abs() < 1e-4);
            assert!((levels[0] - levels[2] - beam.front_to_back_db).abs() < 1e-4);
        }
    }
}

#[test]
fn questions_outside_the_tables_are_refused() {
    for ka in [1.1999, 3.8301, 0.0, -2.0, f64::NAN, f64::INFINITY] {
        let refused = |error| {
            matches!(
                error,
                MouthError::ElectricalRadius {
                    low: 1.2,
                    high: 3.83,
                    ..
                }
            )
        };
        assert!(refused(mouth_reflection(Mode::TE11, ka).unwrap_err()));
        assert!(refused(pipe_beam(ka).unwrap_err()));
    }
    for mode in [Mode::TE01, Mode::TM11, Mode::te(9, 9)] {
        let refused = mouth_reflection(mode, 2.3);
        assert_eq!(refused, Err(MouthError::NotTabulated { mode }));
    }
}
