//! Sheets of paper, and the correction of a printer that does not print true.

use tinwave_protocol::print::{PaperSize, PrintedRulers};

use crate::geometry::{MM, Rect, Um, at};

/// Length of the metric ruler on every sheet.
pub const RULER: Um = 100 * MM;
/// Length of the inch ruler on every sheet: 4 in.
pub const INCH_RULER: Um = 101_600;

/// White border that no printer needs to reach: left, right and top. Common
/// practice, no source.
pub const BORDER: Um = 8 * MM;
/// The same at the lower edge, where many inkjets hold the sheet.
pub const FOOT_BORDER: Um = 14 * MM;

/// A sheet as it lies, with the printer's correction.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Paper {
    /// Real width of the sheet.
    pub width: Um,
    /// Real height of the sheet.
    pub height: Um,
    /// The printer's correction.
    pub rulers: PrintedRulers,
}

impl Paper {
    /// A size laid upright or lying.
    #[must_use]
    pub const fn new(size: PaperSize, landscape: bool, rulers: PrintedRulers) -> Self {
        let (short, long) = size.size_um();
        let (width, height) = if landscape {
            (long, short)
        } else {
            (short, long)
        };
        Self {
            width,
            height,
            rulers,
        }
    }

    /// Width and height in drawing lengths: a sheet on which everything is
    /// drawn larger holds less.
    #[must_use]
    pub fn drawn_size(self) -> (Um, Um) {
        (
            scaled(self.width, self.rulers.across_um),
            scaled(self.height, self.rulers.upright_um),
        )
    }

    /// Where may be drawn, in drawing lengths from the lower left corner.
    #[must_use]
    pub fn printable(self) -> Rect {
        let (width, height) = self.drawn_size();
        Rect::new(at(BORDER, FOOT_BORDER), at(width - BORDER, height - BORDER))
    }
}

fn scaled(length: Um, ruler_um: u32) -> Um {
    Um::try_from(i64::from(length) * i64::from(ruler_um) / 100_000).unwrap_or(length)
}
