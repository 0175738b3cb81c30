//! Numbers to text for path data: one decimal, no float formatting. The general
//! formatter costs several times more, and a picture writes a thousand numbers.

/// Largest magnitude that is written; more is a mistake in a layout, not a place.
const LIMIT_TENTHS: f64 = 9_999_999.0;

/// Appends `value` rounded to 0.1. What is not a finite number is written as 0.
pub fn push_tenths(text: &mut String, value: f64) {
    let tenths = (value * 10.0).round();
    let tenths = if tenths.is_finite() {
        tenths.clamp(-LIMIT_TENTHS, LIMIT_TENTHS)
    } else {
        0.0
    };
    if tenths < 0.0 {
        text.push('-');
    }
    // In range by the clamp above.
    let whole = tenths.abs() as u32;
    push_integer(text, whole / 10);
    let rest = whole % 10;
    if rest != 0 {
        text.push('.');
        push_digit(text, rest);
    }
}

/// Appends a whole number.
pub fn push_integer(text: &mut String, value: u32) {
    if value >= 10 {
        push_integer(text, value / 10);
    }
    push_digit(text, value % 10);
}

fn push_digit(text: &mut String, digit: u32) {
    text.push(char::from_digit(digit, 10).unwrap_or('0'));
}

/// A value as text with one decimal at most, for an attribute.
#[must_use]
pub fn tenths(value: f64) -> String {
    let mut text = String::with_capacity(8);
    push_tenths(&mut text, value);
    text
}

#[cfg(test)]
mod tests {
    use super::tenths;

    #[test]
    fn writes_one_decimal_where_it_is_needed() {
        let cases = [
            (0.0, "0"),
            (12.0, "12"),
            (12.34, "12.3"),
            (12.36, "12.4"),
            (-0.04, "0"),
            (-0.06, "-0.1"),
            (-107.5, "-107.5"),
            (99.96, "100"),
        ];
        for (value, text) in cases {
            assert_eq!(tenths(value), text);
        }
    }

    #[test]
    fn never_writes_what_a_path_cannot_read() {
        assert_eq!(tenths(f64::NAN), "0");
        assert_eq!(tenths(f64::INFINITY), "0");
        assert_eq!(tenths(1e300), "999999.9");
        assert_eq!(tenths(-1e300), "-999999.9");
    }
}
