//! The log of a can, from measurement to cut to measurement, as the page keeps it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod measured;

use measured::*;
use tinwave_core::complex::Complex;
use tinwave_core::design::Design;
use tinwave_core::diagnosis::{Conclusion, Knowledge, Measurement};
use tinwave_core::dimension::Dimension;
use tinwave_maker::can_log::{CanLog, Done, Figures, Line, Told, Work};
use tinwave_protocol::measure::{Advise, Diagnose, Diagnosed};

/// Weighs a measurement with what the log tells.
fn weigh(log: &CanLog, drawn: &Design, measurement: Measurement, mark: &str, noise: f64) -> Told {
    let before = log.prior(drawn, mark).knowledge;
    let found = answer(Diagnose {
        design: drawn.clone(),
        measurement,
        noise,
        knowledge: before.clone(),
    });
    let diagnosis = match found {
        Diagnosed::Found(found) if found.conclusion != Conclusion::Unexplained => Some(found),
        _ => None,
    };
    Told {
        mark: mark.to_owned(),
        figures: Figures::default(),
        diagnosis,
        before,
    }
}

fn reflection(design: &Design) -> Measurement {
    Measurement::Reflection(points(design, sweep()))
}

#[test]
fn after_a_cut_the_estimate_moves_and_sharpens() {
    let drawn = design(DESIGN);
    let mut log = CanLog::default();
    let first = weigh(&log, &drawn, simulated(1_500), "1", 0.01);
    let (was, was_sd) = length(first.diagnosis.as_ref().unwrap());
    let after = log
        .work(&first, &drawn, Work::Cut(800), Some(1_400), None)
        .unwrap();
    assert_eq!(after, drawn, "the design stays what the can should become");
    assert_eq!(log.lines.len(), 2);
    assert!(log.is_due());
    // Before the next measurement, that much less is expected.
    let prior = log.prior(&drawn, "2");
    assert!(prior.from_log && (prior.knowledge.means[0] - (was - 0.8e-3)).abs() < 1e-9);
    let second = weigh(&log, &drawn, reflection(&with_wire(&drawn, 700)), "2", 0.01);
    let (is, is_sd) = length(second.diagnosis.as_ref().unwrap());
    assert!((is - 0.7e-3).abs() < 0.35e-3, "{is}");
    assert!(is_sd <= was_sd, "{was_sd} then {is_sd}");
    assert_eq!(log.length_sds_m("2").len(), 1);
}

#[test]
fn a_noted_measurement_counts_once() {
    let drawn = design(DESIGN);
    let mut log = CanLog::default();
    let first = weigh(&log, &drawn, simulated(900), "1", 0.03);
    assert!(log.note(&first, &drawn, None));
    assert!(!log.note(&first, &drawn, None));
    // Weighed again it is weighed against the same as before.
    assert_eq!(weigh(&log, &drawn, simulated(900), "1", 0.03), first);
    // Another one of the same can sharpens it.
    let second = weigh(&log, &drawn, simulated(900), "2", 0.03);
    let sd = |told: &Told| length(told.diagnosis.as_ref().unwrap()).1;
    assert!(sd(&second) < sd(&first));
}

#[test]
fn what_is_not_explained_tells_the_next_one_nothing() {
    let drawn = design(DESIGN);
    let mut log = CanLog::default();
    let load = sweep().map(|hz| (hz, Complex::new(0.5, 0.0))).collect();
    let load = weigh(&log, &drawn, Measurement::Reflection(load), "1", 0.01);
    assert!(load.diagnosis.is_none());
    assert!(
        log.work(&load, &drawn, Work::Cut(800), None, None)
            .is_none(),
        "no ground for a cut"
    );
    assert!(log.note(&load, &drawn, None));
    let with = weigh(&log, &drawn, simulated(900), "2", 0.01);
    let without = weigh(&CanLog::default(), &drawn, simulated(900), "2", 0.01);
    assert_eq!(with, without);
}

#[test]
fn a_log_of_quite_another_can_is_not_counted() {
    let drawn = design(DESIGN);
    let mut log = CanLog::default();
    let told = weigh(&log, &drawn, simulated(500), "1", 0.01);
    log.note(&told, &drawn, None);
    let mut other = drawn;
    other.can.inside_diameter_um = 98_000;
    let prior = log.prior(&other, "2");
    assert!(prior.another_can && !prior.from_log);
    let sd = prior.knowledge.sd_of(Dimension::ProbeLength).unwrap();
    let usual = Knowledge::usual().sd_of(Dimension::ProbeLength).unwrap();
    assert!((sd - usual).abs() < 1e-9);
}

#[test]
fn against_the_can_as_found_it_is_as_drawn_and_nothing_counts_twice() {
    let drawn = design(DESIGN);
    let mut log = CanLog::default();
    let first = weigh(&log, &drawn, simulated(1_500), "1", 0.01);
    let diagnosis = first.diagnosis.clone().unwrap();
    let built = answer(Advise {
        design: drawn.clone(),
        diagnosis: diagnosis.clone(),
    })
    .unwrap()
    .as_built;
    assert!((f64::from(built.probe.length_um) - 29_900.0).abs() < 350.0);
    log.redrawn(&first, &drawn, &built, None);
    assert!(
        matches!(log.lines.last(), Some(Line::Changed(change)) if change.done == Done::Redrawn)
    );
    assert!(!log.is_due());
    let again = weigh(&log, &built, simulated(1_500), "1", 0.01);
    let found = again.diagnosis.unwrap();
    assert_eq!(found.conclusion, Conclusion::AsDrawn);
    let (off, sd) = length(&found);
    assert!(off.abs() < 0.06e-3, "{off}");
    assert!((sd / length(&diagnosis).1 - 1.0).abs() < 0.05);
}

#[test]
fn a_cut_leaves_some_wire() {
    let drawn = design(DESIGN);
    let told = weigh(&CanLog::default(), &drawn, simulated(500), "1", 0.01);
    for um in [0, 28_400, 40_000] {
        let mut log = CanLog::default();
        assert!(
            log.work(&told, &drawn, Work::Cut(um), None, None).is_none(),
            "{um}"
        );
        assert!(log.lines.is_empty());
    }
}

/// Cut as advised and measured again, a wire left 2 mm long ends up as well as any
/// length could do, and never too short. Noise of a hand-held analyser.
#[test]
fn step_by_step_the_wire_comes_out_right() {
    let drawn = design(DESIGN);
    let best = (27_000..30_400)
        .step_by(100)
        .map(|um| {
            let mut design = drawn.clone();
            design.probe.length_um = um;
            (um, worst(&design, 11))
        })
        .min_by(|a, b| a.1.total_cmp(&b.1))
        .unwrap();
    let mut true_can = with_wire(&drawn, 2_000);
    let begun = worst(&true_can, 11);
    let mut log = CanLog::default();
    // A linear congruential generator, from memory.
    let mut state = 5_u32;
    let mut noise = || {
        let uniform = || {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            f64::from(state >> 8) / f64::from(1_u32 << 24) - 0.5
        };
        0.01 * core::iter::repeat_with(uniform).take(12).sum::<f64>()
    };
    let mut cuts = 0;
    for round in 0..8 {
        let seen = points(&true_can, sweep())
            .into_iter()
            .map(|(hz, s)| (hz, s + Complex::new(noise(), noise())))
            .collect();
        let seen = Measurement::Reflection(seen);
        let told = weigh(&log, &drawn, seen, &round.to_string(), 0.01);
        let advice = answer(Advise {
            design: drawn.clone(),
            diagnosis: told.diagnosis.clone().unwrap(),
        });
        let Some((_, safe, _)) = trim(&advice.unwrap()) else {
            break;
        };
        let cut = (safe / 100 * 100).max(100);
        log.work(&told, &drawn, Work::Cut(cut), None, None).unwrap();
        true_can = with_wire(&true_can, -i32::try_from(cut).unwrap());
        cuts += 1;
    }
    let (length, ended) = (true_can.probe.length_um, worst(&true_can, 11));
    assert!((2..8).contains(&cuts), "{cuts} cuts");
    assert!(length + 200 >= best.0, "{length}, best {best:?}");
    assert!(
        begun > 1.3 * ended && ended < 1.06 * best.1,
        "{begun} {ended} {best:?}"
    );
}
