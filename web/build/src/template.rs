//! Fills the `{{name}}` placeholders of the page's own text files.

use crate::failure::{Failure, Result};

/// Replaces every `{{name}}`.
///
/// A name without a value, or a required name that is absent, is an error: a
/// page with a placeholder left in it would load nothing.
pub(crate) fn fill(
    file: &'static str,
    template: &str,
    values: &[(&str, &str)],
    required: &[&str],
) -> Result<String> {
    for name in required {
        if !template.contains(&format!("{{{{{name}}}}}")) {
            return Err(Failure::Template {
                file,
                fault: format!("the placeholder {{{{{name}}}}} is missing"),
            });
        }
    }
    let mut filled = String::with_capacity(template.len());
    let mut rest = template;
    while let Some((before, after)) = rest.split_once("{{") {
        filled.push_str(before);
        let (name, tail) = after.split_once("}}").ok_or_else(|| Failure::Template {
            file,
            fault: "a placeholder is not closed".to_owned(),
        })?;
        let value = values.iter().find(|(known, _)| *known == name);
        let (_, value) = value.ok_or_else(|| Failure::Template {
            file,
            fault: format!("nothing fills {{{{{name}}}}}"),
        })?;
        filled.push_str(value);
        rest = tail;
    }
    filled.push_str(rest);
    Ok(filled)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fills_each_and_refuses_the_unknown_the_absent_and_the_open() {
        let values = [("a", "1"), ("b", "{{a}}")];
        let filled = fill("t", "x{{a}}y{{b}}{{a}}", &values, &["a"]);
        assert_eq!(
            filled.ok().as_deref(),
            Some("x1y{{a}}1"),
            "values are not filled again"
        );
        assert!(fill("t", "{{c}}", &values, &[]).is_err(), "unknown");
        assert!(fill("t", "{{a}}", &values, &["b"]).is_err(), "absent");
        assert!(fill("t", "{{a", &values, &[]).is_err(), "open");
    }
}
