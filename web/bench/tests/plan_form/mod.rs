//! The form as the page sends it: the markup's own defaults, with changes.
#![allow(dead_code, reason = "each test file uses its own part")]
#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use tinwave_bench::{Reply, Request, form_data, parts};
use tinwave_web::{example, link};

/// The value of an attribute in a tag.
pub(crate) fn attribute<'a>(tag: &'a str, name: &str) -> Option<&'a str> {
    let start = [" ", name, "=\""].concat();
    let (_, after) = tag.split_once(start.as_str())?;
    after.split_once('"').map(|(value, _)| value)
}

/// Every tag of markup, without its angle brackets.
pub(crate) fn tags(markup: &str) -> impl Iterator<Item = &str> {
    let pieces = markup.split('<').skip(1);
    pieces.map(|piece| piece.split_once('>').map_or(piece, |(tag, _)| tag))
}

/// Names and values of the part's fields as the markup has them.
pub(crate) fn defaults() -> Vec<(String, String)> {
    let mut fields: Vec<(String, String)> = Vec::new();
    let mut list = None;
    for tag in tags(parts::markup("plan")) {
        let name = attribute(tag, "name");
        if tag.starts_with("select ") {
            list = name;
        } else if tag.starts_with("option ") {
            // The first of a list is its default.
            if let Some(name) = list.take() {
                let value = attribute(tag, "value").unwrap_or_default();
                fields.push((name.to_owned(), value.to_owned()));
            }
        } else if let Some(name) = name {
            let is_box = attribute(tag, "type") == Some("checkbox");
            if !is_box {
                let value = attribute(tag, "value").unwrap_or_default();
                fields.push((name.to_owned(), value.to_owned()));
            }
        }
    }
    fields
}

/// The answer to the default form with some fields changed; the example can unless
/// `design` is among the changes.
pub(crate) fn ask(changes: &[(&str, &str)]) -> Reply {
    let mut fields = defaults();
    fields.push(("part".to_owned(), "plan".to_owned()));
    fields.push(("design".to_owned(), link::encode(&example::example())));
    fields.push(("unit".to_owned(), "mm".to_owned()));
    for (name, value) in changes {
        match fields.iter_mut().find(|(known, _)| known == name) {
            Some(field) => field.1 = (*value).to_owned(),
            None => fields.push(((*name).to_owned(), (*value).to_owned())),
        }
    }
    let request = Request::read(&form_data::write(&fields)).expect("a request");
    parts::answer(&request)
}

/// Markup without its tags, each as a space.
pub(crate) fn text_of(markup: &str) -> String {
    let mut text = String::new();
    let mut inside = false;
    for c in markup.chars() {
        match c {
            '<' => {
                inside = true;
                text.push(' ');
            }
            '>' => inside = false,
            c if !inside => text.push(c),
            _ => {}
        }
    }
    text
}

/// The cells of the row of a table that a text heads, its heading left out.
pub(crate) fn cells(reply: &Reply, place: &str, heading: &str) -> Vec<String> {
    let markup = reply.get(place).unwrap_or_default();
    let head = ["<th scope=\"row\">", heading, "</th>"].concat();
    let row = markup.split(head.as_str()).nth(1).unwrap_or_default();
    let row = row.split("</tr>").next().unwrap_or_default();
    let cells = row.split("<td>").skip(1);
    cells
        .map(|cell| cell.split("</td>").next().unwrap_or_default().to_owned())
        .collect()
}

/// A cell as a number; what follows a space is its unit.
pub(crate) fn figure(reply: &Reply, place: &str, heading: &str, column: usize) -> f64 {
    let cells = cells(reply, place, heading);
    number(cells.get(column).map_or("", String::as_str))
}

/// The value beside a result of a list.
pub(crate) fn result(reply: &Reply, place: &str, what: &str) -> String {
    let markup = reply.get(place).unwrap_or_default();
    let head = ["<dt>", what, "</dt>"].concat();
    let after = markup.split(head.as_str()).nth(1).unwrap_or_default();
    let after = after.split("<span class=\"value\">").nth(1);
    let value = after.and_then(|after| after.split("</span>").next());
    value.unwrap_or_default().to_owned()
}

/// The number that a text begins with.
pub(crate) fn number(text: &str) -> f64 {
    let text = text.replace('−', "-").replace(['+', '°'], "");
    let first = text.split(' ').next().unwrap_or_default();
    first.parse().unwrap_or(f64::NAN)
}

/// 802.11 channel 6 and half a channel on either side: 2437 MHz in the middle.
pub(crate) const AT_2437: (&str, &str) = (
    "design",
    "v=1&b=2427-2447&d=87&l=190&w=0.2&pw=1.29&pl=28.4&pd=45",
);

/// A far end with a stated gain and nothing between its radio and its antenna.
pub(crate) const STATED: [(&str, &str); 4] = [
    ("plan-far", "stated"),
    ("plan-far-gain", "12"),
    ("plan-pairs-far", "0"),
    ("plan-pairs-here", "0"),
];

/// A number within so much of another.
pub(crate) fn near(what: &str, value: f64, wanted: f64, within: f64) {
    assert!(
        (value - wanted).abs() <= within,
        "{what}: {value}, wanted {wanted} to {within}"
    );
}

/// Change of a step in the first direction, dB.
pub(crate) fn step(reply: &Reply, name: &str) -> f64 {
    figure(reply, "#steps", name, 0)
}
