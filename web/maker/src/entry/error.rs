//! Why a typed number was refused, in a sentence that says what would be right.

use std::fmt;

/// Longest text that is looked at, in characters.
pub(super) const LONGEST_TEXT: usize = 64;

/// Why a typed number was not understood.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum EntryError {
    /// Nothing was typed.
    Empty,
    /// More characters than any number needs.
    TooLong,
    /// There is no digit in it.
    NoNumber {
        /// The text.
        text: String,
    },
    /// A character that belongs in no number.
    UnexpectedCharacter {
        /// The character.
        character: char,
    },
    /// Two decimal signs, or a point and a comma.
    TwoDecimalSigns {
        /// The text.
        text: String,
        /// The reading that is most likely meant.
        suggestion: String,
    },
    /// Digits in groups.
    GroupedDigits {
        /// The text.
        text: String,
        /// The same without groups.
        suggestion: String,
    },
    /// A fraction over zero.
    ZeroDenominator,
    /// A whole number with a fraction of one or more, such as `3 9/8`.
    FractionNotProper,
    /// A decimal sign inside a fraction, such as `3.5 1/2`.
    DecimalInFraction,
    /// A unit that is not known here.
    UnknownUnit {
        /// What was written.
        unit: String,
        /// The units that are known here.
        known: &'static str,
    },
    /// A number below zero where none can be.
    Negative,
    /// More digits than are kept apart.
    TooManyDigits,
    /// A number beyond every range.
    TooLarge,
    /// A frequency without unit, so low that gigahertz may be meant.
    PerhapsGigahertz {
        /// The number as typed.
        text: String,
    },
    /// A fraction where only a whole number can be.
    NotWhole,
    /// No such channel.
    UnknownChannel {
        /// The number.
        number: u32,
    },
    /// Neither two frequencies nor a channel.
    NotABand,
    /// The band's edges are in the wrong order, or equal.
    BandReversed,
    /// No such wire gauge.
    UnknownGauge {
        /// What was written.
        text: String,
    },
}

/// The text, shortened so that it fits into a sentence.
pub fn shortened(text: &str) -> String {
    let mut short: String = text.chars().take(20).collect();
    if text.chars().nth(20).is_some() {
        short.push('…');
    }
    short
}

impl fmt::Display for EntryError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("Nothing is written here. Type a number."),
            Self::TooLong => f.write_str("This is too long for a number. Write digits and a unit."),
            Self::NoNumber { text } => {
                write!(
                    f,
                    "There is no number in “{text}”. Write digits, such as 87 or 87.5."
                )
            }
            Self::UnexpectedCharacter { character } => write!(
                f,
                "“{character}” does not belong in a number. Write digits and at most one decimal sign."
            ),
            Self::TwoDecimalSigns { text, suggestion } => write!(
                f,
                "“{text}” can be read in more than one way. Write one decimal sign and no groups: {suggestion}"
            ),
            Self::GroupedDigits { text, suggestion } => write!(
                f,
                "“{text}” has its digits in groups. Write them together: {suggestion}"
            ),
            Self::ZeroDenominator => {
                f.write_str("A fraction over zero has no value. Write for example 9/16.")
            }
            Self::FractionNotProper => f.write_str(
                "The fraction after the whole number must be below one, such as 3 9/16.",
            ),
            Self::DecimalInFraction => f.write_str(
                "A decimal number and a fraction can’t stand together. Write 3.5 or 3 1/2.",
            ),
            Self::UnknownUnit { unit, known } => {
                write!(f, "“{unit}” is no unit that is known here. {known}")
            }
            Self::Negative => f.write_str("This can’t be below zero. Write it without the minus."),
            Self::TooManyDigits => {
                f.write_str("Too many digits. Write at most 9 before and 9 after the decimal sign.")
            }
            Self::TooLarge => f.write_str("This number is far too large. Check the unit."),
            Self::PerhapsGigahertz { text } => write!(
                f,
                "Is “{text}” in GHz or in MHz? Write the unit: {text} GHz, or the whole number in MHz, such as 2437."
            ),
            Self::NotWhole => f.write_str("This must be a whole number, such as 101."),
            Self::UnknownChannel { number } => write!(
                f,
                "There is no channel {number} in that band. At 2.4 GHz they run from 1 to 14."
            ),
            Self::NotABand => f.write_str(
                "Write two frequencies, such as 2401-2483.5, or a channel, such as ch 6.",
            ),
            Self::BandReversed => {
                f.write_str("The first frequency must be the lower one, such as 2401-2483.5.")
            }
            Self::UnknownGauge { text } => write!(
                f,
                "“{text}” is no gauge in the list. Write a gauge such as SWG 18, AWG 16 or 1.5 mm², or a diameter."
            ),
        }
    }
}

impl std::error::Error for EntryError {}
