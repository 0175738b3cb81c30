//! Sheets of paper, and the correction of a printer that does not print true.

use crate::geometry::{MM, Rect, Um, at};

/// A size of paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum PaperSize {
    /// 210 × 297 mm (ISO 216).
    #[default]
    A4,
    /// 8.5 × 11 in (ANSI/ASME Y14.1).
    Letter,
}

/// How the paper lies.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Orientation {
    /// Whichever needs fewer sheets.
    #[default]
    Automatic,
    /// Upright.
    Portrait,
    /// Lying.
    Landscape,
}

/// What the printed 100 mm rulers really measure.
///
/// 100 mm for a printer that prints true; the next print is then drawn larger
/// or smaller by as much, each axis by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct PrintedRulers {
    /// The ruler across, micrometres, 90 to 110 mm.
    pub across_um: u32,
    /// The ruler upright, micrometres, 90 to 110 mm.
    pub upright_um: u32,
}

/// Length of the metric ruler on every sheet.
pub const RULER: Um = 100 * MM;
/// Length of the inch ruler on every sheet: 4 in.
pub const INCH_RULER: Um = 101_600;

/// What a printed ruler may measure.
pub const PRINTED_RANGE_UM: (u32, u32) = (90_000, 110_000);

/// White border that no printer needs to reach: left, right and top. Common
/// practice, no source.
pub const BORDER: Um = 8 * MM;
/// The same at the lower edge, where many inkjets hold the sheet.
pub const FOOT_BORDER: Um = 14 * MM;

impl Default for PrintedRulers {
    fn default() -> Self {
        Self {
            across_um: 100_000,
            upright_um: 100_000,
        }
    }
}

impl PaperSize {
    /// Width and height upright.
    #[must_use]
    pub const fn size(self) -> (Um, Um) {
        match self {
            Self::A4 => (210_000, 297_000),
            Self::Letter => (215_900, 279_400),
        }
    }
}

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
        let (short, long) = size.size();
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

impl PrintedRulers {
    /// Factors by which the drawing is enlarged, across and upright, in
    /// millionths.
    #[must_use]
    pub fn factors_millionths(self) -> (i64, i64) {
        let factor = |ruler: u32| 100_000_000_000 / i64::from(ruler.max(1));
        (factor(self.across_um), factor(self.upright_um))
    }
}
