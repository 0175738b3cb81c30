//! What the page shows before its program runs: the worked example, made by the page's
//! own components, compiled for this machine.

use crate::failure::{Failure, Result};
use crate::folders::workspace_folder;
use crate::process::run_quiet;
use crate::program::Program;
use std::env;
use std::ffi::OsString;
use std::fmt::Write as _;
use std::process::Command;

/// The first paint, ready for `index.html`.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct FirstPaint {
    pub(crate) markup: String,
    /// Styles of single elements, for the style sheet.
    pub(crate) styles: String,
}

impl FirstPaint {
    /// Runs the page's program for this machine, which prints the markup.
    pub(crate) fn render() -> Result<Self> {
        // Inside `cargo run` the variable names the very cargo that runs us.
        let cargo = env::var_os("CARGO").unwrap_or_else(|| OsString::from("cargo"));
        let package = Program::App.name();
        let mut run = Command::new(cargo);
        run.current_dir(workspace_folder()).args(["run", "--quiet"]);
        let printed = run_quiet(run.args(["--package", package, "--bin", package]))?;
        let markup = printed.trim_end();
        if markup.is_empty() {
            return Err(Failure::Template {
                file: "index.html",
                fault: "the first paint came out empty".to_owned(),
            });
        }
        // Marks where a program that took this markup over would find its texts; ours makes
        // its own.
        Ok(Self::of(&markup.replace("<!>", "")))
    }

    /// Moves the styles of single elements into the style sheet: the content policy
    /// refuses them in the markup. The program sets its own by script, which it allows.
    fn of(printed: &str) -> Self {
        const ATTRIBUTE: &str = " style=\"";
        let mut kinds: Vec<&str> = Vec::new();
        let mut markup = String::with_capacity(printed.len());
        let mut rest = printed;
        while let Some((before, after)) = rest.split_once(ATTRIBUTE) {
            markup.push_str(before);
            // In a text a quotation mark is just that; in a tag it is an attribute's.
            let in_tag = markup.rfind('<') > markup.rfind('>');
            match after.split_once('"') {
                Some((style, tail)) if in_tag => {
                    let known = kinds.iter().position(|kind| *kind == style);
                    let number = known.unwrap_or(kinds.len());
                    if known.is_none() {
                        kinds.push(style);
                    }
                    // Writing to a String cannot fail.
                    let _ = write!(markup, " data-first=\"{number}\"");
                    rest = tail;
                }
                _ => {
                    markup.push_str(ATTRIBUTE);
                    rest = after;
                }
            }
        }
        markup.push_str(rest);
        let rules = kinds.iter().enumerate();
        let styles = rules
            .map(|(number, style)| {
                format!("[data-first=\"{number}\"] {{ {} }}\n", unescaped(style))
            })
            .collect();
        Self { markup, styles }
    }
}

/// An attribute's value as it was before it was written into markup.
fn unescaped(value: &str) -> String {
    value
        .replace("&quot;", "\"")
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&amp;", "&")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn styles_of_elements_become_rules_and_texts_stay() {
        let printed = "<p class=\"a\" style=\"left:1%;\">x style=\"y\"</p><b style=\"left:2%;\"></b>\
                       <i style=\"left:1%;\" hidden></i>";
        let paint = FirstPaint::of(printed);
        assert_eq!(
            paint.markup,
            "<p class=\"a\" data-first=\"0\">x style=\"y\"</p><b data-first=\"1\"></b>\
             <i data-first=\"0\" hidden></i>"
        );
        assert_eq!(
            paint.styles,
            "[data-first=\"0\"] { left:1%; }\n[data-first=\"1\"] { left:2%; }\n"
        );
    }
}
