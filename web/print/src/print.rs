//! The one way in: a job and a kind of file.

use crate::dxf::dxf;
use crate::facts::facts;
use crate::job::PrintJob;
use crate::layout::{lay_out, patterns, texts_without_image};
use crate::pdf::pdf;
use crate::print_error::PrintError;
use crate::svg::{stacked, svg_document, svg_pages};

/// A kind of file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Sheets as PDF.
    Pdf,
    /// Sheets as `<svg>` elements, for the browser's own print.
    SvgPages,
    /// All patterns uncut as one SVG document; without the build sheet.
    Svg,
    /// All patterns uncut as DXF; without the build sheet.
    Dxf,
    /// `key=value` lines: how many sheets, mass, balance point and so on.
    Facts,
}

/// A file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Output {
    /// Its content.
    pub bytes: Vec<u8>,
    /// Its media type.
    pub media_type: &'static str,
    /// Its ending.
    pub extension: &'static str,
}

impl Kind {
    /// The word it goes by.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Some(match key {
            "pdf" => Self::Pdf,
            "svg-pages" => Self::SvgPages,
            "svg" => Self::Svg,
            "dxf" => Self::Dxf,
            "facts" => Self::Facts,
            _ => return None,
        })
    }
}

/// Prints a job.
///
/// # Errors
/// See [`PrintError`]. Only a PDF needs images.
pub fn print(job: &PrintJob, kind: Kind) -> Result<Output, PrintError> {
    job.check()?;
    let (bytes, media_type, extension) = match kind {
        Kind::Pdf => {
            let layout = lay_out(job)?;
            let missing = texts_without_image(job, &layout);
            if !missing.is_empty() {
                return Err(PrintError::NeedsImages(missing));
            }
            (pdf(job, &layout), "application/pdf", "pdf")
        }
        Kind::SvgPages => {
            let pages = svg_pages(&lay_out(job)?);
            (pages.into_bytes(), "image/svg+xml", "svg")
        }
        Kind::Svg => {
            let document = svg_document(patterns(job)?, &job.name);
            (document.into_bytes(), "image/svg+xml", "svg")
        }
        Kind::Dxf => {
            let file = dxf(&stacked(patterns(job)?));
            (file.into_bytes(), "image/vnd.dxf", "dxf")
        }
        Kind::Facts => {
            let layout = lay_out(job)?;
            let missing = texts_without_image(job, &layout);
            let facts = facts(job, &layout, &missing);
            (facts.into_bytes(), "text/plain", "txt")
        }
    };
    Ok(Output {
        bytes,
        media_type,
        extension,
    })
}
