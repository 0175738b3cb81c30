//! The page's colours, for the canvas, which style sheets do not reach.

use plotters::style::RGBColor;
use web_sys::HtmlCanvasElement;

/// Colours of a plot.
#[derive(Clone, Copy, PartialEq)]
pub(super) struct Palette {
    pub(super) ink: RGBColor,
    pub(super) ink_soft: RGBColor,
    pub(super) paper: RGBColor,
    pub(super) line: RGBColor,
    pub(super) accent: RGBColor,
    pub(super) caution: RGBColor,
    pub(super) band: RGBColor,
}

impl Palette {
    /// Reads the colours off the canvas. `pictures.css` puts each on a property
    /// that paints nothing there: a property is resolved to plain RGB, a custom
    /// one is not.
    pub(super) fn read(canvas: &HtmlCanvasElement) -> Option<Self> {
        let style = web_sys::window()?.get_computed_style(canvas).ok()??;
        let colour = |property: &str| {
            let text = style.get_property_value(property).unwrap_or_default();
            parse_rgb(&text)
        };
        Some(Self {
            ink: colour("color")?,
            ink_soft: colour("border-bottom-color")?,
            paper: colour("background-color")?,
            line: colour("border-top-color")?,
            accent: colour("border-right-color")?,
            caution: colour("border-left-color")?,
            band: colour("outline-color")?,
        })
    }
}

/// `rgb(1, 2, 3)` or `rgba(1, 2, 3, 0.5)`, as browsers resolve plain colours.
fn parse_rgb(text: &str) -> Option<RGBColor> {
    let (_, rest) = text.split_once('(')?;
    let mut parts = rest
        .split([',', ' ', ')'])
        .filter(|part| !part.is_empty())
        .map(|part| part.parse::<u8>().unwrap_or(0));
    Some(RGBColor(parts.next()?, parts.next()?, parts.next()?))
}
