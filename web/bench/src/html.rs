//! Markup from text.

/// Text as markup: nothing in it can be taken for a tag or end an attribute.
#[must_use]
pub fn escaped(text: &str) -> String {
    let mut markup = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => markup.push_str("&amp;"),
            '<' => markup.push_str("&lt;"),
            '>' => markup.push_str("&gt;"),
            '"' => markup.push_str("&quot;"),
            other => markup.push(other),
        }
    }
    markup
}

/// A result as the page shows it: what it is, and its value.
#[must_use]
pub fn result(what: &str, value: &str) -> String {
    [
        "<div class=\"result\"><dt>",
        &escaped(what),
        "</dt><dd><span class=\"value\">",
        &escaped(value),
        "</span></dd></div>",
    ]
    .concat()
}

/// A row of a table; the first cell heads it.
#[must_use]
pub fn row(cells: &[&str]) -> String {
    let mut markup = String::from("<tr>");
    for (place, cell) in cells.iter().enumerate() {
        let (open, close) = if place == 0 {
            ("<th scope=\"row\">", "</th>")
        } else {
            ("<td>", "</td>")
        };
        markup.push_str(open);
        markup.push_str(&escaped(cell));
        markup.push_str(close);
    }
    markup.push_str("</tr>");
    markup
}

#[cfg(test)]
mod tests {
    use super::{result, row};

    #[test]
    fn text_cannot_break_out() {
        let shown = result("<b>", "\"&");
        assert!(
            shown.contains("&lt;b&gt;") && shown.contains("&quot;&amp;"),
            "{shown}"
        );
        assert_eq!(
            row(&["a", "<"]),
            "<tr><th scope=\"row\">a</th><td>&lt;</td></tr>"
        );
    }
}
