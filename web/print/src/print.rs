//! The one way in: a job, and what is made of it.

use tinwave_protocol::print::{
    FileKind, FileWritten, Part, PrintError, PrintJob, SheetDrawn, SheetsDrawn,
};

use crate::dxf::dxf;
use crate::geometry::Um;
use crate::job_check::{check, seen};
use crate::layout::{lay_out, patterns, texts_without_image};
use crate::mount::balance;
use crate::pdf::pdf;
use crate::sheet::{Layout, Sheet};
use crate::svg::{stacked, svg_document, svg_page};

/// Writes a job as a file.
///
/// # Errors
/// See [`PrintError`]. Only a PDF needs images.
pub fn write_file(job: &PrintJob, kind: FileKind) -> Result<FileWritten, PrintError> {
    check(job)?;
    let job = &seen(job.clone());
    let bytes = match kind {
        FileKind::Pdf => {
            let layout = lay_out(job)?;
            let missing = texts_without_image(job, &layout);
            if !missing.is_empty() {
                return Err(PrintError::NeedsImages(missing));
            }
            pdf(job, &layout)
        }
        FileKind::Svg => svg_document(patterns(job)?, &job.name).into_bytes(),
        FileKind::Dxf => dxf(&stacked(patterns(job)?)).into_bytes(),
    };
    Ok(FileWritten { kind, bytes })
}

/// Draws the sheets of a job.
///
/// # Errors
/// See [`PrintError`]; no images are needed, the browser has fonts of its own.
pub fn draw_sheets(job: &PrintJob) -> Result<SheetsDrawn, PrintError> {
    check(job)?;
    let job = &seen(job.clone());
    let layout = lay_out(job)?;
    let sheets = layout.sheets.iter().enumerate();
    Ok(SheetsDrawn {
        sheets: sheets
            .map(|(index, sheet)| SheetDrawn {
                svg: svg_page(&layout, sheet, index),
                parts: parts_on(&layout, sheet),
                width_um: size(sheet.paper.width),
                height_um: size(sheet.paper.height),
            })
            .collect(),
        balance: balance(job),
    })
}

fn parts_on(layout: &Layout, sheet: &Sheet) -> Vec<Part> {
    let of_view = |pattern: usize| layout.patterns.get(pattern).map(|pattern| pattern.part);
    let views = sheet.views.iter();
    views.filter_map(|view| of_view(view.pattern)).collect()
}

/// Paper has no negative size.
fn size(um: Um) -> u32 {
    um.unsigned_abs()
}
