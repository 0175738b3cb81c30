//! Measure and correct, as the page asks: the log of a can.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod common;
mod measured;

use common::{DESIGN, answer, check_markup, text, work};
use measured::{
    and, by_file, length_bound, lines_of_log, number_in, points, simulated, sweep, with_wire, worst,
};
use tinwave_bench::Reply;
use tinwave_core::touchstone::write_one_port;
use tinwave_web::link;

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
