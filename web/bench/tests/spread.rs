//! Tolerances and the share of cans that come out well, asked as the page asks.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop"
)]

mod common;
mod spreading;

use common::{DESIGN, answer, attribute, request, run, text, work};
use spreading::*;
use tinwave_bench::outsides::outside_of;
use tinwave_bench::parts;
use tinwave_bench::whole::whole_can;
use tinwave_core::dimension::Dimension;
use tinwave_core::tolerance::{Spread, Yield, YieldSettings, yield_of};
use tinwave_web::entry::format_decimal;

#[test]
fn fields_first_hold_the_usual_tolerances() {
    for (dimension, field) in FIELDS {
        let (_, input) = MARKUP
            .split_once(&["<input id=\"", field, "\""].concat())
            .expect("a field");
        let shown: f64 = attribute(input, "value")[0].parse().expect("a number");
        let unit = if dimension == Dimension::ShuntCapacitance {
            1e-12
        } else {
            1e-3
        };
        let usual = dimension.usual_tolerance();
        assert!((shown * unit / usual - 1.0).abs() < 1e-9, "{field}");
    }
}

#[test]
fn the_wire_of_this_can_deserves_the_care() {
    let reply = ask(&[]);
    let design = work(DESIGN).design;
    let mut longer = design.clone();
    longer.probe.length_um += 500;
    // The can is solved for anew and whole, at the same eleven points.
    let (drawn, off) = (worst(&design, 11), worst(&longer, 11));
    let says = text(&reply, "ranking-says");
    let wanted = [
        "The wire length deserves the care: within \u{b1}0.5 mm",
        &["from ", &format_decimal(drawn, 2)].concat(),
        &["to ", &format_decimal(off, 2)].concat(),
    ];
    for words in wanted {
        assert!(says.contains(words), "no “{words}” in “{says}”");
    }
    let rows = reply.get("#ranking-rows").expect("rows");
    assert_eq!(rows.matches("<tr>").count(), 7);
    let first = rows.split("</tr>").next().unwrap_or_default();
    assert!(
        first.contains("Wire length") && first.contains("MHz per mm"),
        "{first}"
    );
    assert!(
        first.contains(&[">", &format_decimal(off, 2), "<"].concat()),
        "{first}"
    );
    let picture = reply.get("#ranking-picture").expect("a picture");
    assert_eq!(picture.matches("class=\"spread-bar\"").count(), 7);
    assert!(picture.contains("Wire length, \u{b1}0.5 mm"), "{picture}");
    assert!(text(&reply, "sum").contains("the wire length deserves the care"));
}

/// The frequency of the best match moves as that of whole cans does.
#[test]
fn the_shift_is_that_of_whole_cans() {
    let design = work(DESIGN).design;
    let best = |um: i32| {
        let mut design = design.clone();
        design.probe.length_um = design.probe.length_um.saturating_add_signed(um);
        let can = whole_can(&design, outside_of(&design).as_ref()).expect("possible");
        let at = |khz: u32| can.match_at(f64::from(khz) * 1e3).expect("covered").vswr;
        // The dip in the band; the can has another above what is looked at.
        (2_340_000..2_480_000)
            .step_by(250)
            .min_by(|a, b| at(*a).total_cmp(&at(*b)))
            .expect("a best")
    };
    let per_mm = (f64::from(best(100)) - f64::from(best(-100))) / 0.2 * 1e-3;
    let reply = ask(&[]);
    let rows = reply.get("#ranking-rows").expect("rows");
    let (before, _) = rows.split_once(" MHz per mm").expect("a shift");
    let shown = before.rsplit('>').next().unwrap_or_default();
    let shown: f64 = shown.replace('\u{2212}', "-").parse().expect("a number");
    // Both from points: a parabola through a grid of 4 MHz, and the best of 0.25 MHz.
    assert!((shown / per_mm - 1.0).abs() < 0.1, "{shown}, not {per_mm}");
}

#[test]
fn no_tolerance_is_no_harm_and_too_much_is_said() {
    let exact: Vec<(&str, &str)> = FIELDS.iter().map(|(_, field)| (*field, "0")).collect();
    let reply = ask(&exact);
    assert!(text(&reply, "ranking-says").contains("None of these"));
    assert!(text(&reply, "yield-says").contains("as drawn"));
    assert_eq!(reply.get("#yield-results"), Some(""));
    let mut pressed = exact.clone();
    pressed.push(("act", "yield"));
    assert_eq!(ask(&pressed).get("!begin"), None);
    pressed.push(("job", "yield"));
    assert!(parts::begin(&request("spread", DESIGN, &pressed)).is_none());
    let wide = ask(&[("spread-wire", "5 mm")]);
    assert!(text(&wide, "ranking-says").contains("State less"));
    let wider = ask(&[("spread-length", "6")]);
    assert!(
        wider
            .get("~spread-length")
            .expect("said")
            .contains("from 0 to 5 mm")
    );
}

fn usual_spreads(spread: fn(f64) -> Spread) -> Vec<(Dimension, Spread)> {
    let all = Dimension::ALL.into_iter();
    // Fields hold whole micrometres and femtofarad.
    all.map(|dimension| {
        let size = dimension.usual_tolerance();
        let size = if dimension == Dimension::ShuntCapacitance {
            (size * 1e15).round() * 1e-15
        } else {
            (size * 1e6).round() * 1e-6
        };
        (dimension, spread(size))
    })
    .collect()
}

fn core_yield(spread: fn(f64) -> Spread, vswr_limit: f64, samples: u32, seed: u64) -> Yield {
    let design = work(DESIGN).design;
    let settings = YieldSettings {
        spreads: usual_spreads(spread),
        vswr_limit,
        samples,
        seed,
    };
    yield_of(&design, outside_of(&design).as_ref(), settings).expect("a yield")
}

fn per_cent(share: f64) -> String {
    [&format_decimal(100.0 * share, 1), " %"].concat()
}

#[test]
fn the_yield_is_that_of_the_core_for_the_same_seed() {
    let entries = [("spread-seed", "7"), ("spread-samples", "3000")];
    let reply = run("spread", DESIGN, &entries, "yield");
    let wanted = core_yield(Spread::Uniform, 1.5, 3000, 7);
    assert!(
        (0.5..0.99).contains(&wanted.pass),
        "a telling share: {wanted:?}"
    );
    let shown = |what: &str| value(&reply, "yield-results", what);
    assert_eq!(shown("Cans simulated"), "3000");
    assert_eq!(shown("Share that passes VSWR 1.5"), per_cent(wanted.pass));
    let (low, high) = wanted.pass_bounds;
    let bounds = [&per_cent(low), " to ", &per_cent(high)].concat();
    assert_eq!(shown("Bounds of that share (95 % confidence)"), bounds);
    let half = format_decimal(wanted.vswr_half, 2);
    assert_eq!(shown("Worst VSWR of the middle can (median)"), half);
    let nine = format_decimal(wanted.vswr_nine_tenths, 2);
    assert_eq!(shown("Worst VSWR that 90 % of cans stay within"), nine);
    assert!(text(&reply, "yield-says").starts_with("Simulated, not measured: "));
    let first = reply.get("#care-rows").expect("rows");
    assert!(
        first.starts_with("<tr><th scope=\"row\">Wire length"),
        "{first}"
    );
    assert!(
        first.contains(&per_cent(wanted.care[0].pass_if_exact)),
        "{first}"
    );
    let other = run("spread", DESIGN, &[("spread-seed", "8")], "yield");
    assert_ne!(other.get("#yield-results"), reply.get("#yield-results"));
}

#[test]
fn normal_spreads_and_the_other_limit_are_told_to_the_core() {
    let entries = [("spread-kind", "normal"), ("spread-limit", "2")];
    let reply = run("spread", DESIGN, &entries, "yield");
    let wanted = core_yield(Spread::Normal, 2.0, 2000, 1);
    let share = value(&reply, "yield-results", "Share that passes VSWR 2.0");
    assert_eq!(share, per_cent(wanted.pass));
}

/// Chances of 0, 1, … passing cans, can after can: another way than the code's.
fn chances(size: usize, pass: f64) -> Vec<f64> {
    let mut chances = vec![1.0];
    for _ in 0..size {
        let mut next = vec![0.0; chances.len() + 1];
        for (passed, chance) in chances.iter().enumerate() {
            next[passed] += chance * (1.0 - pass);
            next[passed + 1] += chance * pass;
        }
        chances = next;
    }
    chances
}

#[test]
fn a_batch_is_binomial() {
    let pass = core_yield(Spread::Uniform, 1.5, 2000, 1).pass;
    for size in [1_usize, 10, 37, 250] {
        let number = size.to_string();
        let reply = run("spread", DESIGN, &[("spread-batch", &number)], "yield");
        let chances = chances(size, pass);
        let mean: f64 = chances
            .iter()
            .zip(0_u32..)
            .map(|(c, k)| c * f64::from(k))
            .sum();
        let at_least = |least: usize| chances[least..].iter().sum::<f64>();
        let least = (0..=size)
            .rev()
            .find(|k| at_least(*k) >= 0.9)
            .expect("none is sure");
        let shown = |what: &str| value(&reply, "batch-results", what);
        let of = |count: &str| [count, " of ", &number].concat();
        assert_eq!(shown("Expected to pass"), of(&format_decimal(mean, 1)));
        assert_eq!(shown("With 90 % chance at least"), of(&least.to_string()));
        assert_eq!(shown("Chance that all pass"), per_cent(chances[size]));
        // At the lower bound of the share there are no more.
        let said = text(&reply, "batch-says");
        let (_, said) = said.split_once("at least ").expect("a number");
        let low: usize = said.split(' ').next().unwrap().parse().expect("a number");
        assert!(
            low <= least && low + size / 10 + 1 >= least,
            "{low} of {size}"
        );
    }
}

#[test]
fn every_change_is_answered_by_a_first_look() {
    let reply = ask(&[]);
    let wanted = core_yield(Spread::Uniform, 1.5, 400, 1);
    let share = value(&reply, "yield-results", "Share that passes VSWR 1.5");
    assert_eq!(share, per_cent(wanted.pass));
    assert!(text(&reply, "yield-says").contains("400 of 2000"));
    assert_eq!(reply.get("!begin"), None);
    assert_eq!(reply.get("!stop"), None);
}

#[test]
fn drawing_tells_figures_on_the_way_and_stops() {
    let entries = [("spread-samples", "20000"), ("job", "yield")];
    let begun = ask(&[("spread-samples", "20000"), ("act", "yield")]);
    assert_eq!(begun.get("!begin"), Some("yield"));
    assert_eq!(begun.get("?yield-work"), Some("1"));
    assert_eq!(begun.get("?screws-work"), Some(""));
    let mut job = parts::begin(&request("spread", DESIGN, &entries)).expect("a job");
    let mut told = Vec::new();
    for _ in 0..60 {
        job.step();
        told.extend(job.so_far());
    }
    assert!(told.len() > 5, "{}", told.len());
    let counts: Vec<u32> = told
        .iter()
        .map(|reply| {
            value(reply, "yield-results", "Cans simulated")
                .parse()
                .unwrap()
        })
        .collect();
    assert!(counts.windows(2).all(|two| two[0] < two[1]), "{counts:?}");
    assert!(
        told.iter().all(|reply| reply.get("#yield-says").is_none()),
        "read out each time"
    );
    // The batch may be changed meanwhile; the can may not.
    let same = ask(&[("spread-samples", "20000"), ("spread-batch", "20")]);
    assert_eq!(same.get("!stop"), None);
    let stopped = ask(&[("spread-samples", "20000"), ("act", "stop")]);
    assert_eq!(stopped.get("!stop"), Some(""));
    let kept = value(&stopped, "yield-results", "Cans simulated");
    assert_eq!(kept, counts.last().unwrap().to_string());
    // Another part's job takes the place of this one: nothing is in hand.
    drop(job);
    assert_eq!(ask(&[("act", "stop")]).get("!stop"), None);
}

#[test]
fn another_can_drops_what_is_drawn() {
    let mut job = parts::begin(&request("spread", DESIGN, &[("job", "yield")])).expect("a job");
    job.step();
    let other = DESIGN.replace("pl=28.4", "pl=28.6");
    let reply = answer("spread", &other, &[]);
    assert_eq!(reply.get("!stop"), Some(""));
    assert_eq!(reply.get("?yield-work"), Some(""));
    // The name is no other can.
    let mut job = parts::begin(&request("spread", DESIGN, &[("job", "yield")])).expect("a job");
    job.step();
    let renamed = DESIGN.replace("Orchard_gate", "Mill");
    assert_eq!(answer("spread", &renamed, &[]).get("!stop"), None);
}
