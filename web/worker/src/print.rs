//! Prints, in one step: some milliseconds.

use tinwave_print::{draw_sheets, write_file};
use tinwave_protocol::print::{DrawSheets, FileWritten, PrintError, SheetsDrawn, WriteFile};

use crate::Work;

/// Sheets to look at.
pub struct SheetsWork(pub DrawSheets);

impl Work for SheetsWork {
    type Answer = Result<SheetsDrawn, PrintError>;

    fn total(&self) -> u32 {
        0
    }

    fn step(&mut self) {}

    fn finish(self) -> Self::Answer {
        draw_sheets(&self.0.job)
    }
}

/// A file.
pub struct FileWork(pub WriteFile);

impl Work for FileWork {
    type Answer = Result<FileWritten, PrintError>;

    fn total(&self) -> u32 {
        0
    }

    fn step(&mut self) {}

    fn finish(self) -> Self::Answer {
        write_file(&self.0.job, self.0.kind)
    }
}
