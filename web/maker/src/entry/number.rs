//! From typed characters to an exact fraction and a unit.

use super::error::{EntryError, LONGEST_TEXT, shortened};

/// An exact number: `numerator / denominator`, with a sign.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Exact {
    pub(crate) negative: bool,
    pub(crate) numerator: u128,
    pub(crate) denominator: u128,
}

/// A typed number and what stood after it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Typed {
    pub(crate) number: Exact,
    /// As typed, without the unit.
    pub(crate) digits: String,
    /// Lower case; empty where none was written.
    pub(crate) unit: String,
}

/// Most digits before, and most after, the decimal sign.
const MOST_DIGITS: usize = 9;

impl Exact {
    /// `self * up / down`, to the nearest whole number (halves away from
    /// zero), and whether that moved it. The sign is left out.
    pub(crate) const fn scaled(self, up: u128, down: u128) -> (u128, bool) {
        let numerator = self.numerator.saturating_mul(up);
        let denominator = self.denominator.saturating_mul(down);
        if denominator == 0 {
            return (u128::MAX, true);
        }
        let whole = numerator / denominator;
        let rest = numerator % denominator;
        if rest == 0 {
            (whole, false)
        } else if rest >= denominator - rest {
            (whole.saturating_add(1), true)
        } else {
            (whole, true)
        }
    }

    /// Whether it equals `numerator / denominator`.
    pub(crate) const fn equals(self, numerator: u128, denominator: u128) -> bool {
        self.numerator.saturating_mul(denominator) == numerator.saturating_mul(self.denominator)
    }
}

/// Splits number and unit and reads the number.
pub(crate) fn read(text: &str) -> Result<Typed, EntryError> {
    if text.chars().nth(LONGEST_TEXT).is_some() {
        return Err(EntryError::TooLong);
    }
    let plain = plainly(text);
    let plain = plain.trim();
    if plain.is_empty() {
        return Err(EntryError::Empty);
    }
    let unit_at = plain.find(begins_unit).unwrap_or(plain.len());
    let (digits, unit) = plain.split_at(unit_at);
    let digits = digits.trim();
    if !digits.bytes().any(|byte| byte.is_ascii_digit()) {
        return Err(EntryError::NoNumber {
            text: shortened(plain),
        });
    }
    Ok(Typed {
        number: exact(digits)?,
        digits: digits.into(),
        unit: unit.trim().to_ascii_lowercase(),
    })
}

/// A letter, a quote, or any sign beyond ASCII: the tables of all alphabets
/// would weigh more than the rest of this crate's number reading.
fn begins_unit(character: char) -> bool {
    character.is_ascii_alphabetic()
        || matches!(character, '"' | '\'' | '%')
        || !character.is_ascii()
}

/// Spaces, signs and fractions of many alphabets as their plain forms; what parts
/// the decimals stays as it is, point or comma.
#[must_use]
pub fn plainly(text: &str) -> String {
    let mut plain = String::with_capacity(text.len() + 8);
    for character in text.chars() {
        match character {
            '−' | '–' | '‐' | '‑' => plain.push('-'),
            '⁄' | '∕' => plain.push('/'),
            '½' => plain.push_str(" 1/2"),
            '¼' => plain.push_str(" 1/4"),
            '¾' => plain.push_str(" 3/4"),
            '⅛' => plain.push_str(" 1/8"),
            '⅜' => plain.push_str(" 3/8"),
            '⅝' => plain.push_str(" 5/8"),
            '⅞' => plain.push_str(" 7/8"),
            '٫' => plain.push(','),
            space if space.is_whitespace() => plain.push(' '),
            '\u{200b}' | '\u{feff}' => {}
            other => plain.push(other),
        }
    }
    plain
}

fn exact(digits: &str) -> Result<Exact, EntryError> {
    let (negative, rest) = match digits.strip_prefix('-') {
        Some(rest) => (true, rest),
        None => (false, digits.strip_prefix('+').unwrap_or(digits)),
    };
    let rest = rest.trim();
    let (numerator, denominator) = match rest.split_once('/') {
        Some((before, below)) => fraction(before.trim(), below.trim())?,
        None => decimal(rest)?,
    };
    Ok(Exact {
        negative,
        numerator,
        denominator,
    })
}

/// `9/16`, `3 9/16` or `3-9/16`, split at the slash.
fn fraction(before: &str, below: &str) -> Result<(u128, u128), EntryError> {
    if before.contains(['.', ',']) || below.contains(['.', ',']) {
        return Err(EntryError::DecimalInFraction);
    }
    let denominator = whole(below)?;
    if denominator == 0 {
        return Err(EntryError::ZeroDenominator);
    }
    // One space or one hyphen between; a hyphen may have spaces round it.
    let Some(at) = before.rfind([' ', '-']) else {
        return Ok((whole(before)?, denominator));
    };
    let (units, above) = before.split_at(at);
    let (units, above) = match above.strip_prefix('-') {
        Some(above) => (units, above),
        None => (
            units.trim_end().strip_suffix('-').unwrap_or(units),
            above.trim_start(),
        ),
    };
    let units = units.trim();
    let above = whole(above)?;
    if above >= denominator {
        return Err(EntryError::FractionNotProper);
    }
    let units = whole(units)?;
    Ok((
        units.saturating_mul(denominator).saturating_add(above),
        denominator,
    ))
}

/// Digits alone.
fn whole(text: &str) -> Result<u128, EntryError> {
    if let Some(character) = text.chars().find(|c| !c.is_ascii_digit()) {
        return Err(if character == ' ' {
            grouped(text)
        } else {
            EntryError::UnexpectedCharacter { character }
        });
    }
    if text.is_empty() {
        return Err(EntryError::NoNumber {
            text: shortened(text),
        });
    }
    let text = text.trim_start_matches('0');
    if text.len() > MOST_DIGITS {
        return Err(EntryError::TooManyDigits);
    }
    Ok(text
        .bytes()
        .fold(0, |sum, byte| sum * 10 + u128::from(byte - b'0')))
}

fn decimal(text: &str) -> Result<(u128, u128), EntryError> {
    if let Some(character) = text
        .chars()
        .find(|c| !c.is_ascii_digit() && !matches!(c, '.' | ',' | ' ' | '_'))
    {
        return Err(EntryError::UnexpectedCharacter { character });
    }
    if text.matches(['.', ',']).count() > 1 {
        return Err(EntryError::TwoDecimalSigns {
            text: shortened(text),
            suggestion: likely_reading(text),
        });
    }
    if text.contains([' ', '_']) {
        return Err(grouped(text));
    }
    let (before, after) = text.split_once(['.', ',']).unwrap_or((text, ""));
    let after = after.trim_end_matches('0');
    if after.len() > MOST_DIGITS {
        return Err(EntryError::TooManyDigits);
    }
    let units = if before.is_empty() { 0 } else { whole(before)? };
    let parts = if after.is_empty() { 0 } else { whole(after)? };
    let denominator = after.bytes().fold(1, |scale: u128, _| scale * 10);
    Ok((units * denominator + parts, denominator))
}

fn grouped(text: &str) -> EntryError {
    EntryError::GroupedDigits {
        text: shortened(text),
        suggestion: shortened(&text.replace([' ', '_'], "")),
    }
}

/// The last sign is the decimal one if its kind stands only once.
fn likely_reading(text: &str) -> String {
    let decimal = text
        .rfind(['.', ','])
        .filter(|&at| text.matches(&text[at..=at]).count() == 1);
    let mut reading = String::new();
    for (at, character) in text.char_indices() {
        if character.is_ascii_digit() {
            reading.push(character);
        } else if Some(at) == decimal {
            reading.push('.');
        }
    }
    shortened(&reading)
}
