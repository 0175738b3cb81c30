//! The form as the page sends it: the markup's own defaults, with changes.

use tinwave_bench::{Reply, Request, form_data, parts};
use tinwave_web::{example, link};

/// The value of an attribute in a tag.
pub fn attribute<'a>(tag: &'a str, name: &str) -> Option<&'a str> {
    let start = [" ", name, "=\""].concat();
    let (_, after) = tag.split_once(start.as_str())?;
    after.split_once('"').map(|(value, _)| value)
}

/// Every tag of markup, without its angle brackets.
pub fn tags(markup: &str) -> impl Iterator<Item = &str> {
    let pieces = markup.split('<').skip(1);
    pieces.map(|piece| piece.split_once('>').map_or(piece, |(tag, _)| tag))
}

/// Names and values of the part's fields as the markup has them.
pub fn defaults() -> Vec<(String, String)> {
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
pub fn ask(changes: &[(&str, &str)]) -> Reply {
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
pub fn text_of(markup: &str) -> String {
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
