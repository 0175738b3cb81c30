//! The exact open pipe against separate programs, published formulas and its own
//! energy balance.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod common;

use common::{number, parse, rows};
use serde_json::Value;
use std::f64::consts::PI;
use tinwave_core::complex::Complex;
use tinwave_core::mouth::{MouthError, OpenPipe, Plane};
use tinwave_core::waveguide_mode::Mode;

fn pipe(mode: Mode, ka: f64) -> OpenPipe {
    OpenPipe::new(mode, ka).unwrap()
}

fn polar(row: &Value) -> Complex {
    Complex::from_polar(number(row, "mag"), number(row, "phase").to_radians())
}

/// Keeps the largest deviation and prints it at the end of a test.
struct Worst(&'static str, f64);

impl Worst {
    fn take(&mut self, got: f64, expected: f64, tolerance: f64, at: f64) {
        let off = (got - expected).abs();
        self.1 = self.1.max(off);
        assert!(off <= tolerance, "{} at {at}: {got} for {expected}", self.0);
    }
}

impl Drop for Worst {
    fn drop(&mut self) {
        eprintln!("{}: largest deviation {:e}", self.0, self.1);
    }
}

#[test]
fn reflection_matches_a_separate_program() {
    let data = parse(include_str!("data/open_pipe.json"));
    for (key, mode) in [
        ("exact_pipe_TE11", Mode::TE11),
        ("exact_pipe_TM01", Mode::TM01),
        ("exact_pipe_TE21", Mode::TE21),
    ] {
        let mut worst = Worst(key, 0.0);
        for row in rows(&data, key) {
            let ka = number(row, "ka");
            // Six digits of magnitude and angle; near cutoff the angle's last
            // digit is worth more.
            let near = ka / mode.root().unwrap() < 1.03;
            let tolerance = if near { 6e-6 } else { 1.6e-6 };
            let off = (pipe(mode, ka).reflection() - polar(row)).abs();
            worst.take(off, 0.0, tolerance, ka);
        }
    }
}

#[test]
fn reflection_matches_the_continued_reference() {
    let data = parse(include_str!("data/open_pipe_continued.json"));
    let mut worst = Worst("continued reflection", 0.0);
    for row in rows(&data, "reflections") {
        let (n, m) = (number(row, "order") as u8, number(row, "index") as u8);
        let mode = if row["family"] == "TE" {
            Mode::te(n, m)
        } else {
            Mode::tm(n, m)
        };
        let ka = number(row, "ka");
        let expected = Complex::new(number(row, "re"), number(row, "im"));
        let off = (pipe(mode, ka).reflection() - expected).abs();
        worst.take(off, 0.0, 1e-11, ka);
    }
}

#[test]
fn tm01_far_field_matches_the_continued_reference() {
    let data = parse(include_str!("data/open_pipe_continued.json"));
    let mut worst = Worst("TM01 far field", 0.0);
    for row in rows(&data, "tm01_far_field") {
        let (ka, theta) = (number(row, "ka"), number(row, "degrees").to_radians());
        let root = Mode::TM01.root().unwrap();
        // Power of e_rho = J0'(root rho/a) with unit amplitude, wave impedance of
        // space 1: (k/|h|)·½·2π·∫J1²ρdρ = (k/|h|)·(π/2)·J1(root)².
        let h = (ka * ka - root * root).abs().sqrt();
        let j1 = complex_bessel::besselj(1.0, num_complex::Complex::new(root, 0.0))
            .unwrap()
            .re;
        let power = ka / h * 0.5 * PI * j1 * j1;
        let scale = (2.0 * PI / power).sqrt();
        let expected = Complex::new(number(row, "re"), number(row, "im")).scale(scale);
        let field = pipe(Mode::TM01, ka).far_field(theta);
        assert_eq!(field.phi, Complex::ZERO);
        worst.take((field.theta - expected).abs(), 0.0, 1e-11, ka);
    }
}

#[test]
fn pattern_matches_a_separate_program() {
    let data = parse(include_str!("data/open_pipe.json"));
    let mut directivity = Worst("directivity, dB", 0.0);
    let mut widths = Worst("beamwidth, degrees", 0.0);
    let mut back = Worst("front to back, dB", 0.0);
    let mut cuts = Worst("pattern, relative", 0.0);
    for row in rows(&data, "exact_pipe_TE11") {
        let ka = number(row, "ka");
        let pipe = pipe(Mode::TE11, ka);
        directivity.take(
            pipe.directivity_dbi(0.0, Plane::E),
            number(row, "D_dB"),
            6e-5,
            ka,
        );
        back.take(
            pipe.front_to_back_db().unwrap(),
            number(row, "FB_dB"),
            1e-4,
            ka,
        );
        for (plane, width, cut) in [
            (Plane::E, "HPBW_E", "E_dB_10deg"),
            (Plane::H, "HPBW_H", "H_dB_10deg"),
        ] {
            let got = pipe.half_power_beamwidth_deg(plane).unwrap();
            widths.take(got, number(row, width), 2e-4, ka);
            let values = row[cut].as_array().unwrap();
            assert_eq!(values.len(), 19);
            for (ten, value) in values.iter().enumerate() {
                let theta = (10.0 * ten as f64).to_radians();
                let got = pipe.directivity_dbi(theta, plane);
                // In a null one digit of the file is worth less than in the beam.
                cuts.take(
                    10_f64.powf(got / 20.0),
                    10_f64.powf(value.as_f64().unwrap() / 20.0),
                    2e-4,
                    ka,
                );
            }
        }
    }
}

#[test]
fn table_of_the_other_time_convention() {
    let data = parse(include_str!("data/open_pipe_te11_table.json"));
    for row in rows(&data, "rows") {
        let column: Vec<f64> = row
            .as_array()
            .unwrap()
            .iter()
            .map(|v| v.as_f64().unwrap())
            .collect();
        let [ka, size, phase, gain, directivity, e, h, back] = column[..] else {
            panic!("eight columns")
        };
        let pipe = pipe(Mode::TE11, ka);
        let expected = Complex::from_polar(size, phase.to_radians());
        assert!((pipe.reflection() - expected).abs() < 1e-5, "{ka}");
        assert!((pipe.gain_dbi(0.0, Plane::H) - gain).abs() < 1e-3, "{ka}");
        assert!(
            (pipe.directivity_dbi(0.0, Plane::H) - directivity).abs() < 1e-3,
            "{ka}"
        );
        assert!(
            (pipe.half_power_beamwidth_deg(Plane::E).unwrap() - e).abs() < 0.01,
            "{ka}"
        );
        assert!(
            (pipe.half_power_beamwidth_deg(Plane::H).unwrap() - h).abs() < 0.01,
            "{ka}"
        );
        assert!(
            (pipe.front_to_back_db().unwrap() - back).abs() < 0.01,
            "{ka}"
        );
    }
}

/// What arrives goes back or is radiated. Radiated power by integration of the
/// far field, the rest from the reflection: two different parts of the solution.
#[test]
fn energy_balances_above_and_below_cutoff() {
    let mut worst = Worst("energy balance", 0.0);
    for (mode, values) in [
        (
            Mode::TE11,
            &[
                1.0, 1.5, 1.8, 1.84, 1.85, 2.3, 3.0, 3.83, 3.84, 4.5, 5.0, 6.0, 9.0,
            ][..],
        ),
        (Mode::TM11, &[2.3, 3.8, 3.9, 5.0, 5.5, 8.0][..]),
        (Mode::TE12, &[4.0, 5.5, 7.5][..]),
        (Mode::TE21, &[2.0, 3.0, 3.1, 3.83, 5.0, 5.3, 7.0][..]),
        (Mode::te(2, 2), &[6.0, 7.0][..]),
        (Mode::tm(2, 1), &[4.0, 6.0][..]),
        (Mode::TE01, &[3.0, 3.9, 5.0, 7.5][..]),
    ] {
        for &ka in values {
            let pipe = pipe(mode, ka);
            worst.take(pipe.integrated_power(80), pipe.radiated_power(), 1e-10, ka);
        }
    }
}

/// Order 0 TM keeps a wave on the outside of the infinite pipe, which the
/// integral over angles misses; what is missing is small and positive.
#[test]
fn energy_of_tm01_balances_but_for_the_wave_on_the_outside() {
    for ka in [2.0, 2.5, 3.0, 3.8] {
        let pipe = pipe(Mode::TM01, ka);
        let missing = 1.0 - pipe.integrated_power(400) / pipe.radiated_power();
        assert!((0.0..0.03).contains(&missing), "{ka}: {missing}");
    }
}

/// Large pipes: L. J. Chu, *J. Appl. Phys.* 11 (1940) 603-610 (from memory):
/// gain on the axis (ka)²·2/(χ² - 1)·(1 + b)²/(4b), b = h/k, no end reflection.
#[test]
fn gain_of_a_large_pipe_approaches_the_aperture_formula() {
    for (ka, tolerance_db) in [(7.0, 0.18), (9.0, 0.11), (11.0, 0.075)] {
        let root = 1.841_183_781_340_659_f64;
        let b = (1.0 - (root / ka).powi(2)).sqrt();
        let chu = ka * ka * 2.0 / (root * root - 1.0) * (1.0 + b) * (1.0 + b) / (4.0 * b);
        let gain = pipe(Mode::TE11, ka).gain_dbi(0.0, Plane::E);
        assert!(
            (gain - 10.0 * chu.log10()).abs() < tolerance_db,
            "{ka}: {gain}"
        );
    }
}

/// The far field's phase and sign: of a large pipe they are those of the aperture
/// field, `j k/(4π) (1 + cos θ h/k or k/h) ∫ E e^(j k ρ sin θ cos φ)` (J. A.
/// Stratton and L. J. Chu's formula for an aperture whose H is that of the mode;
/// S. Silver, *Microwave Antenna Theory and Design*, 1949, chapter 10).
#[test]
fn phase_of_a_large_pipe_is_that_of_the_aperture_field() {
    let (ka, theta) = (11.0_f64, 0.15_f64);
    let bessel = |n: f64, x: f64| {
        complex_bessel::besselj(n, num_complex::Complex::new(x, 0.0))
            .unwrap()
            .re
    };
    for (mode, te) in [(Mode::TE11, true), (Mode::TM01, false), (Mode::TE21, true)] {
        let (n, root) = (f64::from(mode.order), mode.root().unwrap());
        let h = (ka * ka - root * root).sqrt();
        let admittance = if te { h / ka } else { ka / h };
        let mut sum = Complex::ZERO;
        let mut power = 0.0;
        let (rings, spokes) = (400, 120);
        for ring in 0..rings {
            let rho = (f64::from(ring) + 0.5) / f64::from(rings);
            let x = root * rho;
            let over = n * bessel(n, x) / x;
            let slope = n / x * bessel(n, x) - bessel(n + 1.0, x);
            let (along, round) = if te { (over, -slope) } else { (slope, -over) };
            for spoke in 0..spokes {
                let phi = 2.0 * PI * f64::from(spoke) / f64::from(spokes);
                let (e_rho, e_phi) = (along * (n * phi).cos(), round * (n * phi).sin());
                let area = rho / f64::from(rings) * 2.0 * PI / f64::from(spokes);
                let e_x = e_rho * phi.cos() - e_phi * phi.sin();
                sum += Complex::from_polar(e_x * area, ka * theta.sin() * rho * phi.cos());
                power += 0.5 * admittance * (e_rho * e_rho + e_phi * e_phi) * area;
            }
        }
        let weight = ka / (4.0 * PI) * (1.0 + admittance * theta.cos()) * (2.0 * PI / power).sqrt();
        let aperture = Complex::J * sum.scale(weight);
        let ratio = pipe(mode, ka).far_field(theta).theta / aperture;
        assert!((ratio - 1.0).abs() < 0.03, "{mode}: {ratio:?}");
    }
}

#[test]
fn far_field_is_continuous_everywhere() {
    for (mode, ka) in [
        (Mode::TE11, 2.3),
        (Mode::TE11, 1.7),
        (Mode::TM11, 4.5),
        (Mode::TE21, 3.6),
        (Mode::TM01, 3.0),
        (Mode::TE01, 5.0),
    ] {
        let pipe = pipe(mode, ka);
        // The direction where the mode's own phase matches: a removable pole.
        let own = (pipe.mode().root().unwrap() / ka).min(1.0).asin();
        let root_edge = ((pipe.mode().root().unwrap() + 0.1) / ka).min(1.0).asin();
        for centre in [1e-9 / ka, own, root_edge, 0.5 * PI, PI - 1e-9 / ka] {
            // TM of order 0 is unbounded straight behind.
            if mode == Mode::TM01 && centre > 3.0 {
                continue;
            }
            let (before, after) = (
                pipe.far_field(centre - 1e-10),
                pipe.far_field(centre + 1e-10),
            );
            let jump = (before.theta - after.theta).abs() + (before.phi - after.phi).abs();
            assert!(jump < 2e-8, "{mode} {ka} at {centre}: {jump:e}");
        }
    }
    // On the axis the two components of order 1 belong to one linear polarisation.
    let ahead = pipe(Mode::TE11, 2.3).far_field(0.0);
    assert!((ahead.theta + ahead.phi).abs() < 1e-12 * ahead.theta.abs());
    let behind = pipe(Mode::TE11, 2.3).far_field(PI);
    assert!((behind.theta - behind.phi).abs() < 1e-12 * behind.theta.abs());
}

/// At cutoff TE modes reflect with -1 and TM modes with +1, and the aperture
/// admittance goes through smoothly.
#[test]
fn reflection_passes_smoothly_through_cutoff() {
    for (mode, limit) in [(Mode::TE11, -1.0), (Mode::TM01, 1.0), (Mode::TE21, -1.0)] {
        let root = mode.root().unwrap();
        let (below, above) = (
            pipe(mode, root * (1.0 - 1e-6)),
            pipe(mode, root * (1.0 + 1e-6)),
        );
        assert!((below.reflection() - limit).abs() < 1e-2);
        assert!((above.reflection() - limit).abs() < 1e-2);
        let jump = below.aperture_admittance() - above.aperture_admittance();
        assert!(jump.abs() < 5e-6, "{mode}: {jump:?}");
    }
}

#[test]
fn questions_out_of_range_are_refused() {
    for ka in [0.0, -2.0, 0.0999, 12.01, f64::NAN, f64::INFINITY] {
        let refused = OpenPipe::new(Mode::TE11, ka);
        assert!(matches!(
            refused,
            Err(MouthError::ElectricalRadius {
                low: 0.1,
                high: 12.0,
                ..
            })
        ));
    }
    for mode in [Mode::te(3, 1), Mode::te(0, 99), Mode::te(1, 0)] {
        let refused = OpenPipe::new(mode, 2.3);
        assert!(matches!(refused, Err(MouthError::UnsupportedMode { .. })));
    }
    let refused = OpenPipe::new(Mode::TM01, Mode::TM01.root().unwrap());
    assert!(matches!(refused, Err(MouthError::AtCutoff { .. })));
    assert!(
        pipe(Mode::TE21, 3.3)
            .half_power_beamwidth_deg(Plane::E)
            .is_none()
    );
    assert!(pipe(Mode::TE21, 3.3).front_to_back_db().is_none());
}
