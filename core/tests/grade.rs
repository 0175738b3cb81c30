//! The grade of a can against its stated limits, over a grid of cans.
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test may stop where it finds something wrong"
)]

mod support;

use std::f64::consts::PI;
use std::sync::Arc;

use support::orchard_gate;
use tinwave_core::analysis::{Analyser, Analysis, analyse};
use tinwave_core::best_cut::{FreeDimensions, best_cut_with};
use tinwave_core::constants::SPEED_OF_LIGHT;
use tinwave_core::design::{Band, Design, Mouth, Sweep};
use tinwave_core::grade::{
    Best, GOOD_VSWR, Grade, Graded, LITTLE_ROOM, MOST_IN_OTHERS, MOST_VSWR, Reason, grade,
};
use tinwave_core::outside::{OutsideSpectrum, OutsideSteps};
use tinwave_core::verdict::Finding;
use tinwave_core::waveguide_mode::Mode;

const BAND: Band = Band {
    low_khz: 2_400_000,
    high_khz: 2_483_500,
};
/// First roots of J1', J0, J2' (Abramowitz and Stegun 1964, table 9.5).
const TE11: f64 = 1.841_18;
const TM01: f64 = 2.404_83;
const TE21: f64 = 3.054_24;

fn can(diameter_mm: f64, length_mm: f64) -> Design {
    let mut design = orchard_gate();
    design.band = BAND;
    design.can.inside_diameter_um = support::um(diameter_mm);
    design.can.open_length_um = support::um(length_mm);
    // Only the band matters here.
    design.sweep = Some(Sweep {
        low_khz: BAND.low_khz,
        high_khz: BAND.high_khz,
        points: 11,
    });
    design
}

fn cutoff_mhz(root: f64, diameter_mm: f64) -> f64 {
    root * SPEED_OF_LIGHT / (PI * diameter_mm * 1e-3) / 1e6
}

fn outside(design: &Design) -> Option<Arc<OutsideSpectrum>> {
    let mut steps = OutsideSteps::of_design(design).ok()??;
    while steps.step() {}
    steps.finish().map(Arc::new)
}

/// A can with its best cut, if it has one, and the grade from it.
fn graded(design: &Design, outside: Option<&Arc<OutsideSpectrum>>) -> (Option<Analysis>, Graded) {
    let cuts = best_cut_with(design, FreeDimensions::LengthAndDistance, outside);
    let best = cuts.ok().and_then(|cuts| cuts.first().copied());
    let analysis = best.and_then(|best| {
        let mut design = design.clone();
        design.probe.length_um = best.length_um;
        design.probe.backshort_distance_um = best.backshort_distance_um;
        Analyser::new().analyse_with(&design, outside).ok()
    });
    let graded = grade(design, analysis.as_ref().map_or(Best::None, Best::Known));
    (analysis, graded)
}

fn share(analysis: &Analysis) -> Option<f64> {
    analysis.verdict.iter().find_map(|finding| match finding {
        Finding::SeveralModes { tm01_share, .. } => *tm01_share,
        _ => None,
    })
}

/// The grade that the stated limits give, from the cutoffs by hand and the analysis.
fn by_hand(diameter_mm: f64, analysis: Option<&Analysis>) -> Grade {
    let (low, high) = (2_400.0, 2_483.5);
    if cutoff_mhz(TE11, diameter_mm) >= low || cutoff_mhz(TE21, diameter_mm) < high {
        return Grade::WillNotDo;
    }
    let Some(summary) = analysis.and_then(|analysis| analysis.match_summary) else {
        return Grade::WillNotDo;
    };
    let worst = summary.worst_vswr_in_band;
    let two = cutoff_mhz(TM01, diameter_mm) <= high;
    let second = analysis.and_then(share).unwrap_or(0.0);
    if worst > MOST_VSWR || second > MOST_IN_OTHERS {
        return Grade::WillNotDo;
    }
    let little_below = low / cutoff_mhz(TE11, diameter_mm) - 1.0 < LITTLE_ROOM;
    let little_above = cutoff_mhz(TM01, diameter_mm) / high - 1.0 < LITTLE_ROOM;
    let short = analysis.is_some_and(|analysis| {
        let verdict = &analysis.verdict;
        verdict
            .iter()
            .any(|finding| matches!(finding, Finding::TooShort { .. }))
    });
    if two || little_below || little_above || short || worst > GOOD_VSWR {
        Grade::WithCare
    } else {
        Grade::WillDo
    }
}

/// 70 to 130 mm by 100 to 270 mm; the mouth is that of an endless pipe, whose
/// reflection needs no solved outside.
fn grid() -> impl Iterator<Item = (f64, f64)> {
    let widths = [
        70.0, 73.0, 73.5, 75.0, 76.0, 80.0, 84.0, 87.0, 89.5, 91.0, 92.3, 92.5, 99.0, 106.0, 113.0,
        117.3, 117.5, 130.0,
    ];
    widths
        .into_iter()
        .flat_map(|width| [100.0, 142.0, 185.0, 228.0, 270.0].map(|length| (width, length)))
}

#[test]
fn the_grade_agrees_with_its_stated_limits_over_a_grid_of_cans() {
    let mut seen = [0_u32; 3];
    for (width, length) in grid() {
        let design = can(width, length);
        let (analysis, graded) = graded(&design, None);
        let wanted = by_hand(width, analysis.as_ref());
        assert_eq!(
            graded.grade, wanted,
            "{width} x {length}: {:?}",
            graded.reasons
        );
        seen[graded.grade as usize] += 1;
    }
    assert!(seen.iter().all(|count| *count >= 5), "{seen:?}");
}

#[test]
fn the_grade_is_the_gravest_of_its_reasons_and_never_bare() {
    for (width, length) in grid() {
        let (_, graded) = graded(&can(width, length), None);
        let gravest = graded.reasons.iter().map(Reason::grade).max();
        assert_eq!(graded.grade, gravest.unwrap_or(Grade::WillDo));
        assert_eq!(
            graded.reasons.is_empty(),
            graded.grade == Grade::WillDo,
            "{width} x {length}"
        );
        let order: Vec<_> = graded.reasons.iter().map(Reason::grade).collect();
        assert!(order.is_sorted_by(|a, b| a >= b), "{order:?}");
    }
}

#[test]
fn a_can_that_carries_two_modes_never_simply_will_do() {
    for width in [92.5, 95.0, 99.0, 104.0, 110.0, 117.0] {
        let (_, graded) = graded(&can(width, 178.0), None);
        assert_ne!(graded.grade, Grade::WillDo, "{width}");
        assert!(
            graded
                .reasons
                .iter()
                .any(|reason| matches!(reason, Reason::SecondMode { .. })),
            "{width}: {:?}",
            graded.reasons
        );
        assert!(graded.room_above < 0.0);
    }
}

#[test]
fn whole_cans_agree_with_the_limits_too() {
    for (width, length) in [(74.0, 200.0), (82.5, 80.0), (87.0, 190.0), (99.0, 178.0)] {
        let design = can(width, length);
        let outside = outside(&design);
        assert!(outside.is_some());
        let (analysis, graded) = graded(&design, outside.as_ref());
        assert_eq!(
            graded.grade,
            by_hand(width, analysis.as_ref()),
            "{width} x {length}: {:?}",
            graded.reasons
        );
        assert!(graded.complete);
    }
}

#[test]
fn outside_the_limits_no_cut_is_asked_for() {
    // Cut off, cut off in part, and a third mode: graded for good without a search.
    for (width, part) in [(65.0, false), (72.5, true)] {
        let graded = grade(&can(width, 190.0), Best::Unknown);
        assert_eq!(graded.grade, Grade::WillNotDo);
        assert!(graded.complete && graded.room_below < 0.0);
        let [
            Reason::CutOff {
                te11_cutoff_hz,
                part_of_band_passes,
            },
        ] = graded.reasons[..]
        else {
            panic!("{:?}", graded.reasons);
        };
        assert!((te11_cutoff_hz / 1e6 - cutoff_mhz(TE11, width)).abs() < 0.1);
        assert_eq!(part_of_band_passes, part);
    }
    let graded = grade(&can(155.0, 190.0), Best::Unknown);
    assert_eq!(graded.grade, Grade::WillNotDo);
    assert!(matches!(
        graded.reasons[..],
        [Reason::ThirdMode {
            mode: Mode::TE21,
            ..
        }]
    ));
}

#[test]
fn until_the_best_cut_is_known_the_grade_says_so() {
    let design = can(87.0, 190.0);
    assert!(!grade(&design, Best::Unknown).complete);
    let analysis = analyse(&design).expect("in range");
    assert!(grade(&design, Best::Known(&analysis)).complete);
    let two = grade(&can(99.0, 178.0), Best::Unknown);
    assert_eq!(two.grade, Grade::WithCare);
    assert!(matches!(
        two.reasons[..],
        [Reason::SecondMode { share: None, .. }]
    ));
}

#[test]
fn a_can_without_any_cut_will_not_do() {
    let design = can(87.0, 190.0);
    let graded = grade(&design, Best::None);
    assert_eq!(graded.grade, Grade::WillNotDo);
    assert_eq!(graded.reasons, [Reason::NoCut]);
    // Nothing was computed behind an analysis without a match.
    let mut deep = design;
    deep.probe.length_um = 200_000;
    let analysis = analyse(&deep).expect("in range");
    assert_eq!(
        grade(&deep, Best::Known(&analysis)).reasons,
        [Reason::NoCut]
    );
}

#[test]
fn a_poor_match_makes_a_can_one_to_avoid() {
    let mut design = can(87.0, 190.0);
    design.mouth = Mouth::Absorbing;
    let mut analysis = analyse(&design).expect("in range");
    for (worst, wanted) in [
        (GOOD_VSWR, Grade::WillDo),
        (GOOD_VSWR + 0.01, Grade::WithCare),
        (MOST_VSWR, Grade::WithCare),
        (MOST_VSWR + 0.01, Grade::WillNotDo),
        (f64::INFINITY, Grade::WillNotDo),
    ] {
        let summary = analysis.match_summary.as_mut().expect("a match");
        summary.worst_vswr_in_band = worst;
        assert_eq!(
            grade(&design, Best::Known(&analysis)).grade,
            wanted,
            "{worst}"
        );
    }
}

#[test]
fn more_in_other_modes_than_a_tenth_is_too_much() {
    let design = can(99.0, 178.0);
    let (analysis, _) = graded(&design, None);
    let mut analysis = analysis.expect("a best cut");
    for (share, wanted) in [
        (MOST_IN_OTHERS, Grade::WithCare),
        (MOST_IN_OTHERS + 1e-6, Grade::WillNotDo),
    ] {
        for finding in &mut analysis.verdict {
            if let Finding::SeveralModes { tm01_share, .. } = finding {
                *tm01_share = Some(share);
            }
        }
        assert_eq!(
            grade(&design, Best::Known(&analysis)).grade,
            wanted,
            "{share}"
        );
    }
}
