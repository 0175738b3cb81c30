//! Diagnosis: simulated measurements are recovered within the bounds stated.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod support;

use support::{assert_near, bare, orchard_gate};
use tinwave_core::changed_can::ChangedCan;
use tinwave_core::complex::Complex;
use tinwave_core::design::{Design, Mouth};
use tinwave_core::diagnosis::{
    AdviceSteps, Conclusion, Diagnosis, DiagnosisError, DiagnosisSettings, Knowledge, Measurement,
    MeasurementError, Remedy, diagnose, remove_port_length, with_port_length,
};
use tinwave_core::dimension::Dimension;
use tinwave_core::least_squares::SquareMatrix;
use tinwave_core::reflection::magnitude_of_vswr;

/// Independent normal numbers: a linear congruential generator (Knuth, *Seminumerical
/// Algorithms*, 3rd ed. 1998, section 3.3.4, line 26) and twelve of its numbers summed.
struct Noise(u64);

impl Noise {
    fn uniform(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.uniform()).sum::<f64>() - 6.0
    }
}

/// A sweep of a can that deviates from its drawing.
fn sweep(design: &Design, changes: &[(Dimension, f64)], points: u32) -> Vec<(f64, Complex)> {
    let mut can = ChangedCan::new(design, None).expect("sound").expect("open");
    let hz: Vec<f64> = (0..points)
        .map(|i| 2.25e9 + 0.4e9 * f64::from(i) / f64::from(points - 1))
        .collect();
    let si = can.changed(changes);
    let s = can.reflections(&si, &hz).expect("computed");
    hz.into_iter().zip(s).collect()
}

fn noisy(points: &[(f64, Complex)], noise: f64, source: &mut Noise) -> Vec<(f64, Complex)> {
    points
        .iter()
        .map(|(hz, s)| {
            let off = Complex::new(source.normal(), source.normal()).scale(noise);
            (*hz, *s + off)
        })
        .collect()
}

fn exact_noise() -> DiagnosisSettings {
    DiagnosisSettings {
        smooth_error: 0.0,
        ..DiagnosisSettings::default()
    }
}

fn estimate(diagnosis: &Diagnosis, dimension: Dimension) -> (f64, f64) {
    let found = diagnosis
        .estimates
        .iter()
        .find(|e| e.dimension == dimension);
    found.map(|e| (e.change, e.sd)).expect("a free dimension")
}

/// Deviations drawn from the tolerances, noise as stated: 95 % of the true values must
/// lie within twice the standard deviation. With 5 values of each of 40 cans the share
/// found scatters by 1.5 points (binomial).
fn coverage(measure: impl Fn(Vec<(f64, Complex)>) -> Measurement) -> f64 {
    let mut source = Noise(7);
    let design = orchard_gate();
    let (mut inside, mut all) = (0_u32, 0_u32);
    for _ in 0..40 {
        let truth: Vec<(Dimension, f64)> = Dimension::ALL[..5]
            .iter()
            .map(|d| (*d, d.usual_tolerance() * source.normal().clamp(-2.5, 2.5)))
            .collect();
        let points = noisy(&sweep(&design, &truth, 41), 0.01, &mut source);
        let measurement = measure(points);
        let found = diagnose(&design, None, &measurement, exact_noise()).expect("a diagnosis");
        for (dimension, change) in truth {
            let (got, sd) = estimate(&found, dimension);
            all += 1;
            inside += u32::from((got - change).abs() <= 2.0 * sd);
        }
    }
    f64::from(inside) / f64::from(all)
}

#[test]
fn bounds_hold_what_they_state_with_phase() {
    let share = coverage(|points| Measurement::Reflection(with_port_length(&points, 0.123)));
    assert!((0.91..=0.995).contains(&share), "{share}");
}

#[test]
fn bounds_hold_what_they_state_without_phase() {
    let share = coverage(|points| {
        Measurement::Magnitude(points.iter().map(|(hz, s)| (*hz, s.abs())).collect())
    });
    assert!((0.90..=1.0).contains(&share), "{share}");
}

#[test]
fn length_and_port_are_found() {
    let design = orchard_gate();
    let mut source = Noise(3);
    let truth = [(Dimension::ProbeLength, 1.2e-3)];
    let points = noisy(&sweep(&design, &truth, 201), 0.005, &mut source);
    let measurement = Measurement::Reflection(with_port_length(&points, 0.35));
    let settings = DiagnosisSettings {
        noise: 0.005,
        ..DiagnosisSettings::default()
    };
    let found = diagnose(&design, None, &measurement, settings).expect("a diagnosis");
    let (change, sd) = estimate(&found, Dimension::ProbeLength);
    assert!(
        (change - 1.2e-3).abs() < 2.0 * sd && sd < 0.4e-3,
        "{change} +- {sd}"
    );
    let (port, sd) = found.port_length_m.expect("phase");
    assert!((port - 0.35).abs() < 2.0 * sd + 1e-5, "{port} +- {sd}");
    assert!(found.misfit < 0.007 && found.misfit_as_drawn > 0.02);
    assert!(found.conclusion != Conclusion::AsDrawn && found.conclusion != Conclusion::Unexplained);
}

#[test]
fn a_can_as_drawn_is_called_so() {
    let design = orchard_gate();
    let mut source = Noise(5);
    let points = noisy(&sweep(&design, &[], 41), 0.01, &mut source);
    let measurement = Measurement::Reflection(points);
    let found = diagnose(&design, None, &measurement, exact_noise()).expect("a diagnosis");
    assert_eq!(found.conclusion, Conclusion::AsDrawn);
}

#[test]
fn what_cannot_be_told_apart_is_said() {
    // One number at the best frequency cannot tell five dimensions apart.
    let design = orchard_gate();
    let truth = [(Dimension::ProbeLength, 1.5e-3)];
    let points = sweep(&design, &truth, 401);
    let best = points
        .iter()
        .min_by(|a, b| a.1.abs().total_cmp(&b.1.abs()))
        .expect("points");
    let measurement = Measurement::BestAt {
        frequency_hz: best.0,
        magnitude: best.1.abs(),
    };
    let found = diagnose(&design, None, &measurement, exact_noise()).expect("a diagnosis");
    let unknown = found.estimates.iter().filter(|e| !e.measured).count();
    assert!(unknown >= 3, "{found:?}");
    assert!(!matches!(found.conclusion, Conclusion::OneCause(d) if d != Dimension::ProbeLength));
    // A wider hole and less stray capacitance do nearly the same.
    let knowledge = Knowledge::of_tolerances(&[
        (Dimension::HoleDiameter, 1e-3),
        (Dimension::ShuntCapacitance, 0.5e-12),
    ]);
    let settings = DiagnosisSettings {
        knowledge,
        ..exact_noise()
    };
    let truth = [(Dimension::ShuntCapacitance, 0.15e-12)];
    let points = Measurement::Reflection(sweep(&design, &truth, 41));
    let found = diagnose(&design, None, &points, settings).expect("a diagnosis");
    assert!(!found.alike.is_empty(), "{found:?}");
}

#[test]
fn a_foreign_measurement_stays_unexplained() {
    let design = orchard_gate();
    let points = sweep(&design, &[], 41);
    let wrong = points
        .iter()
        .enumerate()
        .map(|(i, (hz, _))| {
            (
                *hz,
                Complex::new(0.5, 0.0).scale(if i % 2 == 0 { 1.0 } else { -1.0 }),
            )
        })
        .collect();
    let found = diagnose(
        &design,
        None,
        &Measurement::Reflection(wrong),
        exact_noise(),
    );
    assert_eq!(
        found.expect("a diagnosis").conclusion,
        Conclusion::Unexplained
    );
}

/// A plain resistor is no can, though a can far off the drawing could look like it.
#[test]
fn a_resistor_is_no_can() {
    let design = orchard_gate();
    let hz: Vec<f64> = (0..101).map(|i| 2.35e9 + 2e6 * f64::from(i)).collect();
    for reflection in [0.5, 0.0, 0.98, -0.9] {
        let load = hz.iter().map(|hz| (*hz, Complex::new(reflection, 0.0)));
        let points = Measurement::Reflection(load.collect());
        let found = diagnose(&design, None, &points, DiagnosisSettings::default());
        let conclusion = found.expect("a diagnosis").conclusion;
        assert_eq!(conclusion, Conclusion::Unexplained, "{reflection}");
    }
}

/// A wire left 4 mm long on purpose, in a can with a maker's other errors, is no
/// wonder.
#[test]
fn a_wire_left_long_is_no_wonder() {
    let design = orchard_gate();
    let truth = [
        (Dimension::ProbeLength, 4e-3),
        (Dimension::BackshortDistance, 1.5e-3),
        (Dimension::InsideDiameter, -0.7e-3),
    ];
    let points = Measurement::Reflection(sweep(&design, &truth, 101));
    let found = diagnose(&design, None, &points, DiagnosisSettings::default());
    let found = found.expect("a diagnosis");
    assert_ne!(found.conclusion, Conclusion::Unexplained, "{found:?}");
    assert_near(
        "length",
        estimate(&found, Dimension::ProbeLength).0,
        4e-3,
        0.5e-3,
    );
}

#[test]
fn a_second_measurement_sharpens() {
    let design = orchard_gate();
    let truth = [
        (Dimension::ProbeLength, 0.6e-3),
        (Dimension::InsideDiameter, -0.3e-3),
    ];
    let mut source = Noise(11);
    let mut measure =
        || Measurement::Reflection(noisy(&sweep(&design, &truth, 41), 0.01, &mut source));
    let first = diagnose(&design, None, &measure(), exact_noise()).expect("a diagnosis");
    let settings = DiagnosisSettings {
        knowledge: first.knowledge.clone(),
        ..exact_noise()
    };
    let second = diagnose(&design, None, &measure(), settings).expect("a diagnosis");
    for (a, b) in first.estimates.iter().zip(&second.estimates) {
        assert!(b.sd <= a.sd * 1.001, "{a:?} {b:?}");
    }
    let after = first.knowledge.after_change(Dimension::ProbeLength, 1e-4);
    let own = second.knowledge.covariance.at(0, 0);
    assert!(after.covariance.at(0, 0) > own);
}

#[test]
fn advice_trims_what_is_too_long() {
    let mut design = bare((90.0, 1.3, 31.0, 50.0), Mouth::Open, 190.0);
    let steps = |design: &Design, found: &Diagnosis| {
        let mut steps = AdviceSteps::new(design, None, found).expect("sound");
        while steps.step() {}
        steps.finish()
    };
    // The drawing is cut best first; then the can made after it is 2 mm too long.
    let best = tinwave_core::best_cut::best_cut(
        &design,
        tinwave_core::best_cut::FreeDimensions::LengthAndDistance,
    )
    .expect("sound")[0];
    design.probe.length_um = best.length_um;
    design.probe.backshort_distance_um = best.backshort_distance_um;
    let points = Measurement::Reflection(sweep(&design, &[(Dimension::ProbeLength, 2e-3)], 41));
    let settings = DiagnosisSettings {
        knowledge: Knowledge::of_tolerances(&[(Dimension::ProbeLength, 2e-3)]),
        ..DiagnosisSettings::default()
    };
    let found = diagnose(&design, None, &points, settings).expect("a diagnosis");
    assert_eq!(
        found.conclusion,
        Conclusion::OneCause(Dimension::ProbeLength)
    );
    let advice = steps(&design, &found);
    let (remedy, after) = advice.remedies[0];
    let Remedy::Trim { whole_um, safe_um } = remedy else {
        panic!("{advice:?}")
    };
    assert!(
        whole_um.abs_diff(2000) < 200 && safe_um < whole_um,
        "{advice:?}"
    );
    assert!(after < advice.worst_vswr_now.expect("computed"));
    assert_near("after", after, best.worst_vswr, 0.02);
}

#[test]
fn port_length_comes_and_goes() {
    // A quarter wave of line turns a reflection by half a turn (Pozar, section 2.3).
    let hz = 2.4e9;
    let quarter = tinwave_core::constants::SPEED_OF_LIGHT / hz / 4.0;
    let points = [(hz, Complex::new(0.3, -0.2))];
    let seen = with_port_length(&points, quarter);
    assert!((seen[0].1 + points[0].1).abs() < 1e-14);
    assert!((remove_port_length(&seen, quarter)[0].1 - points[0].1).abs() < 1e-14);
}

#[test]
fn tables_by_hand() {
    let Ok(Measurement::Magnitude(rows)) = Measurement::from_vswr(&[(2.4e9, 3.0), (2.5e9, 1.0)])
    else {
        panic!("a table")
    };
    assert_near("VSWR 3 is half", rows[0].1, 0.5, 1e-12);
    let Ok(Measurement::Magnitude(rows)) = Measurement::from_return_loss(&[(2.4e9, 20.0)]) else {
        panic!("a table")
    };
    assert_near("20 dB is a tenth", rows[0].1, 0.1, 1e-12);
    assert_eq!(
        Measurement::from_vswr(&[(2.4e9, 1.2), (2.4e9, 1.3)]),
        Err(MeasurementError::Frequency {
            row: 1,
            value: 2.4e9
        })
    );
    assert!(matches!(
        Measurement::from_best(2.4e9, 0.5),
        Err(MeasurementError::Value { row: 0, .. })
    ));
    let best = Measurement::from_best(2.39e9, 1.6).expect("a best point");
    assert_eq!(
        best,
        Measurement::BestAt {
            frequency_hz: 2.39e9,
            magnitude: magnitude_of_vswr(1.6)
        }
    );
    let far = Measurement::from_best(9e9, 1.6).expect("a best point");
    let refused = diagnose(&orchard_gate(), None, &far, exact_noise());
    assert!(matches!(refused, Err(DiagnosisError::NoPoint { .. })));
}

#[test]
fn small_systems_solve() {
    // The Hilbert matrix of order 3 and its inverse (Knuth, Fundamental Algorithms, 3rd
    // ed. 1997, exercise 1.2.3-45): [[9, -36, 30], [-36, 192, -180], [30, -180, 180]].
    let mut hilbert = SquareMatrix::zero(3);
    for i in 0..3 {
        for k in 0..3 {
            hilbert.add(i, k, 1.0 / (i + k + 1) as f64);
        }
    }
    let inverse = hilbert.inverse().expect("positive definite");
    let wanted = [
        [9.0, -36.0, 30.0],
        [-36.0, 192.0, -180.0],
        [30.0, -180.0, 180.0],
    ];
    for (i, row) in wanted.iter().enumerate() {
        for (k, value) in row.iter().enumerate() {
            assert_near("inverse", inverse.at(i, k), *value, 1e-9);
        }
    }
    let x = hilbert
        .solve(&hilbert.times(&[1.0, -2.0, 3.0]))
        .expect("solved");
    assert_near("x", x[2], 3.0, 1e-12);
    let mut bad = SquareMatrix::zero(2);
    bad.add(0, 1, 1.0);
    assert!(bad.solve(&[1.0, 1.0]).is_none());
}

#[test]
fn a_changed_can_equals_one_drawn_so() {
    let design = orchard_gate();
    let mut can = ChangedCan::new(&design, None)
        .expect("sound")
        .expect("open");
    let hz = [2.35e9, 2.4e9, 2.5e9];
    let mut drawn = design.clone();
    // Moved alone, then moved, loaded and longer, then everything.
    let changes: [&[(Dimension, f64)]; 3] = [
        &[(Dimension::BackshortDistance, 1e-3)],
        &[
            (Dimension::OpenLength, 3e-3),
            (Dimension::ShuntCapacitance, 2e-13),
        ],
        &[
            (Dimension::ProbeLength, -5e-4),
            (Dimension::InsideDiameter, 4e-4),
        ],
    ];
    let mut all = Vec::new();
    for (round, change) in changes.iter().enumerate() {
        all.extend_from_slice(change);
        match round {
            0 => drawn.probe.backshort_distance_um += 1000,
            1 => {
                drawn.can.open_length_um += 3000;
                drawn.probe.shunt_ff += 200;
            }
            _ => {
                drawn.probe.length_um -= 500;
                drawn.can.inside_diameter_um += 400;
            }
        }
        let si = can.changed(&all);
        let got = can.reflections(&si, &hz).expect("computed");
        let fresh = tinwave_core::whole_can::WholeCan::new(&drawn).expect("computed");
        for (s, hz) in got.iter().zip(hz) {
            let wanted = fresh.match_at(hz).expect("computed").reflection;
            assert!((*s - wanted).abs() < 1e-9, "{round} {hz}");
        }
    }
}

#[test]
fn advice_offers_a_screw_where_the_hole_is_misplaced() {
    let mut design = orchard_gate();
    design.probe.backshort_distance_um = 38_000;
    let points = Measurement::Reflection(sweep(&design, &[], 41));
    let found = diagnose(&design, None, &points, exact_noise()).expect("a diagnosis");
    let mut steps = AdviceSteps::new(&design, None, &found).expect("sound");
    while steps.step() {}
    let advice = steps.finish();
    let screw = advice
        .remedies
        .iter()
        .find_map(|(remedy, after)| match remedy {
            Remedy::AddScrew(screw) => Some((*screw, *after)),
            _ => None,
        });
    let (screw, after) = screw.expect("a screw");
    let mut built = advice.as_built.clone();
    built.screws.push(screw);
    let can = tinwave_core::whole_can::WholeCan::new(&built).expect("possible");
    for khz in [2_401_000, 2_442_250, 2_483_500] {
        let at = can.match_at(f64::from(khz) * 1e3).expect("covered");
        assert!(at.vswr <= after + 1e-9, "{khz}: {} {after}", at.vswr);
    }
}
