//! Measure and correct, as the page asks.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod common;

use common::{DESIGN, answer, check_markup, run, text, work};
use tinwave_bench::Reply;
use tinwave_bench::outsides::outside_of;
use tinwave_bench::whole::whole_can;
use tinwave_core::diagnosis::with_port_length;
use tinwave_core::touchstone::write_one_port;

/// A measurement that was simulated: the can of the design with a wire longer by so
/// many micrometres, seen through so much of a line.
fn simulated(longer_um: u32, line_m: f64) -> String {
    let mut design = work(DESIGN).design;
    design.probe.length_um += longer_um;
    let outside = outside_of(&design);
    let can = whole_can(&design, outside.as_ref()).unwrap();
    let points: Vec<_> = (0..101)
        .map(|i| 2_350e6 + 2e6 * f64::from(i))
        .filter_map(|hz| Some((hz, can.match_at(hz).ok()?.reflection)))
        .collect();
    write_one_port(&with_port_length(&points, line_m), 50.0)
}

fn number_in(text: &str, before: &str) -> f64 {
    let rest = text
        .split(before)
        .nth(1)
        .unwrap_or_default()
        .trim_start_matches('+');
    let digits: String = rest
        .chars()
        .take_while(|c| c.is_ascii_digit() || *c == '.')
        .collect();
    digits.parse().unwrap_or(f64::NAN)
}

#[test]
fn a_wire_left_long_is_found_and_what_to_cut_is_said_with_care() {
    let file = simulated(1_500, 0.0);
    let entries = [
        ("source", "file"),
        ("file", file.as_str()),
        ("care", "0.01"),
    ];
    let reply = answer("measure", DESIGN, &entries);
    let estimates = text(&reply, "estimates");
    let found = number_in(&estimates, "wire length");
    assert!((found - 1.5).abs() < 0.35, "{estimates}");
    assert!(
        !text(&reply, "conclusion").contains("as drawn, as far"),
        "{}",
        text(&reply, "conclusion")
    );
    assert_eq!(reply.get("!begin"), Some("advice"));
    assert!(
        reply
            .get("!measured")
            .is_some_and(|points| points.split(' ').count() == 303)
    );

    let advice = run("measure", DESIGN, &entries, "advice");
    let said = text(&advice, "advice");
    assert!(
        said.contains("should come off the wire. Cut only"),
        "{said}"
    );
    let (whole, safe) = (number_in(&said, "About "), number_in(&said, "Cut only "));
    assert!(safe < whole && whole < 3.0, "{said}");
    assert_eq!(advice.get("=cut"), Some(format!("{safe:.1}").as_str()));
    check_markup("measure", &[reply, advice]);
}

#[test]
fn after_a_cut_the_drawing_follows_and_the_estimate_sharpens() {
    let file = simulated(1_500, 0.0);
    let entries = vec![
        ("source", "file"),
        ("file", file.as_str()),
        ("care", "0.08"),
    ];
    let first = answer("measure", DESIGN, &entries);
    let mut cut = entries.clone();
    cut.extend([("cut", "0.8"), ("act", "did-cut")]);
    let done = answer("measure", DESIGN, &cut);
    let taken = work(done.get("!take").unwrap());
    assert_eq!(taken.design.probe.length_um, 27_600);
    assert_eq!(done.get("=file"), Some(""));
    let log = done.get("=log").unwrap();
    assert!(
        log.contains("then cut 0.8 mm off") && log.contains("wire drawn 28.4 mm"),
        "{log}"
    );

    // The same can, cut: still 1.5 mm longer than what is drawn now.
    let mut design = taken.design.clone();
    design.probe.length_um += 1_500;
    let outside = outside_of(&design);
    let can = whole_can(&design, outside.as_ref()).unwrap();
    let points: Vec<_> = (0..101)
        .map(|i| 2_350e6 + 2e6 * f64::from(i))
        .filter_map(|hz| Some((hz, can.match_at(hz).ok()?.reflection)))
        .collect();
    let again = write_one_port(&points, 50.0);
    let link = tinwave_web::link::encode(&taken);
    let known = done.get("=known").unwrap();
    let second = answer(
        "measure",
        &link,
        &[
            ("source", "file"),
            ("file", &again),
            ("care", "0.08"),
            ("known", known),
        ],
    );
    let bound = |reply: &Reply| {
        number_in(
            text(reply, "estimates")
                .split("wire length")
                .nth(1)
                .unwrap(),
            "\u{b1} ",
        )
    };
    assert!(
        bound(&second) < bound(&first),
        "{} then {}",
        bound(&first),
        bound(&second)
    );
    check_markup("measure", &[first, done, second]);
}

#[test]
fn a_line_before_the_can_is_found_and_taken_out_only_when_asked() {
    let file = simulated(0, 0.018);
    let entries = vec![
        ("source", "file"),
        ("file", file.as_str()),
        ("care", "0.01"),
    ];
    let reply = answer("measure", DESIGN, &entries);
    let port = text(&reply, "port");
    assert!(
        (number_in(&port, "a line of ") - 18.0).abs() < 2.0,
        "{port}"
    );
    assert!(text(&reply, "conclusion").starts_with("The can is as drawn"));
    let mut out = entries.clone();
    out.push(("take-out", "on"));
    assert_ne!(
        answer("measure", DESIGN, &out).get("!measured"),
        reply.get("!measured")
    );
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
    }
    let table = answer(
        "measure",
        DESIGN,
        &[("source", "table"), ("table", "2400 1.5\n2450 0.5")],
    );
    assert!(
        table
            .get("~table")
            .unwrap()
            .starts_with("Line 2: the value must be")
    );
}

#[test]
fn tables_and_best_points_serve_too() {
    let table = "2400 1,8\n2420; 1.6\n2440\t1.5\n2460 1.55\n2480 1.7";
    let reply = answer(
        "measure",
        DESIGN,
        &[("source", "table"), ("table", table), ("care", "0.03")],
    );
    assert_eq!(reply.get("~table"), Some(""));
    assert!(
        text(&reply, "compare-rows").contains("2440"),
        "{}",
        text(&reply, "compare-rows")
    );
    let best = answer(
        "measure",
        DESIGN,
        &[("source", "best"), ("best", "2390"), ("vswr", "1.6")],
    );
    assert!(text(&best, "compare-rows").contains("2390"));
    assert!(!text(&best, "conclusion").is_empty());
    // One point can't part the causes.
    assert!(text(&best, "estimates").contains("usual tolerance only"));
    check_markup("measure", &[reply, best]);
}

#[test]
fn a_wide_sweep_is_compared_over_the_sweep_of_the_design() {
    // Far off the band the measurement is better; near it nothing is under 2.
    let table = "2350 3\n2400 2.5\n2440 2.4\n2480 2.6\n2550 3\n5800 1.1";
    let reply = answer("measure", DESIGN, &[("source", "table"), ("table", table)]);
    let rows = text(&reply, "compare-rows");
    assert!(
        rows.contains("Best at2440") && !rows.contains("5800"),
        "{rows}"
    );
    assert!(rows.contains("VSWR under 2nowhere"), "{rows}");
}

#[test]
fn the_log_escapes_and_can_be_taken_back() {
    let kept = "Orchard gate\u{1f}a <b>\nmill\u{1f}other\nOrchard gate\u{1f}second";
    let entries = [("log", kept), ("act", "drop-last")];
    let reply = answer("measure", DESIGN, &entries);
    // The lines of another design stay.
    assert_eq!(
        reply.get("=log"),
        Some("mill\u{1f}other\nOrchard gate\u{1f}a <b>")
    );
    assert_eq!(reply.get("#log-lines"), Some("<li>a &lt;b&gt;</li>"));
}

#[test]
fn the_prediction_is_a_file_that_reads_back() {
    let reply = answer("measure", DESIGN, &[("act", "export")]);
    let (name, file) = reply.get("!save").unwrap().split_once('\n').unwrap();
    assert_eq!(name, "predicted.s1p");
    assert!(file.starts_with("! Predicted by computation, not measured"));
    let read = tinwave_core::touchstone::read_touchstone(file, None).unwrap();
    assert_eq!(read.points.len(), 101);
}
