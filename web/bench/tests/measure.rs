//! Measure and correct, as the page asks.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod common;

use common::{DESIGN, answer, check_markup, request, run, text, work};
use tinwave_bench::outsides::outside_of;
use tinwave_bench::whole::whole_can;
use tinwave_bench::{Reply, parts};
use tinwave_core::complex::Complex;
use tinwave_core::design::Design;
use tinwave_core::diagnosis::with_port_length;
use tinwave_core::match_band::band_frequencies;
use tinwave_core::touchstone::{read_touchstone, write_one_port};
use tinwave_web::entry::format_decimal;
use tinwave_web::link;

/// Reflection of a whole can, as an analyser would see it: simulated.
fn points(design: &Design, hz: impl Iterator<Item = f64>) -> Vec<(f64, Complex)> {
    let outside = outside_of(design);
    let can = whole_can(design, outside.as_ref()).unwrap();
    hz.filter_map(|hz| Some((hz, can.match_at(hz).ok()?.reflection)))
        .collect()
}

fn sweep() -> impl Iterator<Item = f64> {
    (0..101).map(|i| 2_350e6 + 2e6 * f64::from(i))
}

/// The can of a design with a wire longer by so many micrometres.
fn with_wire(design: &Design, longer_um: i32) -> Design {
    let mut design = design.clone();
    design.probe.length_um = design.probe.length_um.saturating_add_signed(longer_um);
    design
}

/// A measurement that was simulated: the can of the design with a wire longer by so
/// many micrometres, seen through so much of a line.
fn simulated(longer_um: i32, line_m: f64) -> String {
    let points = points(&with_wire(&work(DESIGN).design, longer_um), sweep());
    write_one_port(&with_port_length(&points, line_m), 50.0)
}

/// Largest VSWR over the band of a whole can, at eleven points.
fn worst(design: &Design) -> f64 {
    let band = band_frequencies(design.band, 11).into_iter();
    let points = points(design, band.map(|khz| f64::from(khz) * 1e3));
    let largest = points.iter().map(|p| p.1.abs()).fold(0.0, f64::max);
    (1.0 + largest) / (1.0 - largest)
}

fn by_file<'a>(file: &'a str, care: &'a str) -> Vec<(&'a str, &'a str)> {
    vec![("source", "file"), ("file", file), ("care", care)]
}

fn and<'a>(entries: &[(&'a str, &'a str)], more: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    [more, entries].concat()
}

fn number_in(text: &str, before: &str) -> f64 {
    let rest = text.split(before).nth(1).unwrap_or_default();
    let sign = if rest.starts_with('\u{2212}') {
        -1.0
    } else {
        1.0
    };
    let digits: String = rest
        .trim_start_matches(['+', '\u{2212}'])
        .chars()
        .take_while(|c| c.is_ascii_digit() || *c == '.')
        .collect();
    let digits = digits.trim_end_matches('.');
    digits.parse().map_or(f64::NAN, |n: f64| sign * n)
}

/// The bound of the wire's length in the table of estimates.
fn length_bound(reply: &Reply) -> f64 {
    let estimates = text(reply, "estimates");
    number_in(estimates.split("wire length").nth(1).unwrap(), "\u{b1} ")
}

fn lines_of_log(reply: &Reply) -> usize {
    reply.get("#log-lines").unwrap().matches("<li>").count()
}

#[test]
fn a_wire_left_long_is_found_and_what_to_cut_is_said_with_care() {
    let file = simulated(1_500, 0.0);
    let entries = by_file(&file, "0.01");
    let reply = answer("measure", DESIGN, &entries);
    let estimates = text(&reply, "estimates");
    let found = number_in(&estimates, "wire length");
    assert!((found - 1.5).abs() < 0.35, "{estimates}");
    let conclusion = text(&reply, "conclusion");
    assert!(!conclusion.contains("as drawn, as far"), "{conclusion}");
    let left = text(&reply, "misfit");
    let with_drawing = number_in(&left, "0 to 1)");
    assert!(
        number_in(&left, "can as found") < 0.1 * with_drawing,
        "{left}"
    );
    assert_eq!(reply.get("!begin"), Some("advice"));
    let measured = reply.get("!measured").unwrap();
    assert_eq!(measured.split(' ').count(), 303);

    let advice = run("measure", DESIGN, &entries, "advice");
    let said = text(&advice, "advice");
    assert!(
        said.contains("should come off the wire. Cut only"),
        "{said}"
    );
    let (whole, safe) = (number_in(&said, "About "), number_in(&said, "Cut only "));
    assert!(safe < whole && whole < 3.0, "{said}");
    assert_eq!(advice.get("=cut"), Some(format!("{safe:.1}").as_str()));

    // What is said of the first step is what the true can then does.
    let true_can = with_wire(&work(DESIGN).design, 1_500 - (1e3 * safe) as i32);
    let (expected, true_worst) = (number_in(&said, "first step alone: "), worst(&true_can));
    assert!(
        (expected / true_worst - 1.0).abs() < 0.05,
        "{expected}, not {true_worst}"
    );
    let cut = format!("{safe:.1}");
    let shown = answer("measure", DESIGN, &and(&entries, &[("cut", &cut)]));
    let says = text(&shown, "cut-says");
    assert_eq!(
        number_in(&says, "off, VSWR "),
        number_in(&said, "first step alone: ")
    );
    assert!(!says.contains("more than"), "{says}");
    let more = format!("{:.1}", safe + 0.1);
    let warned = answer("measure", DESIGN, &and(&entries, &[("cut", &more)]));
    assert!(text(&warned, "cut-says").contains("more than the safe step"));
    let far = answer("measure", DESIGN, &and(&entries, &[("cut", "4")]));
    assert!(text(&far, "cut-says").contains("more than should come off at all"));
    // The advice at hand is shown again, not worked out again.
    assert_eq!(shown.get("!begin"), None);
    assert_eq!(shown.get("#advice"), advice.get("#advice"));
    check_markup("measure", &[reply, advice, shown, warned, far]);
}

#[test]
fn after_a_cut_the_drawing_follows_and_the_estimate_sharpens() {
    let file = simulated(1_500, 0.0);
    let entries = by_file(&file, "0.03");
    let first = answer("measure", DESIGN, &entries);
    let done = answer(
        "measure",
        DESIGN,
        &and(&entries, &[("cut", "0.8"), ("act", "did-cut")]),
    );
    let taken = work(done.get("!take").unwrap());
    assert_eq!(taken.design.probe.length_um, 27_600);
    for field in ["=file", "=table", "=cut", "=best"] {
        assert_eq!(done.get(field), Some(""), "{field}");
    }
    let log = text(&done, "log-lines");
    assert!(
        log.contains("then cut 0.8 mm off") && log.contains("wire drawn 28.4 mm"),
        "{log}"
    );
    assert_eq!(lines_of_log(&done), 2);
    assert!(text(&done, "measured-notes").contains("Measure again"));

    // The same can, cut: still 1.5 mm longer than what is drawn now.
    let cut_can = with_wire(&taken.design, 1_500);
    let again = write_one_port(&points(&cut_can, sweep()), 50.0);
    let entries = and(
        &by_file(&again, "0.03"),
        &[("log", done.get("=log").unwrap())],
    );
    let link = link::encode(&taken);
    let second = answer("measure", &link, &entries);
    let (was, is) = (length_bound(&first), length_bound(&second));
    assert!(is <= was, "{was} then {is}");
    assert!(text(&second, "estimates").contains("\u{b1} 0.1 mm") || is <= was);
    let sharpened = text(&second, "sharpened");
    assert!(
        sharpened.contains(&format!("known to \u{b1} {was:.1} mm after"))
            && sharpened.contains(&format!("now known to \u{b1} {is:.1} mm")),
        "{sharpened}"
    );

    // Noted, the cut has its VSWR before and after.
    let noted = answer("measure", &link, &and(&entries, &[("act", "note")]));
    let log = text(&noted, "log-lines");
    let (before, after) = (
        worst(&with_wire(&work(DESIGN).design, 1_500)),
        worst(&cut_can),
    );
    let told = |what: &str, end: &str| {
        let part = log.split("off (wire").nth(1).unwrap();
        let head = part.split(end).next().unwrap();
        number_in(head.rsplit([';', ',']).next().unwrap(), what)
    };
    assert!(
        (told("VSWR ", " before") / before - 1.0).abs() < 0.05,
        "{log}"
    );
    assert!((told(" ", " expected") / after - 1.0).abs() < 0.1, "{log}");
    assert!(
        (told(" ", " measured after") / after - 1.0).abs() < 0.05,
        "{log}"
    );
    check_markup("measure", &[first, done, second, noted]);
}

#[test]
fn a_noted_measurement_counts_once() {
    let file = simulated(900, 0.0);
    let entries = by_file(&file, "0.03");
    let first = answer("measure", DESIGN, &entries);
    let noted = answer("measure", DESIGN, &and(&entries, &[("act", "note")]));
    let log = noted.get("=log").unwrap();
    assert_eq!(lines_of_log(&noted), 1);
    let entries = and(&entries, &[("log", log)]);
    let again = answer("measure", DESIGN, &entries);
    assert_eq!(again.get("#estimates"), first.get("#estimates"));
    assert_eq!(again.get("!begin"), None, "nothing is worked out anew");
    let twice = answer("measure", DESIGN, &and(&entries, &[("act", "note")]));
    assert_eq!(twice.get("=log"), None);
    assert!(text(&twice, "log-says").contains("already"));
    // Another measurement of the same can sharpens it: its line is another one.
    let other = simulated(900, 0.002);
    let entries = and(&by_file(&other, "0.03"), &[("log", log)]);
    let second = answer("measure", DESIGN, &entries);
    assert!(length_bound(&second) <= length_bound(&first));
    assert_ne!(second.get("#estimates"), first.get("#estimates"));
    assert!(text(&second, "sharpened").contains("earlier measurements"));
    let nothing = answer("measure", DESIGN, &[("act", "note")]);
    assert!(text(&nothing, "log-says").contains("no measurement"));
}

#[test]
fn what_was_found_is_taken_into_the_design() {
    let file = simulated(1_500, 0.0);
    let entries = by_file(&file, "0.01");
    let reply = answer("measure", DESIGN, &and(&entries, &[("act", "as-built")]));
    let taken = work(reply.get("!take").unwrap());
    let length = f64::from(taken.design.probe.length_um);
    assert!((length - 29_900.0).abs() < 350.0, "{length}");
    assert_eq!(taken.design.name, work(DESIGN).design.name);
    assert_eq!(reply.get("=file"), None, "the measurement stays");
    let log = reply.get("=log").unwrap();
    assert!(text(&reply, "log-lines").contains("made like the can as found"));
    // Against the new drawing the can is as drawn, and nothing is counted twice.
    let entries = and(&entries, &[("log", log)]);
    let next = answer("measure", &link::encode(&taken), &entries);
    assert!(text(&next, "conclusion").starts_with("The can is as drawn"));
    let off = number_in(&text(&next, "estimates"), "wire length");
    assert!(off.abs() < 0.06, "{}", text(&next, "estimates"));
    assert_eq!(
        length_bound(&next),
        length_bound(&answer("measure", DESIGN, &by_file(&file, "0.01")))
    );
}

#[test]
fn a_short_wire_is_lengthened_and_the_log_tells_it() {
    let file = simulated(-2_000, 0.0);
    let entries = by_file(&file, "0.01");
    answer("measure", DESIGN, &entries);
    let advice = run("measure", DESIGN, &entries, "advice");
    let said = text(&advice, "advice");
    assert!(said.contains("solder in one that is"), "{said}");
    assert_eq!(advice.get("=cut"), Some(""), "nothing is to be cut");
    let longer = number_in(&said, "solder in one that is ");
    let markup = advice.get("#advice").unwrap();
    let act = markup.split("data-act=\"").nth(1).unwrap();
    let act = act.split('"').next().unwrap();
    let done = answer("measure", DESIGN, &and(&entries, &[("act", act)]));
    let taken = work(done.get("!take").unwrap()).design.probe.length_um;
    let off = f64::from(taken) - 28_400.0 - 1e3 * longer;
    assert!(off.abs() <= 50.0, "{taken}");
    assert!(text(&done, "log-lines").contains("then a wire"));
    check_markup("measure", &[advice, done]);
}

#[test]
fn what_cannot_be_told_apart_is_said() {
    // A hole drilled 2 mm off: stray capacitance does much the same.
    let mut design = work(DESIGN).design;
    design.probe.backshort_distance_um += 2_000;
    let file = write_one_port(&points(&design, sweep()), 50.0);
    let reply = answer("measure", DESIGN, &by_file(&file, "0.01"));
    let said = text(&reply, "conclusion");
    assert!(
        said.starts_with("Cannot tell") && said.contains("distance from the back wall, stray"),
        "{said}"
    );
    // Only where it is best: the hole can't be seen at all.
    let entries = [("source", "best"), ("best", "2360"), ("vswr", "1.3")];
    let reply = answer("measure", DESIGN, &entries);
    assert!(text(&reply, "estimates").contains("usual tolerance only"));
    assert!(text(&reply, "compare-rows").contains("not measured"));
}

#[test]
fn what_is_not_explained_is_not_cut() {
    // A plain resistor of 150 ohm, VSWR 3 everywhere: no can.
    let load: Vec<(f64, Complex)> = sweep().map(|hz| (hz, Complex::new(0.5, 0.0))).collect();
    let file = write_one_port(&load, 50.0);
    let entries = by_file(&file, "0.01");
    let reply = answer("measure", DESIGN, &entries);
    let said = text(&reply, "conclusion");
    assert!(said.contains("No likely difference"), "{said}");
    assert!(text(&reply, "advice").starts_with("Don\u{2019}t cut"));
    assert_eq!(reply.get("!begin"), None);
    let job = request("measure", DESIGN, &and(&entries, &[("job", "advice")]));
    assert!(parts::begin(&job).is_none());
    let drawn = answer("measure", DESIGN, &and(&entries, &[("act", "as-built")]));
    assert_eq!(drawn.get("!take"), None);
    assert!(text(&drawn, "redrawn").contains("explained"));
    // Noted, it tells the next one nothing.
    let noted = answer("measure", DESIGN, &and(&entries, &[("act", "note")]));
    let log = noted.get("=log").unwrap();
    let good = simulated(900, 0.0);
    let entries = by_file(&good, "0.01");
    let with_log = answer("measure", DESIGN, &and(&entries, &[("log", log)]));
    let without = answer("measure", DESIGN, &entries);
    assert_eq!(with_log.get("#estimates"), without.get("#estimates"));
    check_markup("measure", &[drawn, noted]);
    assert!(text(&reply, "compare-rows").contains("VSWR under 2nowhere"));
}

#[test]
fn a_line_before_the_can_is_found_and_taken_out_only_when_asked() {
    let file = simulated(0, 0.018);
    let entries = by_file(&file, "0.01");
    let reply = answer("measure", DESIGN, &entries);
    let port = text(&reply, "port");
    assert!(
        (number_in(&port, "a line of ") - 18.0).abs() < 2.0,
        "{port}"
    );
    assert!(text(&reply, "conclusion").starts_with("The can is as drawn"));
    assert_eq!(reply.get("?take-out-box"), Some("1"));
    let out = answer("measure", DESIGN, &and(&entries, &[("take-out", "on")]));
    assert_ne!(out.get("!measured"), reply.get("!measured"));
    // Without the line it is nearly what an analyser at the wall would see.
    let bare = answer("measure", DESIGN, &by_file(&simulated(0, 0.0), "0.01"));
    let numbers = |reply: &Reply| -> Vec<f64> {
        let words = reply.get("!measured").unwrap().split(' ');
        words.map(|word| word.parse().unwrap()).collect()
    };
    let off = numbers(&out)
        .iter()
        .zip(numbers(&bare))
        .map(|(a, b)| (a - b).abs())
        .fold(0.0, f64::max);
    assert!(off < 0.1e6, "{off} millionths");
}

#[test]
fn what_is_wrong_is_said_beside_the_field_and_nothing_is_lost() {
    for (file, says) in [
        (
            "# MHz S RI R 50\n2400 0.1 x",
            "Line 2: \u{201c}x\u{201d} is no number.",
        ),
        ("2400 0.1 0.2", "Line 1: numbers stand here"),
        ("# MHz S RI R 50\n2400 0,1 0", "has a comma"),
        (
            "# MHz S RI R 50\n2400 .1 0\n2300 .1 0",
            "Line 3: each frequency",
        ),
        ("<script>alert(1)</script>", "Line 1: "),
    ] {
        let reply = answer("measure", DESIGN, &[("source", "file"), ("file", file)]);
        let said = reply.get("~file").unwrap();
        assert!(said.contains(says), "{file}: {said}");
        assert_eq!(reply.get("=file"), None, "what was entered stays");
        assert_eq!(reply.get("?found"), Some(""));
        assert_eq!(reply.get("!measured"), Some(""));
    }
    for (table, says) in [
        ("2400 1.5\n2450 0.5", "Line 2: the value must be from 1"),
        ("MHz VSWR\n2400 1.5\n2450", "Line 3: needs a frequency"),
        ("2400 1.5 3", "Line 1: needs a frequency and one value"),
        ("\n2400 1.5\n2400 1.6", "Line 3: each frequency"),
        ("2400 much 1", "Line 1: "),
        ("no numbers", "no line with numbers"),
    ] {
        let entries = [("source", "table"), ("table", table)];
        let reply = answer("measure", DESIGN, &entries);
        let said = reply.get("~table").unwrap();
        assert!(said.contains(says), "{table}: {said}");
    }
    let empty = answer(
        "measure",
        DESIGN,
        &[("act", "file file"), ("file-name", "a.s1p")],
    );
    assert!(empty.get("~file").unwrap().contains("empty"));
    let best = answer(
        "measure",
        DESIGN,
        &[("source", "best"), ("best", "2390"), ("vswr", "0.9")],
    );
    assert_eq!(best.get("~vswr"), Some("A VSWR is 1 or more."));
    let far = [("source", "best"), ("best", "900"), ("vswr", "1.5")];
    let far = answer("measure", DESIGN, &far);
    assert!(text(&far, "conclusion").contains("No point of the measurement"));
    check_markup("measure", &[empty, best, far]);
}

#[test]
fn tables_and_best_points_serve_too() {
    let table =
        "frequency VSWR\n2400 1,8 ! hazy\n2.42 GHz; 1.6\n2440\t1.5\n2460 MHz 1.55\n2480,1.7";
    let entries = [("source", "table"), ("table", table), ("care", "0.03")];
    let reply = answer("measure", DESIGN, &entries);
    assert_eq!(reply.get("~table"), Some(""));
    let rows = text(&reply, "compare-rows");
    assert!(rows.contains("2440") && rows.contains("1.50"), "{rows}");
    // Return loss in dB and S11 in dB are the same but for the sign.
    let vswr = answer(
        "measure",
        DESIGN,
        &[("source", "table"), ("table", "2400 2\n2440 1.5")],
    );
    for loss in ["2400 9.55\n2440 13.979", "2400 -9.55\n2440 -13.979"] {
        let entries = [("source", "table"), ("table", loss), ("column", "loss")];
        let other = answer("measure", DESIGN, &entries);
        assert_eq!(other.get("#compare-rows"), vswr.get("#compare-rows"));
    }
    let best = answer(
        "measure",
        DESIGN,
        &[("source", "best"), ("best", "2390"), ("vswr", "1.6")],
    );
    assert!(text(&best, "compare-rows").contains("2390"));
    assert!(!text(&best, "conclusion").is_empty());
    // One point can't part the causes.
    assert!(text(&best, "estimates").contains("usual tolerance only"));
    check_markup("measure", &[reply, vswr, best]);
}

#[test]
fn the_other_port_and_a_name_that_does_not_fit() {
    let one = simulated(1_000, 0.0);
    let read = read_touchstone(&one, None).unwrap();
    let mut two = String::from("# Hz S RI R 50\n");
    for point in &read.points {
        let s = point.s[0][0];
        two += &format!("{} 0.5 0.1 0 0 0 0 {} {}\n", point.frequency_hz, s.re, s.im);
    }
    let wanted = answer("measure", DESIGN, &by_file(&one, "0.01"));
    let port2 = and(
        &by_file(&two, "0.01"),
        &[("port", "2"), ("file-name", "a.S2P")],
    );
    let reply = answer("measure", DESIGN, &port2);
    assert_eq!(reply.get("#conclusion"), wanted.get("#conclusion"));
    assert_eq!(reply.get("!measured"), wanted.get("!measured"));
    // Pasted over a file of one port.
    let pasted = and(&by_file(&two, "0.01"), &[("file-name", "a.s1p")]);
    let pasted = answer("measure", DESIGN, &pasted);
    assert_eq!(pasted.get("~file"), Some(""));
    assert_ne!(pasted.get("!measured"), wanted.get("!measured"));
    let wrong = and(&by_file(&one, "0.01"), &[("port", "2")]);
    let wrong = answer("measure", DESIGN, &wrong);
    assert!(wrong.get("~file").unwrap().contains("one port"));
}

#[test]
fn a_wide_sweep_is_judged_near_the_band() {
    let design = with_wire(&work(DESIGN).design, 800);
    let outside = outside_of(&design);
    let can = whole_can(&design, outside.as_ref()).unwrap();
    const NEAR: core::ops::Range<f64> = 2.3e9..2.6e9;
    // Far off something else is matched better: a simulated resistor.
    let wide: Vec<(f64, Complex)> = (0..1601)
        .map(|i| {
            let hz = 1e9 + 2e6 * f64::from(i);
            let near = NEAR.contains(&hz);
            let at = near.then(|| can.match_at(hz).ok()).flatten();
            (hz, at.map_or(Complex::new(0.01, 0.0), |at| at.reflection))
        })
        .collect();
    let narrow: Vec<_> = wide
        .iter()
        .copied()
        .filter(|(hz, _)| NEAR.contains(hz))
        .collect();
    let rows = |points: &[(f64, Complex)]| {
        let file = write_one_port(points, 50.0);
        let reply = answer("measure", DESIGN, &by_file(&file, "0.01"));
        (
            text(&reply, "compare-rows"),
            reply.get("!measured").map(str::to_owned),
        )
    };
    let sweep = work(DESIGN).design.effective_sweep();
    assert!(NEAR.contains(&(f64::from(sweep.low_khz) * 1e3)));
    assert!(NEAR.contains(&(f64::from(sweep.high_khz) * 1e3)));
    assert_eq!(rows(&wide), rows(&narrow));
}

#[test]
fn the_chart_is_of_vswr_or_return_loss() {
    let file = simulated(500, 0.0);
    let entries = by_file(&file, "0.01");
    let vswr = answer("measure", DESIGN, &entries);
    let loss = answer("measure", DESIGN, &and(&entries, &[("scale", "loss")]));
    assert!(vswr.get("#compare-chart").unwrap().contains(">VSWR<"));
    assert!(
        loss.get("#compare-chart")
            .unwrap()
            .contains(">Return loss, dB<")
    );
    assert_eq!(vswr.get("#compare-rows"), loss.get("#compare-rows"));
    let best = |reply: &Reply| text(reply, "compare-says");
    assert!(best(&vswr).contains("less is better") && best(&loss).contains("more is better"));
}

#[test]
fn each_can_has_its_own_log_and_a_new_name_keeps_it() {
    let file = simulated(500, 0.0);
    let noted = answer(
        "measure",
        DESIGN,
        &and(&by_file(&file, "0.01"), &[("act", "note")]),
    );
    let kept = |reply: &Reply, before: &[(String, String)]| -> Vec<(String, String)> {
        let fields = ["log", "can", "can-drawn", "shelf", "log-was"];
        let of = |name: &str| {
            let old = before.iter().find(|(known, _)| known == name);
            let new = reply.get(&["=", name].concat()).map(str::to_owned);
            new.or_else(|| old.map(|(_, value)| value.clone()))
                .unwrap_or_default()
        };
        fields.map(|name| (name.to_owned(), of(name))).to_vec()
    };
    let ask = |design: &str, fields: &[(String, String)]| {
        let fields: Vec<(&str, &str)> = fields
            .iter()
            .map(|(a, b)| (a.as_str(), b.as_str()))
            .collect();
        answer("measure", design, &fields)
    };
    let fields = kept(&noted, &[]);
    let renamed = DESIGN.replace("Orchard_gate", "Barn");
    let reply = ask(&renamed, &fields);
    assert_eq!(lines_of_log(&reply), 1);
    assert!(text(&reply, "log-of").contains("Barn"));
    let fields = kept(&reply, &fields);
    let other = renamed.replace("Barn", "Mill").replace("d=87", "d=92");
    let reply = ask(&other, &fields);
    assert_eq!(lines_of_log(&reply), 0);
    let fields = kept(&reply, &fields);
    let back = ask(&renamed, &fields);
    assert_eq!(lines_of_log(&back), 1);
    assert_eq!(back.get("=log"), noted.get("=log"));
    check_markup("measure", &[noted, reply, back]);
}

#[test]
fn a_log_of_quite_another_can_is_not_counted() {
    let file = simulated(500, 0.0);
    let noted = answer(
        "measure",
        DESIGN,
        &and(&by_file(&file, "0.01"), &[("act", "note")]),
    );
    let other = DESIGN.replace("d=87", "d=98");
    let table = [
        ("source", "table"),
        ("table", "2400 1.8\n2440 1.5\n2480 1.7"),
    ];
    let with_log = and(&table, &[("log", noted.get("=log").unwrap())]);
    let reply = answer("measure", &other, &with_log);
    assert!(text(&reply, "sharpened").contains("another size"));
    assert_eq!(
        reply.get("#estimates"),
        answer("measure", &other, &table).get("#estimates")
    );
}

#[test]
fn lines_are_taken_out_and_brought_back() {
    let log = "a <b>\nsecond\nthird";
    let dropped = answer("measure", DESIGN, &[("log", log), ("act", "drop 1")]);
    assert_eq!(dropped.get("=log"), Some("a <b>\nthird"));
    assert_eq!(dropped.get("=log-was"), Some(log));
    assert_eq!(dropped.get("?log-back"), Some("1"));
    let shown = dropped.get("#log-lines").unwrap();
    assert!(shown.starts_with("<li>a &lt;b&gt; <button"), "{shown}");
    assert!(shown.contains("aria-label=\"Take line 2 out\""), "{shown}");
    let entries = [
        ("log", "a <b>\nthird"),
        ("log-was", log),
        ("act", "bring-back"),
    ];
    let back = answer("measure", DESIGN, &entries);
    assert_eq!(back.get("=log"), Some(log));
    assert_eq!(back.get("?log-back"), Some(""));
    let forgotten = answer("measure", DESIGN, &[("log", log), ("act", "forget")]);
    assert_eq!(forgotten.get("=log"), Some(""));
    assert_eq!(forgotten.get("=log-was"), Some(log));
    let beyond = answer("measure", DESIGN, &[("log", log), ("act", "drop 7")]);
    assert_eq!(beyond.get("=log"), None);
    let saved = answer("measure", DESIGN, &[("log", log), ("act", "save-log")]);
    let saved_file = saved.get("!save").unwrap();
    assert!(saved_file.starts_with("can-log.txt\n") && saved_file.contains("2. second\n"));
    check_markup("measure", &[dropped, back, forgotten, saved]);
}

#[test]
fn hostile_text_is_only_text() {
    const EVIL: &str = "<img src=x onerror=alert(1)>\"'&";
    let file = ["# MHz S RI R 50\n2400 .1 ", EVIL].concat();
    let named = DESIGN.replace("Orchard_gate", "a.3cimg.3e");
    let fields = [
        "source",
        "file",
        "file-name",
        "port",
        "column",
        "table",
        "best",
        "vswr",
        "care",
        "take-out",
        "scale",
        "cut",
        "cut-in",
        "cut-offered",
        "log",
        "log-was",
        "can",
        "can-drawn",
        "shelf",
        "act",
    ];
    let mut entries: Vec<(&str, &str)> = fields.map(|field| (field, EVIL)).to_vec();
    for source in ["file", "table", "best"] {
        for act in [
            "",
            "note",
            "did-cut",
            "remedy 0",
            "bring-back",
            "drop 0",
            "stop",
        ] {
            entries[0].1 = source;
            entries[1].1 = &file;
            entries.last_mut().unwrap().1 = act;
            for design in [DESIGN, &named] {
                let reply = answer("measure", design, &entries);
                for (name, value) in reply.pairs() {
                    let markup = name.starts_with('#');
                    assert!(!(markup && value.contains("<img")), "{name}: {value}");
                }
                check_markup("measure", &[reply]);
            }
        }
    }
}

#[test]
fn the_cut_follows_the_unit() {
    let inches = |entries: &[(&str, &str)]| {
        let mut all = vec![("unit", "in")];
        all.extend_from_slice(entries);
        parts::answer(&request("measure", DESIGN, &all))
    };
    let reply = answer("measure", DESIGN, &[("cut", "0.8"), ("cut-in", "in")]);
    assert_eq!(reply.get("=cut"), Some("20.32"));
    assert_eq!(reply.get("=cut-in"), Some("mm"));
    let same = answer("measure", DESIGN, &[("cut", "0.8"), ("cut-in", "mm")]);
    assert_eq!(same.get("=cut"), None);
    // `unit` of the page stands before the form's own fields.
    let reply = inches(&[("cut", "0.8"), ("cut-in", "mm")]);
    let shown = reply.get("=cut").map(|_| "in");
    assert!(shown.is_none() || reply.get("=cut-in") == Some("in"));
    // Wire as long as the whole can't come off.
    for (cut, says) in [
        ("28.4", "no usable wire"),
        ("40", "no usable wire"),
        ("x", ""),
    ] {
        let entries = [("cut", cut), ("cut-in", "mm"), ("act", "did-cut")];
        let reply = answer("measure", DESIGN, &entries);
        let said = reply.get("~cut").unwrap();
        assert!(!said.is_empty() && said.contains(says), "{cut}: {said}");
        assert_eq!(reply.get("!take"), None);
    }
}

#[test]
fn the_work_can_be_stopped_and_taken_up() {
    let file = simulated(700, 0.0);
    let entries = by_file(&file, "0.01");
    let begun = answer("measure", DESIGN, &entries);
    assert_eq!(begun.get("!begin"), Some("advice"));
    let stopped = answer("measure", DESIGN, &and(&entries, &[("act", "stop")]));
    assert_eq!(stopped.get("!stop"), Some(""));
    assert!(
        stopped
            .get("#advice")
            .unwrap()
            .contains("data-act=\"advise\"")
    );
    let idle = answer("measure", DESIGN, &entries);
    assert_eq!(idle.get("!begin"), None);
    let again = answer("measure", DESIGN, &and(&entries, &[("act", "advise")]));
    assert_eq!(again.get("!begin"), Some("advice"));
    // A job whose measurement is no longer there begins nothing.
    let none = request(
        "measure",
        &DESIGN.replace("d=87", "d=88"),
        &[("job", "advice")],
    );
    assert!(parts::begin(&none).is_none());
}

#[test]
fn the_prediction_is_a_file_that_reads_back() {
    let reply = answer("measure", DESIGN, &[("act", "export")]);
    let (name, file) = reply.get("!save").unwrap().split_once('\n').unwrap();
    assert_eq!(name, "predicted.s1p");
    assert!(file.starts_with("! Predicted by computation, not measured"));
    let read = read_touchstone(file, None).unwrap();
    assert_eq!(read.points.len(), 101);
    let design = work(DESIGN).design;
    let first = read.points[0];
    let again = points(&design, [first.frequency_hz].into_iter());
    assert!((again[0].1 - first.s[0][0]).abs() < 1e-9);
    // Measured as it was predicted, the can is as drawn.
    let back = answer("measure", DESIGN, &by_file(file, "0.01"));
    assert!(text(&back, "conclusion").starts_with("The can is as drawn"));
    let rows = text(&back, "compare-rows");
    let shown = format_decimal(worst(&design), 2);
    assert_eq!(rows.matches(&shown).count(), 2, "{rows} {shown}");
}

#[test]
fn cautions_stand_where_they_arise() {
    let markup = parts::markup("measure");
    for words in [
        "never connect a transmitter",
        "eye protection",
        "sharp",
        "is off",
    ] {
        assert!(markup.to_lowercase().contains(words), "{words}");
    }
}
