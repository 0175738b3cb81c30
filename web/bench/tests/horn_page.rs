//! Funnel and dish in the page: units, hostile text, markup.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop"
)]

mod horned;

use horned::*;

use tinwave_bench::parts;
use tinwave_core::design::Mouth;
use tinwave_web::example::example;

const MARKUP: &str = include_str!("../parts/horn.html");

const PAGE: &str = include_str!("../../../index.html");

#[test]
fn lengths_follow_the_unit() {
    let work = example();
    let metric = ask(&work, &[("horn-mouth", "300")]);
    let switched = parts::answer(&request(&work, "in", &[("horn-mouth", "300")]));
    assert_eq!(last(&switched, "=horn-unit"), "in");
    assert_eq!(last(&switched, "=horn-mouth"), "11.81102");
    assert_eq!(place(&switched, "horn-mouth-unit"), "in");
    let fields: Vec<(&str, &str)> = switched
        .pairs()
        .iter()
        .filter_map(|(name, value)| Some((name.strip_prefix('=')?, value.as_str())))
        .collect();
    let inches = parts::answer(&request(&work, "in", &fields));
    assert_eq!(
        place(&inches, "funnel-results"),
        place(&switched, "funnel-results")
    );
    assert_eq!(last(&inches, "=horn-mouth"), "");
    // And back: the same as before.
    let back = parts::answer(&request(&work, "mm", &fields));
    assert_eq!(last(&back, "=horn-mouth"), "300");
    assert_eq!(
        place(&back, "funnel-results"),
        place(&metric, "funnel-results")
    );
    assert!(metric.get("=horn-unit").is_none());
}

#[test]
fn hostile_text_stays_text() {
    let long = "9".repeat(500);
    for text in [
        "\"><script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        "NaN",
        "1e999",
        "-5",
        "0",
        "\u{0}\u{202e}7",
        "1/0",
        &long,
    ] {
        let changed: Vec<(&str, &str)> = FIRST
            .iter()
            .filter(|(name, _)| !matches!(*name, "horn-unit" | "horn-dish-by" | "horn-azimuth"))
            .map(|(name, _)| (*name, text))
            .chain([("horn-azimuth", text), ("horn-dish-by", "depth")])
            .collect();
        let reply = ask(&example(), &changed);
        for (name, value) in reply.pairs() {
            if name.starts_with('#') {
                assert!(
                    !value.contains("<script") && !value.contains("<img"),
                    "{name}"
                );
                // What a number that is none is shown as.
                assert!(!value.contains(">\u{2013}<"), "{name}: {value}");
            }
        }
        assert_ne!(last(&reply, "~horn-dish"), "", "{text}");
        assert_ne!(last(&reply, "~horn-length"), "", "{text}");
        assert_eq!(place(&reply, "dish-results"), "", "{text}");
    }
    let unit = ask(&example(), &[("horn-unit", "<b>"), ("horn-dish-by", "<b>")]);
    assert!(!place(&unit, "dish-results").is_empty());
}

#[test]
fn what_is_beyond_the_computation_is_said() {
    let mut wide = example();
    wide.design.can.inside_diameter_um = 500_000;
    let mut narrow = example();
    narrow.design.can.inside_diameter_um = 40_000;
    for work in [&wide, &narrow] {
        let reply = ask(work, &[]);
        for name in ["gain-says", "cut-says", "dish-says"] {
            let says = place(&reply, name);
            assert!(
                says.contains("beyond the full computation"),
                "{name}: {says}"
            );
        }
        assert!(place(&reply, "funnel-says").contains("one mode"));
        for name in ["gain-chart", "cut-chart", "length-chart", "dish-chart"] {
            assert_eq!(place(&reply, name), "", "{name}");
        }
        assert!(parts::begin(&request(work, "mm", &[("job", "rims")])).is_none());
        assert_eq!(place(&reply, "sum"), "not computed for this can");
    }
    let mut endless = example();
    endless.design.mouth = Mouth::Absorbing;
    let reply = ask(&endless, &[]);
    assert!(place(&reply, "gain-says").contains("beyond"));
    assert!(place(&reply, "funnel-says").starts_with("By a quick fit"));
}

/// The values of an attribute, in order.
fn attributes<'a>(markup: &'a str, name: &str) -> Vec<&'a str> {
    let opening = [" ", name, "=\""].concat();
    let parts = markup.split(opening.as_str()).skip(1);
    parts.filter_map(|part| part.split('"').next()).collect()
}

#[test]
fn the_markup_is_whole() {
    assert_eq!(parts::markup("horn"), MARKUP);
    let ids = attributes(MARKUP, "id");
    let mut unique = ids.clone();
    unique.sort_unstable();
    unique.dedup();
    assert_eq!(unique.len(), ids.len(), "{ids:?}");
    for id in &ids {
        assert!(id.starts_with("horn-"), "{id}");
        assert!(
            !PAGE.contains(&format!("id=\"{id}\"")),
            "{id} is the page's"
        );
    }
    for target in attributes(MARKUP, "for")
        .into_iter()
        .chain(attributes(MARKUP, "aria-describedby"))
    {
        assert!(ids.contains(&target), "nothing is {target}");
    }
    let labelled = attributes(MARKUP, "for");
    for tag in MARKUP.split("<input ").skip(1) {
        let tag = [" ", tag.split('>').next().unwrap_or_default()].concat();
        let (kinds, own) = (attributes(&tag, "type"), attributes(&tag, "id"));
        let within_label = kinds.contains(&"radio");
        let has_label = own.first().is_some_and(|id| labelled.contains(id));
        assert!(
            kinds.contains(&"hidden") || within_label || has_label,
            "{tag}"
        );
    }
    for (name, value) in FIRST {
        let there = attributes(MARKUP, "name").contains(&name);
        assert!(there, "{name}");
        let all = attributes(MARKUP, "value");
        assert!(value.is_empty() || all.contains(&value), "{name}: {value}");
    }
    for tag in MARKUP.split("<button ").skip(1) {
        assert!(tag.starts_with("type=\"button\" data-act=\""), "{tag}");
    }
    for kind in [
        "div", "p", "dl", "fieldset", "details", "section", "ul", "li", "span",
    ] {
        let (opened, closed) = (format!("<{kind}"), format!("</{kind}>"));
        let opened = MARKUP
            .match_indices(&opened)
            .filter(|(at, found)| {
                let after = MARKUP[at + found.len()..].chars().next();
                matches!(after, Some(' ' | '>'))
            })
            .count();
        assert_eq!(opened, MARKUP.matches(&closed).count(), "{kind}");
    }
    for said in ["sharp", "eyes", "Wind", "sun", "keep out of the beam"] {
        assert!(MARKUP.contains(said), "no caution about {said}");
    }
}

#[test]
fn every_answer_has_its_place() {
    let places = attributes(MARKUP, "data-place");
    let mut unique = places.clone();
    unique.sort_unstable();
    unique.dedup();
    assert_eq!(unique.len(), places.len());
    let section = PAGE
        .split("<section ")
        .find(|part| part.contains("id=\"horn\""));
    assert!(section.expect("the section").contains("data-place=\"sum\""));
    let work = example();
    let rims = run(&request(&work, "mm", &[("job", "rims")])).1;
    let mut replies = vec![ask(&work, &[]), ask(&reference_funnel(), &[]), rims];
    replies.push(parts::answer(&request(&work, "in", &[])));
    replies.push(ask(&work, &[("act", "funnel"), ("horn-ratio", "x")]));
    let fields = attributes(MARKUP, "name");
    let ids = attributes(MARKUP, "id");
    for reply in &replies {
        for (name, value) in reply.pairs() {
            let (sign, rest) = name.split_at(1);
            match sign {
                "#" | "?" => assert!(rest == "sum" || places.contains(&rest), "{rest}"),
                "=" => assert!(fields.contains(&rest), "{rest}"),
                "~" => {
                    assert!(fields.contains(&rest), "{rest}");
                    assert!(ids.contains(&format!("{rest}-message").as_str()), "{rest}");
                }
                _ => {}
            }
            for id in attributes(value, "id") {
                assert!(id.starts_with("horn-") && !ids.contains(&id), "{id}");
            }
        }
    }
    let first = replies.first().expect("an answer");
    let mut ids: Vec<_> = first
        .pairs()
        .iter()
        .flat_map(|(_, value)| attributes(value, "id"))
        .collect();
    let all = ids.len();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), all, "an id twice");
    let sum = place(first, "sum");
    assert!(sum.contains("dBi") && sum.contains("f/D"), "{sum}");
}
