//! The page that says what is needed and what to do in which order.

use crate::drawing::Drawing;
use crate::fill::fill;
use crate::geometry::{MM, Rect, Um, at};
use crate::job::PrintJob;
use crate::letters::Weight;
use crate::pattern::Pattern;
use crate::section::section;
use crate::typesetting::{Paragraph, Typesetter};
use crate::words;

/// Between two columns.
const GUTTER: Um = 6 * MM;
/// Capitals from the usual size down to what is still read.
const CAPITALS: [Um; 5] = [1_800, 1_650, 1_500, 1_350, 1_200];

/// A piece of the page that stays together.
struct Block {
    paragraphs: Vec<(Um, Paragraph)>,
    space_above: Um,
}

/// The build sheet of a job for a body of that size: the section drawing and
/// the parts, then the steps, in two or three columns. The letters are as large
/// as lets everything stand on one page.
#[must_use]
pub fn build_sheet(job: &PrintJob, set: Typesetter, body: Rect) -> Pattern {
    let columns = if body.width() > 220 * MM { 3 } else { 2 };
    let width = (body.width() - GUTTER * (columns - 1)) / columns;
    let picture = section(job, set, width);
    let picture_height = picture.bounds().height() + 3 * MM;
    let mut drawing = Drawing::default();
    for capital in CAPITALS {
        let mut page = Page {
            drawing: picture.clone(),
            column: 0,
            y: -picture_height,
            columns,
            width,
            height: body.height(),
        };
        let fits = blocks(job, set, capital, width)
            .iter()
            .all(|block| page.add(set, block));
        drawing = page.drawing;
        if fits {
            break;
        }
    }
    Pattern {
        title: words::BUILD_SHEET,
        drawing,
        keep_whole: Vec::new(),
    }
}

fn blocks(job: &PrintJob, set: Typesetter, capital: Um, width: Um) -> Vec<Block> {
    let indent = capital * 3;
    let paragraph = |indent: Um, words: &str, weight: Weight| {
        (
            indent,
            set.paragraph(words, capital, weight, width - indent),
        )
    };
    let mut blocks = Vec::new();
    let heading = |words: &str| Block {
        paragraphs: vec![paragraph(0, words, Weight::Bold)],
        space_above: capital,
    };
    blocks.push(heading(words::PARTS));
    for part in words::parts_list(job) {
        blocks.push(Block {
            paragraphs: vec![paragraph(0, &part, Weight::Regular)],
            space_above: 0,
        });
    }
    if !job.notes.is_empty() {
        blocks.push(heading(words::COMPUTED));
    }
    for note in &job.notes {
        blocks.push(Block {
            paragraphs: vec![paragraph(0, &words::plain(note), Weight::Regular)],
            space_above: 0,
        });
    }
    blocks.push(heading(words::STEPS));
    for (index, step) in words::steps(job).iter().enumerate() {
        let number = fill("{}.", &[&words::count(index + 1)]);
        // The number stands beside the first line, so it takes no height.
        let mut paragraphs = vec![paragraph(0, &number, Weight::Bold)];
        paragraphs.push(paragraph(indent, &step.words, Weight::Regular));
        if !step.caution.is_empty() {
            paragraphs.push(paragraph(indent, &step.caution, Weight::Bold));
        }
        blocks.push(Block {
            paragraphs,
            space_above: capital / 2,
        });
    }
    blocks
}

/// The page as it fills.
struct Page {
    drawing: Drawing,
    column: Um,
    y: Um,
    columns: Um,
    width: Um,
    height: Um,
}

impl Page {
    /// Adds a block under the last one or at the top of the next column. Gives
    /// whether there was room.
    fn add(&mut self, set: Typesetter, block: &Block) -> bool {
        let needed = block.height();
        if self.y - block.space_above - needed < -self.height {
            self.column += 1;
            self.y = 0;
        } else {
            self.y -= block.space_above;
        }
        if self.column >= self.columns || needed > self.height {
            return false;
        }
        let left = self.column * (self.width + GUTTER);
        let mut beside = block.is_numbered();
        for (indent, paragraph) in &block.paragraphs {
            let used = set.draw(&mut self.drawing, paragraph, at(left + indent, self.y));
            if !beside {
                self.y -= used;
            }
            beside = false;
        }
        true
    }
}

impl Block {
    /// Whether its first paragraph is a number beside the second.
    fn is_numbered(&self) -> bool {
        let mut indents = self.paragraphs.iter().map(|(indent, _)| *indent);
        indents.next() == Some(0) && indents.next().is_some()
    }

    fn height(&self) -> Um {
        let skipped = usize::from(self.is_numbered());
        let counted = self.paragraphs.iter().skip(skipped);
        counted.map(|(_, paragraph)| paragraph.height()).sum()
    }
}
