//! The page as markup: written once, with the places that follow the model
//! marked, so that a change costs a few texts and no rebuilding.

use super::entries::Entry;
use super::model::Model;
use crate::words::{self, Shown};

/// What follows the model at a place.
#[derive(Clone, Copy)]
pub(super) enum What {
    /// The text inside.
    Text,
    /// The markup inside.
    Html,
    /// An attribute.
    Attribute(&'static str),
    /// An attribute that is there or not: there unless the text is empty.
    Flag(&'static str),
    /// The value of a choice or a progress bar.
    Value,
    /// Whether a radio button or a check box is set: unless the text is empty.
    Checked,
}

/// Makes the text of a place from the model.
pub(super) type Make = fn(&Model) -> String;

/// One place that follows the model.
#[derive(Clone, Copy)]
pub(super) struct Live {
    /// Which of the marked elements, in the order of the document.
    pub(super) element: usize,
    pub(super) what: What,
    pub(super) make: Make,
}

/// A page being written.
pub(super) struct Markup {
    pub(super) html: String,
    pub(super) lives: Vec<Live>,
    /// The entries, in the order of the document.
    pub(super) entries: Vec<Entry>,
    marked: usize,
}

/// What a flag's maker gives.
pub(super) fn flag(holds: bool) -> String {
    if holds { "1".to_owned() } else { String::new() }
}

/// Adds text to markup, with the signs that markup is made of escaped.
#[inline(never)]
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

/// Fills `{}` of a pattern with texts, each escaped.
#[inline(never)]
pub(super) fn fill(html: &mut String, pattern: &str, texts: &[&str]) {
    let mut texts = texts.iter();
    for (place, piece) in pattern.split("{}").enumerate() {
        if place > 0 {
            escape(html, texts.next().copied().unwrap_or_default());
        }
        html.push_str(piece);
    }
}

/// A pattern filled, as markup of its own.
pub(super) fn filled(pattern: &str, texts: &[&str]) -> String {
    let mut html = String::new();
    fill(&mut html, pattern, texts);
    html
}

impl Markup {
    pub(super) const fn new() -> Self {
        Self {
            html: String::new(),
            lives: Vec::new(),
            entries: Vec::new(),
            marked: 0,
        }
    }

    /// Markup as it stands.
    #[inline(never)]
    pub(super) fn raw(&mut self, html: &str) {
        self.html.push_str(html);
    }

    /// A pattern with its `{}` filled, each text escaped.
    #[inline(never)]
    pub(super) fn fill(&mut self, pattern: &str, texts: &[&str]) {
        fill(&mut self.html, pattern, texts);
    }

    /// An element that follows the model: `open` up to and without its `>`.
    #[inline(never)]
    pub(super) fn live(&mut self, open: &str, what: What, make: Make, close: &str) {
        self.raw(open);
        self.raw(" data-live>");
        self.raw(close);
        self.marked += 1;
        self.also(what, make);
    }

    /// The element written last follows in another way too.
    #[inline(never)]
    pub(super) fn also(&mut self, what: What, make: Make) {
        self.lives.push(Live {
            element: self.marked.saturating_sub(1),
            what,
            make,
        });
    }

    /// A paragraph that follows the model; not shown while empty.
    #[inline(never)]
    pub(super) fn note(&mut self, make: Make) {
        self.live("<p class=\"note\"", What::Text, make, "</p>");
    }

    /// Opens a part of the page: a heading that keeps its result in sight when
    /// it is folded.
    #[inline(never)]
    pub(super) fn open_part(&mut self, key: &str, title: &str, open: bool, result: Make) {
        let open = if open { " open" } else { "" };
        self.fill("<section class=\"part\" id=\"{}\" aria-labelledby=\"{}-title\"><details", &[key, key]);
        self.raw(open);
        self.fill("><summary><h2 id=\"{}-title\">{}</h2>", &[key, title]);
        self.live("<span class=\"sum\"", What::Text, result, "</span>");
        self.raw("</summary><div class=\"part-body\">");
    }

    pub(super) fn close_part(&mut self) {
        self.raw("</div></details></section>");
    }

    /// Figures with what they are called: `rows` between open and close.
    pub(super) fn open_results(&mut self) {
        self.raw("<dl class=\"results\">");
    }

    pub(super) fn close_results(&mut self) {
        self.raw("</dl>");
    }

    /// One figure, with the reason behind it.
    #[inline(never)]
    pub(super) fn row(&mut self, name: &str, value: Make, shown: Shown) {
        self.fill("<div class=\"result\"><dt>{}</dt><dd>", &[name]);
        self.live("<span class=\"value\"", What::Text, value, "</span>");
        self.why(name, shown);
        self.raw("</dd></div>");
    }

    /// The reason behind a figure.
    #[inline(never)]
    pub(super) fn why(&mut self, name: &str, shown: Shown) {
        let why = words::why(shown);
        self.fill(
            "<details class=\"why\"><summary>why<span class=\"unseen\">: {}</span></summary>\
             <div class=\"why-text\"><p class=\"why-title\">{}</p><p><b>Formula</b> {}</p>\
             <p><b>From</b> {}</p><p><b>Source</b> {}</p><p><b>How sure</b> {}</p></div></details>",
            &[name, why.title, why.formula, why.inputs, why.source, why.error_bar],
        );
    }

    /// A choice from a list: `options` is markup.
    #[inline(never)]
    pub(super) fn choice(&mut self, id: &str, label: &str, options: &str, value: Make) {
        self.fill(
            "<div class=\"field\"><div class=\"field-head\"><label for=\"{}\">{}</label></div>",
            &[id, label],
        );
        self.fill("<select id=\"{}\" data-do=\"{}\" data-live>", &[id, id]);
        self.raw(options);
        self.raw("</select></div>");
        self.marked += 1;
        self.also(What::Value, value);
    }

    /// One of a few choices, all in sight; each with its value, label and
    /// whether it holds.
    #[inline(never)]
    pub(super) fn radios(&mut self, name: &str, legend: &str, choices: &[(&str, &str, Make)]) {
        self.fill("<fieldset class=\"radios\" id=\"{}\"><legend>{}</legend>", &[name, legend]);
        for (value, label, holds) in choices {
            self.raw("<label class=\"radio\">");
            let mut open = String::new();
            fill(
                &mut open,
                "<input type=\"radio\" name=\"{}\" data-do=\"{}\" value=\"{}\"",
                &[name, name, value],
            );
            self.live(&open, What::Checked, *holds, "");
            self.fill("<span>{}</span></label>", &[label]);
        }
        self.raw("</fieldset>");
    }

    /// A text entry with its label, help and message, and step buttons if `steps`.
    #[inline(never)]
    pub(super) fn entry(&mut self, entry: Entry, steps: bool) {
        let id = entry.id();
        let (plain, trade, help) = entry.label();
        let mode = if entry.is_decimal() { "decimal" } else { "text" };
        self.fill("<div class=\"field\" data-field=\"{}\"><div class=\"field-head\">", &[id]);
        self.fill("<label for=\"{}\">{}</label><span class=\"unit\"></span>", &[id, plain]);
        if !help.is_empty() || !trade.is_empty() {
            self.fill("<details class=\"help\"><summary aria-label=\"Help: {}\">?</summary><p>", &[plain]);
            if !trade.is_empty() {
                self.fill("In the trade: {}. ", &[trade]);
            }
            self.fill("{}</p></details>", &[help]);
        }
        self.raw(if steps { "</div><div class=\"entry stepped\">" } else { "</div><div class=\"entry\">" });
        if steps {
            self.step_button(id, plain, "less", "\u{2212}");
        }
        self.fill(
            "<input id=\"{}\" type=\"text\" inputmode=\"{}\" autocomplete=\"off\" \
             autocapitalize=\"off\" spellcheck=\"false\" enterkeyhint=\"done\" \
             maxlength=\"60\" aria-describedby=\"{}-message\">",
            &[id, mode, id],
        );
        if steps {
            self.step_button(id, plain, "more", "+");
        }
        self.fill("</div><p class=\"message\" id=\"{}-message\"></p></div>", &[id]);
        self.entries.push(entry);
    }

    fn step_button(&mut self, id: &str, plain: &str, way: &str, sign: &str) {
        self.fill(
            "<button type=\"button\" class=\"step\" data-do=\"{}\" data-arg=\"{}\" \
             aria-label=\"{}, {}\">{}</button>",
            &[way, id, plain, way, sign],
        );
    }
}

/// Adds one option to a list.
pub(super) fn option(list: &mut String, value: &str, label: &str) {
    fill(list, "<option value=\"{}\">{}</option>", &[value, label]);
}

/// Adds a group of options to a list.
pub(super) fn group(list: &mut String, name: &str, options: &str) {
    fill(list, "<optgroup label=\"{}\">", &[name]);
    list.push_str(options);
    list.push_str("</optgroup>");
}
