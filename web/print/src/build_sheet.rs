//! The page that says what is needed and what to do in which order.

use crate::drawing::{Drawing, Text};
use crate::geometry::{MM, Rect, Um, at};
use crate::letters::Weight;
use crate::pattern::Pattern;
use crate::section::section;
use crate::typesetting::Typesetter;
use crate::words;
use tinwave_protocol::print::{Part, PrintJob};

/// Between two columns.
const GUTTER: Um = 6 * MM;
/// Capitals from the usual size down to what is still read.
const CAPITALS: [Um; 5] = [1_800, 1_650, 1_500, 1_350, 1_200];

/// A line of the page, as a table has it.
enum Entry<'a> {
    Heading(&'a str),
    Line(String),
    Step(String, &'a str),
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
    let entries = entries(job);
    let mut drawing = Drawing::default();
    for capital in CAPITALS {
        let mut page = Page {
            drawing: Drawing::default(),
            column: 0,
            y: -picture_height,
            capital,
            steps: 0,
            columns,
            width,
            height: body.height(),
        };
        let fits = entries.iter().all(|entry| page.add(set, entry));
        drawing = page.drawing;
        if fits {
            break;
        }
    }
    drawing.place(picture, 0, 0);
    Pattern {
        part: Part::BuildSheet,
        title: words::BUILD_SHEET,
        drawing,
        keep_whole: Vec::new(),
    }
}

fn entries(job: &PrintJob) -> Vec<Entry<'static>> {
    let mut entries = vec![Entry::Heading(words::PARTS)];
    for part in words::parts_list(job) {
        entries.push(Entry::Line(part));
    }
    if !job.notes.is_empty() {
        entries.push(Entry::Heading(words::COMPUTED));
    }
    for note in &job.notes {
        entries.push(Entry::Line(words::plain(note)));
    }
    entries.push(Entry::Heading(words::STEPS));
    for (when, step, caution) in words::STEP_LIST {
        if when.holds(job) {
            entries.push(Entry::Step(words::say(job, step), caution));
        }
    }
    entries
}

/// The page as it fills.
struct Page {
    drawing: Drawing,
    capital: Um,
    column: Um,
    y: Um,
    columns: Um,
    width: Um,
    height: Um,
    steps: usize,
}

impl Page {
    /// Adds an entry under the last one or, whole, at the top of the next
    /// column. Gives whether there was room.
    fn add(&mut self, set: Typesetter, entry: &Entry) -> bool {
        let (words, caution, weight) = match entry {
            Entry::Heading(words) => (*words, "", Weight::Bold),
            Entry::Line(words) => (words.as_str(), "", Weight::Regular),
            Entry::Step(words, caution) => (words.as_str(), *caution, Weight::Regular),
        };
        let (indent, above) = match entry {
            Entry::Heading(_) => (0, self.capital),
            Entry::Line(_) => (0, 0),
            Entry::Step(..) => (3 * self.capital, self.capital / 2),
        };
        let room = self.width - indent;
        let words = set.paragraph(words, self.capital, weight, room);
        let caution = set.paragraph(caution, self.capital, Weight::Bold, room);
        let needed = words.height() + caution.height();
        self.y -= above;
        if self.y - needed < -self.height {
            self.column += 1;
            self.y = 0;
        }
        if self.column >= self.columns || needed > self.height {
            return false;
        }
        let left = self.column * (self.width + GUTTER);
        if indent > 0 {
            self.steps += 1;
            let number = words::count(self.steps) + ".";
            let place = at(left, self.y - self.capital);
            self.drawing
                .text(Text::new(place, self.capital, &number).bold());
        }
        for paragraph in [words, caution] {
            self.y -= set.draw(&mut self.drawing, &paragraph, at(left + indent, self.y));
        }
        true
    }
}
