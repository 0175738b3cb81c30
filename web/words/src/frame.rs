//! What the kit and the frame round the stations always say.

use tinwave_core::design::Design;
use tinwave_core::grade::Grade;
use tinwave_maker::entry::{LengthUnit, format_decimal, format_length, format_length_number};
use tinwave_maker::station::Station;

/// Opens the reasons of a figure.
#[must_use]
pub const fn why() -> &'static str {
    "why"
}

/// Name of a figure's reasons.
#[must_use]
pub fn why_of(label: &str) -> String {
    format!("why: {label}")
}

/// Heads the way a figure is worked out.
#[must_use]
pub const fn how_worked_out() -> &'static str {
    "How it is worked out"
}

/// Heads how far a figure may be off.
#[must_use]
pub const fn how_sure() -> &'static str {
    "How sure"
}

/// Heads the published source.
#[must_use]
pub const fn source() -> &'static str {
    "Source"
}

/// A figure's value before the last change.
#[must_use]
pub fn was(value: &str) -> String {
    format!("was {value}")
}

/// Ends work that takes long.
#[must_use]
pub const fn stop() -> &'static str {
    "Stop"
}

/// Below a chart.
#[must_use]
pub const fn same_as_table() -> &'static str {
    "The same as a table"
}

/// Takes a change back that came from elsewhere.
#[must_use]
pub const fn put_back() -> &'static str {
    "Put back"
}

/// Of a value that a link brought.
#[must_use]
pub fn from_the_link(was: &str) -> String {
    format!("From the link; it was {was}")
}

/// Of a value that undo or redo changed.
#[must_use]
pub fn from_undo(was: &str) -> String {
    format!("Changed back; it was {was}")
}

/// Offers the likeliest meaning of what was typed; `value` is what that comes to,
/// empty where the text already says it.
#[must_use]
pub fn take_it_as(meaning: &str, value: &str) -> String {
    if value.is_empty() || value == meaning {
        format!("Take it as {meaning}")
    } else {
        format!("Take it as {meaning}, {value}")
    }
}

/// Of a number that was typed finer than it is kept.
#[must_use]
pub fn kept_as(value: &str) -> String {
    format!("kept as {value}")
}

/// The button that makes a number smaller.
#[must_use]
pub fn less(label: &str) -> String {
    format!("{label}: less")
}

/// The button that makes a number larger.
#[must_use]
pub fn more(label: &str) -> String {
    format!("{label}: more")
}

/// The unit of an entry, for those who hear its label.
#[must_use]
pub fn in_unit(unit: &str) -> String {
    format!(", {unit}")
}

/// Nothing in a list matches what was typed.
#[must_use]
pub fn nothing_matches(text: &str) -> String {
    format!("Nothing in the list matches “{text}”.")
}

/// On the area where a file is dropped.
#[must_use]
pub const fn choose_file() -> &'static str {
    "Choose a file"
}

/// Below it.
#[must_use]
pub const fn or_drop_or_paste() -> &'static str {
    "It can be dropped here too, or its text pasted."
}

/// The field for a file's text.
#[must_use]
pub const fn paste_here() -> &'static str {
    "Paste the text here"
}

/// Takes what was pasted.
#[must_use]
pub const fn take_pasted() -> &'static str {
    "Take the text"
}

/// What a pasted text is called where a file has its name.
#[must_use]
pub const fn pasted_text() -> &'static str {
    "The pasted text"
}

/// A file that the browser could not read.
#[must_use]
pub fn file_unreadable(name: &str) -> String {
    format!("{name} could not be read. Choose it again, or paste its text.")
}

/// A file far larger than any that belongs here.
#[must_use]
pub fn file_too_large(name: &str, most_megabytes: u32) -> String {
    format!("{name} is larger than {most_megabytes} MB: this is no file for this place.")
}

/// The name of a station.
#[must_use]
pub const fn station(station: Station) -> &'static str {
    match station {
        Station::Can => "Can",
        Station::Feed => "Feed",
        Station::Beam => "Beam",
        Station::Make => "Make",
        Station::Measure => "Measure",
        Station::Link => "Link",
        Station::Shelf => "Shelf",
    }
}

/// On a button that leads to the Can station.
#[must_use]
pub const fn to_the_can() -> &'static str {
    "To the can"
}

/// The page's own name.
#[must_use]
pub const fn tinwave() -> &'static str {
    "Tinwave"
}

/// Names the list of stations.
#[must_use]
pub const fn stations() -> &'static str {
    "Stations"
}

/// Leads past the list of stations.
#[must_use]
pub const fn skip() -> &'static str {
    "To the answer"
}

/// A grade as a verdict.
#[must_use]
pub const fn grade(grade: Grade) -> &'static str {
    match grade {
        Grade::WillDo => "Will do",
        Grade::WithCare => "Will do, with care",
        Grade::WillNotDo => "Will not do",
    }
}

/// A grade where there is little room.
#[must_use]
pub const fn grade_short(grade: Grade) -> &'static str {
    match grade {
        Grade::WithCare => "With care",
        _ => self::grade(grade),
    }
}

/// While a station's program is fetched.
#[must_use]
pub const fn station_fetched() -> &'static str {
    "This station is being fetched …"
}

/// A station's program did not come.
#[must_use]
pub const fn station_not_fetched() -> &'static str {
    "This station could not be fetched. Your design is untouched."
}

/// On the button that fetches it again.
#[must_use]
pub const fn try_again() -> &'static str {
    "Try again"
}

/// What the verdict's chip does, for those who hear it.
#[must_use]
pub fn chip(grade: Grade) -> String {
    format!("{}: to the can", self::grade(grade))
}

/// The name of the example.
#[must_use]
pub const fn example() -> &'static str {
    "Example"
}

/// A can's size: `⌀ 87.0 × 190.0 mm`.
#[must_use]
pub fn size(design: &Design, unit: LengthUnit) -> String {
    let across = format_length_number(design.can.inside_diameter_um, unit);
    let long = format_length(design.can.open_length_um, unit);
    format!("⌀ {across} × {long}")
}

/// Size and band, below the name.
#[must_use]
pub fn size_and_band(design: &Design, unit: LengthUnit) -> String {
    format!(
        "{}, {}",
        size(design, unit),
        super::can::band_edges(design.band)
    )
}

/// Undo, with what it takes back.
#[must_use]
pub fn undo(what: Option<&str>) -> String {
    what.map_or_else(|| "Undo".to_owned(), |what| format!("Undo: {what}"))
}

/// Redo, with what it brings back.
#[must_use]
pub fn redo(what: Option<&str>) -> String {
    what.map_or_else(|| "Redo".to_owned(), |what| format!("Redo: {what}"))
}

/// Passes the design on.
#[must_use]
pub const fn share() -> &'static str {
    "Share"
}

/// The list of everything else.
#[must_use]
pub const fn more_list() -> &'static str {
    "More"
}

/// The choice of the unit.
#[must_use]
pub const fn lengths_in() -> &'static str {
    "Lengths in"
}

/// A unit's name on a button.
#[must_use]
pub const fn unit(unit: LengthUnit) -> &'static str {
    match unit {
        LengthUnit::Millimetre => "mm",
        LengthUnit::Inch => "inch",
    }
}

/// The choice of light and dark.
#[must_use]
pub const fn colours() -> &'static str {
    "Colours"
}

/// A choice of colours on a button.
#[must_use]
pub const fn theme(theme: tinwave_maker::store::Theme) -> &'static str {
    use tinwave_maker::store::Theme;
    match theme {
        Theme::System => "as the device",
        Theme::Light => "light",
        Theme::Dark => "dark",
    }
}

/// Opens the page of all cautions; its heading.
#[must_use]
pub const fn all_cautions() -> &'static str {
    "All cautions"
}

/// What the page of cautions says of itself.
#[must_use]
pub const fn about_cautions() -> &'static str {
    "Each stands at the work where it arises as well. Local codes and licensed practice come first."
}

/// Opens what the page says of itself; its heading.
#[must_use]
pub const fn about() -> &'static str {
    "About this page"
}

/// What the page says of itself, one paragraph each.
#[must_use]
pub const fn about_text() -> [&'static str; 4] {
    [
        "Tinwave works out directional antennas made of cans and tubes: the field inside the can with its wire, and the field outside, from published theory. No result is looked up, and the mouth, the wall’s loss and the second mode are part of it.",
        "Everything happens on this device. Nothing is sent anywhere, nobody is counted, and after the first visit the page needs no network.",
        "How far a figure can be trusted stands behind its “why”. What is from memory says so; check it before you rely on it.",
        "Free software: take it under the MIT licence or the Apache licence 2.0, as you like.",
    ]
}

/// Leaves a page that stands in the station's place.
#[must_use]
pub fn back_to(station: Station) -> String {
    format!("Back to {}", self::station(station))
}

/// Begins anew.
#[must_use]
pub const fn new_design() -> &'static str {
    "New design"
}

/// After beginning anew.
#[must_use]
pub const fn new_design_begun() -> &'static str {
    "A new design. Undo brings the other back."
}

/// After the link was copied.
#[must_use]
pub const fn link_copied() -> &'static str {
    "Link copied"
}

/// Where the browser does not let a page copy.
#[must_use]
pub const fn copy_by_hand() -> &'static str {
    "Copy it by hand: it is in the address bar"
}

/// Everything is kept for use without a network.
#[must_use]
pub const fn works_offline() -> &'static str {
    "Works without a network from now on"
}

/// A newer version of the page is here.
#[must_use]
pub const fn newer_page() -> &'static str {
    "A newer page is ready"
}

/// Takes the newer page.
#[must_use]
pub const fn take_it() -> &'static str {
    "Take it"
}

/// Not now.
#[must_use]
pub const fn later() -> &'static str {
    "Later"
}

/// Puts a message away.
#[must_use]
pub const fn put_away() -> &'static str {
    "Put away"
}

/// Above a text that could not be used.
#[must_use]
pub const fn the_text() -> &'static str {
    "The text as it came"
}

/// First visit: heads the three pictures of the way.
#[must_use]
pub const fn the_way() -> &'static str {
    "From a can to an antenna"
}

/// First visit: the three pictures of the way.
#[must_use]
pub const fn three_steps() -> [&'static str; 3] {
    ["Measure the can", "Drill, cut the wire", "Point it"]
}

/// The line of the Can station.
#[must_use]
pub fn line_can(diameter_um: u32, grade: Grade, unit: LengthUnit) -> String {
    let verdict = self::grade(grade).to_ascii_lowercase();
    format!("{}: {verdict}", format_length(diameter_um, unit))
}

/// The line of the Feed station; `better` is the best cut's VSWR where that is much better.
#[must_use]
pub fn line_feed(length_um: u32, vswr: f64, better: Option<f64>, unit: LengthUnit) -> String {
    let vswr = format_decimal(vswr, 2);
    match better {
        Some(best) => format!("VSWR {vswr}: best would be {}", format_decimal(best, 2)),
        None => format!("{} wire, VSWR {vswr}", format_length(length_um, unit)),
    }
}

/// The line of the Feed station for a can that will not do.
#[must_use]
pub const fn line_no_cut() -> &'static str {
    "No cut for this can"
}

/// The line of the Beam station.
#[must_use]
pub fn line_beam(gain_dbi: f64, widths_deg: Option<(f64, f64)>) -> String {
    let gain = format_decimal(gain_dbi, 1);
    match widths_deg {
        Some((one, other)) => format!(
            "{gain} dBi, {}° by {}°",
            format_decimal(one, 0),
            format_decimal(other, 0)
        ),
        None => format!("{gain} dBi"),
    }
}

/// The line of a station that has nothing to tell yet.
#[must_use]
pub const fn line_waits(station: Station) -> &'static str {
    match station {
        Station::Beam => "Not worked out",
        Station::Make => "Waits for a can that does",
        Station::Measure => "Nothing measured yet",
        Station::Link => "Waits for a beam",
        _ => "",
    }
}

/// A station's line before anything was asked of it.
#[must_use]
pub const fn line_not_opened(station: Station) -> &'static str {
    match station {
        Station::Link => "How far it reaches",
        _ => line_waits(station),
    }
}

/// The line of the Make station before anything is ticked.
#[must_use]
pub const fn line_make() -> &'static str {
    "Mark, drill, cut, solder"
}

/// The line of the Shelf.
#[must_use]
pub fn line_shelf(kept: usize) -> String {
    match kept {
        0 => "Nothing kept yet".to_owned(),
        1 => "1 design kept".to_owned(),
        kept => format!("{kept} designs kept"),
    }
}

/// The document's title.
#[must_use]
pub fn document_title(station: Station, name: &str) -> String {
    if name.is_empty() {
        format!("{} – Tinwave", self::station(station))
    } else {
        format!("{name}: {} – Tinwave", self::station(station))
    }
}

/// Heads the trade's terms.
#[must_use]
pub const fn terms_explained() -> &'static str {
    "The trade’s terms"
}

/// Names the units and cautions at the rail's foot.
#[must_use]
pub const fn settings() -> &'static str {
    "Units and cautions"
}

/// The verdict and the feed's line, as they are told.
#[must_use]
pub fn told(grade: Grade, feed: &str) -> String {
    format!("{}. {feed}.", self::grade(grade))
}
