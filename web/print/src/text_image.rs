//! Words as pictures on paper.

use tinwave_protocol::print::TextImage;

use crate::geometry::Um;
use crate::letters;

/// Length on paper of so many pixels of an image, where capitals have that height.
#[must_use]
pub fn image_length(image: &TextImage, pixels: u32, capital: Um) -> Um {
    let size = i64::from(letters::font_size(capital));
    Um::try_from(i64::from(pixels) * size / i64::from(image.em_px.max(1))).unwrap_or(Um::MAX)
}

/// The image of a text, if one was given.
#[must_use]
pub fn image_of<'a>(images: &'a [TextImage], words: &str) -> Option<&'a TextImage> {
    images.iter().find(|image| image.words == words)
}
