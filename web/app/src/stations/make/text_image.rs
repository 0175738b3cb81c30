//! Words as pictures, for scripts that the fonts of a PDF don't hold.

use leptos::prelude::*;
use tinwave_protocol::print::{MOST_PIXELS, TextImage};
use wasm_bindgen::JsCast;

use crate::browser;

/// A text as the browser's own fonts draw it, 64 px to the em, one bit to a pixel: for
/// files whose fonts lack its letters.
#[must_use]
pub fn text_image(words: &str) -> Option<TextImage> {
    const EM: u32 = 64;
    const BASELINE: u32 = 71;
    const HEIGHT: u32 = 96;
    const FONT: &str = "64px sans-serif";
    if !browser::is_here() {
        return None;
    }
    let canvas = document().create_element("canvas").ok()?;
    let canvas: web_sys::HtmlCanvasElement = canvas.unchecked_into();
    let pen = canvas.get_context("2d").ok().flatten()?;
    let pen: web_sys::CanvasRenderingContext2d = pen.unchecked_into();
    pen.set_font(FONT);
    let width = pen.measure_text(words).ok()?.width().ceil().max(1.0);
    let width = (width as u32).min(MOST_PIXELS);
    canvas.set_width(width);
    canvas.set_height(HEIGHT);
    // A new size forgets it.
    pen.set_font(FONT);
    pen.fill_text(words, 0.0, f64::from(BASELINE)).ok()?;
    let pixels = pen
        .get_image_data(0.0, 0.0, f64::from(width), f64::from(HEIGHT))
        .ok()?;
    Some(TextImage {
        words: words.to_owned(),
        em_px: EM,
        baseline_px: BASELINE,
        width_px: width,
        height_px: HEIGHT,
        bits: inked(&pixels.data(), width as usize),
    })
}

/// Which pixels are inked, eight to a byte, each row filled to a whole byte.
fn inked(rgba: &[u8], width: usize) -> Vec<u8> {
    let rows = rgba.chunks_exact(4 * width);
    rows.flat_map(|row| {
        row.chunks(32).map(|eight| {
            let bits = eight.chunks_exact(4).enumerate();
            bits.fold(0, |byte, (place, pixel)| {
                byte | (u8::from(pixel[3] > 127) << (7 - place))
            })
        })
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::inked;

    #[test]
    fn eight_pixels_are_a_byte_and_a_row_ends_with_one() {
        let pixel = |ink: bool| [0, 0, 0, if ink { 255 } else { 0 }];
        // Two rows of ten: the first and the last pixel of each are inked.
        let row: Vec<u8> = (0..10).flat_map(|x| pixel(x == 0 || x == 9)).collect();
        let rgba = [row.clone(), row].concat();
        assert_eq!(inked(&rgba, 10), [0x80, 0x40, 0x80, 0x40]);
    }
}
