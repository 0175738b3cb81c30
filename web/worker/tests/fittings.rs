//! What printing wants computed.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use tinwave_core::cap::Sheet;
use tinwave_core::design::{Design, Mouth};
use tinwave_maker::link;
use tinwave_protocol::print::{CapFound, Fittings, FittingsFound, RivetDepth};
use tinwave_protocol::{Question, from_bytes};
use tinwave_worker::work::begin;

/// A design of our own: a can of 87 mm, 190 mm long.
const DESIGN: &str = "v=1&n=Orchard_gate&b=2401-2483.5&d=87&l=190&pw=1.29&pl=28.4&pd=45";

fn design() -> Design {
    link::decode(DESIGN).expect("a good link").work.design
}

fn answer<Q: Question>(question: Q) -> Q::Answer {
    let bytes = begin(question.into_job()).run().expect("an end");
    from_bytes(&bytes).expect("bytes of an answer")
}

fn found(design: Design, cap: Option<Sheet>, bracket_millideg: Option<u32>) -> FittingsFound {
    answer(Fittings {
        design,
        cap,
        bracket_millideg,
    })
}

const POLYETHYLENE: Sheet = Sheet {
    thickness_um: 800,
    permittivity_milli: 2_250,
    loss_tangent_micro: 300,
};

#[test]
fn the_wire_has_limits_on_both_sides_and_the_wider_hold_the_narrower() {
    let found = found(design(), None, None);
    let (narrow, wide) = (found.within_1_5.unwrap(), found.within_2.unwrap());
    assert!(narrow.shortest_um <= 28_400 && narrow.longest_um >= 28_400);
    assert!(wide.shortest_um < narrow.shortest_um && wide.longest_um > narrow.longest_um);
    assert!(found.cap.is_none() && found.bracket.is_none());
}

#[test]
fn a_cap_is_computed_and_moves_the_match() {
    let Some(CapFound::Computed {
        vswr_without,
        vswr_with,
        loss_db,
        ..
    }) = found(design(), Some(POLYETHYLENE), None).cap
    else {
        panic!("not computed");
    };
    assert!(vswr_without >= 1.0 && vswr_with >= 1.0);
    assert!((vswr_with - vswr_without).abs() > 1e-6);
    assert!(loss_db.is_some_and(|loss| (0.0..0.1).contains(&loss)));
}

#[test]
fn a_cap_over_a_funnel_is_not_computed_and_said_so() {
    let mut design = design();
    design.mouth = Mouth::Funnel {
        mouth_diameter_um: 180_000,
        half_angle_millideg: 25_000,
    };
    let found = found(design, Some(POLYETHYLENE), None);
    assert_eq!(found.cap, Some(CapFound::NotComputed));
}

#[test]
fn the_bracket_has_a_depth_that_is_on_its_pattern() {
    let found = found(design(), None, Some(180_000)).bracket.unwrap();
    let bracket = found.bracket;
    assert_eq!(
        (bracket.angle_millideg, bracket.hole_um, bracket.spacing_um),
        (180_000, 4_100, 40_000)
    );
    let RivetDepth::Within(depth_um) = found.depth else {
        panic!("{found:?}");
    };
    assert!((1_000..87_000).contains(&depth_um), "{depth_um}");
    assert_eq!(bracket.deepest_um, Some(depth_um / 100 * 100));
}
