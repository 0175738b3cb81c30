//! The Shelf: what is kept on the device, and how a design is passed on.

use tinwave_core::json::JsonError;
use tinwave_maker::entry::{LengthUnit, format_decimal};
use tinwave_maker::shelf::{KeptFigures, date_of};
use tinwave_maker::workpiece::{Cut, Workpiece};

use super::frame::size;

/// The station's answer.
#[must_use]
pub fn answer(kept: usize) -> String {
    match kept {
        0 => "Nothing kept on this device yet".to_owned(),
        1 => "1 design kept on this device".to_owned(),
        kept => format!("{kept} designs kept on this device"),
    }
}

/// What keeping is worth.
#[must_use]
pub const fn reason() -> &'static str {
    "Nothing is sent anywhere. Browsers may clear what a page has kept: a file or the link is safer."
}

/// Heads the empty shelf.
#[must_use]
pub const fn empty() -> &'static str {
    "The shelf is empty"
}

/// What would stand on the empty shelf.
#[must_use]
pub const fn empty_text() -> &'static str {
    "Keep this design and it stands here with its drawing."
}

/// Heads the cards, for those who hear the page.
#[must_use]
pub const fn kept_designs() -> &'static str {
    "Kept designs"
}

/// Keeps the present design.
#[must_use]
pub const fn keep() -> &'static str {
    "Keep this design"
}

/// Why a can that will not do is not kept.
#[must_use]
pub const fn no_cut_to_keep() -> &'static str {
    "This can will not do for its band, so there is no cut to keep. A can or a band that does can be kept."
}

/// After a design was kept.
#[must_use]
pub fn kept(name: &str) -> String {
    format!("Kept as “{name}”")
}

/// The very same design is kept already.
#[must_use]
pub fn kept_already(name: &str) -> String {
    format!("“{name}” is kept just so already")
}

/// Another design has that name.
#[must_use]
pub fn name_in_use(name: &str) -> String {
    format!("Another design is kept as “{name}”")
}

/// What can be done about it.
#[must_use]
pub fn name_in_use_text(free: &str) -> String {
    format!("Replace it, or keep both: this one as “{free}”.")
}

/// Puts the present design in the other's place.
#[must_use]
pub const fn replace() -> &'static str {
    "Replace it"
}

/// Keeps the present design beside the other.
#[must_use]
pub const fn keep_both() -> &'static str {
    "Keep both"
}

/// Keeps nothing.
#[must_use]
pub const fn leave_it() -> &'static str {
    "Leave it"
}

/// After a design took the place of another.
#[must_use]
pub fn replaced(name: &str) -> String {
    format!("“{name}” replaced")
}

/// Opens a kept design.
#[must_use]
pub const fn open() -> &'static str {
    "Open"
}

/// The same for those who hear it alone.
#[must_use]
pub fn open_named(name: &str) -> String {
    format!("Open {name}")
}

/// After it was opened.
#[must_use]
pub fn opened(name: &str) -> String {
    format!("“{name}” opened")
}

/// Puts a copy beside a kept design.
#[must_use]
pub const fn duplicate() -> &'static str {
    "Duplicate"
}

/// The same for those who hear it alone.
#[must_use]
pub fn duplicate_named(name: &str) -> String {
    format!("Duplicate {name}")
}

/// Takes a kept design off the shelf.
#[must_use]
pub const fn remove() -> &'static str {
    "Remove"
}

/// The same for those who hear it alone.
#[must_use]
pub fn remove_named(name: &str) -> String {
    format!("Remove {name}")
}

/// After it was removed.
#[must_use]
pub fn removed(name: &str) -> String {
    format!("“{name}” removed")
}

/// Brings it back.
#[must_use]
pub const fn undo() -> &'static str {
    "Undo"
}

/// The design that is on the screen.
#[must_use]
pub const fn on_the_screen() -> &'static str {
    "on the screen"
}

/// A card's first line: size and whose cut it is; `None` for a can without a cut.
#[must_use]
pub fn card_size(work: &Workpiece, with_cut: bool, unit: LengthUnit) -> String {
    let size = size(&work.design, unit);
    match (with_cut, work.cut) {
        (false, _) => size,
        (true, Cut::FollowsBest) => format!("{size}, best cut"),
        (true, Cut::AsCut) => format!("{size}, as cut"),
    }
}

/// A card's second line: what was known when it was kept; empty where nothing was.
#[must_use]
pub fn card_figures(figures: &KeptFigures) -> String {
    let vswr = figures
        .vswr_milli
        .map(|vswr| format!("VSWR {}", format_decimal(f64::from(vswr) / 1e3, 2)));
    let gain = figures
        .gain_centi
        .map(|gain| format!("{} dBi", format_decimal(f64::from(gain) / 1e2, 1)));
    let known: Vec<String> = vswr.into_iter().chain(gain).collect();
    known.join(", ")
}

/// A card whose link can't be read.
#[must_use]
pub const fn unreadable() -> &'static str {
    "Kept by a page that writes otherwise. Nothing of it was changed."
}

/// A day, without the year where that is this year's.
#[must_use]
pub fn date(day: u32, today: u32) -> String {
    const MONTHS: [&str; 12] = [
        "Jan", "Feb", "Mar", "Apr", "May", "June", "July", "Aug", "Sept", "Oct", "Nov", "Dec",
    ];
    let (year, month, of_month) = date_of(day);
    let name = usize::try_from(month)
        .ok()
        .and_then(|month| MONTHS.get(month.checked_sub(1)?))
        .unwrap_or(&"");
    if year == date_of(today).0 {
        format!("{of_month} {name}")
    } else {
        format!("{of_month} {name} {year}")
    }
}

/// Heads the ways to pass a design on.
#[must_use]
pub const fn share() -> &'static str {
    "Share this design"
}

/// Names the link's field.
#[must_use]
pub const fn link() -> &'static str {
    "Link to this design"
}

/// How long the link is, and what is in it.
#[must_use]
pub fn link_length(characters: usize) -> String {
    format!("{characters} characters; the whole design is in the link.")
}

/// Copies the link.
#[must_use]
pub const fn copy_link() -> &'static str {
    "Copy link"
}

/// Saves the design as a file.
#[must_use]
pub const fn save_file() -> &'static str {
    "Save as file"
}

/// After that.
#[must_use]
pub fn saved_file(name: &str) -> String {
    format!("Saved as {name}")
}

/// Opens a design file.
#[must_use]
pub const fn open_file() -> &'static str {
    "Open a file"
}

/// What kind of file.
#[must_use]
pub const fn open_file_note() -> &'static str {
    "A design saved by this page (.json)."
}

/// Heads the name's field.
#[must_use]
pub const fn name_heading() -> &'static str {
    "Its name"
}

/// Labels the name's field.
#[must_use]
pub const fn name() -> &'static str {
    "Name"
}

/// What the name is for.
#[must_use]
pub const fn name_help() -> &'static str {
    "It goes into the link, the files and the prints. A name in use is never overwritten: you are asked."
}

/// The name of a design's file.
#[must_use]
pub fn file_name(work: &Workpiece) -> String {
    let named: String = work
        .design
        .name
        .chars()
        .map(|c| {
            if c.is_alphanumeric() || matches!(c, '-' | '.') {
                c
            } else {
                '-'
            }
        })
        .collect();
    let named = named.trim_matches(['-', '.']);
    if named.is_empty() {
        let mm = |um: u32| format_decimal(f64::from(um) / 1e3, 0);
        let can = work.design.can;
        let (across, long) = (mm(can.inside_diameter_um), mm(can.open_length_um));
        format!("can-{across}x{long}.json")
    } else {
        format!("{named}.json")
    }
}

/// A design without a name of its own is kept by its size.
#[must_use]
pub fn name_by_size(work: &Workpiece) -> String {
    let mm = |um: u32| format_decimal(f64::from(um) / 1e3, 1);
    let can = work.design.can;
    format!(
        "{} × {} mm",
        mm(can.inside_diameter_um),
        mm(can.open_length_um)
    )
}

/// A file that is no design; nothing was changed.
#[must_use]
pub fn file_refused(file: &str, why: &FileFault) -> String {
    let why = match why {
        FileFault::NotText => "It is no text.".to_owned(),
        FileFault::NotJson { said } => format!("It is not valid JSON. {said}"),
        FileFault::NoDesign(error) if is_foreign(error) => {
            "It is no design of this page.".to_owned()
        }
        FileFault::NoDesign(error) => format!("{error}."),
    };
    format!(
        "{file} was not opened. {} Your own design is untouched.",
        why.trim()
    )
}

/// Whether a file does not even begin as a design does.
fn is_foreign(error: &JsonError) -> bool {
    match error {
        JsonError::Missing { path } => *path == "schema",
        JsonError::WrongKind { path, .. } => matches!(*path, "schema" | "the design"),
        _ => false,
    }
}

/// Why a file is no design.
#[derive(Clone, Debug, PartialEq)]
pub enum FileFault {
    /// Bytes that are no text.
    NotText,
    /// No JSON; what the browser says of it.
    NotJson {
        /// In its own words.
        said: String,
    },
    /// JSON, but no design.
    NoDesign(JsonError),
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_maker::example::example;

    #[test]
    fn a_file_has_the_designs_name_or_its_size() {
        let mut work = example();
        assert_eq!(file_name(&work), "can-87x190.json");
        work.design.name = "Orchard gate, north can".into();
        assert_eq!(file_name(&work), "Orchard-gate--north-can.json");
        work.design.name = "../..".into();
        assert_eq!(file_name(&work), "can-87x190.json");
    }

    #[test]
    fn a_foreign_file_is_told_from_a_faulty_design() {
        let said = |error| file_refused("notes.json", &FileFault::NoDesign(error));
        let foreign = said(JsonError::Missing { path: "schema" });
        assert!(foreign.contains("no design of this page"), "{foreign}");
        let faulty = said(JsonError::Missing { path: "can" });
        assert!(faulty.contains("can: missing"), "{faulty}");
    }

    #[test]
    fn only_what_is_known_stands_on_a_card() {
        assert_eq!(card_figures(&KeptFigures::default()), "");
        let known = KeptFigures {
            vswr_milli: Some(1_061),
            gain_centi: Some(788),
            ..KeptFigures::default()
        };
        assert_eq!(card_figures(&known), "VSWR 1.06, 7.9 dBi");
    }

    #[test]
    fn a_year_stands_only_where_it_is_another() {
        // 2025-11-27 and 2024-11-27.
        assert_eq!(date(20_419, 20_420), "27 Nov");
        assert_eq!(date(20_054, 20_420), "27 Nov 2024");
    }
}
