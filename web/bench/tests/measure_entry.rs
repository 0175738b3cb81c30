//! Measure and correct, as the page asks: how a measurement is entered.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod common;
mod measured;

use common::{DESIGN, answer, check_markup, text, work};
use measured::{and, by_file, number_in, simulated, with_wire};
use tinwave_bench::outsides::outside_of;
use tinwave_bench::whole::whole_can;
use tinwave_bench::{Request, form_data, parts};
use tinwave_core::complex::Complex;
use tinwave_core::touchstone::{read_touchstone, write_one_port};

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
fn a_table_is_compared_over_the_sweep_of_the_design() {
    // Far off the band the measurement is better; near it nothing is under 2.
    let table = "2350 3\n2400 2.5\n2440 2.4\n2480 2.6\n2550 3\n5800 1.1";
    let reply = answer("measure", DESIGN, &[("source", "table"), ("table", table)]);
    let rows = text(&reply, "compare-rows");
    assert!(rows.contains("at2440") && !rows.contains("5800"), "{rows}");
    assert!(rows.contains("VSWR under 2nowhere"), "{rows}");
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
    let reply = answer("measure", DESIGN, &[("cut", "0.8"), ("cut-in", "in")]);
    assert_eq!(reply.get("=cut"), Some("20.32"));
    assert_eq!(reply.get("=cut-in"), Some("mm"));
    let same = answer("measure", DESIGN, &[("cut", "0.8"), ("cut-in", "mm")]);
    assert_eq!(same.get("=cut"), None);
    // Wire as long as the whole can't come off.
    for (cut, says) in [
        ("28.4", "no usable wire"),
        ("40", "no usable wire"),
        ("0", "no usable wire"),
        ("x", ""),
    ] {
        let entries = [("cut", cut), ("cut-in", "mm"), ("act", "did-cut")];
        let reply = answer("measure", DESIGN, &entries);
        let said = reply.get("~cut").unwrap();
        assert!(!said.is_empty() && said.contains(says), "{cut}: {said}");
        assert_eq!(reply.get("!take"), None);
        check_markup("measure", &[reply]);
    }
}

/// The same in inches: what is said, offered and cut is one length.
#[test]
fn inches_are_read_and_shown() {
    let file = simulated(1_500, 0.0);
    let ask = |more: &[(&str, &str)]| {
        let mut pairs = vec![("part", "measure"), ("design", DESIGN), ("unit", "in")];
        pairs.extend(by_file(&file, "0.01"));
        pairs.extend_from_slice(more);
        let pairs: Vec<(String, String)> = pairs
            .into_iter()
            .map(|(name, value)| (name.to_owned(), value.to_owned()))
            .collect();
        Request::read(&form_data::write(&pairs)).unwrap()
    };
    let reply = parts::answer(&ask(&[]));
    let found = number_in(&text(&reply, "estimates"), "wire length");
    assert!((found * 25.4 - 1.5).abs() < 0.35, "{found} in");
    let mut job = parts::begin(&ask(&[("job", "advice")])).unwrap();
    for _ in 0..job.total() {
        job.step();
    }
    let advice = job.finish();
    let said = text(&advice, "advice");
    let offered = advice.get("=cut").unwrap();
    assert!(
        said.contains(&format!("Cut only {offered} in now")),
        "{said}"
    );
    assert_eq!(advice.get("=cut-in"), Some("in"));
    let shown = parts::answer(&ask(&[("cut", offered), ("cut-in", "in")]));
    let says = text(&shown, "cut-says");
    assert!(
        says.starts_with(&format!("With {offered} in off")),
        "{says}"
    );
    assert!(!says.contains("more than"), "{says}");
    let done = parts::answer(&ask(&[
        ("cut", offered),
        ("cut-in", "in"),
        ("act", "did-cut"),
    ]));
    let left = work(done.get("!take").unwrap()).design.probe.length_um;
    let inches: f64 = offered.parse().unwrap();
    assert_eq!(28_400 - left, (inches * 25_400.0).round() as u32);
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
