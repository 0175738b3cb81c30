//! Round the steps: where one is, what is kept, what a cap and a bracket do.

use tinwave_maker::bench::{BracketPlace, CapSheet};
use tinwave_maker::entry::{LengthUnit, format_decimal};

use super::ruled;

/// Which step of how many, above the heading.
#[must_use]
pub fn step_of(number: usize, all: usize) -> String {
    format!("Make: step {number} of {all}")
}

/// The rail's line.
#[must_use]
pub fn rail_line(number: usize, all: usize, short: &str) -> String {
    format!("Step {number} of {all}: {short}")
}

/// The rail's line when every step is done.
#[must_use]
pub fn all_done(all: usize) -> String {
    format!("All {all} steps done")
}

/// Names the press that goes back a step.
#[must_use]
pub const fn back() -> &'static str {
    "Back one step"
}

/// Names the press that goes on without a tick.
#[must_use]
pub const fn next() -> &'static str {
    "Next step, without a tick"
}

/// Heads the list of steps.
#[must_use]
pub const fn steps() -> &'static str {
    "Steps"
}

/// Heads what belongs to the step.
#[must_use]
pub const fn this_step() -> &'static str {
    "This step"
}

/// Below the buttons: what becomes of the ticks.
#[must_use]
pub const fn ticks_are_kept() -> &'static str {
    "Ticks are kept with the design, on this device."
}

/// Below the buttons, at a step that makes the cut.
#[must_use]
pub const fn makes_the_cut() -> &'static str {
    "With this tick the cut stays as it is now, whatever else you change."
}

/// The box of a step in the list.
#[must_use]
pub fn tick_of(short: &str) -> String {
    format!("Done: {short}")
}

/// A step that was ticked for other figures: what to do.
#[must_use]
pub fn tick_is_old() -> &'static str {
    "You ticked this step, and the design has changed since. Compare the piece with the figure above before you go on."
}

/// The same, where the figure of then is known.
#[must_use]
pub fn tick_is_old_at(um: u32, unit: LengthUnit) -> String {
    format!(
        "You ticked this step at {}, and the design has changed since. Compare the piece with the figure above before you go on.",
        ruled(um, unit)
    )
}

/// Heads a tick that no longer holds.
#[must_use]
pub const fn tick_is_old_head() -> &'static str {
    "Done to another figure"
}

/// Instead of a figure, while the best cut is searched for.
#[must_use]
pub const fn waits_for_cut() -> &'static str {
    "The best cut is being worked out. Don’t drill yet."
}

/// Beside a figure that rests on an estimate of the mouth.
#[must_use]
pub const fn is_estimate() -> &'static str {
    "Still an estimate: the field outside the mouth is being worked out. Don’t drill yet."
}

/// Heads the block of a can that will not do.
#[must_use]
pub const fn no_cut_head() -> &'static str {
    "Nothing to make yet"
}

/// Why: the can will not do.
#[must_use]
pub const fn no_cut() -> &'static str {
    "This can will not do for this band, so no drilling figure is given. Can says why, and which sizes or bands would do."
}

/// Names the choice of a cap.
#[must_use]
pub const fn cap() -> &'static str {
    "Cap over the mouth"
}

/// A cap's sheet, in a list.
#[must_use]
pub fn cap_sheet(sheet: CapSheet, unit: LengthUnit) -> String {
    let thickness = ruled(sheet.sheet().thickness_um, unit);
    match sheet {
        CapSheet::Polyethylene => format!("polyethylene cap, {thickness}"),
        CapSheet::Polypropylene => format!("polypropylene, {thickness}"),
        CapSheet::Pvc => format!("rigid PVC, {thickness}"),
        CapSheet::Acrylic => format!("acrylic, {thickness}"),
    }
}

/// What the cap is of, behind its thickness.
#[must_use]
pub const fn cap_sheet_in_words(sheet: CapSheet) -> &'static str {
    match sheet {
        CapSheet::Polyethylene => "of polyethylene, flat over the rim of the mouth",
        CapSheet::Polypropylene => "of polypropylene, flat over the rim of the mouth",
        CapSheet::Pvc => "of rigid PVC, flat over the rim of the mouth",
        CapSheet::Acrylic => "of acrylic, flat over the rim of the mouth",
    }
}

/// No cap, no bracket.
#[must_use]
pub const fn none() -> &'static str {
    "none"
}

/// While what a cap or a bracket does is worked out.
#[must_use]
pub const fn working_out() -> &'static str {
    "Being worked out"
}

/// What a cap does was not computed.
#[must_use]
pub const fn cap_not_computed() -> &'static str {
    "What the cap does was not worked out for this mouth."
}

/// What a cap does to the match.
#[must_use]
pub fn cap_does(with: f64, without: f64, shift_khz: Option<i64>, loss_db: Option<f64>) -> String {
    let mut said = format!(
        "With the cap the worst VSWR of the band is {}, without it {}.",
        format_decimal(with, 2),
        format_decimal(without, 2)
    );
    if let Some(shift_khz) = shift_khz.filter(|shift| shift.unsigned_abs() >= 500) {
        said.push(' ');
        said.push_str(&best_frequency_moves(shift_khz));
    }
    if let Some(loss_db) = loss_db {
        said.push(' ');
        said.push_str(&lost_in_cap(loss_db));
    }
    said
}

fn best_frequency_moves(shift_khz: i64) -> String {
    let megahertz = format_decimal(shift_khz.unsigned_abs() as f64 / 1e3, 0);
    if shift_khz < 0 {
        format!("The best frequency moves {megahertz} MHz down.")
    } else {
        format!("The best frequency moves {megahertz} MHz up.")
    }
}

fn lost_in_cap(loss_db: f64) -> String {
    if loss_db < 0.005 {
        "Lost in it: less than 0.01 dB.".into()
    } else {
        format!("Lost in it: {} dB.", format_decimal(loss_db, 2))
    }
}

/// Names the choice of a bracket.
#[must_use]
pub const fn bracket() -> &'static str {
    "Bracket, two 4 mm rivets"
}

/// Where a bracket goes, in a list.
#[must_use]
pub const fn bracket_place(place: BracketPlace) -> &'static str {
    match place {
        BracketPlace::Opposite => "opposite the hole",
        BracketPlace::Right => "a quarter round to the right",
        BracketPlace::Left => "a quarter round to the left",
    }
}

/// How deep the rivets may stick in: a limit was found.
#[must_use]
pub fn rivets_within(um: u32, unit: LengthUnit) -> String {
    format!(
        "The rivets of the bracket may stick in up to {}, or the VSWR moves by 0.1.",
        ruled(um, unit)
    )
}

/// No limit was found as deep as was tried.
#[must_use]
pub fn rivets_beyond(um: u32, unit: LengthUnit) -> String {
    format!(
        "The rivets of the bracket may stick in up to {}: the VSWR moves by less than 0.1.",
        ruled(um, unit)
    )
}

/// It was not computed.
#[must_use]
pub const fn rivets_not_computed() -> &'static str {
    "How deep the bracket’s rivets may stick in was not worked out."
}
