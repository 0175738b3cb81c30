//! Trade sizes that carry one mode, matched and taken, asked as the page asks.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop"
)]

mod common;

use common::{DESIGN, answer, attribute, check_markup, request, run, text, work};
use tinwave_bench::Reply;
use tinwave_bench::outsides::outside_of;
use tinwave_bench::parts;
use tinwave_bench::whole::whole_can;
use tinwave_web::entry::LengthUnit;
use tinwave_web::trade_sizes::TRADE_SIZES;

/// The part is unfolded.
const OPEN: (&str, &str) = ("open", "1");
const LOW_HZ: f64 = 2.401e9;
const HIGH_HZ: f64 = 2.4835e9;

/// Cells of each row, without their tags.
fn rows(reply: &Reply) -> Vec<Vec<String>> {
    let markup = reply.get("#rows").expect("rows");
    let rows = markup.split("</tr>").filter(|row| !row.is_empty());
    rows.map(|row| {
        let cells = row.split("</td>").flat_map(|cell| cell.split("</th>"));
        cells.map(untagged).collect()
    })
    .collect()
}

fn untagged(markup: &str) -> String {
    let mut parts = markup.split('<');
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |mut text, part| {
        text.push_str(part.split_once('>').map_or("", |(_, rest)| rest));
        text
    })
}

/// The VSWR of a row, without its button.
fn vswr_of(row: &[String]) -> &str {
    row[3].trim_end_matches(" Use")
}

/// Which of the list's sizes the buttons take.
fn listed(reply: &Reply) -> Vec<usize> {
    let acts = attribute(reply.get("#rows").expect("rows"), "data-act");
    let index = |act: &String| act.strip_prefix("use ").unwrap().parse().unwrap();
    acts.iter().map(index).collect()
}

/// Cutoff of a mode in a round pipe by its root (Abramowitz and Stegun 1964, table
/// 9.5: TE11 1.84118, TM01 2.40483).
fn cutoff_hz(root: f64, inside_um: u32) -> f64 {
    root * 299_792_458.0 / (std::f64::consts::PI * f64::from(inside_um) * 1e-6)
}

#[test]
fn the_list_has_every_size_that_carries_one_mode_and_no_other() {
    let reply = answer("fit", DESIGN, &[OPEN]);
    let mut found = listed(&reply);
    // The roomiest first.
    let room = |index: &usize| {
        let um = TRADE_SIZES[*index].inside_um;
        let below = 1.0 - cutoff_hz(1.841_18, um) / LOW_HZ;
        below.min(cutoff_hz(2.404_83, um) / HIGH_HZ - 1.0)
    };
    assert!(
        found.is_sorted_by(|a, b| room(a) >= room(b) - 0.03),
        "{found:?}"
    );
    found.sort_unstable();
    let carries = |um| cutoff_hz(1.841_18, um) < LOW_HZ && cutoff_hz(2.404_83, um) > HIGH_HZ;
    let wanted: Vec<usize> = (0..TRADE_SIZES.len())
        .filter(|index| carries(TRADE_SIZES[*index].inside_um))
        .collect();
    assert_eq!(found, wanted);
    let said = text(&reply, "sum");
    assert!(said.starts_with(&wanted.len().to_string()), "{said}");
}

#[test]
fn each_size_is_matched_and_as_good_as_it_says_when_it_is_taken() {
    let asked = answer("fit", DESIGN, &[OPEN]);
    assert_eq!(asked.get("!begin"), Some("match"));
    let end = run("fit", DESIGN, &[OPEN], "match");
    assert_eq!(end.get("?work"), Some(""));
    let (rows, order) = (rows(&end), listed(&end));
    assert_eq!(rows.len(), order.len());
    for (row, index) in rows.iter().zip(order).take(4) {
        let shown: f64 = vswr_of(row).parse().expect("a VSWR");
        let act = format!("use {index}");
        let taken = answer("fit", DESIGN, &[OPEN, ("act", &act)]);
        let link = taken.get("!take").expect("a design");
        let design = work(link).design;
        assert_eq!(design.can.inside_diameter_um, TRADE_SIZES[index].inside_um);
        assert_eq!(design.name, work(DESIGN).design.name);
        // The taken can as a whole, at points that the search did not use.
        let can = whole_can(&design, outside_of(&design).as_ref()).expect("a can");
        let worst = (0..=16)
            .map(|point| LOW_HZ + (HIGH_HZ - LOW_HZ) * f64::from(point) / 16.0)
            .map(|hz| can.match_at(hz).expect("solved").vswr)
            .fold(1.0, f64::max);
        assert!((worst - shown).abs() < 0.012, "{row:?}: {worst}");
    }
    // Nothing is left to do.
    assert_eq!(answer("fit", DESIGN, &[OPEN]).get("!begin"), None);
}

#[test]
fn what_was_stopped_stays_so_until_it_is_asked_for() {
    let design = &DESIGN.replace("pw=1.29", "pw=1.5");
    assert_eq!(answer("fit", design, &[OPEN]).get("!begin"), Some("match"));
    let job = parts::begin(&request("fit", design, &[OPEN, ("job", "match")]));
    let stopped = answer("fit", design, &[OPEN, ("act", "stop")]);
    drop(job);
    assert_eq!(
        (stopped.get("!stop"), stopped.get("?again")),
        (Some(""), Some("1"))
    );
    assert_eq!(answer("fit", design, &[OPEN]).get("!begin"), None);
    let again = answer("fit", design, &[OPEN, ("act", "again")]);
    assert_eq!(
        (again.get("!begin"), again.get("?again")),
        (Some("match"), Some(""))
    );
}

#[test]
fn a_job_that_is_dropped_leaves_what_it_has_found() {
    let design = &DESIGN.replace("pw=1.29", "pw=2");
    let asked = request("fit", design, &[OPEN, ("job", "match")]);
    let mut job = parts::begin(&asked).expect("a job");
    let first = (0..job.total()).find_map(|_| {
        job.step();
        job.so_far()
    });
    assert_ne!(vswr_of(&rows(&first.expect("news"))[0]), "\u{2026}");
    // While it is in hand it is not begun again.
    assert_eq!(answer("fit", design, &[OPEN]).get("!begin"), None);
    drop(job);
    let left = answer("fit", design, &[OPEN]);
    assert_eq!(left.get("!begin"), Some("match"));
    assert_ne!(vswr_of(&rows(&left)[0]), "\u{2026}");
    assert_eq!(vswr_of(&rows(&left)[1]), "\u{2026}");
}

#[test]
fn a_band_too_wide_for_any_size_says_so() {
    let design = &DESIGN.replace("b=2401-2483.5", "b=2000-4000");
    let reply = answer("fit", design, &[OPEN]);
    assert!(text(&reply, "sum").starts_with("no trade size"));
    assert_eq!((reply.get("#rows"), reply.get("!begin")), (Some(""), None));
}

#[test]
fn every_place_is_in_the_page_and_so_are_the_reasons() {
    let reply = answer("fit", DESIGN, &[OPEN]);
    check_markup(
        "fit",
        &[reply.clone(), run("fit", DESIGN, &[OPEN], "match")],
    );
    assert!(text(&reply, "why").contains("How sure"));
    let why = answer("whys", DESIGN, &[("of", "vswr-band")]);
    assert!(text(&why, "why").contains("VSWR"));
    assert_eq!(answer("whys", DESIGN, &[("of", "nothing")]), Reply::new());
}

#[test]
fn every_reason_that_the_page_has_a_place_for_is_there() {
    let page = include_str!("../../../index.html");
    let mut places = attribute(page, "data-why");
    assert!(places.len() > 20, "{}", places.len());
    places.sort();
    places.dedup();
    for of in places {
        let why = answer("whys", DESIGN, &[("of", &of)]);
        assert!(why.get("#why").is_some(), "{of}");
    }
}

#[test]
fn a_folded_part_begins_nothing() {
    let design = &DESIGN.replace("pw=1.29", "pw=2.5");
    assert_eq!(answer("fit", design, &[]).get("!begin"), None);
    assert_eq!(answer("fit", design, &[OPEN]).get("!begin"), Some("match"));
}

#[test]
fn what_is_in_hand_for_another_design_ends_and_never_shows() {
    let (first, second) = (
        &DESIGN.replace("pw=1.29", "pw=0.8"),
        &DESIGN.replace("b=2401-2483.5", "b=5150-5350"),
    );
    let mut job = parts::begin(&request("fit", first, &[OPEN, ("job", "match")])).expect("a job");
    let reply = answer("fit", second, &[OPEN]);
    assert_eq!(
        (reply.get("!stop"), reply.get("!begin")),
        (Some(""), Some("match"))
    );
    // Whatever it still says is about the newest question, in its unit.
    let wanted = listed(&reply);
    for _ in 0..job.total() {
        job.step();
    }
    let end = job.finish();
    assert_eq!(listed(&end), wanted);
}

#[test]
fn a_list_in_the_making_follows_the_unit() {
    let design = &DESIGN.replace("pw=1.29", "pw=0.6");
    let mut job = parts::begin(&request("fit", design, &[OPEN, ("job", "match")])).expect("a job");
    let mut asked = request("fit", design, &[OPEN]);
    asked.unit = LengthUnit::Inch;
    let inch = parts::answer(&asked);
    let news = (0..job.total()).find_map(|_| {
        job.step();
        job.so_far()
    });
    let shown = &rows(&news.expect("news"))[0][1];
    assert_eq!(*shown, rows(&inch)[0][1]);
    assert!(shown.contains("in"), "{shown}");
}
