//! Numbers in a link: thousandths, written as plain decimals.

use crate::entry::format_trimmed;

/// Most digits before the decimal sign: more than any range needs.
const MOST_DIGITS: usize = 9;

/// Writes thousandths: 87125 is `87.125`, 87000 is `87`.
pub(crate) fn push_thousandths(text: &mut String, value: i64) {
    text.push_str(&format_trimmed(value, 3));
}

/// Reads thousandths. `None` where the text is no such number.
pub(crate) fn thousandths(text: &str) -> Option<i64> {
    let (negative, digits) = match text.strip_prefix('-') {
        Some(digits) => (true, digits),
        None => (false, text),
    };
    let (whole, part) = match digits.split_once('.') {
        Some((_, "")) => return None,
        Some(both) => both,
        None => (digits, ""),
    };
    if whole.is_empty() || whole.len() > MOST_DIGITS || part.len() > 3 {
        return None;
    }
    let mut value: i64 = 0;
    let padding = "000".get(part.len()..)?;
    for byte in whole.bytes().chain(part.bytes()).chain(padding.bytes()) {
        if !byte.is_ascii_digit() {
            return None;
        }
        value = value * 10 + i64::from(byte - b'0');
    }
    Some(if negative { -value } else { value })
}
