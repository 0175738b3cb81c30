//! What can be picked from a list.

/// One thing to pick.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Pick {
    /// How the page knows it.
    pub key: String,
    /// Its name.
    pub name: String,
    /// More about it; may be empty. Searched too.
    pub detail: String,
}

impl Pick {
    /// A pick without details.
    pub fn new(key: impl Into<String>, name: impl Into<String>) -> Self {
        Self {
            key: key.into(),
            name: name.into(),
            detail: String::new(),
        }
    }

    /// The same with details.
    #[must_use]
    pub fn with_detail(mut self, detail: impl Into<String>) -> Self {
        self.detail = detail.into();
        self
    }

    /// Whether every word of a search stands in it, in any order, and in any case of the
    /// letters of English.
    #[must_use]
    pub fn matches(&self, search: &str) -> bool {
        let text = format!("{} {}", self.name, self.detail).to_ascii_lowercase();
        search
            .to_ascii_lowercase()
            .split_whitespace()
            .all(|word| text.contains(word))
    }
}

/// Picks under one heading.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PickGroup {
    /// The heading; empty where there is but one group.
    pub name: String,
    /// The picks.
    pub picks: Vec<Pick>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_search_finds_words_in_any_order() {
        let pick = Pick::new("a", "2401 to 2483.5 MHz").with_detail("Wireless network, Europe");
        assert!(pick.matches("europe 2401"));
        assert!(pick.matches(""));
        assert!(!pick.matches("2401 japan"));
    }
}
