//! Fills the `{{key}}` placeholders of the page's own text files.

use crate::failure::{Failure, Result};

/// What placeholders stand for, and whether anybody asked.
#[derive(Debug, Default)]
pub(crate) struct Values(Vec<Value>);

#[derive(Debug)]
struct Value {
    key: &'static str,
    text: String,
    used: bool,
}

impl Values {
    /// Gives a placeholder its text, or another one.
    pub(crate) fn add(&mut self, key: &'static str, text: &str) {
        let text = text.to_owned();
        match self.0.iter_mut().find(|value| value.key == key) {
            Some(value) => value.text = text,
            None => self.0.push(Value {
                key,
                text,
                used: false,
            }),
        }
    }

    /// What a placeholder stands for.
    pub(crate) fn take(&mut self, key: &str) -> Option<&str> {
        let value = self.0.iter_mut().find(|value| value.key == key)?;
        value.used = true;
        Some(&value.text)
    }

    /// A file that no other names would never be fetched.
    ///
    /// # Errors
    /// [`Failure::Template`] for a value that nobody asked for.
    pub(crate) fn check_all_used(&self) -> Result<()> {
        match self.0.iter().find(|value| !value.used) {
            None => Ok(()),
            Some(value) => Err(Failure::Template {
                file: "the manifest",
                fault: format!("no file has the placeholder {{{{{}}}}}", value.key),
            }),
        }
    }
}

/// Replaces every `{{key}}`. What is put in is not filled again.
///
/// # Errors
/// [`Failure::Template`] for a key without a value, or a placeholder left open: a page
/// with one in it would load nothing.
pub(crate) fn fill(file: &'static str, template: &str, values: &mut Values) -> Result<String> {
    let fault = |fault| Failure::Template { file, fault };
    let mut filled = String::with_capacity(template.len());
    let mut rest = template;
    while let Some((before, after)) = rest.split_once("{{") {
        filled.push_str(before);
        let closed = after.split_once("}}");
        let (key, tail) = closed.ok_or_else(|| fault("a placeholder is not closed".to_owned()))?;
        let value = values.take(key);
        filled.push_str(value.ok_or_else(|| fault(format!("nothing fills {{{{{key}}}}}")))?);
        rest = tail;
    }
    filled.push_str(rest);
    Ok(filled)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fills_each_and_refuses_the_unknown_the_open_and_the_idle() {
        let mut values = Values::default();
        values.add("a", "1");
        values.add("b", "{{a}}");
        let filled = fill("t", "x{{a}}y{{a}}", &mut values).ok();
        assert_eq!(filled.as_deref(), Some("x1y1"));
        assert!(values.check_all_used().is_err(), "nobody asked for b");
        let filled = fill("t", "{{b}}", &mut values).ok();
        assert_eq!(filled.as_deref(), Some("{{a}}"), "not filled again");
        assert!(values.check_all_used().is_ok());
        assert!(fill("t", "{{c}}", &mut values).is_err(), "unknown");
        assert!(fill("t", "{{a", &mut values).is_err(), "open");
    }
}
