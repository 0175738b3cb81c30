//! The templates at true size: choices, files, refusals.

use tinwave_maker::entry::LengthUnit;

use super::{ruled, ruler};

/// Heads the part.
#[must_use]
pub const fn print_at_true_size() -> &'static str {
    "Print at true size"
}

/// Below its heading.
#[must_use]
pub const fn print_note() -> &'static str {
    "The strip wraps round the can and marks hole, screws and seam."
}

/// Names the choice of paper.
#[must_use]
pub const fn paper() -> &'static str {
    "Paper"
}

/// Names the choice of the rim that the strip is laid on.
#[must_use]
pub const fn laid_on() -> &'static str {
    "Laid on"
}

/// The rim of the closed end, in a list.
#[must_use]
pub const fn closed_rim() -> &'static str {
    "the closed end’s rim"
}

/// The rim of the mouth, in a list.
#[must_use]
pub const fn mouth_rim() -> &'static str {
    "the rim of the mouth"
}

/// Names the choice of where the can's own seam goes.
#[must_use]
pub const fn seam() -> &'static str {
    "The can’s seam"
}

/// A seam opposite the hole.
#[must_use]
pub const fn seam_opposite() -> &'static str {
    "opposite the hole"
}

/// A seam through the hole.
#[must_use]
pub const fn seam_through() -> &'static str {
    "through the hole"
}

/// A can without a seam.
#[must_use]
pub const fn seam_none() -> &'static str {
    "it has none"
}

/// Heads the sheets that may be left out.
#[must_use]
pub const fn sheets() -> &'static str {
    "Sheets"
}

/// How many of the sheets are chosen, in the fold's line.
#[must_use]
pub fn parts_chosen(names: &[&str]) -> String {
    names.join(", ")
}

/// A part of the print.
#[must_use]
pub const fn part_build_sheet() -> &'static str {
    "build sheet"
}

/// The strip round the can.
#[must_use]
pub const fn part_drill_template() -> &'static str {
    "drill template"
}

/// The wire at true size.
#[must_use]
pub const fn part_cut_gauge() -> &'static str {
    "cut gauge"
}

/// What is made for the mouth.
#[must_use]
pub const fn part_mouth() -> &'static str {
    "pattern for the mouth"
}

/// The cap.
#[must_use]
pub const fn part_cap() -> &'static str {
    "pattern of the cap"
}

/// Heads what the last print's rulers measured.
#[must_use]
pub const fn printed_rulers() -> &'static str {
    "My printer’s 100 mm"
}

/// The ruler across.
#[must_use]
pub const fn ruler_across() -> &'static str {
    "Ruler across measures"
}

/// The ruler upright.
#[must_use]
pub const fn ruler_upright() -> &'static str {
    "Ruler upright measures"
}

/// How to use them.
#[must_use]
pub const fn ruler_help() -> &'static str {
    "Measure both 100 mm rulers on the printed sheet; the next print is corrected by what you type."
}

/// Below the choices.
#[must_use]
pub const fn print_at_100() -> &'static str {
    "Print at 100 %, never “fit to page”. Then measure the 100 mm rulers on the sheet: if one differs, type what it measures and print again."
}

/// A printed ruler that no printer makes.
#[must_use]
pub fn ruler_out_of_range(low_um: u32, high_um: u32) -> String {
    let unit = LengthUnit::Millimetre;
    format!(
        "A printed 100 mm ruler measures {} to {}.",
        ruler(low_um, unit),
        ruled(high_um, unit)
    )
}

/// Saves the sheets.
#[must_use]
pub const fn save_pdf() -> &'static str {
    "Save PDF"
}

/// Saves the patterns as SVG.
#[must_use]
pub const fn save_svg() -> &'static str {
    "SVG"
}

/// Saves the patterns as DXF.
#[must_use]
pub const fn save_dxf() -> &'static str {
    "DXF"
}

/// The browser's own print.
#[must_use]
pub const fn print() -> &'static str {
    "Print"
}

/// A file was handed to the browser.
#[must_use]
pub fn saved_as(file: &str) -> String {
    format!("Saved as {file}")
}

/// Heads the sheets as they will be printed.
#[must_use]
pub const fn preview() -> &'static str {
    "The sheets"
}

/// How many sheets, of which paper.
#[must_use]
pub fn sheet_count(count: usize, paper: &str) -> String {
    if count == 1 {
        format!("1 sheet of {paper}")
    } else {
        format!("{count} sheets of {paper}")
    }
}

/// The name of a sheet in the preview.
#[must_use]
pub fn sheet_name(number: usize, all: usize, parts: &str) -> String {
    format!("Sheet {number} of {all}: {parts}")
}

/// The whole antenna's weight and where it balances.
#[must_use]
pub fn balance(grams: u32, from_rim_um: u32, unit: LengthUnit) -> String {
    format!(
        "The whole weighs {grams} g and balances {} from the closed end’s outer rim.",
        ruled(from_rim_um, unit)
    )
}

/// The connector has no hole of a known size.
#[must_use]
pub const fn no_known_hole() -> &'static str {
    "This connector has no hole of a known size: choose another fixing under Feed."
}

/// More sheets than anybody would tape together.
#[must_use]
pub fn too_many_sheets(sheets: u32, most: u32) -> String {
    format!(
        "{sheets} sheets would be needed; at most {most} are printed. Leave the pattern for the mouth out, or make the part smaller."
    )
}

/// A number of the design that does not fit on a sheet.
#[must_use]
pub fn does_not_fit(
    what: &str,
    value_um: u32,
    low_um: u32,
    high_um: u32,
    unit: LengthUnit,
) -> String {
    format!(
        "{what} is {}; it can be printed from {} to {}.",
        ruled(value_um, unit),
        ruled(low_um, unit),
        ruled(high_um, unit)
    )
}

/// Something that no entry of the page gives.
#[must_use]
pub const fn not_printable() -> &'static str {
    "This design can’t be printed: one of its numbers is outside what the sheets can hold."
}

/// The worker did not come.
#[must_use]
pub const fn no_printer() -> &'static str {
    "The part of the page that draws the sheets did not load. Try again when there is a network."
}

/// Heads the build sheet on the browser's own paper.
#[must_use]
pub const fn build_sheet() -> &'static str {
    "Build sheet"
}

/// A design without a name, on the build sheet.
#[must_use]
pub const fn unnamed() -> &'static str {
    "Can antenna"
}

/// What SVG is for, for those who hear the button.
#[must_use]
pub const fn save_svg_says() -> &'static str {
    "Save the patterns as SVG"
}

/// What DXF is for, for those who hear the button.
#[must_use]
pub const fn save_dxf_says() -> &'static str {
    "Save the patterns as DXF"
}

/// What the rulers measured, in the fold's line.
#[must_use]
pub fn rulers_said(across_mm: &str, upright_mm: &str) -> String {
    format!("{across_mm} mm across, {upright_mm} mm upright")
}

/// The can's outside width.
#[must_use]
pub const fn number_outside() -> &'static str {
    "The can’s outside width"
}

/// Its inside length.
#[must_use]
pub const fn number_length() -> &'static str {
    "The can’s inside length"
}

/// Its wall.
#[must_use]
pub const fn number_wall() -> &'static str {
    "The can’s wall"
}

/// The hole's distance from the back wall.
#[must_use]
pub const fn number_distance() -> &'static str {
    "The hole’s distance from the back wall"
}

/// The wire's length.
#[must_use]
pub const fn number_wire() -> &'static str {
    "The wire’s length"
}

/// A number of what is made for the mouth.
#[must_use]
pub const fn number_mouth() -> &'static str {
    "The width of the mouth’s part"
}
