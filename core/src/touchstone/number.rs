//! Decimal numbers of a file: sign, digits, point, exponent; nothing else.
//!
//! The standard library's parser would also take `inf` and `nan`, and brings a
//! table larger than the rest of this reader.

/// Digits that fit a `u64` whatever they are.
const MOST_DIGITS: u32 = 18;
/// Powers of ten up to this are exact in an `f64`.
const EXACT_POWERS: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
];
/// Exponents beyond this are no measured value.
const MOST_EXPONENT: i32 = 290;

/// Reads a number. Correctly rounded up to 15 digits with exponents to ±22, as the
/// product of two exact numbers; otherwise within a few units of the last place.
pub(super) fn number(word: &str) -> Option<f64> {
    let (sign, rest) = sign(word.as_bytes());
    let mut mantissa = 0_u64;
    let mut digits = 0_u32;
    let mut exponent = 0_i32;
    let mut seen_digit = false;
    let mut seen_point = false;
    let mut bytes = rest.iter();
    while let Some(&byte) = bytes.next() {
        match byte {
            b'0'..=b'9' => {
                seen_digit = true;
                if digits < MOST_DIGITS {
                    mantissa = mantissa * 10 + u64::from(byte - b'0');
                    digits += u32::from(mantissa > 0);
                    exponent -= i32::from(seen_point);
                } else {
                    exponent = exponent.saturating_add(i32::from(!seen_point));
                }
            }
            b'.' if !seen_point => seen_point = true,
            b'e' | b'E' if seen_digit => {
                exponent = exponent.saturating_add(whole(bytes.as_slice())?);
                return scaled(sign, mantissa, exponent);
            }
            _ => return None,
        }
    }
    if seen_digit {
        scaled(sign, mantissa, exponent)
    } else {
        None
    }
}

fn sign(bytes: &[u8]) -> (f64, &[u8]) {
    match bytes {
        [b'-', rest @ ..] => (-1.0, rest),
        [b'+', rest @ ..] => (1.0, rest),
        _ => (1.0, bytes),
    }
}

/// A whole exponent with its sign.
fn whole(bytes: &[u8]) -> Option<i32> {
    let (sign, rest) = sign(bytes);
    if rest.is_empty() {
        return None;
    }
    let mut value = 0_i32;
    for byte in rest {
        if !byte.is_ascii_digit() {
            return None;
        }
        value = value
            .saturating_mul(10)
            .saturating_add(i32::from(byte - b'0'));
    }
    Some(if sign < 0.0 { -value } else { value })
}

#[allow(
    clippy::cast_precision_loss,
    reason = "more than 53 bits are rounded, as documented"
)]
fn scaled(sign: f64, mantissa: u64, exponent: i32) -> Option<f64> {
    if mantissa == 0 {
        return Some(0.0);
    }
    if exponent > MOST_EXPONENT {
        return None;
    }
    let mut value = mantissa as f64;
    let mut left = exponent.unsigned_abs().min(700);
    while left > 0 && value > 0.0 {
        let part = left.min(22);
        let power = EXACT_POWERS.get(part as usize).copied().unwrap_or(1.0);
        value = if exponent < 0 {
            value / power
        } else {
            value * power
        };
        left -= part;
    }
    value.is_finite().then_some(sign * value)
}
