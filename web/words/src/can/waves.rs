//! The words of the two pictures: how wide a can may be, and what passes.

use super::{
    Band, LengthUnit, Mode, ModeRole, band_edges, format_hertz, format_length,
    format_length_number, percent,
};
use tinwave_core::verdict::ModeEntry;

/// Heads the gauge of diameters.
#[must_use]
pub const fn how_wide() -> &'static str {
    "How wide may it be?"
}

/// What the gauge shows.
#[must_use]
pub fn how_wide_note(band: Band, unit: LengthUnit) -> String {
    format!(
        "Inside width in {}, for {}",
        unit.symbol(),
        band_edges(band)
    )
}

/// What a range of diameters carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Carries {
    /// Nothing in part of the band.
    Nothing,
    /// One wave.
    One,
    /// Two, in part of the band at least.
    Two,
    /// Three or more.
    Many,
}

/// The name of a range.
#[must_use]
pub const fn carries(what: Carries) -> &'static str {
    match what {
        Carries::Nothing => "too narrow",
        Carries::One => "one wave",
        Carries::Two => "two",
        Carries::Many => "many",
    }
}

/// The pointer at this can.
#[must_use]
pub fn your_can(um: u32, unit: LengthUnit) -> String {
    format!("{} your can", format_length_number(um, unit))
}

/// The same, of a can beyond the gauge's ends.
#[must_use]
pub fn your_can_beyond(um: u32, unit: LengthUnit, is_wider: bool) -> String {
    let number = format_length_number(um, unit);
    if is_wider {
        format!("{number} your can \u{25B6}")
    } else {
        format!("\u{25C0} {number} your can")
    }
}

/// The gauge in a sentence, for those who hear it; limits of each range in order.
#[must_use]
pub fn gauge_described(ranges: &[(Carries, String)], can_um: u32, unit: LengthUnit) -> String {
    let mut text = String::new();
    for (what, from) in ranges {
        if from.is_empty() {
            text.push_str("At first too narrow");
        } else {
            text.push_str(&format!("; from {from} {}", carries_in_words(*what)));
        }
    }
    format!("{text}. Your can: {}.", format_length(can_um, unit))
}

const fn carries_in_words(what: Carries) -> &'static str {
    match what {
        Carries::Nothing => "nothing passes",
        Carries::One => "one wave passes",
        Carries::Two => "two pass",
        Carries::Many => "three or more pass",
    }
}

/// Below the gauge, where a size is chosen.
#[must_use]
pub const fn strokes_note() -> &'static str {
    "Strokes: trade sizes that carry one wave. Press one."
}

/// Below the gauge, where there is no such size.
#[must_use]
pub const fn no_strokes() -> &'static str {
    "No trade size carries one wave over this band."
}

/// Names the row of strokes for keys and for those who hear it.
#[must_use]
pub const fn trade_sizes() -> &'static str {
    "Trade sizes"
}

/// Heads the modes.
#[must_use]
pub const fn what_passes() -> &'static str {
    "What passes at which frequency"
}

/// What stands before the term "mode" in the note below that heading.
#[must_use]
pub const fn each_row_is_a() -> &'static str {
    "Each row is a"
}

/// What follows the term "mode" in the note below that heading.
#[must_use]
pub fn what_passes_note(modes: &[ModeEntry]) -> String {
    let cutoff = |mode: Mode| {
        let entry = modes.iter().find(|entry| entry.mode == mode);
        entry.map(|entry| entry.cutoff_hz)
    };
    match (cutoff(Mode::TE11), cutoff(Mode::TM01)) {
        (Some(first), Some(second)) => format!(
            ": a way in which a wave stands across the can. This can carries just one from {} to {}. Shaded: your band.",
            format_hertz(first).trim_end_matches(" MHz"),
            format_hertz(second)
        ),
        _ => ": a way in which a wave stands across the can. Shaded: your band.".to_owned(),
    }
}

/// A row of the modes: who does what, and from where.
#[must_use]
pub fn mode_row(modes: &[Mode], cutoff_hz: f64, role: ModeRole, band: Band) -> (String, String) {
    let names: Vec<String> = modes.iter().map(ToString::to_string).collect();
    let (low, high) = (
        f64::from(band.low_khz) * 1e3,
        f64::from(band.high_khz) * 1e3,
    );
    let from = format_hertz(cutoff_hz);
    let several = modes.len() > 1;
    let does = match role {
        ModeRole::Carries => "carries the signal",
        ModeRole::CarriesPart => "carries the band’s upper part",
        ModeRole::Blocked => "does not reach the band",
        ModeRole::StaysOut if several => "stay out",
        ModeRole::StaysOut => "stays out",
        ModeRole::Enters if several => "enter the band",
        ModeRole::Enters => "enters the band",
        ModeRole::PassesToo if several => "pass too",
        ModeRole::PassesToo => "passes too",
    };
    let place = match role {
        ModeRole::Carries => format!("{} below the band", percent(1.0 - cutoff_hz / low)),
        ModeRole::Blocked | ModeRole::StaysOut => {
            format!("{} above the band", percent(cutoff_hz / high - 1.0))
        }
        ModeRole::CarriesPart | ModeRole::Enters => "within the band".to_owned(),
        ModeRole::PassesToo => "below the band".to_owned(),
    };
    (
        format!("{} {does}", names.join(" and ")),
        format!("from {from}, {place}"),
    )
}

/// Modes that pass in the band without a row.
#[must_use]
pub fn more_modes(count: usize) -> String {
    match count {
        1 => "And one more passes in the band.".to_owned(),
        count => format!("And {count} more pass in the band."),
    }
}

/// Heads of the modes' table: mode, from, what it does.
#[must_use]
pub const fn mode_table_head() -> [&'static str; 3] {
    ["Mode", "Passes from", "In your band"]
}
