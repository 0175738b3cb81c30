//! Why a job can't be printed.

use core::fmt;

use crate::figure::whole;
use crate::fill::{Put, fill};

/// Why a job can't be printed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PrintError {
    /// A word that names no kind of file.
    UnknownKind,
    /// A line of the job's text that is not `key=value`.
    NotALine {
        /// Its number, from 1.
        line: usize,
    },
    /// A key that does not exist.
    UnknownKey {
        /// Line number, from 1.
        line: usize,
        /// The key.
        key: String,
    },
    /// A value that its key does not take.
    WrongValue {
        /// Line number, from 1.
        line: usize,
        /// The key.
        key: String,
        /// What it takes.
        expected: &'static str,
    },
    /// A key that must be given and is not.
    MissingKey(&'static str),
    /// A number outside its range.
    OutOfRange {
        /// Its key.
        key: &'static str,
        /// What it is.
        value: u32,
        /// Smallest that would be right.
        low: u32,
        /// Largest that would be right.
        high: u32,
    },
    /// Words that the standard fonts don't hold and no image was given for.
    NeedsImages(Vec<String>),
    /// More sheets than anybody would tape together.
    TooManySheets {
        /// How many it would be.
        sheets: usize,
        /// The most that are printed.
        most: usize,
    },
}

impl PrintError {
    /// One line for the program that asked; after `needs-images` one line for
    /// each text.
    #[must_use]
    pub fn message(&self) -> String {
        let number = |n: usize| whole(i64::try_from(n).unwrap_or(i64::MAX));
        match self {
            Self::UnknownKind => "no such kind of file".to_owned(),
            Self::NotALine { line } => fill("line {}: not key=value", &[&number(*line)]),
            Self::UnknownKey { line, key } => {
                fill("line {}: no key is called {}", &[&number(*line), key])
            }
            Self::WrongValue {
                line,
                key,
                expected,
            } => fill("line {}: {} takes: {}", &[&number(*line), key, expected]),
            Self::MissingKey(key) => fill("the key {} is missing", &[key]),
            Self::OutOfRange {
                key,
                value,
                low,
                high,
            } => {
                let [value, low, high] = [value, low, high].map(|n| whole(i64::from(*n)));
                fill("{}: {} is outside {} to {}", &[key, &value, &low, &high])
            }
            Self::NeedsImages(texts) => {
                let mut message = String::from("needs-images");
                for text in texts {
                    message.put("\n");
                    message.put(text);
                }
                message
            }
            Self::TooManySheets { sheets, most } => fill(
                "{} sheets would be needed; at most {} are printed",
                &[&number(*sheets), &number(*most)],
            ),
        }
    }
}

impl fmt::Display for PrintError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message())
    }
}

impl core::error::Error for PrintError {}
