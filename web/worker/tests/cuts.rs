//! The search in parts finds what the search in one go finds.
#![allow(clippy::expect_used, reason = "a test may stop")]

use tinwave_core::best_cut::{FreeDimensions, best_cut_with};
use tinwave_core::design::Design;
use tinwave_maker::example::example;
use tinwave_maker::link;
use tinwave_protocol::cuts::{BestCuts, BestLength, CutsFound};
use tinwave_protocol::{Question, from_bytes};
use tinwave_worker::outsides::outside_of;
use tinwave_worker::work;

/// A can of 87 mm, 190 mm long.
const DESIGN: &str = "v=1&n=Orchard_gate&b=2401-2483.5&d=87&l=190&pw=1.29&pl=28.4&pd=45";

fn design(link: &str) -> Design {
    link::decode(link).expect("a good link").work.design
}

fn answer<Q: Question>(question: Q) -> Q::Answer {
    let bytes = work::begin(question.into_job()).run().expect("an end");
    from_bytes(&bytes).expect("an answer of its type")
}

#[test]
fn parts_end_where_one_go_ends() {
    let design = design(DESIGN);
    let outside = outside_of(&design);
    let wanted = |free| best_cut_with(&design, free, outside.as_ref()).expect("in range");
    let both = CutsFound {
        cuts: wanted(FreeDimensions::LengthAndDistance),
        with_outside: true,
    };
    let length = CutsFound {
        cuts: wanted(FreeDimensions::Length),
        with_outside: true,
    };
    assert!(!both.cuts.is_empty() && !length.cuts.is_empty());
    let design = || design.clone();
    assert_eq!(answer(BestCuts { design: design() }), both);
    assert_eq!(answer(BestLength { design: design() }), length);
}

#[test]
fn what_cannot_be_computed_has_no_cuts() {
    let mut design = design(DESIGN);
    design.can.inside_diameter_um = 40_000; // No mode passes.
    assert_eq!(answer(BestCuts { design }).cuts, []);
}

#[test]
fn the_worked_example_is_its_own_best_cut() {
    let design = example().design;
    assert!(outside_of(&design).is_some());
    let found = answer(BestCuts {
        design: design.clone(),
    });
    let best = found.cuts.first().expect("a cut");
    assert_eq!(best.length_um, design.probe.length_um);
    assert_eq!(
        best.backshort_distance_um,
        design.probe.backshort_distance_um
    );
}
