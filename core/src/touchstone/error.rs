//! What can be wrong with a Touchstone file, where, and what would be right.

use alloc::string::String;
use core::fmt;

/// A problem and the line it stands on, from 1.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct TouchstoneError {
    /// Line, from 1.
    pub line: usize,
    /// What is wrong there.
    pub problem: TouchstoneProblem,
}

/// What is wrong with a line.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum TouchstoneProblem {
    /// A character outside ASCII and outside a comment.
    NotAscii {
        /// Column, from 1, in characters.
        column: usize,
    },
    /// Data stand before the option line, the one that begins with `#`; or there
    /// is none.
    NoOptionLine,
    /// A word of the option line that is none of: Hz, kHz, MHz, GHz; S, Y, Z, G, H;
    /// DB, MA, RI; R and a number.
    OptionWord {
        /// The word.
        word: String,
    },
    /// `R` of the option line, or `[Reference]`, has no number.
    NoReference,
    /// A reference impedance out of range, ohm.
    Reference {
        /// The value.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
    /// Hybrid parameters (G, H) of a one-port.
    HybridOnePort,
    /// Something that is no number in plain decimal form.
    Number {
        /// The text.
        word: String,
    },
    /// A comma: decimals take a point, values are parted by spaces.
    Comma {
        /// The text.
        word: String,
    },
    /// A line of data with the wrong number of values.
    ValueCount {
        /// Values on the line.
        found: usize,
        /// Values that belong there.
        wanted: usize,
    },
    /// Every frequency must be above the one before it, and none negative.
    Frequency {
        /// The frequency, Hz.
        value: f64,
        /// The one it must be above, Hz; `None`: zero or more is allowed.
        above: Option<f64>,
    },
    /// The number of ports: 1 and 2 are read.
    PortCount {
        /// The number stated.
        value: f64,
        /// Smallest and largest that are read.
        range: [f64; 2],
    },
    /// A version other than 2.0 and 2.1 in `[Version]`.
    Version {
        /// The text.
        word: String,
    },
    /// A keyword that version 2 does not have, or a value that it cannot take.
    Keyword {
        /// The text.
        word: String,
    },
    /// A keyword that must stand before the data and does not.
    KeywordMissing {
        /// The keyword.
        keyword: String,
    },
    /// Another number of frequencies than stated.
    FrequencyCount {
        /// Frequencies read.
        found: usize,
        /// The number stated.
        stated: usize,
    },
    /// Parameters that have no reflection: their matrix is singular.
    Singular,
    /// There are no data.
    NoData,
}

/// Longest piece of a file that an error carries.
const LONGEST_WORD: usize = 40;

/// A piece of the file for an error.
pub(super) fn excerpt(word: &str) -> String {
    word.chars().take(LONGEST_WORD).collect()
}

pub(super) const fn error(line: usize, problem: TouchstoneProblem) -> TouchstoneError {
    TouchstoneError { line, problem }
}

impl fmt::Display for TouchstoneError {
    /// For logs and programs.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}: {:?}", self.line, self.problem)
    }
}

impl core::error::Error for TouchstoneError {}
