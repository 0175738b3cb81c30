//! Why a link was refused.

use tinwave_core::design_error::DesignError;

/// Why a link was refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LinkError {
    /// Nothing in it.
    Empty,
    /// Longer than any link of this page.
    TooLong {
        /// Its length in bytes.
        length: usize,
        /// The most that is read.
        most: usize,
    },
    /// No version: not a link of this page, or one whose beginning is lost.
    NoVersion,
    /// A version that never was.
    BadVersion {
        /// The text, shortened.
        text: String,
    },
    /// A character that stands in no link.
    BadCharacter {
        /// The character.
        character: char,
    },
    /// A part without `=`.
    NoValue {
        /// The part, shortened.
        part: String,
    },
    /// One key twice.
    Duplicate {
        /// The key, shortened.
        key: String,
    },
    /// A key that every design needs is missing: the end may be lost.
    Missing {
        /// The key.
        key: &'static str,
    },
    /// A value that can't be read.
    BadValue {
        /// The key.
        key: &'static str,
        /// The value, shortened.
        value: String,
    },
    /// A number outside its range.
    OutOfRange(DesignError),
}
