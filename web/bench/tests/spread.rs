//! Tolerance and screws, asked as the page asks.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop"
)]

mod common;

use common::{DESIGN, answer, attribute, check_markup, request, run, text, work};
use tinwave_bench::outsides::outside_of;
use tinwave_bench::whole::whole_can;
use tinwave_bench::{Reply, parts};
use tinwave_core::design::{Design, Screw};
use tinwave_core::dimension::Dimension;
use tinwave_core::match_band::band_frequencies;
use tinwave_core::screw_search::{ScrewProgress, ScrewSearch, ScrewSettings, TunedScrews};
use tinwave_core::tolerance::{Spread, Yield, YieldSettings, yield_of};
use tinwave_web::entry::format_decimal;
use tinwave_web::link;

const MARKUP: &str = include_str!("../parts/spread.html");
const FIELDS: [(Dimension, &str); 7] = [
    (Dimension::ProbeLength, "spread-length"),
    (Dimension::BackshortDistance, "spread-distance"),
    (Dimension::InsideDiameter, "spread-diameter"),
    (Dimension::HoleDiameter, "spread-hole"),
    (Dimension::ShuntCapacitance, "spread-capacitance"),
    (Dimension::OpenLength, "spread-open"),
    (Dimension::WireDiameter, "spread-wire"),
];

fn ask(entries: &[(&str, &str)]) -> Reply {
    answer("spread", DESIGN, entries)
}

/// The value of a result in a place.
fn value(reply: &Reply, place: &str, what: &str) -> String {
    let markup = reply.get(&["#", place].concat()).expect("a place");
    let (_, rest) = markup
        .split_once(&[">", what, "</dt><dd><span class=\"value\">"].concat())
        .unwrap_or_else(|| panic!("no “{what}” in {markup}"));
    rest.split('<').next().unwrap_or_default().to_owned()
}

/// Largest VSWR over the band of a whole can.
fn worst(design: &Design, points: u32) -> f64 {
    let can = whole_can(design, outside_of(design).as_ref()).expect("possible");
    band_frequencies(design.band, points)
        .into_iter()
        .map(|khz| can.match_at(f64::from(khz) * 1e3).expect("covered").vswr)
        .fold(1.0, f64::max)
}

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
    assert_eq!(picture.matches("pic-bar").count(), 7);
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

/// A can that is far from its best, with a wall and a recess.
const POOR: &str = "v=1&n=Mill&b=2401-2483.5&d=87&l=190&w=0.25&r=3&pw=1.29&pl=27&pd=38";

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

#[test]
fn inches_are_read_and_shown() {
    let design = DESIGN;
    let mut pairs = vec![("part", "spread"), ("design", design), ("unit", "in")];
    pairs.extend([("spread-unit", "mm"), ("spread-length", "0.508")]);
    let pairs: Vec<(String, String)> = pairs
        .into_iter()
        .map(|(name, value)| (name.to_owned(), value.to_owned()))
        .collect();
    let form = tinwave_bench::form_data::write(&pairs);
    let request = tinwave_bench::Request::read(&form).expect("a request");
    let reply = parts::answer(&request);
    assert_eq!(reply.get("=spread-length"), Some("0.02"));
    assert_eq!(reply.get("=spread-unit"), Some("in"));
    assert_eq!(reply.get("#spread-length-unit"), Some("in"));
    assert!(text(&reply, "ranking-says").contains("\u{b1}0.02 in"));
    assert!(text(&reply, "ranking-rows").contains("MHz per 0.01 in"));
}

#[test]
fn usual_tolerances_come_back() {
    let reply = ask(&[
        ("act", "usual"),
        ("spread-length", "3"),
        ("spread-wire", "x"),
    ]);
    assert_eq!(reply.get("=spread-length"), Some("0.5"));
    assert_eq!(reply.get("=spread-wire"), Some("0.02"));
    assert_eq!(reply.get("=spread-capacitance"), Some("0.05"));
    assert_eq!(reply.get("~spread-wire"), Some(""));
    assert_eq!(reply.get("#ranking-rows"), ask(&[]).get("#ranking-rows"));
}

#[test]
fn cans_that_are_not_computed_say_so() {
    // Too narrow for any mode, a probe through the far wall, a mouth too wide.
    let small = DESIGN.replace("d=87", "d=40");
    let through = DESIGN.replace("pl=28.4", "pl=99");
    for design in [small.as_str(), through.as_str()] {
        let reply = answer("spread", design, &[]);
        assert!(
            reply.get("#sum").is_some_and(|sum| !sum.is_empty()),
            "{design}"
        );
        let _ = run("spread", design, &[], "screws");
    }
    let reply = answer("spread", &through, &[]);
    assert!(text(&reply, "ranking-says").contains("computed"));
    assert_eq!(reply.get("?ranking-table"), Some(""));
    assert_eq!(text(&reply, "sum"), "not computed for this can");
    let found = run("spread", &through, &[], "screws");
    assert!(text(&found, "screws-says").contains("computed"));
    assert_eq!(found.get("?screws-take"), Some(""));
}

#[test]
fn hostile_text_is_only_text() {
    const HOSTILE: [&str; 8] = [
        "<img src=x onerror=alert(1)>",
        "\"'><script>",
        "-1",
        "1e999",
        "99999999999999999999",
        "\u{0}\u{202e}",
        "NaN",
        "½",
    ];
    let names = attribute(MARKUP, "name");
    for bad in HOSTILE {
        for name in &names {
            for act in ["", "usual", bad] {
                let reply = ask(&[(name, bad), ("act", act)]);
                // What stands beside a field is set as text, not as markup.
                let markup = reply
                    .pairs()
                    .iter()
                    .filter(|(name, _)| !name.starts_with('~'));
                for (_, value) in markup {
                    assert!(
                        !value.contains("<img") && !value.contains("<script"),
                        "{value}"
                    );
                }
            }
        }
        let wrong = ask(&[("spread-length", bad), ("spread-seed", bad)]);
        let said = wrong.get("~spread-length").expect("a word on it");
        let half = bad == "½";
        assert!(half || !said.is_empty(), "{bad}");
        let drawn = parts::begin(&request(
            "spread",
            DESIGN,
            &[("spread-samples", bad), ("job", "yield")],
        ));
        assert!(drawn.is_none(), "{bad}");
        assert!(parts::begin(&request("spread", DESIGN, &[("job", bad)])).is_none());
    }
}

#[test]
fn markup_and_answers_fit_together() {
    let replies = [
        ask(&[]),
        ask(&[("act", "usual")]),
        ask(&[("act", "yield")]),
        ask(&[("act", "screws")]),
        ask(&[("act", "stop")]),
        ask(&[
            ("spread-length", "x"),
            ("spread-seed", "x"),
            ("spread-batch", "x"),
        ]),
        run("spread", DESIGN, &[], "yield"),
        run("spread", POOR, &[("spread-screws", "2")], "screws"),
    ];
    check_markup("spread", &replies);
    for id in attribute(MARKUP, "id") {
        assert!(id.starts_with("spread-"), "{id}");
    }
    // Every field that can be wrong has its message, every label its field, and
    // every group of choices its legend.
    for (_, field) in FIELDS {
        assert!(MARKUP.contains(&["id=\"", field, "-message\""].concat()));
    }
    let fields = MARKUP.matches("<input id=").count() + MARKUP.matches("<select").count();
    assert_eq!(MARKUP.matches("<label for=").count(), fields);
    assert_eq!(
        MARKUP.matches("<fieldset").count(),
        MARKUP.matches("<legend>").count()
    );
    let heads = MARKUP.matches("<th ").count();
    assert_eq!(heads, MARKUP.matches("<th scope=\"col\">").count());
    // A live region is a place, and so is read out when it changes.
    for place in ["ranking-says", "yield-says"] {
        let live = ["data-place=\"", place, "\" aria-live=\"polite\""].concat();
        assert!(MARKUP.contains(&live), "{place}");
    }
}

/// Every choice of the fields is one that the part knows: it changes the answer.
#[test]
fn every_choice_is_known() {
    let mut seen = std::collections::BTreeSet::new();
    let select = |name: &str| {
        let (_, rest) = MARKUP
            .split_once(&["<select id=\"", name, "\""].concat())
            .expect("a field");
        attribute(rest.split("</select>").next().unwrap_or_default(), "value")
    };
    for thread in select("spread-thread") {
        let reply = run("spread", POOR, &[("spread-thread", &thread)], "screws");
        let markup = reply.get("#screws-results").expect("results").to_owned();
        assert!(seen.insert(markup), "{thread} is as another");
    }
    assert_eq!(seen.len(), 6);
    let mut said = std::collections::BTreeSet::new();
    for side in select("spread-side") {
        let reply = run("spread", POOR, &[("spread-side", &side)], "screws");
        assert!(
            said.insert(text(&reply, "screws-says")),
            "{side} is as another"
        );
    }
    assert_eq!(said.len(), 7);
}
