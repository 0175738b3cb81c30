//! Sizes of paper, and what a printer makes of 100 mm.

use serde::{Deserialize, Serialize};

/// A size of paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum PaperSize {
    /// 210 × 297 mm (ISO 216).
    #[default]
    A4,
    /// 8.5 × 11 in (ANSI/ASME Y14.1).
    Letter,
}

/// How the paper lies.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct PrintedRulers {
    /// The ruler across, micrometres.
    pub across_um: u32,
    /// The ruler upright, micrometres.
    pub upright_um: u32,
}

/// What a printed ruler may measure.
pub const PRINTED_RANGE_UM: (u32, u32) = (90_000, 110_000);

impl Default for PrintedRulers {
    fn default() -> Self {
        Self {
            across_um: 100_000,
            upright_um: 100_000,
        }
    }
}

impl PaperSize {
    /// Width and height upright, micrometres.
    #[must_use]
    pub const fn size_um(self) -> (i32, i32) {
        match self {
            Self::A4 => (210_000, 297_000),
            Self::Letter => (215_900, 279_400),
        }
    }
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
