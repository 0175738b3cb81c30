//! Sentences with gaps. Every sentence goes through one function, which keeps
//! the program small.

/// A template with each `{}` replaced by the next of the words.
#[must_use]
#[inline(never)]
pub(crate) fn fill(template: &str, words: &[&str]) -> String {
    let mut filled = String::new();
    let mut words = words.iter();
    let mut rest = template;
    while let Some((before, after)) = rest.split_once('{') {
        filled.push_str(before);
        if let Some(word) = words.next() {
            filled.push_str(word);
        }
        rest = after.get(1..).unwrap_or_default();
    }
    filled.push_str(rest);
    filled
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gaps_are_filled_in_order_and_words_are_not_templates() {
        assert_eq!(fill("{} of {}.", &["{}", "ü"]), "{} of ü.");
        assert_eq!(fill("none", &[]), "none");
    }
}
