//! A design as a file: written by the core, read with the browser's own parser.

use leptos::prelude::*;
use tinwave_core::design::Design;
use tinwave_core::json::{design_from_tree, design_to_json};
use tinwave_maker::history::Change;
use tinwave_maker::workpiece::Cut;
use tinwave_words::shelf::{self as words, FileFault};

use crate::kit::DroppedFile;
use crate::state::Workshop;
use crate::{browser, json_tree};

/// Reads a file; what can't be read is told in a sentence.
pub(super) fn read(file: &DroppedFile) -> Result<Design, String> {
    let text = std::str::from_utf8(&file.bytes).map_err(|_| FileFault::NotText);
    text.and_then(|text| {
        let tree = json_tree::parse(text).map_err(|said| FileFault::NotJson { said })?;
        design_from_tree(tree).map_err(FileFault::NoDesign)
    })
    .map_err(|fault| words::file_refused(&file.name, &fault))
}

/// Opens a design that was read, as one edit. A file states its cut, so it stays.
pub(super) fn open(workshop: Workshop, design: Design) {
    workshop.edit(Change::Opened, move |work| {
        work.design = design;
        work.cut = Cut::AsCut;
    });
}

/// Saves the present design; its file's name.
pub(super) fn save(workshop: Workshop) -> Option<String> {
    workshop.commit();
    let (name, text) = workshop
        .work
        .with_untracked(|work| (words::file_name(work), design_to_json(&work.design)));
    browser::save_file(&name, "application/json", text.as_bytes()).map(|()| name)
}
