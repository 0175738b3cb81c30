//! Tolerance and screws in the page: units, hostile text, markup.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop"
)]

mod common;
mod spreading;

use common::{DESIGN, answer, attribute, check_markup, request, run, text};
use spreading::*;
use tinwave_bench::parts;

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
