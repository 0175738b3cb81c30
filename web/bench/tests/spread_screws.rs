//! Tuning screws, asked as the page asks.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop"
)]

mod common;
mod spreading;

use common::{DESIGN, answer, run, text, work};
use spreading::*;
use tinwave_bench::outsides::outside_of;
use tinwave_core::design::{Design, Screw};
use tinwave_core::screw_search::{ScrewProgress, ScrewSearch, ScrewSettings, TunedScrews};
use tinwave_web::entry::format_decimal;
use tinwave_web::link;

fn core_screws(design: &Design, settings: ScrewSettings) -> TunedScrews {
    let outside = outside_of(design);
    let mut search = ScrewSearch::new(design, outside.as_ref(), settings).expect("sound");
    loop {
        if let ScrewProgress::Done(found) = search.step() {
            return found.expect("computed");
        }
    }
}

fn mm(um: u32) -> String {
    [&format_decimal(f64::from(um) * 1e-3, 1), " mm"].concat()
}

#[test]
fn a_screw_is_found_stated_from_both_faces_and_put_in() {
    let design = work(POOR).design;
    assert_eq!(
        (design.can.wall_um, design.can.base_recess_um),
        (250, 3_000)
    );
    let wanted = core_screws(
        &design,
        ScrewSettings {
            count: 1,
            diameter_um: 3_000,
            angle_millideg: 180_000,
        },
    );
    let screw: Screw = wanted.screws[0];
    let entries = [("spread-thread", "m3"), ("spread-side", "180")];
    let reply = run("spread", POOR, &entries, "screws");
    let shown = |what: &str| value(&reply, "screws-results", what);
    assert_eq!(
        shown("Hole centre, from the inside of the back wall"),
        mm(screw.axial_um)
    );
    let closed = shown("Hole centre, from the closed end\u{2019}s outer rim");
    assert_eq!(closed, mm(screw.axial_um + 3_250));
    assert_eq!(
        shown("Hole centre, from the open rim"),
        mm(190_000 - screw.axial_um)
    );
    assert_eq!(shown("Depth inside the wall"), mm(screw.depth_um));
    let quarters = (f64::from(screw.depth_um) / 125.0).round().to_string();
    let turned = shown("Quarter turns in from flush with the wall");
    assert!(turned.starts_with(&[&quarters, " ("].concat()), "{turned}");
    // Whole cans with and without, at the search's five points.
    let mut with = design.clone();
    with.screws.push(screw);
    assert_eq!(
        shown("Worst VSWR without"),
        format_decimal(worst(&design, 5), 2)
    );
    assert_eq!(shown("Worst VSWR with"), format_decimal(worst(&with, 5), 2));
    assert!(worst(&with, 5) < worst(&design, 5));
    assert!(
        reply
            .get("#screws-chart")
            .expect("a chart")
            .contains("pic-line-main")
    );
    // Put in, as one edit.
    let mut pressed = entries.to_vec();
    pressed.push(("act", "take-screws"));
    let taken = answer("spread", POOR, &pressed);
    let changed = work(taken.get("!take").expect("a changed design"));
    assert_eq!(changed.design, with);
    // It is then said to be in, and can be taken out.
    let there = link::encode(&changed);
    let after = answer("spread", &there, &entries);
    assert!(text(&after, "screws-says").contains("are in the design"));
    assert_eq!(after.get("?screws-take"), Some(""));
    assert_eq!(after.get("?screws-remove"), Some("1"));
    let out = answer("spread", &there, &[("act", "remove-screws")]);
    assert_eq!(
        work(out.get("!take").expect("a changed design")).design,
        design
    );
    // Undone, it is offered again.
    assert_eq!(
        answer("spread", POOR, &entries).get("?screws-take"),
        Some("1")
    );
    assert!(text(&after, "sum").contains("with its screws VSWR"));
    // Another thread is another search.
    let other = answer("spread", POOR, &[("spread-thread", "m5")]);
    assert_eq!(other.get("?screws-take"), Some(""));
    assert_eq!(other.get("#screws-results"), Some(""));
}

/// The quarter turns that the slack names: their ends hold, and the next do not.
#[test]
fn the_slack_is_that_of_whole_cans() {
    let reply = run("spread", POOR, &[("spread-thread", "m4")], "screws");
    let shown = value(
        &reply,
        "screws-results",
        "Quarter turns that keep the VSWR within 0.05",
    );
    let (low, high) = shown.split_once(" to ").expect("two ends");
    let (low, high): (u32, u32) = (low.parse().unwrap(), high.parse().unwrap());
    let design = work(POOR).design;
    let settings = ScrewSettings {
        count: 1,
        diameter_um: 4_000,
        angle_millideg: 180_000,
    };
    let screw = core_screws(&design, settings).screws[0];
    let at = |quarters: u32| {
        let mut with = design.clone();
        with.screws.push(Screw {
            depth_um: quarters * 175,
            ..screw
        });
        worst(&with, 5)
    };
    let best = at((f64::from(screw.depth_um) / 175.0).round() as u32);
    assert!(low < high);
    assert!(at(low) <= best + 0.05 && at(high) <= best + 0.05);
    assert!(at(low - 1) > best + 0.05 && at(high + 1) > best + 0.05);
}

/// The finest thread and two screws: both curves are whole and reach past the best.
#[test]
fn curves_are_whole() {
    let entries = [("spread-screws", "2"), ("spread-thread", "m3")];
    let reply = run("spread", DESIGN, &entries, "screws");
    let chart = reply.get("#screws-chart").expect("a chart");
    let settings = ScrewSettings {
        count: 2,
        diameter_um: 3_000,
        angle_millideg: 180_000,
    };
    let screws = core_screws(&work(DESIGN).design, settings).screws;
    assert_eq!(screws.len(), 2);
    let points = |class: &str| {
        let (_, rest) = chart
            .split_once(&["<path class=\"", class, "\" d=\""].concat())
            .expect("a line");
        let data = rest.split('"').next().unwrap_or_default();
        data.matches(['M', 'L']).count()
    };
    for (screw, class) in screws.iter().zip(["pic-line-main", "pic-line-other"]) {
        // From flush by quarter turns of 0.125 mm to 3 mm past the best.
        let wanted = (screw.depth_um + 3_000) / 125 + 1;
        let drawn = points(class);
        assert!(drawn <= wanted as usize, "{drawn} of {wanted}");
        // What is above VSWR 5 is left out.
        assert!(drawn * 2 > wanted as usize, "{drawn} of {wanted}");
    }
}

#[test]
fn two_screws_and_none() {
    let two = run(
        "spread",
        POOR,
        &[("spread-screws", "2"), ("spread-side", "0")],
        "screws",
    );
    let design = work(POOR).design;
    let settings = ScrewSettings {
        count: 2,
        diameter_um: 4_000,
        angle_millideg: 0,
    };
    let wanted = core_screws(&design, settings);
    let heads = two
        .get("#screws-results")
        .expect("results")
        .matches("<h4>")
        .count();
    assert_eq!(heads, wanted.screws.len());
    let with = value(&two, "screws-results", "Worst VSWR with");
    assert_eq!(with, format_decimal(wanted.worst_vswr, 2));
    // Across the field of the mode a screw does nothing.
    let none = run("spread", DESIGN, &[("spread-side", "90")], "screws");
    assert!(text(&none, "screws-says").contains("No screw a quarter round"));
    assert_eq!(none.get("?screws-take"), Some(""));
    assert_eq!(none.get("#screws-chart"), Some(""));
}
