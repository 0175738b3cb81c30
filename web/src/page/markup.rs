//! Small pieces of markup made from the model: lists, cards, options.

/// Adds text to markup, with the signs that markup is made of escaped.
pub(super) fn escape(html: &mut String, text: &str) {
    for letter in text.chars() {
        match letter {
            '&' => html.push_str("&amp;"),
            '<' => html.push_str("&lt;"),
            '>' => html.push_str("&gt;"),
            '"' => html.push_str("&quot;"),
            other => html.push(other),
        }
    }
}

/// Fills each `~` of a pattern with a text, escaped.
#[inline(never)]
pub(super) fn fill(html: &mut String, pattern: &str, texts: &[&str]) {
    let mut texts = texts.iter();
    for letter in pattern.chars() {
        if letter == '~' {
            escape(html, texts.next().copied().unwrap_or_default());
        } else {
            html.push(letter);
        }
    }
}

/// A pattern filled, as markup of its own.
pub(super) fn filled(pattern: &str, texts: &[&str]) -> String {
    let mut html = String::new();
    fill(&mut html, pattern, texts);
    html
}

/// What a flag's maker gives: something where the flag holds, else nothing.
pub(super) fn flag(holds: bool) -> String {
    if holds { "1".to_owned() } else { String::new() }
}

/// Adds one option to a list.
pub(super) fn option(list: &mut String, value: &str, label: &str) {
    fill(list, "<option value=\"~\">~</option>", &[value, label]);
}

/// Adds a group of options to a list.
pub(super) fn group(list: &mut String, name: &str, options: &str) {
    fill(list, "<optgroup label=\"~\">", &[name]);
    list.push_str(options);
    list.push_str("</optgroup>");
}
