//! A name of any script in letters, digits and `- _ . ~`.
//!
//! ASCII letters, digits, `-` and `.` stand for themselves, `_` is a space,
//! and anything else is `~`, its code point in base 36, and `.`.

/// Most characters that a name may have when it is read.
const MOST_CHARACTERS: usize = 200;

/// Encodes a name, cut (between characters) where `room` bytes don't hold it.
pub(crate) fn encoded(name: &str, room: usize) -> String {
    let mut text = String::with_capacity(name.len() + 8);
    for character in name.chars() {
        let before = text.len();
        match character {
            ' ' => text.push('_'),
            '-' | '.' => text.push(character),
            _ if character.is_ascii_alphanumeric() => text.push(character),
            _ => {
                text.push('~');
                push_base36(&mut text, u32::from(character));
                text.push('.');
            }
        }
        if text.len() > room {
            text.truncate(before);
            break;
        }
    }
    text
}

fn push_base36(text: &mut String, value: u32) {
    if value >= 36 {
        push_base36(text, value / 36);
    }
    text.push(char::from_digit(value % 36, 36).unwrap_or('0'));
}

/// Decodes a name; `None` where it is not one.
pub(crate) fn decoded(text: &str) -> Option<String> {
    let mut name = String::with_capacity(text.len());
    let mut characters = text.chars();
    let mut count = 0;
    while let Some(character) = characters.next() {
        count += 1;
        if count > MOST_CHARACTERS {
            return None;
        }
        match character {
            '_' => name.push(' '),
            '-' | '.' => name.push(character),
            '~' => name.push(code_point(&mut characters)?),
            _ if character.is_ascii_alphanumeric() => name.push(character),
            _ => return None,
        }
    }
    Some(name)
}

fn code_point(characters: &mut std::str::Chars<'_>) -> Option<char> {
    let mut value: u32 = 0;
    for position in 0..=4 {
        match characters.next()? {
            '.' if position > 0 => return char::from_u32(value).filter(|c| !c.is_control()),
            digit => value = value * 36 + digit.to_digit(36)?,
        }
    }
    None
}
