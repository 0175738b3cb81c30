//! Tuning screws.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop"
)]

mod measured;

use measured::*;
use tinwave_core::design::{Design, Screw};
use tinwave_core::screw_search::{ScrewProgress, ScrewSearch, ScrewSettings, TunedScrews};
use tinwave_maker::threads::of_key;
use tinwave_protocol::screws::{SLACK, ScrewsFound, SearchScrews, slack};
use tinwave_worker::outsides::outside_of;

fn of_core(design: &Design, settings: ScrewSettings) -> TunedScrews {
    let outside = outside_of(design);
    let mut search = ScrewSearch::new(design, outside.as_ref(), settings).expect("sound");
    loop {
        if let ScrewProgress::Done(found) = search.step() {
            return found.expect("computed");
        }
    }
}

fn search(
    design: &Design,
    count: u32,
    thread: &str,
    angle_millideg: i32,
) -> (ScrewsFound, TunedScrews) {
    let thread = of_key(thread);
    let settings = ScrewSettings {
        count,
        diameter_um: thread.diameter_um,
        angle_millideg,
    };
    let found = answer(SearchScrews {
        design: design.clone(),
        settings,
        pitch_um: thread.pitch_um,
    });
    (found, of_core(design, settings))
}

#[test]
fn a_screw_is_found_and_does_what_whole_cans_do() {
    let poor = design(POOR);
    let (found, wanted) = search(&poor, 1, "m3", 180_000);
    let tuned = found.tuned.expect("computed");
    assert_eq!(tuned, wanted);
    let mut with = poor.clone();
    with.screws.push(tuned.screws[0]);
    // Whole cans with and without, at the search's five points.
    assert!((tuned.worst_vswr_without - worst(&poor, 5)).abs() < 1e-6);
    assert!((tuned.worst_vswr - worst(&with, 5)).abs() < 1e-6);
    assert!(tuned.worst_vswr < tuned.worst_vswr_without);
}

/// The quarter turns that the slack names: their ends hold, and the next do not.
#[test]
fn the_slack_is_that_of_whole_cans() {
    let poor = design(POOR);
    let (found, wanted) = search(&poor, 1, "m4", 180_000);
    let screw = wanted.screws[0];
    let at = of_key("m4").quarter_turns(screw.depth_um);
    let (low, high) = slack(&found.curves[0], at).expect("a slack");
    let vswr = |quarters: u32| {
        let mut with = poor.clone();
        with.screws.push(Screw {
            depth_um: quarters * 175,
            ..screw
        });
        worst(&with, 5)
    };
    let most = vswr(at) + SLACK;
    assert!(low < high);
    assert!(vswr(low) <= most && vswr(high) <= most);
    assert!(vswr(low - 1) > most && vswr(high + 1) > most);
}

/// The finest thread and two screws: both curves are whole and reach past the best.
#[test]
fn curves_are_whole() {
    let (found, wanted) = search(&design(DESIGN), 2, "m3", 180_000);
    assert_eq!(wanted.screws.len(), 2);
    assert_eq!(found.curves.len(), 2);
    for (screw, curve) in wanted.screws.iter().zip(&found.curves) {
        // From flush by quarter turns of 0.125 mm to 3 mm past the best.
        let points = (screw.depth_um + 3_000) / 125 + 1;
        assert_eq!(curve.len(), points as usize);
        assert_eq!(curve[0].quarter_turns, 0);
    }
}

#[test]
fn across_the_field_a_screw_does_nothing_and_an_impossible_can_has_none() {
    let (none, _) = search(&design(DESIGN), 1, "m4", 90_000);
    assert!(none.tuned.expect("computed").screws.is_empty());
    assert!(none.curves.is_empty());
    let mut through = design(DESIGN);
    through.probe.length_um = 99_000;
    let found = answer(SearchScrews {
        design: through,
        settings: ScrewSettings {
            count: 1,
            diameter_um: 4_000,
            angle_millideg: 180_000,
        },
        pitch_um: 700,
    });
    assert_eq!(found, ScrewsFound::default());
}
