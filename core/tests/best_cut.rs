//! The best cut against an exhaustive search and against a parameter study.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test may stop, and say what it found"
)]

mod support;

use support::{assert_near, bare, khz, orchard_gate, tolerance};
use tinwave_core::analysis::analyse;
use tinwave_core::best_cut::{BestCutSearch, FreeDimensions, Progress, best_cut};
use tinwave_core::design::{Band, Design, Mouth, Sweep};

/// Worst VSWR over the band, from the analysis.
fn worst(design: &Design) -> f64 {
    let summary = analyse(design).expect("in range").match_summary;
    summary.map_or(f64::INFINITY, |summary| summary.worst_vswr_in_band)
}

fn with_cut(design: &Design, length_um: u32, distance_um: u32) -> Design {
    let mut design = design.clone();
    design.probe.length_um = length_um;
    design.probe.backshort_distance_um = distance_um;
    // Only the band matters here.
    design.sweep = Some(Sweep {
        low_khz: design.band.low_khz,
        high_khz: design.band.high_khz,
        points: 11,
    });
    design
}

#[test]
fn no_cut_on_a_grid_is_better() {
    let design = orchard_gate();
    let slack = tolerance("best_cut::best_cut", "best_cut::no_cut_on_a_grid_is_better");
    let cuts = best_cut(&design, FreeDimensions::LengthAndDistance).expect("in range");
    let best = cuts.first().expect("a cut");
    let mut lowest = f64::INFINITY;
    for length_um in (20_000..45_000).step_by(500) {
        for distance_um in (15_000..125_000).step_by(2_500) {
            lowest = lowest.min(worst(&with_cut(&design, length_um, distance_um)));
        }
    }
    println!("search {} grid {lowest}", best.worst_vswr);
    assert!(
        best.worst_vswr <= lowest + slack,
        "grid found {lowest}, search {best:?}"
    );
    let stated = worst(&with_cut(
        &design,
        best.length_um,
        best.backshort_distance_um,
    ));
    assert_near("worst VSWR as analysed", best.worst_vswr, stated, 0.01);
}

#[test]
fn best_length_keeps_the_distance() {
    let design = orchard_gate();
    let cuts = best_cut(&design, FreeDimensions::Length).expect("in range");
    let best = cuts.first().expect("a cut");
    assert_eq!(
        best.backshort_distance_um,
        design.probe.backshort_distance_um
    );
    let at = |length_um| worst(&with_cut(&design, length_um, best.backshort_distance_um));
    let stated = at(best.length_um);
    for away_um in [100, 300, 1_000, 3_000] {
        assert!(
            at(best.length_um - away_um) >= stated - 1e-3,
            "{away_um} shorter is no better"
        );
        assert!(
            at(best.length_um + away_um) >= stated - 1e-3,
            "{away_um} longer is no better"
        );
    }
}

#[test]
fn slack_ends_where_vswr_passes_its_limit() {
    let design = orchard_gate();
    for free in [FreeDimensions::Length, FreeDimensions::LengthAndDistance] {
        let cuts = best_cut(&design, free).expect("in range");
        let best = cuts.first().expect("a cut");
        let (less, more) = best.length_slack.to_vswr_2.expect("under 2 at the best");
        for length_um in [best.length_um - less, best.length_um + more] {
            let vswr = worst(&with_cut(&design, length_um, best.backshort_distance_um));
            // 0.06 of VSWR is a twentieth of a millimetre or less there.
            assert_near("VSWR at the end of the length's slack", vswr, 2.0, 0.06);
        }
    }
}

/// Study of an endless 90 mm guide at 2437 MHz, 50 ohm: the reference solver's
/// own best cuts, calculated for this project (fine setting of the same
/// formulas: checks the search, not the physics).
#[test]
fn parameter_study() {
    let allowed_mm = tolerance("best_cut::BestCut", "best_cut::parameter_study");
    let mut design = bare((90.0, 0.813, 31.0, 51.4), Mouth::Absorbing, 300.0);
    design.band = Band {
        low_khz: khz(2436.9),
        high_khz: khz(2437.1),
    };
    let only = best_cut(&design, FreeDimensions::Length).expect("in range");
    let only = only.first().expect("a cut");
    assert_near(
        "best length",
        f64::from(only.length_um) / 1e3,
        29.59,
        allowed_mm,
    );
    let pairs = best_cut(&design, FreeDimensions::LengthAndDistance).expect("in range");
    assert_eq!(pairs.len(), 2, "two good pairs: {pairs:?}");
    let mut found: Vec<(f64, f64)> = pairs
        .iter()
        .map(|cut| {
            (
                f64::from(cut.length_um) / 1e3,
                f64::from(cut.backshort_distance_um) / 1e3,
            )
        })
        .collect();
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    for ((length, distance), (wanted_length, wanted_distance)) in
        found.into_iter().zip([(29.50, 50.72), (31.19, 62.02)])
    {
        assert_near("length of a pair", length, wanted_length, allowed_mm);
        // The distance hardly matters there: ten times the length's slack.
        assert_near(
            "distance of a pair",
            distance,
            wanted_distance,
            10.0 * allowed_mm,
        );
    }
}

#[test]
fn a_can_that_passes_nothing_has_no_best_cut() {
    let design = bare((60.0, 1.0, 28.0, 40.0), Mouth::Open, 150.0);
    let cuts = best_cut(&design, FreeDimensions::LengthAndDistance).expect("in range");
    assert!(cuts.is_empty(), "no cut for a can below cutoff: {cuts:?}");
}

#[test]
fn progress_never_goes_back() {
    let mut search =
        BestCutSearch::new(&orchard_gate(), FreeDimensions::LengthAndDistance).expect("in range");
    let mut before = 0.0;
    loop {
        match search.step() {
            Progress::Working { done } => {
                assert!((before..=1.0).contains(&done), "{before} then {done}");
                before = done;
            }
            Progress::Done(cuts) => {
                assert!(!cuts.is_empty(), "a cut is found");
                break;
            }
        }
    }
}
