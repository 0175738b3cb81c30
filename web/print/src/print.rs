//! The one way in: a job and a kind of file.

use crate::job::PrintJob;
use crate::layout::{lay_out, texts_without_image};
use crate::pdf::pdf;
use crate::print_error::PrintError;

/// A kind of file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Sheets as PDF.
    Pdf,
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

/// Prints a job.
///
/// # Errors
/// See [`PrintError`].
pub fn print(job: &PrintJob, kind: Kind) -> Result<Output, PrintError> {
    match kind {
        Kind::Pdf => {
            let layout = lay_out(job)?;
            let missing = texts_without_image(job, &layout);
            if !missing.is_empty() {
                return Err(PrintError::NeedsImages(missing));
            }
            Ok(Output {
                bytes: pdf(job, &layout),
                media_type: "application/pdf",
                extension: "pdf",
            })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    #[test]
    fn writes() {
        let mut job = crate::examples::plain_can();
        job.link = "https://example.org/#".to_owned() + &"a1-b2~".repeat(40);
        job.mouth = crate::job::Mouth::Funnel { mouth_diameter_um: 200_000, half_angle_millideg: 25_000, sheet_um: 300 };
        job.cap = Some(crate::job::Cap { sheet_um: 500, permittivity_milli: 2250 });
        job.screws = vec![crate::job::WallHole { axial_um: 80_000, angle_millideg: 180_000, hole_um: 4_000, depth_um: 5_000 }];
        let out = print(&job, Kind::Pdf).unwrap();
        std::fs::write("/tmp/wt-print/target/t.pdf", out.bytes).unwrap();
    }
}
