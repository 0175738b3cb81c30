//! How many cans come out well.

use tinwave_core::tolerance::Yield;
use tinwave_maker::entry::format_decimal;

use super::care::per_cent;
use crate::measure::{dimension, vswr};

/// The part.
#[must_use]
pub fn cans_title(cans: u32) -> String {
    if cans == 1 {
        "If you make one".to_owned()
    } else if cans == 10 {
        "If you make ten".to_owned()
    } else {
        format!("If you make {cans}")
    }
}

/// What it is.
#[must_use]
pub fn cans_note(drawn: u32, wanted: u32) -> String {
    let count = if drawn < wanted {
        format!("{drawn} of {wanted} cans")
    } else {
        format!("{drawn} cans")
    };
    format!(
        "Simulated, not measured: {count} drawn at random within the tolerances. A bad joint, a dent or a wrong plug is not in it."
    )
}

/// The limit.
#[must_use]
pub const fn limits() -> (&'static str, [&'static str; 2]) {
    ("A can passes up to VSWR", ["1.5", "2"])
}

/// Entries: cans to draw, seed, cans to make.
#[must_use]
pub const fn samples_label() -> (&'static str, &'static str) {
    (
        "Cans to simulate",
        "100 to 20000. Four times as many make the bounds half as wide.",
    )
}

/// The seed.
#[must_use]
pub const fn seed_label() -> (&'static str, &'static str) {
    (
        "Seed",
        "Any whole number. The same seed draws the same cans, on every device.",
    )
}

/// The batch.
#[must_use]
pub const fn batch_label() -> (&'static str, &'static str) {
    ("Cans you will make", "A batch made alike, 1 to 10000.")
}

/// The work in hand.
#[must_use]
pub fn drawing(samples: u32) -> String {
    format!("Drawing {samples} cans")
}

/// Takes it up again.
#[must_use]
pub fn draw(samples: u32) -> String {
    format!("Draw {samples} cans")
}

/// Nothing scatters.
#[must_use]
pub const fn all_exact() -> &'static str {
    "Every dimension is taken as exact, so all cans come out as designed."
}

/// Nothing can be drawn.
#[must_use]
pub const fn none_drawn() -> &'static str {
    "Nothing can be drawn: this can isn’t computed as it stands."
}

/// Results: what it is, and its value.
#[must_use]
pub fn yield_rows(drawn: &Yield, limit: f64) -> Vec<(String, String)> {
    let (low, high) = drawn.pass_bounds;
    vec![
        (
            format!("Pass VSWR {}", format_decimal(limit, 1)),
            per_cent(drawn.pass),
        ),
        (
            "Bounds of that share (95 % sure)".to_owned(),
            format!("{} to {}", per_cent(low), per_cent(high)),
        ),
        ("The middle can".to_owned(), vswr(drawn.vswr_half)),
        ("90 % stay within".to_owned(), vswr(drawn.vswr_nine_tenths)),
    ]
}

/// Results of a batch.
#[must_use]
pub fn batch_rows(size: u32, expected: f64, least: u32, all: f64) -> Vec<(String, String)> {
    vec![
        (
            "Expected to pass".to_owned(),
            format!("{} of {size}", format_decimal(expected, 1)),
        ),
        (
            "With 90 % chance at least".to_owned(),
            format!("{least} of {size}"),
        ),
        ("Chance that all pass".to_owned(), per_cent(all)),
    ]
}

/// Which dimension helps were it exact.
#[must_use]
pub fn would_help(drawn: &Yield) -> Option<String> {
    let first = drawn.care.first()?;
    if first.pass_if_exact > drawn.pass_bounds.1 {
        return Some(format!(
            "Were the {} exact, {} would pass.",
            dimension(first.dimension),
            per_cent(first.pass_if_exact)
        ));
    }
    (drawn.pass < 1.0).then(|| "No single dimension made exact would help for certain.".to_owned())
}

/// The table of dimensions.
#[must_use]
pub const fn care_title() -> &'static str {
    "Which dimension helps most if it is exact"
}

/// Its heads.
#[must_use]
pub fn care_heads() -> Vec<String> {
    [
        "Dimension",
        "Pass if it is exact",
        "Mean worst VSWR if only it is off",
    ]
    .map(str::to_owned)
    .to_vec()
}

/// How far the stand-in may be off.
#[must_use]
pub fn stand_in(error: f64) -> String {
    format!(
        "Each can’s reflection comes from a parabola fitted to the field computation round the design. Eight cans were also computed fully: the worst reflection (0 to 1) differed by at most {}.",
        format_decimal(error, 4)
    )
}
