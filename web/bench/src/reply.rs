//! What the page is told.

use tinwave_web::link;
use tinwave_web::workpiece::Workpiece;

use crate::form_data;

/// An answer: what the places of the part show, and what else is to be done.
///
/// On its way each pair's name begins with a sign: `#place` markup, `=field` value,
/// `!` what to do.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Reply(Vec<(String, String)>);

impl Reply {
    /// An answer that changes nothing.
    #[must_use]
    pub const fn new() -> Self {
        Self(Vec::new())
    }

    fn push(&mut self, sign: char, name: &str, value: String) {
        let mut whole = String::from(sign);
        whole.push_str(name);
        // The last word counts.
        match self.0.iter_mut().find(|(known, _)| *known == whole) {
            Some(pair) => pair.1 = value,
            None => self.0.push((whole, value)),
        }
    }

    /// Markup for a place of the part (`data-place`); text from outside must have
    /// been escaped ([`crate::html`]).
    pub fn place(&mut self, name: &str, markup: String) {
        self.push('#', name, markup);
    }

    /// A sentence for a place of the part.
    pub fn text(&mut self, name: &str, text: &str) {
        self.place(name, crate::html::escaped(text));
    }

    /// Hides a place, or shows it.
    pub fn show(&mut self, name: &str, shown: bool) {
        self.push('?', name, if shown { "1" } else { "" }.to_owned());
    }

    /// A new value for a field of the part.
    pub fn field(&mut self, name: &str, value: &str) {
        self.push('=', name, value.to_owned());
    }

    /// What stands beside a field that can't be read; empty: nothing is wrong with it.
    pub fn wrong(&mut self, field: &str, sentence: &str) {
        self.push('~', field, sentence.to_owned());
    }

    /// Other work for the page to take as one edit.
    pub fn take(&mut self, work: &Workpiece) {
        self.push('!', "take", link::encode(work));
    }

    /// A file for the maker to keep.
    pub fn save(&mut self, file_name: &str, text: &str) {
        let whole = [file_name, "\n", text].concat();
        self.push('!', "save", whole);
    }

    /// A measurement to draw on the page's charts: kilohertz, real and imaginary
    /// part of the reflection for each point; an imaginary part that is no number
    /// says that only the magnitude (the real part) is known. Empty: none.
    ///
    /// The parts travel in millionths, a missing one as the largest `i64`.
    pub fn measured(&mut self, points: &[(u32, f64, f64)]) {
        let mut text = String::new();
        for (khz, re, im) in points {
            if !text.is_empty() {
                text.push(' ');
            }
            let millionths = |part: f64| (part * 1e6).round() as i64;
            let im = if im.is_nan() {
                i64::MAX
            } else {
                millionths(*im)
            };
            let words = [khz.to_string(), millionths(*re).to_string(), im.to_string()];
            text.push_str(&words.join(" "));
        }
        self.push('!', "measured", text);
    }

    /// Lines of the print job.
    pub fn lines(&mut self, text: String) {
        self.push('!', "lines", text);
    }

    /// Asks for a long job of the part to begin, with the same entries; one of the
    /// same name that runs is dropped.
    pub fn begin(&mut self, job: &str) {
        self.push('!', "begin", job.to_owned());
    }

    /// The job in hand is dropped.
    pub fn stop(&mut self) {
        self.push('!', "stop", String::new());
    }

    /// The pairs, each name with its sign.
    #[must_use]
    pub fn pairs(&self) -> &[(String, String)] {
        &self.0
    }

    /// What a pair holds, by its name with the sign: for tests.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&str> {
        let found = self.0.iter().find(|(known, _)| known == name);
        found.map(|(_, value)| value.as_str())
    }

    /// As form data.
    #[must_use]
    pub fn write(&self) -> String {
        form_data::write(&self.0)
    }
}
