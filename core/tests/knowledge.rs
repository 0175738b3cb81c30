//! What is known of a can after work on it: worked by hand, errors that are independent
//! add by their squares (JCGM 100:2008, *Guide to the expression of uncertainty in
//! measurement*, 5.1.2, equation 10).
#![allow(clippy::expect_used, reason = "a test may stop")]

mod support;

use support::{assert_near, bare};
use tinwave_core::analysis::analyse;
use tinwave_core::design::Mouth;
use tinwave_core::diagnosis::{Knowledge, worst_vswr_as_built};
use tinwave_core::dimension::Dimension;

const WIRE: Dimension = Dimension::ProbeLength;
const CAN: Dimension = Dimension::InsideDiameter;

/// A wire right to 0.3 mm and a can right to 0.2 mm, their errors bound to each other.
fn bound_together() -> Knowledge {
    let mut known = Knowledge::of_tolerances(&[(WIRE, 3e-4), (CAN, 2e-4)]);
    known.means = vec![1e-3, -1e-4];
    known.covariance.add(0, 1, 2e-8);
    known.covariance.add(1, 0, 2e-8);
    known
}

#[test]
fn a_cut_moves_what_is_known_by_what_it_took() {
    // 0.3 mm and 0.4 mm, independent, make 0.5 mm.
    let cut = bound_together().after_work(WIRE, -8e-4, 4e-4);
    assert_near("the wire", cut.means[0], 2e-4, 1e-12);
    assert_near("its error", cut.sd_of(WIRE).expect("known"), 5e-4, 1e-12);
    // The can was not touched, and how its error goes with the wire's stays.
    assert_near("the can", cut.means[1], -1e-4, 1e-12);
    assert_near(
        "the can's error",
        cut.sd_of(CAN).expect("known"),
        2e-4,
        1e-12,
    );
    assert_near("together", cut.covariance.at(0, 1), 2e-8, 1e-12);
}

#[test]
fn what_was_made_anew_is_known_by_its_own_error_alone() {
    let anew = bound_together().made_anew(WIRE, 1e-4);
    assert_near("the wire", anew.means[0], 0.0, 1e-12);
    assert_near("its error", anew.sd_of(WIRE).expect("known"), 1e-4, 1e-12);
    assert_near("together", anew.covariance.at(0, 1), 0.0, 1e-12);
    assert_near("together", anew.covariance.at(1, 0), 0.0, 1e-12);
    assert_near("the can", anew.means[1], -1e-4, 1e-12);
    assert_near(
        "the can's error",
        anew.sd_of(CAN).expect("known"),
        2e-4,
        1e-12,
    );
}

#[test]
fn what_is_not_known_stays_so() {
    let known = Knowledge::of_tolerances(&[(WIRE, 3e-4)]);
    assert_eq!(known.sd_of(CAN), None);
    assert_eq!(known.clone().after_work(CAN, 1e-3, 1e-4), known);
    assert_eq!(known.clone().made_anew(CAN, 1e-4), known);
}

#[test]
fn the_worst_match_as_built_is_the_whole_computations() {
    let drawn = bare((90.0, 1.3, 31.0, 50.0), Mouth::Open, 190.0);
    let mut built = drawn.clone();
    built.probe.length_um += 700;
    let quick = worst_vswr_as_built(&built, None)
        .expect("sound")
        .expect("computed");
    let whole = analyse(&built).expect("sound").match_summary;
    let worst = whole.expect("computed").worst_vswr_in_band;
    // The whole computation looks at more points of the band.
    assert!(quick <= worst * (1.0 + 1e-9), "{quick} {worst}");
    assert_near("worst VSWR", quick / worst, 1.0, 5e-3);
}
