//! The search in parts finds what the search in one go finds, and its numbers say it.
#![allow(clippy::expect_used, reason = "a test may stop")]

mod common;

use common::{DESIGN, work};
use tinwave_bench::cut_search::{BothCuts, CutSearch};
use tinwave_bench::outsides::outside_of;
use tinwave_core::best_cut::{BestCut, CUT_NUMBERS, FreeDimensions, best_cut_with};

const FREE: [FreeDimensions; 2] = [FreeDimensions::Length, FreeDimensions::LengthAndDistance];

#[test]
fn parts_end_where_one_go_ends() {
    let design = work(DESIGN).design;
    let outside = outside_of(&design);
    for free in FREE {
        let wanted = best_cut_with(&design, free, outside.as_ref()).expect("in range");
        assert!(!wanted.is_empty());
        for parts in [1, 3, 200] {
            let mut search = CutSearch::new(&design, free, outside.as_ref(), parts);
            let found = (0..parts).find_map(|_| search.next_part());
            assert_eq!(found.as_ref(), Some(&wanted), "{parts}");
        }
    }
}

#[test]
fn both_cuts_travel_as_numbers() {
    let design = work(DESIGN).design;
    let outside = outside_of(&design);
    let mut both = BothCuts::new(&design, outside.as_ref());
    for _ in 0..both.total() {
        both.step();
    }
    let numbers = both.to_numbers();
    let mut left = numbers.as_slice();
    for free in FREE {
        let wanted = best_cut_with(&design, free, outside.as_ref()).expect("in range");
        let (count, rest) = left.split_first().expect("how many");
        assert_eq!(*count as usize, wanted.len());
        let (cuts, rest) = rest.split_at(wanted.len() * CUT_NUMBERS);
        let (cuts, _) = cuts.as_chunks::<CUT_NUMBERS>();
        let read: Option<Vec<BestCut>> = cuts.iter().map(BestCut::from_numbers).collect();
        assert_eq!(read, Some(wanted));
        left = rest;
    }
    assert!(left.is_empty());
}

#[test]
fn what_cannot_be_computed_has_no_cuts() {
    let mut design = work(DESIGN).design;
    design.can.inside_diameter_um = 40_000; // No mode passes.
    let mut both = BothCuts::new(&design, None);
    for _ in 0..both.total() {
        both.step();
    }
    assert_eq!(both.to_numbers(), [0.0, 0.0]);
}
