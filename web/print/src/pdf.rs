//! Sheets as a PDF file (PDF Reference 1.4), written without compression.

use crate::figure::{push_scaled, push_whole};
use crate::fill::{Put, fill};
use crate::job::PrintJob;
use crate::paper::Paper;
use crate::pdf_content::content;
use crate::sheet::Layout;
use crate::text_image::TextImage;
use crate::words;

/// Object numbers that are the same in every file.
const CATALOG: usize = 1;
const PAGES: usize = 2;
const REGULAR: usize = 3;
const BOLD: usize = 4;
const RESOURCES: usize = 5;
const INFO: usize = 6;
const FIRST_FREE: usize = 7;

/// A file as it grows, and where its objects start.
struct File {
    bytes: Vec<u8>,
    offsets: Vec<usize>,
}

/// The PDF of a layout. Every text must be in WinAnsi or have its image.
#[must_use]
pub fn pdf(job: &PrintJob, layout: &Layout) -> Vec<u8> {
    let images: Vec<&TextImage> = job.images.iter().filter(|i| i.is_sound()).collect();
    let first_page = FIRST_FREE + images.len();
    let mut file = File {
        // Bytes above 127 tell every program that the file is not plain text.
        bytes: b"%PDF-1.4\n%\xE2\xE3\xCF\xD3\n".to_vec(),
        offsets: Vec::new(),
    };
    // PrintScaling came with PDF 1.6; readers of any version heed it.
    file.object(&format_catalog());
    file.object(&format_pages(first_page, layout.sheets.len()));
    for name in ["Helvetica", "Helvetica-Bold"] {
        file.object(&fill(
            "<</Type/Font/Subtype/Type1/BaseFont/{}/Encoding/WinAnsiEncoding>>",
            &[name],
        ));
    }
    file.object(&format_resources(images.len()));
    file.object(&format_info(&job.name));
    for image in images {
        file.stream(&format_image(image), &image.bits);
    }
    for (index, sheet) in layout.sheets.iter().enumerate() {
        let page = first_page + 2 * index;
        file.object(&format_page(sheet.paper, page + 1));
        file.stream("", content(job, layout, sheet).as_bytes());
    }
    file.finish()
}

/// The name of an image in a content stream.
pub(crate) fn image_name(index: usize) -> String {
    fill("/I{}", &[&words::count(index)])
}

fn reference(object: usize) -> String {
    fill("{} 0 R", &[&words::count(object)])
}

fn format_catalog() -> String {
    fill(
        "<</Type/Catalog/Pages {}/ViewerPreferences<</PrintScaling/None/DisplayDocTitle true>>>>",
        &[&reference(PAGES)],
    )
}

fn format_pages(first: usize, count: usize) -> String {
    let mut kids = String::new();
    for page in 0..count {
        kids.put(&reference(first + 2 * page));
        kids.put(" ");
    }
    fill(
        "<</Type/Pages/Count {}/Kids[{}]/Resources {}>>",
        &[&words::count(count), &kids, &reference(RESOURCES)],
    )
}

fn format_resources(images: usize) -> String {
    let mut names = String::new();
    for image in 0..images {
        names.put(&fill(
            "{} {}",
            &[&image_name(image), &reference(FIRST_FREE + image)],
        ));
    }
    fill(
        "<</ProcSet[/PDF/Text/ImageB]/Font<</F1 {}/F2 {}>>/XObject<<{}>>>>",
        &[&reference(REGULAR), &reference(BOLD), &names],
    )
}

/// The document's title as UTF-16 in hexadecimal digits, which needs no
/// escapes in any script.
fn format_info(name: &str) -> String {
    let title = if name.is_empty() {
        words::PROGRAM.to_owned()
    } else {
        fill("{}: {}", &[words::PROGRAM, name])
    };
    let mut hex = String::from("FEFF");
    for unit in title.encode_utf16() {
        for shift in [12, 8, 4, 0] {
            let digit = u32::from(unit >> shift) & 15;
            hex.push(char::from_digit(digit, 16).unwrap_or('0'));
        }
    }
    fill("<</Title<{}>/Producer({})>>", &[&hex, words::PROGRAM])
}

fn format_image(image: &TextImage) -> String {
    let mut words = String::from("/Type/XObject/Subtype/Image/ImageMask true/Width ");
    push_whole(&mut words, i64::from(image.width_px));
    words.put("/Height ");
    push_whole(&mut words, i64::from(image.height_px));
    // A set bit is ink.
    words.put("/BitsPerComponent 1/Decode[1 0]");
    words
}

fn format_page(paper: Paper, content: usize) -> String {
    let mut page = fill("<</Type/Page/Parent {}/MediaBox[0 0", &[&reference(PAGES)]);
    for side in [paper.width, paper.height] {
        page.put(" ");
        // 72 points to the inch of 25.4 mm, to a hundred-thousandth.
        push_scaled(&mut page, i64::from(side) * 7_200_000 / 25_400, 5);
    }
    page.put("]/Contents ");
    page.put(&reference(content));
    page.put(">>");
    page
}

impl File {
    fn text(&mut self, text: &str) {
        self.bytes.extend_from_slice(text.as_bytes());
    }

    fn begin(&mut self) {
        self.offsets.push(self.bytes.len());
        let number = words::count(self.offsets.len());
        self.text(&fill("{} 0 obj\n", &[&number]));
    }

    fn object(&mut self, body: &str) {
        self.begin();
        self.text(body);
        self.text("\nendobj\n");
    }

    fn stream(&mut self, entries: &str, bytes: &[u8]) {
        self.begin();
        let length = words::count(bytes.len());
        self.text(&fill("<<{}/Length {}>>stream\n", &[entries, &length]));
        self.bytes.extend_from_slice(bytes);
        self.text("\nendstream\nendobj\n");
    }

    fn finish(mut self) -> Vec<u8> {
        let start = self.bytes.len();
        let size = words::count(self.offsets.len() + 1);
        let mut table = fill("xref\n0 {}\n0000000000 65535 f \n", &[&size]);
        for offset in &self.offsets {
            let digits = words::count(*offset);
            for _ in digits.len()..10 {
                table.put("0");
            }
            table.put(&digits);
            table.put(" 00000 n \n");
        }
        self.text(&table);
        self.text(&fill(
            "trailer\n<</Size {}/Root {}/Info {}>>\nstartxref\n{}\n%%EOF\n",
            &[
                &size,
                &reference(CATALOG),
                &reference(INFO),
                &words::count(start),
            ],
        ));
        self.bytes
    }
}
