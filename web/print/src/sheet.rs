//! A sheet of paper with what is on it.

use crate::drawing::{Drawing, Item};
use crate::geometry::{Rect, Um};
use crate::paper::Paper;
use crate::pattern::Pattern;

/// A part of a pattern on a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct View {
    /// Which pattern of the layout.
    pub pattern: usize,
    /// The part of it that is seen, in its own coordinates.
    pub window: Rect,
    /// Added to the pattern's coordinates to have the sheet's.
    pub shift: (Um, Um),
    /// Whether the pattern goes on outside the window.
    pub clipped: bool,
}

/// One sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// The paper.
    pub paper: Paper,
    /// Rulers, head and foot, register marks, in the sheet's coordinates.
    pub furniture: Drawing,
    /// The parts of patterns.
    pub views: Vec<View>,
}

/// All sheets of a job.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Layout {
    /// The patterns.
    pub patterns: Vec<Pattern>,
    /// The sheets.
    pub sheets: Vec<Sheet>,
}

impl View {
    /// Where on the sheet it is seen.
    #[must_use]
    pub const fn place(&self) -> Rect {
        self.window.by(self.shift.0, self.shift.1)
    }

    /// What of the pattern's drawing is seen.
    #[must_use]
    #[inline(never)]
    pub fn items<'a>(&self, layout: &'a Layout) -> Vec<&'a Item> {
        let mut seen = Vec::new();
        if let Some(pattern) = layout.patterns.get(self.pattern) {
            for item in &pattern.drawing.items {
                if !self.clipped || item.shape.enters(self.window) {
                    seen.push(item);
                }
            }
        }
        seen
    }
}
