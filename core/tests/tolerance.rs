//! Tolerances: random numbers, sensitivities and the share that passes, against whole
//! cans drawn anew.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod support;

use support::{assert_near, orchard_gate};
use tinwave_core::design::Design;
use tinwave_core::dimension::Dimension;
use tinwave_core::random::Random;
use tinwave_core::tolerance::{
    Spread, YieldError, YieldSettings, YieldSteps, at_least, batch, sensitivities, yield_of,
};
use tinwave_core::whole_can::WholeCan;

#[test]
fn random_numbers_are_those_published() {
    let mut random = Random::from_state([1, 2, 3, 4]);
    let wanted = [
        11_520,
        0,
        1_509_978_240,
        1_215_971_899_390_074_240,
        1_216_172_134_540_287_360,
        607_988_272_756_665_600,
    ];
    for number in wanted {
        assert_eq!(random.bits(), number);
    }
    assert_eq!(Random::new(9), Random::new(9));
    assert_ne!(Random::new(9).bits(), Random::new(10).bits());
}

#[test]
fn random_numbers_scatter_as_stated() {
    let mut random = Random::new(1);
    let n = 40_000;
    let even: Vec<f64> = (0..n).map(|_| random.uniform()).collect();
    let mean = |values: &[f64]| values.iter().sum::<f64>() / values.len() as f64;
    let squares = |values: &[f64]| mean(&values.iter().map(|v| v * v).collect::<Vec<_>>());
    assert_near("mean", mean(&even), 0.5, 0.01);
    assert_near("square", squares(&even), 1.0 / 3.0, 0.01);
    assert!(even.iter().all(|v| (0.0..1.0).contains(v)));
    let normal: Vec<f64> = (0..n).map(|_| random.normal()).collect();
    assert_near("mean", mean(&normal), 0.0, 0.02);
    assert_near("square", squares(&normal), 1.0, 0.03);
    let beyond = normal.iter().filter(|v| v.abs() > 1.96).count();
    assert_near("beyond", beyond as f64 / f64::from(n), 0.05, 0.01);
}

#[test]
fn a_batch_is_binomial() {
    let ten = batch(10, 0.9);
    assert_near("expected", ten.expected, 9.0, 1e-12);
    assert_near("all", ten.all, 0.348_678_440_1, 1e-9);
    // Chance of 8 or more: 0.929809; of 7 or more: 0.987205.
    assert_eq!(ten.at_least, 7);
    assert_eq!(at_least(10, 0.9, 0.95), 7);
    assert_eq!(at_least(10, 0.9, 0.9), 8);
    assert_eq!(batch(12, 1.0).at_least, 12);
    assert_eq!(batch(12, 0.0).at_least, 0);
}

/// Largest VSWR over the band at nine frequencies.
fn worst(design: &Design) -> f64 {
    let can = WholeCan::new(design).expect("computed");
    let band = tinwave_core::match_band::band_frequencies(design.band, 9);
    band.into_iter()
        .map(|khz| can.match_at(f64::from(khz) * 1e3).expect("covered").vswr)
        .fold(1.0, f64::max)
}

#[test]
fn sensitivities_are_differences_of_whole_cans() {
    let design = orchard_gate();
    let found = sensitivities(&design, None, &[(Dimension::ProbeLength, 5e-4)]).expect("sound");
    let [length] = found.as_slice() else {
        panic!("one dimension")
    };
    let cut = |um: i32| {
        let mut design = design.clone();
        design.probe.length_um = design.probe.length_um.saturating_add_signed(um);
        design
    };
    // The band's edges are among nine points and among eleven, and worst here.
    assert_near("shorter", length.worst_vswr.0, worst(&cut(-500)), 1e-3);
    assert_near("longer", length.worst_vswr.1, worst(&cut(500)), 1e-3);
    let slope = |hz: f64| {
        let s = |um: i32| {
            let can = WholeCan::new(&cut(um)).expect("computed");
            can.match_at(hz).expect("covered").reflection
        };
        (s(10) - s(-10)).abs() / 20e-6
    };
    let largest = (0..11)
        .map(|i| slope(2.401e9 + 8.25e6 * f64::from(i)))
        .fold(0.0, f64::max);
    assert_near("slope", length.reflection_slope / largest, 1.0, 1e-3);
}

fn settings(vswr_limit: f64, samples: u32) -> YieldSettings {
    YieldSettings {
        spreads: vec![
            (Dimension::ProbeLength, Spread::Uniform(1e-3)),
            (Dimension::BackshortDistance, Spread::Normal(1e-3)),
            (Dimension::InsideDiameter, Spread::Normal(0.5e-3)),
        ],
        vswr_limit,
        samples,
        seed: 4,
    }
}

#[test]
fn the_share_that_passes_is_that_of_whole_cans() {
    let design = orchard_gate();
    let mut random = Random::new(77);
    let mut all: Vec<f64> = (0..300)
        .map(|_| {
            let mut can = design.clone();
            let off = |um: u32, by_m: f64| um.saturating_add_signed((by_m * 1e6).round() as i32);
            let even = 2.0 * random.uniform() - 1.0;
            can.probe.length_um = off(can.probe.length_um, 1e-3 * even);
            let distance = 1e-3 * random.normal();
            can.probe.backshort_distance_um = off(can.probe.backshort_distance_um, distance);
            let diameter = 0.5e-3 * random.normal();
            can.can.inside_diameter_um = off(can.can.inside_diameter_um, diameter);
            worst(&can)
        })
        .collect();
    all.sort_by(f64::total_cmp);
    // A limit that part of the cans pass.
    let limit = all[180];
    let share = all.iter().filter(|v| **v <= limit).count() as f64 / all.len() as f64;
    let found = yield_of(&design, None, settings(limit, 2000)).expect("a yield");
    assert_near("share", found.pass, share, 0.12);
    assert!(found.pass_bounds.0 < found.pass && found.pass < found.pass_bounds.1);
    assert!(found.surrogate_error < 0.01, "{}", found.surrogate_error);
    assert_near("half", found.vswr_half, all[150], 0.08);
    assert_eq!(found.care.len(), 3);
    assert!(found.care[0].pass_if_exact >= found.care[2].pass_if_exact);
    // The same seed, the same cans.
    let again = yield_of(&design, None, settings(limit, 2000)).expect("a yield");
    assert_eq!(found, again);
}

#[test]
fn a_yield_can_be_stopped_and_refuses_nonsense() {
    let design = orchard_gate();
    let mut steps = YieldSteps::new(&design, None, settings(2.0, 100_000)).expect("sound");
    for _ in 0..20 {
        assert!(steps.step());
    }
    assert!(steps.done() < 0.1);
    let part = steps.finish().expect("some drawn");
    assert!(part.samples > 0 && part.samples < 10_000);
    let refused = |settings| yield_of(&design, None, settings);
    assert_eq!(refused(settings(1.0, 10)), Err(YieldError::Limit(1.0)));
    assert_eq!(refused(settings(2.0, 0)), Err(YieldError::Samples(0)));
    let mut bad = settings(2.0, 10);
    bad.spreads[0].1 = Spread::Normal(-1.0);
    assert_eq!(
        refused(bad),
        Err(YieldError::Spread(Dimension::ProbeLength, -1.0))
    );
}
