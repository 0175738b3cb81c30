//! Saving the sheets as a file, and handing them to the browser's own print.

use leptos::prelude::*;
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::file_name::file_name;
use tinwave_protocol::print::{
    DrawSheets, FileKind, FileWritten, JobNumber, PrintError, PrintJob, SheetsDrawn, WriteFile,
};
use tinwave_words::make as words;

use super::bench::Bench;
use super::text_image::text_image;
use crate::browser;
use crate::reactive::effect;
use crate::worker::{Task, TaskState};

/// What the buttons do, and what became of it. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct Saving {
    bench: Bench,
    file: Task<Result<FileWritten, PrintError>>,
    sheets: Task<Result<SheetsDrawn, PrintError>>,
    said: RwSignal<String>,
}

impl Saving {
    /// With nothing saved yet.
    #[must_use]
    pub fn new(bench: Bench) -> Self {
        let saving = Self {
            bench,
            file: Task::new(),
            sheets: Task::new(),
            said: RwSignal::new(String::new()),
        };
        let refused = move || {
            let of_file = saving.file.state();
            let of_sheets = saving.sheets.state();
            of_file.with(|state| matches!(state, TaskState::Refused))
                || of_sheets.with(|state| matches!(state, TaskState::Refused))
                || bench.is_alone()
        };
        effect(move || {
            if refused() {
                saving.said.set(words::no_printer().into());
            }
        });
        saving
    }

    /// What became of the last press.
    #[must_use]
    pub fn said(self) -> String {
        self.said.get()
    }

    /// Says it; the bench may answer when the station has gone.
    fn say(self, text: String) {
        self.said.try_set(text);
    }

    /// Whether a file is being written.
    #[must_use]
    pub fn is_busy(self) -> bool {
        self.file.state().with(TaskState::is_working)
            || self.sheets.state().with(TaskState::is_working)
    }

    /// Makes the job, then goes on with it.
    fn with_job(self, then: impl Fn(PrintJob) + 'static) {
        self.said.set(String::new());
        self.bench.fit_then(
            move |found| match untrack(|| self.bench.print_job(&found)) {
                Some(job) => then(job),
                None => self.say(words::no_known_hole().into()),
            },
        );
    }

    /// Saves the sheets as a file.
    pub fn save(self, kind: FileKind) {
        self.with_job(move |job| self.write(job, kind));
    }

    /// Writes the file; texts that its fonts lack are drawn and handed in, once.
    fn write(self, job: PrintJob, kind: FileKind) {
        let has_images = !job.images.is_empty();
        let asked = job.clone();
        self.file
            .run_then(WriteFile { job, kind }, move |written| match written {
                Ok(file) => self.keep(&asked.name, file),
                Err(PrintError::NeedsImages(texts)) if !has_images => {
                    let mut job = asked.clone();
                    job.images = texts.iter().filter_map(|text| text_image(text)).collect();
                    self.write(job, kind);
                }
                Err(error) => self.refuse(error),
            });
    }

    fn keep(self, design: &str, file: &FileWritten) {
        let name = file_name(design, file.kind.extension());
        let saved = browser::save_file(&name, file.kind.media_type(), &file.bytes);
        if saved.is_some() {
            self.said.set(words::saved_as(&name));
        }
    }

    /// Puts the sheets alone on the browser's paper.
    pub fn print(self) {
        self.with_job(move |job| {
            self.sheets
                .run_then(DrawSheets { job }, move |drawn| match drawn {
                    Ok(drawn) => {
                        self.bench.on_paper.set(Some(drawn.sheets.clone()));
                        // They must lie there first.
                        browser::on_next_frame(browser::print_page);
                    }
                    Err(error) => self.refuse(error),
                });
        });
    }

    fn refuse(self, error: &PrintError) {
        let unit = self.bench.workshop.unit.get_untracked();
        self.said.set(refusal(error, unit));
    }
}

/// Why it can't be printed, in a sentence.
#[must_use]
pub fn refusal(error: &PrintError, unit: LengthUnit) -> String {
    match *error {
        PrintError::TooManySheets { sheets, most } => words::too_many_sheets(sheets, most),
        PrintError::OutOfRange {
            number,
            value,
            low,
            high,
        } => match part_of(number) {
            Some(what) => words::does_not_fit(what, value, low, high, unit),
            None => words::not_printable().into(),
        },
        PrintError::WordsTooLong { .. } | PrintError::UnsoundImage | PrintError::NeedsImages(_) => {
            words::not_printable().into()
        }
    }
}

/// What a person calls a number of the job, where it is a length of theirs.
const fn part_of(number: JobNumber) -> Option<&'static str> {
    match number {
        JobNumber::OutsideDiameter => Some(words::number_outside()),
        JobNumber::OpenLength => Some(words::number_length()),
        JobNumber::Wall => Some(words::number_wall()),
        JobNumber::Backshort => Some(words::number_distance()),
        JobNumber::Length => Some(words::number_wire()),
        JobNumber::Mouth => Some(words::number_mouth()),
        _ => None,
    }
}
