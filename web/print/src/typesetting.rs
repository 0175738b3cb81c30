//! Words into lines of a given width.

use crate::cut_text::pieces;
use crate::drawing::{Drawing, Text};
use crate::fill::{Put, fill};
use crate::geometry::{Point, Um};
use crate::letters::{self, Weight};
use crate::text_image::{image_length, image_of};
use tinwave_protocol::print::TextImage;

/// Distance from one line to the next, in tenths of the capitals' height.
const PITCH_TENTHS: Um = 17;

/// Smallest capitals that are still read.
const LEAST_CAPITAL: Um = 1_100;

/// Sets words, with the images that were given for foreign ones.
#[derive(Clone, Copy, Debug)]
pub struct Typesetter<'a> {
    /// Images of words that the standard fonts don't hold.
    pub images: &'a [TextImage],
}

/// Words of one size set into lines.
#[derive(Clone, Debug)]
pub struct Paragraph {
    capital: Um,
    weight: Weight,
    width: Um,
    lines: Vec<Vec<String>>,
}

/// From one line to the next.
#[must_use]
pub const fn line_pitch(capital: Um) -> Um {
    capital * PITCH_TENTHS / 10
}

impl Typesetter<'_> {
    /// Width of words.
    #[must_use]
    pub fn width(self, words: &str, capital: Um, weight: Weight) -> Um {
        self.image_width(words, capital)
            .unwrap_or_else(|| letters::width(words, capital, weight))
    }

    fn image_width(self, words: &str, capital: Um) -> Option<Um> {
        if letters::covers(words) {
            return None;
        }
        let image = image_of(self.images, words)?;
        Some(image_length(image, image.width_px, capital))
    }

    /// The same text with the width that its image has, made smaller and at
    /// last cut short to fit into `room`.
    #[must_use]
    pub fn fitted(self, mut text: Text, room: Um) -> Text {
        text.image_width = self.image_width(&text.words, text.capital);
        let width = text.width();
        if width > room {
            let smaller = i64::from(text.capital) * i64::from(room.max(1)) / i64::from(width);
            let smaller = Um::try_from(smaller).unwrap_or(0);
            let least = if letters::covers(&text.words) {
                LEAST_CAPITAL
            } else {
                1
            };
            text.capital = smaller.max(least).min(text.capital);
            text.image_width = self.image_width(&text.words, text.capital);
        }
        if text.width() > room && letters::covers(&text.words) {
            shorten(&mut text, room);
        }
        text
    }

    /// Breaks words into lines; a word that is too long for a line is broken.
    #[must_use]
    pub fn paragraph(self, words: &str, capital: Um, weight: Weight, width: Um) -> Paragraph {
        let space = letters::width(" ", capital, weight);
        let mut lines: Vec<Vec<String>> = vec![Vec::new()];
        let mut used = 0;
        for word in pieces(words, b' ') {
            if word.is_empty() {
                continue;
            }
            for piece in self.broken(word, capital, weight, width) {
                let needed = self.width(&piece, capital, weight);
                let gap = if used > 0 { space } else { 0 };
                if used > 0 && used + gap + needed > width {
                    lines.push(Vec::new());
                    used = 0;
                }
                used += needed + if used > 0 { space } else { 0 };
                if let Some(line) = lines.last_mut() {
                    line.push(piece);
                }
            }
        }
        lines.retain(|line| !line.is_empty());
        Paragraph {
            capital,
            weight,
            width,
            lines,
        }
    }

    /// A word as it is, or in pieces where it is wider than a line.
    fn broken(self, word: &str, capital: Um, weight: Weight, width: Um) -> Vec<String> {
        if !letters::covers(word) || letters::width(word, capital, weight) <= width {
            return vec![word.to_owned()];
        }
        let mut pieces = Vec::new();
        let mut piece = String::new();
        for character in word.chars() {
            piece.push(character);
            if letters::width(&piece, capital, weight) > width && piece.len() > 1 {
                piece.pop();
                pieces.push(core::mem::take(&mut piece));
                piece.push(character);
            }
        }
        pieces.push(piece);
        pieces
    }

    /// Draws a paragraph whose first line stands under `top`; gives how far
    /// down it reaches.
    pub fn draw(self, drawing: &mut Drawing, paragraph: &Paragraph, top: Point) -> Um {
        let pitch = line_pitch(paragraph.capital);
        let mut y = top.y - paragraph.capital;
        for line in &paragraph.lines {
            self.draw_line(drawing, paragraph, line, top.x, y);
            y -= pitch;
        }
        paragraph.height()
    }

    fn draw_line(self, drawing: &mut Drawing, set: &Paragraph, line: &[String], x: Um, y: Um) {
        let text = |x, words: &str| Text {
            weight: set.weight,
            ..Text::new(Point { x, y }, set.capital, words)
        };
        if line.iter().all(|word| letters::covers(word)) {
            let mut words = String::new();
            for word in line {
                if !words.is_empty() {
                    words.put(" ");
                }
                words.put(word);
            }
            drawing.text(text(x, &words));
            return;
        }
        let mut x = x;
        for word in line {
            let text = self.fitted(text(x, word), set.width);
            x += text.width() + letters::width(" ", set.capital, set.weight);
            drawing.text(text);
        }
    }
}

fn shorten(text: &mut Text, room: Um) {
    let mut kept = text.words.clone();
    while kept.pop().is_some() {
        text.words = fill("{}…", &[&kept]);
        if text.width() <= room {
            return;
        }
    }
}

impl Paragraph {
    /// From the top of its first capitals to the line pitch under its last line.
    #[must_use]
    pub fn height(&self) -> Um {
        let lines = Um::try_from(self.lines.len()).unwrap_or(Um::MAX / 10_000);
        lines * line_pitch(self.capital)
    }

    /// Whether it has no words.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.lines.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Shape;
    use crate::geometry::at;

    const PLAIN: Typesetter<'static> = Typesetter { images: &[] };

    #[test]
    fn a_long_link_is_broken_and_nothing_of_it_is_lost() {
        let link = "x".repeat(300);
        let set = PLAIN.paragraph(&link, 2_000, Weight::Regular, 50_000);
        let mut drawing = Drawing::default();
        PLAIN.draw(&mut drawing, &set, at(0, 0));
        let mut found = String::new();
        for item in &drawing.items {
            if let Shape::Text(text) = &item.shape {
                assert!(text.width() <= 50_000, "{}", text.width());
                found.put(&text.words);
            }
        }
        assert_eq!(found, link);
    }

    #[test]
    fn a_text_is_made_smaller_then_cut_short() {
        let long = Text::new(at(0, 0), 3_500, "Orchard gate to the barn, second of three");
        let fitted = PLAIN.fitted(long.clone(), 50_000);
        assert!(fitted.width() <= 50_000 && fitted.words == long.words);
        let cut = PLAIN.fitted(long, 12_000);
        assert!(cut.width() <= 12_000, "{}", cut.width());
        assert!(cut.words.ends_with('…'), "{}", cut.words);
    }
}
