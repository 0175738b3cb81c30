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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_at_a_sign() {
        assert_eq!(pieces("a  ü ", b' '), ["a", "", "ü", ""]);
        assert_eq!(pieces("", b' '), [""]);
        assert_eq!(cut_at("a=b=c", b'='), Some(("a", "b=c")));
    }
}
