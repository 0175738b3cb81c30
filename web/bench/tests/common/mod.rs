//! A part as the page uses it: entries in, places out, without a browser.

#![allow(dead_code, reason = "each test program uses its share")]

use std::collections::BTreeSet;

use tinwave_bench::form_data;
use tinwave_bench::parts;
use tinwave_bench::{Reply, Request};
use tinwave_web::link;
use tinwave_web::workpiece::Workpiece;

/// A design of our own: a can of 87 mm, 190 mm long.
pub(crate) const DESIGN: &str = "v=1&n=Orchard_gate&b=2401-2483.5&d=87&l=190&pw=1.29&pl=28.4&pd=45";

/// The work of a link.
pub(crate) fn work(link: &str) -> Workpiece {
    link::decode(link).expect("a good link").work
}

/// A question of a part about a design, in millimetres.
pub(crate) fn request(part: &str, design: &str, entries: &[(&str, &str)]) -> Request {
    let mut pairs = vec![("part", part), ("design", design), ("unit", "mm")];
    pairs.extend_from_slice(entries);
    let pairs: Vec<(String, String)> = pairs
        .into_iter()
        .map(|(name, value)| (name.to_owned(), value.to_owned()))
        .collect();
    Request::read(&form_data::write(&pairs)).expect("a request that can be read")
}

/// The part's answer.
pub(crate) fn answer(part: &str, design: &str, entries: &[(&str, &str)]) -> Reply {
    parts::answer(&request(part, design, entries))
}

/// What comes of the job that the answer asked for, run to its end.
pub(crate) fn run(part: &str, design: &str, entries: &[(&str, &str)], job: &str) -> Reply {
    let mut entries = entries.to_vec();
    entries.push(("job", job));
    let mut work = parts::begin(&request(part, design, &entries)).expect("a job");
    for _ in 0..work.total() {
        work.step();
    }
    work.finish()
}

/// The text of a place, without its tags.
pub(crate) fn text(reply: &Reply, place: &str) -> String {
    let markup = reply.get(&["#", place].concat()).unwrap_or_default();
    let mut out = String::new();
    let mut inside = false;
    for c in markup.chars() {
        match c {
            '<' => inside = true,
            '>' => inside = false,
            c if !inside => out.push(c),
            _ => {}
        }
    }
    out
}

/// Values of an attribute in markup.
pub(crate) fn attribute(markup: &str, name: &str) -> Vec<String> {
    let pattern = [" ", name, "=\""].concat();
    let parts = markup.split(&pattern).skip(1);
    parts
        .filter_map(|rest| rest.split('"').next())
        .map(str::to_owned)
        .collect()
}

/// Fails unless every label names a field, every id is there once and begins with
/// the part's name, and every place that the answers
/// write is there.
pub(crate) fn check_markup(part: &str, replies: &[Reply]) {
    let markup = parts::markup(part);
    let ids = attribute(markup, "id");
    let once: BTreeSet<&String> = ids.iter().collect();
    assert_eq!(once.len(), ids.len(), "an id stands twice");
    for id in &ids {
        let own = id.starts_with(&[part, "-"].concat());
        assert!(own, "{id}");
    }
    for label in attribute(markup, "for") {
        assert!(ids.contains(&label), "no field {label}");
    }
    for described in attribute(markup, "aria-describedby") {
        assert!(ids.contains(&described), "no text {described}");
    }
    let mut places = attribute(markup, "data-place");
    places.push("sum".to_owned());
    let names = attribute(markup, "name");
    for reply in replies {
        for (name, _) in reply.pairs() {
            let (sign, rest) = name.split_at(1);
            let known = match sign {
                "#" | "?" => places.iter().any(|place| place == rest),
                "=" | "~" => names.iter().any(|name| name == rest),
                _ => true,
            };
            assert!(known, "nothing in the page for {name}");
        }
    }
}
