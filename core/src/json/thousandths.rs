//! Decimal text of numbers that are whole in thousandths of their unit.

use alloc::string::String;

/// Beyond this, in thousandths, no number of ours lies.
const MOST: f64 = 9e15;

/// Writes `thousandths / 1000` with no more decimals than it has; numbers of no
/// sense as a power of ten beyond every range.
pub(super) fn push_thousandths(text: &mut String, thousandths: f64) {
    if thousandths < 0.0 {
        text.push('-');
    }
    let size = crate::math::round(crate::math::fabs(thousandths));
    if size.is_nan() || size >= MOST {
        text.push_str("more than 1e12");
        return;
    }
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between 0 and MOST"
    )]
    let size = size as u64;
    push_whole(text, size / 1000);
    let mut rest = size % 1000;
    if rest > 0 {
        text.push('.');
        while rest > 0 {
            push_digit(text, rest / 100);
            rest = rest % 100 * 10;
        }
    }
}

fn push_whole(text: &mut String, value: u64) {
    if value > 9 {
        push_whole(text, value / 10);
    }
    push_digit(text, value % 10);
}

fn push_digit(text: &mut String, digit: u64) {
    let digit = u32::try_from(digit).ok();
    text.extend(digit.and_then(|digit| char::from_digit(digit, 10)));
}
