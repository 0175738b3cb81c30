//! Measure and correct, as the page asks: what is found, and what to do.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod common;
mod measured;

use common::{DESIGN, answer, check_markup, request, run, text, work};
use measured::{and, by_file, length_bound, number_in, points, simulated, sweep, with_wire, worst};
use tinwave_bench::{Reply, parts};
use tinwave_core::complex::Complex;
use tinwave_core::touchstone::{read_touchstone, write_one_port};
use tinwave_web::entry::format_decimal;
use tinwave_web::link;

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

/// Cut as advised and measured again, a wire left 2 mm long ends up as well as any
/// length could do, and never too short. Noise of a hand-held analyser.
#[test]
fn step_by_step_the_wire_comes_out_right() {
    let drawn = work(DESIGN);
    let best = (27_000..30_400)
        .step_by(100)
        .map(|um| {
            let mut design = drawn.design.clone();
            design.probe.length_um = um;
            (um, worst(&design))
        })
        .min_by(|a, b| a.1.total_cmp(&b.1))
        .unwrap();
    let mut true_can = with_wire(&drawn.design, 2_000);
    let begun = worst(&true_can);
    let (mut link, mut log) = (DESIGN.to_owned(), String::new());
    // A linear congruential generator, from memory.
    let mut state = 5_u32;
    let mut noise = || {
        let uniform = || {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            f64::from(state >> 8) / f64::from(1_u32 << 24) - 0.5
        };
        0.01 * core::iter::repeat_with(uniform).take(12).sum::<f64>()
    };
    let mut cuts = 0;
    for _ in 0..8 {
        let seen: Vec<_> = points(&true_can, sweep())
            .into_iter()
            .map(|(hz, s)| (hz, s + Complex::new(noise(), noise())))
            .collect();
        let file = write_one_port(&seen, 50.0);
        let entries = by_file(&file, "0.01");
        let entries = and(&entries, &[("log", log.as_str())]);
        answer("measure", &link, &entries);
        let advice = run("measure", &link, &entries, "advice");
        if !text(&advice, "advice").contains("off the wire") {
            break;
        }
        let offered = advice.get("=cut").unwrap();
        let press = [("cut", offered), ("cut-in", "mm"), ("act", "did-cut")];
        let done = answer("measure", &link, &and(&entries, &press));
        let cut_um = (1e3 * offered.parse::<f64>().unwrap()).round() as i32;
        true_can = with_wire(&true_can, -cut_um);
        link = done.get("!take").unwrap().to_owned();
        log = done.get("=log").unwrap().to_owned();
        cuts += 1;
    }
    let (length, ended) = (true_can.probe.length_um, worst(&true_can));
    assert!((2..8).contains(&cuts), "{cuts} cuts");
    assert!(length + 200 >= best.0, "{length}, best {best:?}");
    assert!(
        begun > 1.3 * ended && ended < 1.06 * best.1,
        "{begun} {ended} {best:?}"
    );
}
