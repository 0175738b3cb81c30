//! Sentences with gaps. Every sentence goes through one function, which keeps
//! the program small.

use crate::cut_text::cut_at;

/// Writing into a text that grows.
pub(crate) trait Put {
    /// Appends words. Unlike the library's own function it is never copied to
    /// where it is used, and it is used everywhere.
    fn put(&mut self, words: &str);
}

impl Put for String {
    #[inline(never)]
    fn put(&mut self, words: &str) {
        self.push_str(words);
    }
}

/// A template with each `{}` replaced by the next of the words.
#[must_use]
#[inline(never)]
pub(crate) fn fill(template: &str, words: &[&str]) -> String {
    let mut words = words.iter();
    fill_by(template, &mut |_| {
        words
            .next()
            .map_or_else(String::new, |word| (*word).to_owned())
    })
}

/// A template with each `{x}` replaced by what the function gives for `x`.
#[must_use]
#[inline(never)]
pub(crate) fn fill_by(template: &str, word: &mut dyn FnMut(&str) -> String) -> String {
    let mut filled = String::new();
    let mut rest = template;
    while let Some((before, after)) = cut_at(rest, b'{') {
        filled.put(before);
        let (name, after) = cut_at(after, b'}').unwrap_or((after, ""));
        filled.put(&word(name));
        rest = after;
    }
    filled.put(rest);
    filled
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gaps_are_filled_in_order_and_words_are_not_templates() {
        assert_eq!(fill("{} of {}.", &["{}", "ü"]), "{} of ü.");
        assert_eq!(fill("none", &[]), "none");
        assert_eq!(fill_by("a{x}{yz}", &mut |name| name.repeat(2)), "axxyzyz");
    }
}
