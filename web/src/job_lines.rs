//! Lines of a print job, `key=words` each.

/// A job under construction.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct JobLines(String);

impl JobLines {
    /// Adds a line of words.
    pub fn words(&mut self, key: &str, words: &str) {
        for part in [key, "=", words, "\n"] {
            self.0.push_str(part);
        }
    }

    /// Adds a line of numbers.
    pub fn numbers(&mut self, key: &str, numbers: &[u32]) {
        let words: Vec<String> = numbers.iter().map(u32::to_string).collect();
        self.words(key, &words.join(" "));
    }

    /// All lines.
    #[must_use]
    pub fn into_text(self) -> String {
        self.0
    }
}
