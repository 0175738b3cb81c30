//! Printing at true scale: the job, its sheets to look at, its files, and what must be
//! computed for it.

mod error;
mod fittings;
mod job;
mod paper;
mod text_image;

pub use error::{JobNumber, PrintError};
pub use fittings::{BracketFound, CapFound, Fittings, FittingsFound, RivetDepth};
pub use job::{
    Bracket, Can, Cap, CutLimits, Fixing, Mouth, Panel, Part, PrintJob, Probe, Rim, SideSeam,
    WallHole,
};
pub use paper::{Orientation, PRINTED_RANGE_UM, PaperSize, PrintedRulers};
pub use text_image::{MOST_PIXELS, TextImage};

use serde::{Deserialize, Serialize};

use crate::{Job, Question};

/// Draws the sheets of a job, to be looked at and for the browser's own print.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DrawSheets {
    /// What is to be printed.
    pub job: PrintJob,
}

/// All sheets of a job.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct SheetsDrawn {
    /// The sheets in order.
    pub sheets: Vec<SheetDrawn>,
    /// The whole antenna's mass and where it balances; `None` where the can is of no
    /// real metal.
    pub balance: Option<Balance>,
}

/// One sheet.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SheetDrawn {
    /// An `<svg>` element as large as the sheet.
    pub svg: String,
    /// The parts that are on it.
    pub parts: Vec<Part>,
    /// Width of the paper as it lies, micrometres.
    pub width_um: u32,
    /// Its height.
    pub height_um: u32,
}

/// The whole antenna's mass and balance point.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Balance {
    /// Mass, milligrams.
    pub mass_mg: u32,
    /// Along the axis, from the closed end's outer rim, micrometres.
    pub from_closed_rim_um: u32,
}

/// A kind of file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum FileKind {
    /// Sheets as PDF.
    Pdf,
    /// All patterns uncut as one SVG document; without the build sheet.
    Svg,
    /// All patterns uncut as DXF; without the build sheet.
    Dxf,
}

impl FileKind {
    /// The ending of its file's name.
    #[must_use]
    pub const fn extension(self) -> &'static str {
        match self {
            Self::Pdf => "pdf",
            Self::Svg => "svg",
            Self::Dxf => "dxf",
        }
    }

    /// Its media type.
    #[must_use]
    pub const fn media_type(self) -> &'static str {
        match self {
            Self::Pdf => "application/pdf",
            Self::Svg => "image/svg+xml",
            Self::Dxf => "image/vnd.dxf",
        }
    }
}

/// Writes a job as a file.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WriteFile {
    /// What is to be printed.
    pub job: PrintJob,
    /// As which file.
    pub kind: FileKind,
}

/// A file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct FileWritten {
    /// Its kind.
    pub kind: FileKind,
    /// Its content.
    pub bytes: Vec<u8>,
}

impl Question for DrawSheets {
    type Answer = Result<SheetsDrawn, PrintError>;

    fn into_job(self) -> Job {
        Job::DrawSheets(self)
    }
}

impl Question for WriteFile {
    type Answer = Result<FileWritten, PrintError>;

    fn into_job(self) -> Job {
        Job::WriteFile(self)
    }
}
