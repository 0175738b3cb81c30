//! Why a job can't be printed.

use core::fmt;

/// Why a job can't be printed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PrintError {
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
        key: &'static str,
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
        value: i64,
        /// Smallest that would be right.
        low: i64,
        /// Largest that would be right.
        high: i64,
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
        let number = |n: usize| crate::figure::whole(i64::try_from(n).unwrap_or(i64::MAX));
        match self {
            Self::NotALine { line } => ["line ", &number(*line), ": not key=value"].concat(),
            Self::UnknownKey { line, key } => {
                ["line ", &number(*line), ": no key is called ", key].concat()
            }
            Self::WrongValue {
                line,
                key,
                expected,
            } => ["line ", &number(*line), ": ", key, " takes ", expected].concat(),
            Self::MissingKey(key) => ["the key ", key, " is missing"].concat(),
            Self::OutOfRange {
                key,
                value,
                low,
                high,
            } => {
                let figure = crate::figure::whole;
                let range = [figure(*low), " to ".into(), figure(*high)].concat();
                [key, ": ", &figure(*value), " is outside ", &range].concat()
            }
            Self::NeedsImages(texts) => ["needs-images\n", &texts.join("\n")].concat(),
            Self::TooManySheets { sheets, most } => [
                &number(*sheets),
                " sheets would be needed; at most ",
                &number(*most),
                " are printed",
            ]
            .concat(),
        }
    }
}

impl fmt::Display for PrintError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message())
    }
}

impl core::error::Error for PrintError {}
