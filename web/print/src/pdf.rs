//! Sheets as a PDF file (PDF Reference 1.4), written without compression.

use crate::figure::push_scaled;
use crate::fill::{Put, fill};
use crate::paper::Paper;
use crate::pdf_content::content;
use crate::sheet::Layout;
use crate::words::{self, count};
use tinwave_protocol::print::PrintJob;
use tinwave_protocol::print::TextImage;

/// Objects 1 to 5, which are the same in every file: the catalog, the two
/// fonts, the pages' list and their resources stand behind them. PrintScaling
/// came with PDF 1.6; readers of any version heed it.
const FIXED: [&str; 3] = [
    "<</Type/Catalog/Pages 4 0 R/ViewerPreferences<</PrintScaling/None/DisplayDocTitle true>>>>",
    "<</Type/Font/Subtype/Type1/BaseFont/Helvetica/Encoding/WinAnsiEncoding>>",
    "<</Type/Font/Subtype/Type1/BaseFont/Helvetica-Bold/Encoding/WinAnsiEncoding>>",
];
/// Number of the first image's object: after the pages, the resources and the
/// document's information.
const FIRST_IMAGE: usize = FIXED.len() + 4;

/// A file as it grows, and where its objects start.
struct File {
    bytes: Vec<u8>,
    offsets: Vec<usize>,
}

/// The PDF of a layout. Every text must be in WinAnsi or have its image.
#[must_use]
pub fn pdf(job: &PrintJob, layout: &Layout) -> Vec<u8> {
    let first_page = FIRST_IMAGE + job.images.len();
    let mut file = File {
        // Bytes above 127 tell every program that the file is not plain text.
        bytes: b"%PDF-1.4\n%\xE2\xE3\xCF\xD3\n".to_vec(),
        offsets: Vec::new(),
    };
    for object in FIXED {
        file.object(object);
    }
    file.object(&page_list(first_page, layout.sheets.len()));
    file.object(&resources(job.images.len()));
    file.object(&information(&job.name));
    for image in &job.images {
        file.stream(&image_entries(image), &image.bits);
    }
    for (index, sheet) in layout.sheets.iter().enumerate() {
        let page = first_page + 2 * index;
        file.object(&page_entries(sheet.paper, page + 1));
        file.stream("", content(job, layout, sheet).as_bytes());
    }
    file.finish()
}

fn page_list(first: usize, pages: usize) -> String {
    let mut kids = String::new();
    for page in 0..pages {
        kids.put(&count(first + 2 * page));
        kids.put(" 0 R ");
    }
    fill(
        "<</Type/Pages/Count {}/Kids[{}]/Resources 5 0 R>>",
        &[&count(pages), &kids],
    )
}

/// The fonts as F1 and F2, the images as I0, I1 and so on.
fn resources(images: usize) -> String {
    let mut names = String::new();
    for image in 0..images {
        let object = count(FIRST_IMAGE + image);
        names.put(&fill("/I{} {} 0 R", &[&count(image), &object]));
    }
    fill(
        "<</ProcSet[/PDF/Text/ImageB]/Font<</F1 2 0 R/F2 3 0 R>>/XObject<<{}>>>>",
        &[&names],
    )
}

/// The document's title as UTF-16 in hexadecimal digits, which needs no
/// escapes in any script.
fn information(name: &str) -> String {
    let mut hex = String::new();
    for unit in fill("{}: {}", &[words::PROGRAM, name]).encode_utf16() {
        push_hex(&mut hex, unit);
    }
    fill("<</Title<FEFF{}>/Producer({})>>", &[&hex, words::PROGRAM])
}

/// Four hexadecimal digits.
pub(crate) fn push_hex(out: &mut String, unit: u16) {
    for shift in [12, 8, 4, 0] {
        let digit = usize::from(unit >> shift) & 15;
        out.put("0123456789ABCDEF".get(digit..=digit).unwrap_or_default());
    }
}

fn image_entries(image: &TextImage) -> String {
    // A set bit is ink.
    fill(
        "/Type/XObject/Subtype/Image/ImageMask true/Width {}/Height {}/BitsPerComponent 1/Decode[1 0]",
        &[
            &count(image.width_px as usize),
            &count(image.height_px as usize),
        ],
    )
}

fn page_entries(paper: Paper, content: usize) -> String {
    // 72 points to the inch of 25.4 mm, to a hundred-thousandth.
    let points = |side: i32| {
        let mut text = String::new();
        push_scaled(&mut text, i64::from(side) * 7_200_000 / 25_400, 5);
        text
    };
    fill(
        "<</Type/Page/Parent 4 0 R/MediaBox[0 0 {} {}]/Contents {} 0 R>>",
        &[&points(paper.width), &points(paper.height), &count(content)],
    )
}

impl File {
    #[inline(never)]
    fn text(&mut self, text: &str) {
        self.bytes.extend_from_slice(text.as_bytes());
    }

    fn begin(&mut self) {
        self.offsets.push(self.bytes.len());
        self.text(&count(self.offsets.len()));
        self.text(" 0 obj\n");
    }

    #[inline(never)]
    fn object(&mut self, body: &str) {
        self.begin();
        self.text(body);
        self.text("\nendobj\n");
    }

    fn stream(&mut self, entries: &str, bytes: &[u8]) {
        self.begin();
        let length = count(bytes.len());
        self.text(&fill("<<{}/Length {}>>stream\n", &[entries, &length]));
        self.bytes.extend_from_slice(bytes);
        self.text("\nendstream\nendobj\n");
    }

    fn finish(mut self) -> Vec<u8> {
        let start = count(self.bytes.len());
        let size = count(self.offsets.len() + 1);
        let mut table = fill("xref\n0 {}\n0000000000 65535 f \n", &[&size]);
        for offset in &self.offsets {
            let digits = count(*offset);
            for _ in digits.len()..10 {
                table.put("0");
            }
            table.put(&digits);
            table.put(" 00000 n \n");
        }
        self.text(&table);
        self.text(&fill(
            "trailer\n<</Size {}/Root 1 0 R/Info 6 0 R>>\nstartxref\n{}\n%%EOF\n",
            &[&size, &start],
        ));
        self.bytes
    }
}
