//! Words as pictures, for scripts that the standard PDF fonts don't hold.

use serde::{Deserialize, Serialize};

/// A picture of one text in one colour, as the browser drew it.
///
/// Rows run from the top, eight pixels to a byte, the first pixel in the
/// highest bit, each row filled to a whole byte; a set bit is ink.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct TextImage {
    /// The text.
    pub words: String,
    /// Font size in pixels, at least 8.
    pub em_px: u32,
    /// From the top row to the line that letters stand on.
    pub baseline_px: u32,
    /// Width in pixels, which is also the text's advance.
    pub width_px: u32,
    /// Height in pixels.
    pub height_px: u32,
    /// The pixels.
    pub bits: Vec<u8>,
}

/// Most pixels along a side.
pub const MOST_PIXELS: u32 = 8_192;

impl TextImage {
    /// Bytes in a row.
    #[must_use]
    pub const fn row_bytes(&self) -> usize {
        self.width_px.div_ceil(8) as usize
    }

    /// Whether its numbers agree with each other.
    #[must_use]
    pub fn is_sound(&self) -> bool {
        let sides = 1..=MOST_PIXELS;
        sides.contains(&self.width_px)
            && sides.contains(&self.height_px)
            && (8..=MOST_PIXELS).contains(&self.em_px)
            && self.baseline_px <= self.height_px
            && self.bits.len() == self.row_bytes() * self.height_px as usize
    }
}
