//! A job's patterns on sheets of paper.

use crate::build_sheet::build_sheet;
use crate::cut_gauge::cut_gauge;
use crate::drawing::{Drawing, Shape, Text};
use crate::drill_template::drill_template;
use crate::fill::Put;
use crate::furniture::{Furniture, Head};
use crate::geometry::{MM, Rect, Um};
use crate::letters;
use crate::mouth_pattern::{cap_pattern, mouth_pattern};
use crate::paper::Paper;
use crate::pattern::Pattern;
use crate::sheet::{Layout, Sheet, View};
use crate::text_image::image_of;
use crate::tiling::{MARK_ROOM, Tile, register_marks, tiles, window_size};
use crate::typesetting::Typesetter;
use tinwave_protocol::print::Orientation;
use tinwave_protocol::print::PrintError;
use tinwave_protocol::print::{Part, PrintJob};

/// Most sheets that are printed.
pub const MOST_SHEETS: u32 = 60;
/// Between two patterns on a sheet.
const GAP: Um = 8 * MM;

/// The patterns of a job that are the same on any paper, in the order of the
/// sheets: all but the build sheet.
///
/// # Errors
/// [`PrintError::OutOfRange`] where the design's numbers don't fit each other.
pub fn patterns(job: &PrintJob) -> Result<Vec<Pattern>, PrintError> {
    let set = Typesetter {
        images: &job.images,
    };
    let mut patterns = Vec::new();
    for part in Part::ALL {
        if !job.parts.contains(&part) {
            continue;
        }
        match part {
            Part::DrillTemplate => patterns.push(drill_template(job, set)?),
            Part::CutGauge => patterns.push(cut_gauge(job, set)),
            Part::MouthPattern => patterns.extend(mouth_pattern(job, set)?),
            Part::Cap => patterns.extend(job.cap.map(|cap| cap_pattern(job, cap, set))),
            Part::BuildSheet => {}
        }
    }
    Ok(patterns)
}

/// All sheets of a job.
///
/// # Errors
/// As [`patterns`]; [`PrintError::TooManySheets`].
pub fn lay_out(job: &PrintJob) -> Result<Layout, PrintError> {
    match job.orientation {
        Orientation::Portrait => lay_out_on(job, false),
        Orientation::Landscape => lay_out_on(job, true),
        Orientation::Automatic => {
            let upright = lay_out_on(job, false);
            let lying = lay_out_on(job, true);
            match (upright, lying) {
                (Ok(a), Ok(b)) if b.sheets.len() < a.sheets.len() => Ok(b),
                (Err(_), Ok(b)) => Ok(b),
                (upright, _) => upright,
            }
        }
    }
}

fn lay_out_on(job: &PrintJob, landscape: bool) -> Result<Layout, PrintError> {
    let paper = Paper::new(job.paper, landscape, job.rulers);
    let set = Typesetter {
        images: &job.images,
    };
    let furniture = Furniture::new(paper, job, set);
    let body = furniture.body();
    let mut patterns = patterns(job)?;
    if job.parts.contains(&Part::BuildSheet) {
        patterns.insert(0, build_sheet(job, set, body));
    }
    let mut pile = Pile {
        paper,
        body,
        sheets: Vec::new(),
        below: None,
    };
    for (index, pattern) in patterns.iter().enumerate() {
        pile.add(index, pattern)?;
    }
    let mut sheets = pile.sheets;
    let all = sheets.len();
    for (index, sheet) in sheets.iter_mut().enumerate() {
        let title = titles(sheet, &patterns);
        let head = Head {
            title: &title,
            number: index + 1,
            all,
            tiled: sheet.views.iter().any(|view| view.clipped),
        };
        furniture.draw(&mut sheet.furniture, job, set, head);
    }
    Ok(Layout { patterns, sheets })
}

/// The titles of what is on a sheet.
fn titles(sheet: &Sheet, patterns: &[Pattern]) -> String {
    let mut titles = String::new();
    for view in &sheet.views {
        if let Some(pattern) = patterns.get(view.pattern) {
            if !titles.is_empty() {
                titles.put(", ");
            }
            titles.put(pattern.title);
        }
    }
    titles
}

/// Sheets as they fill.
struct Pile {
    paper: Paper,
    body: Rect,
    sheets: Vec<Sheet>,
    /// Top of the free room on the last sheet; `None` where it is closed.
    below: Option<Um>,
}

impl Pile {
    fn add(&mut self, index: usize, pattern: &Pattern) -> Result<(), PrintError> {
        let bounds = pattern.drawing.bounds();
        if bounds.width() > self.body.width() || bounds.height() > self.body.height() {
            return self.add_tiled(index, pattern);
        }
        let open = self
            .below
            .filter(|top| top - bounds.height() >= self.body.low.y);
        let top = match open {
            Some(top) => top,
            None => {
                self.new_sheet()?;
                self.body.high.y
            }
        };
        let view = View {
            pattern: index,
            window: bounds,
            shift: (self.body.low.x - bounds.low.x, top - bounds.high.y),
            clipped: false,
        };
        if let Some(sheet) = self.sheets.last_mut() {
            sheet.views.push(view);
        }
        self.below = Some(top - bounds.height() - GAP);
        Ok(())
    }

    fn new_sheet(&mut self) -> Result<(), PrintError> {
        self.may_hold(self.sheets.len() + 1)?;
        self.sheets.push(Sheet {
            paper: self.paper,
            furniture: Drawing::default(),
            views: Vec::new(),
        });
        Ok(())
    }

    fn may_hold(&self, sheets: usize) -> Result<(), PrintError> {
        let sheets = u32::try_from(sheets).unwrap_or(u32::MAX);
        if sheets <= MOST_SHEETS {
            return Ok(());
        }
        Err(PrintError::TooManySheets {
            sheets,
            most: MOST_SHEETS,
        })
    }

    fn add_tiled(&mut self, index: usize, pattern: &Pattern) -> Result<(), PrintError> {
        let first = self.sheets.len();
        let tiles = tiles(pattern, self.body).map_err(|sheets| PrintError::TooManySheets {
            sheets: u32::try_from(sheets).unwrap_or(u32::MAX),
            most: MOST_SHEETS,
        })?;
        self.may_hold(first + tiles.len())?;
        let number_of = |column: Um, row: Um| {
            let is_there = |tile: &Tile| tile.column == column && tile.row == row;
            Some(first + 1 + tiles.iter().position(is_there)?)
        };
        for tile in &tiles {
            self.new_sheet()?;
            let view = self.tiled_view(index, pattern, tile.window);
            if let Some(sheet) = self.sheets.last_mut() {
                sheet.views.push(view);
                register_marks(&mut sheet.furniture, *tile, view.place(), number_of);
            }
        }
        self.below = None;
        Ok(())
    }

    fn tiled_view(&self, index: usize, pattern: &Pattern, window: Rect) -> View {
        let (width, height) = window_size(pattern.drawing.bounds(), self.body);
        let room = |full: Um, used: Um| if used < full { MARK_ROOM } else { 0 };
        let x = self.body.low.x + room(self.body.width(), width);
        let y = self.body.high.y - room(self.body.height(), height);
        View {
            pattern: index,
            window,
            shift: (x - window.low.x, y - window.high.y),
            clipped: true,
        }
    }
}

/// The texts of a layout that the standard fonts don't hold and that have no
/// image, each once.
#[must_use]
pub fn texts_without_image(job: &PrintJob, layout: &Layout) -> Vec<String> {
    let mut missing = Vec::new();
    for sheet in &layout.sheets {
        add_missing(&mut missing, job, &sheet.furniture);
    }
    for pattern in &layout.patterns {
        add_missing(&mut missing, job, &pattern.drawing);
    }
    missing
}

#[inline(never)]
fn add_missing(missing: &mut Vec<String>, job: &PrintJob, drawing: &Drawing) {
    for item in &drawing.items {
        if let Shape::Text(Text { words, .. }) = &item.shape {
            let known = letters::covers(words) || image_of(&job.images, words).is_some();
            if !known && !missing.contains(words) {
                missing.push(words.clone());
            }
        }
    }
}
