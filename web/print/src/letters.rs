//! The letters of the standard PDF fonts: which characters they have, and how
//! wide each is.

use crate::geometry::Um;

/// Height of a capital in thousandths of the font size: `CapHeight` of the
/// published font metrics of Helvetica.
pub const CAPITAL_MILLI: i64 = 718;

/// Depth of the lowest letter below the line, in thousandths: `Descender`.
pub const DESCENDER_MILLI: i64 = 207;

/// The two weights in use.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Weight {
    /// Upright.
    #[default]
    Regular,
    /// Bold, for headings.
    Bold,
}

/// Advance widths of the codes 32 to 255 in WinAnsi encoding, in thousandths of
/// the font size. Source: the Core 14 font metrics (AFM files) of the PDF
/// reference.
#[rustfmt::skip]
const REGULAR: [u16; 224] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
    1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
    333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
    556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584, 350,
    556, 350, 222, 556, 333, 1000, 556, 556, 333, 1000, 667, 333, 1000, 350, 611, 350,
    350, 222, 222, 333, 333, 350, 556, 1000, 333, 1000, 500, 333, 944, 350, 500, 667,
    278, 333, 556, 556, 556, 556, 260, 556, 333, 737, 370, 556, 584, 333, 737, 333,
    400, 584, 333, 333, 333, 556, 537, 278, 333, 333, 365, 556, 834, 834, 834, 611,
    667, 667, 667, 667, 667, 667, 1000, 722, 667, 667, 667, 667, 278, 278, 278, 278,
    722, 722, 778, 778, 778, 778, 778, 584, 778, 722, 722, 722, 722, 667, 667, 611,
    556, 556, 556, 556, 556, 556, 889, 500, 556, 556, 556, 556, 278, 278, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 584, 611, 556, 556, 556, 556, 500, 556, 500,
];

/// As [`REGULAR`], bold.
#[rustfmt::skip]
const BOLD: [u16; 224] = [
    278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611,
    975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778,
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556,
    333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611,
    611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584, 350,
    556, 350, 278, 556, 500, 1000, 556, 556, 333, 1000, 667, 333, 1000, 350, 611, 350,
    350, 278, 278, 500, 500, 350, 556, 1000, 333, 1000, 556, 333, 944, 350, 500, 667,
    278, 333, 556, 556, 556, 556, 280, 556, 333, 737, 370, 556, 584, 333, 737, 333,
    400, 584, 333, 333, 333, 611, 556, 278, 333, 333, 365, 556, 834, 834, 834, 611,
    722, 722, 722, 722, 722, 722, 1000, 722, 667, 667, 667, 667, 278, 278, 278, 278,
    722, 722, 778, 778, 778, 778, 778, 584, 778, 722, 722, 722, 722, 667, 667, 611,
    556, 556, 556, 556, 556, 556, 889, 556, 556, 556, 556, 556, 278, 278, 278, 278,
    611, 611, 611, 611, 611, 611, 611, 584, 611, 611, 611, 611, 611, 556, 611, 556,
];

/// Characters of the codes 128 to 159; NUL where there is none.
/// Source: PDF Reference 1.4, appendix D (WinAnsiEncoding).
const UPPER: [char; 32] = [
    '€', '\0', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\0', 'Ž', '\0', '\0', '‘',
    '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', '\0', 'ž', 'Ÿ',
];

/// The WinAnsi code of a character, if it has one and can be seen or is a space.
#[must_use]
pub fn win_ansi(character: char) -> Option<u8> {
    match u32::from(character) {
        code @ (32..=126 | 160..=172 | 174..=255) => u8::try_from(code).ok(),
        0 => None,
        _ => {
            let place = UPPER.iter().position(|c| *c == character)?;
            u8::try_from(place + 128).ok()
        }
    }
}

/// Whether every character of a text has a code.
#[must_use]
pub fn covers(text: &str) -> bool {
    text.chars().all(|c| win_ansi(c).is_some())
}

/// Width of a text whose capitals have that height. A character without a code
/// counts as one font size, as wide as the writing of East Asia sets it.
#[must_use]
pub fn width(text: &str, capital: Um, weight: Weight) -> Um {
    let widths = match weight {
        Weight::Regular => &REGULAR,
        Weight::Bold => &BOLD,
    };
    let milli: i64 = text
        .chars()
        .map(|c| {
            let code = win_ansi(c).map(usize::from);
            let width = code.and_then(|code| widths.get(code.checked_sub(32)?));
            width.map_or(1_000, |w| i64::from(*w))
        })
        .sum();
    Um::try_from(milli * i64::from(capital) / CAPITAL_MILLI).unwrap_or(Um::MAX)
}

/// Font size of a text whose capitals have that height.
#[must_use]
pub fn font_size(capital: Um) -> Um {
    Um::try_from(i64::from(capital) * 1_000 / CAPITAL_MILLI).unwrap_or(Um::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_and_widths_are_those_of_the_published_tables() {
        // PDF Reference 1.4, table D.1: octal codes of WinAnsiEncoding.
        assert_eq!(win_ansi('€'), Some(0o200));
        assert_eq!(win_ansi('’'), Some(0o222));
        assert_eq!(win_ansi('Ø'), Some(0o330));
        assert_eq!(win_ansi('Ÿ'), Some(0o237));
        assert_eq!(win_ansi('日'), None);
        assert_eq!(win_ansi('\0'), None);
        assert_eq!(win_ansi('\u{ad}'), None, "a soft hyphen is not a sign");
        // Helvetica: capital A is 667 wide, four digits 4 × 556.
        assert_eq!(width("A", 718, Weight::Regular), 667);
        assert_eq!(width("2437", 718, Weight::Regular), 2_224);
        assert_eq!(width("A", 718, Weight::Bold), 722);
        assert_eq!(width("日本", 718, Weight::Regular), 2_000);
        assert_eq!(font_size(718), 1_000);
    }
}
