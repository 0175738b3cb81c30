//! `application/x-www-form-urlencoded` (WHATWG, *URL Standard*, section 5): what the
//! browser's `URLSearchParams` reads and writes.

/// Reads pairs; what is malformed is taken as it stands.
#[must_use]
pub fn read(text: &str) -> Vec<(String, String)> {
    let pairs = text.split('&').filter(|pair| !pair.is_empty());
    pairs
        .map(|pair| {
            let (name, value) = pair.split_once('=').unwrap_or((pair, ""));
            (decoded(name), decoded(value))
        })
        .collect()
}

/// Writes pairs.
#[must_use]
pub fn write(pairs: &[(String, String)]) -> String {
    let mut text = String::new();
    for (name, value) in pairs {
        if !text.is_empty() {
            text.push('&');
        }
        push_encoded(&mut text, name);
        text.push('=');
        push_encoded(&mut text, value);
    }
    text
}

fn decoded(text: &str) -> String {
    let bytes = text.as_bytes();
    let mut out = Vec::with_capacity(bytes.len());
    let mut at = 0;
    while let Some(&byte) = bytes.get(at) {
        let hex = bytes.get(at + 1..at + 3).and_then(hex_byte);
        match (byte, hex) {
            (b'%', Some(decoded)) => {
                out.push(decoded);
                at += 2;
            }
            (b'+', _) => out.push(b' '),
            _ => out.push(byte),
        }
        at += 1;
    }
    String::from_utf8_lossy(&out).into_owned()
}

fn hex_byte(digits: &[u8]) -> Option<u8> {
    let digit = |place: usize| (*digits.get(place)? as char).to_digit(16);
    u8::try_from(digit(0)? * 16 + digit(1)?).ok()
}

fn push_encoded(text: &mut String, plain: &str) {
    const HEX: [char; 16] = [
        '0', '1', '2', '3', '4', '5', '6', '7', '8', '9', 'A', 'B', 'C', 'D', 'E', 'F',
    ];
    for byte in plain.bytes() {
        match byte {
            b' ' => text.push('+'),
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'-' | b'.' | b'_' | b'*' => {
                text.push(byte as char);
            }
            _ => {
                text.push('%');
                text.push(HEX[usize::from(byte >> 4)]);
                text.push(HEX[usize::from(byte & 15)]);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{read, write};

    // What a browser's URLSearchParams gives for the same pairs.
    const TEXT: &str = "a=1+2&b%26=%C3%A9%3D%25%0A&c=";

    fn pairs() -> Vec<(String, String)> {
        [("a", "1 2"), ("b&", "\u{e9}=%\n"), ("c", "")]
            .map(|(name, value)| (name.to_owned(), value.to_owned()))
            .to_vec()
    }

    #[test]
    fn pairs_travel_as_the_browser_writes_them() {
        assert_eq!(write(&pairs()), TEXT);
        assert_eq!(read(TEXT), pairs());
    }

    #[test]
    fn malformed_text_is_taken_as_it_stands() {
        let read = read("&&%zz=%4&x");
        assert_eq!(
            read.first().map(|p| (p.0.as_str(), p.1.as_str())),
            Some(("%zz", "%4"))
        );
        assert_eq!(read.len(), 2);
    }
}
