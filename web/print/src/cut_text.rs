//! Cutting text at a sign. One small function where the standard library
//! would bring several large ones into the program.

/// The text before and after the first of an ASCII sign; `None` where there is
/// none.
#[must_use]
#[inline(never)]
pub(crate) fn cut_at(text: &str, sign: u8) -> Option<(&str, &str)> {
    let place = text.bytes().position(|byte| byte == sign)?;
    Some((text.get(..place)?, text.get(place + 1..)?))
}

/// The text up to the first of an ASCII sign, which is dropped with it; all of
/// it where there is none. `None` where nothing is left.
#[inline(never)]
pub(crate) fn next_piece<'a>(rest: &mut Option<&'a str>, sign: u8) -> Option<&'a str> {
    let text = rest.take()?;
    match cut_at(text, sign) {
        None => Some(text),
        Some((piece, after)) => {
            *rest = Some(after);
            Some(piece)
        }
    }
}

/// The pieces between an ASCII sign, as they are.
#[inline(never)]
pub(crate) fn pieces(text: &str, sign: u8) -> Vec<&str> {
    let mut rest = Some(text);
    let mut pieces = Vec::new();
    while let Some(piece) = next_piece(&mut rest, sign) {
        pieces.push(piece);
    }
    pieces
}

/// A whole number in decimal digits, with or without a minus before it.
#[inline(never)]
pub(crate) fn whole_number(text: &str) -> Option<i64> {
    let (digits, sign) = match text.strip_prefix('-') {
        Some(digits) => (digits, -1),
        None => (text, 1),
    };
    // Eighteen digits fit into the type with room to spare.
    if digits.is_empty() || digits.len() > 18 {
        return None;
    }
    let mut value = 0;
    for byte in digits.bytes() {
        if !byte.is_ascii_digit() {
            return None;
        }
        value = value * 10 + i64::from(byte - b'0');
    }
    Some(value * sign)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_and_numbers() {
        assert_eq!(pieces("a  ü ", b' '), ["a", "", "ü", ""]);
        assert_eq!(pieces("", b' '), [""]);
        assert_eq!(cut_at("a=b=c", b'='), Some(("a", "b=c")));
        assert_eq!(whole_number("-045"), Some(-45));
        for wrong in ["", "-", "+1", "1.0", "1234567890123456789", " 1", "١"] {
            assert_eq!(whole_number(wrong), None, "{wrong}");
        }
    }
}
