//! What to do about it.

use tinwave_core::diagnosis::Remedy;
use tinwave_maker::entry::{LengthUnit, format_decimal, format_length, format_length_number};

/// Figures' labels: what comes off now, in all, and what the match is then.
#[must_use]
pub const fn file_off_now() -> &'static str {
    "File off now"
}

/// Below the first step.
#[must_use]
pub const fn then_measure_again() -> &'static str {
    "then measure again"
}

/// All that should come off.
#[must_use]
pub const fn in_all() -> &'static str {
    "In all, about"
}

/// Below all that should come off.
#[must_use]
pub const fn should_come_off() -> &'static str {
    "should come off"
}

/// VSWR after the first step.
#[must_use]
pub fn vswr_after_step(step_um: u32, unit: LengthUnit) -> String {
    format!("VSWR after {}", format_length_number(step_um, unit))
}

/// VSWR after all of it.
#[must_use]
pub const fn vswr_after_all() -> &'static str {
    "VSWR after all"
}

/// Below a VSWR to expect, with the present one as the can most likely is.
#[must_use]
pub fn at_worst_now(now: Option<f64>) -> String {
    match now {
        Some(now) => format!("at worst; now {}", format_decimal(now, 2)),
        None => "at worst".to_owned(),
    }
}

/// Below a VSWR to expect.
#[must_use]
pub const fn at_worst_expected() -> &'static str {
    "at worst, expected"
}

/// A figure that waits for the advice.
#[must_use]
pub const fn being_worked_out() -> &'static str {
    "being worked out"
}

/// What can't be computed.
#[must_use]
pub const fn not_known() -> &'static str {
    "not known"
}

/// How the cut is worked out, how sure, from where.
#[must_use]
pub const fn why_cut() -> (&'static str, &'static str, &'static str) {
    (
        "The can as it most likely is (design plus what the measurement found) is matched anew: the wire length with the least worst VSWR. The first step is what is safe: twice the standard deviation less, and at most seven tenths of all.",
        "A wire is hardly ever left shorter than it should be. What is left shows in the next measurement.",
        "Least squares with what was known before: D. W. Marquardt, J. SIAM 11 (1963) 431; A. Tarantola, Inverse Problem Theory, SIAM 2005, 3.2 (from memory)",
    )
}

/// How the VSWR to expect is worked out, and how sure.
#[must_use]
pub const fn why_expected() -> (&'static str, &'static str, &'static str) {
    (
        "The field computation for the can as it most likely is, with that much wire off: the largest VSWR at eleven points of the band.",
        "As sure as the cause is. Computed, not measured.",
        "",
    )
}

/// The main button.
#[must_use]
pub fn have_taken_off(step_um: u32, unit: LengthUnit) -> String {
    format!("I have taken {} off", format_length(step_um, unit))
}

/// The entry for another amount.
#[must_use]
pub const fn other_amount() -> &'static str {
    "Taken off"
}

/// Its help.
#[must_use]
pub const fn other_amount_help() -> &'static str {
    "What you really took off, if it is not just that much."
}

/// No wire would be left.
#[must_use]
pub const fn no_wire_left() -> &'static str {
    "That would leave no usable wire: less must come off than there is."
}

/// What is said of an amount that is too much.
#[must_use]
pub fn too_much(amount_um: u32, safe_um: u32, whole_um: u32, unit: LengthUnit) -> Option<String> {
    if amount_um > whole_um {
        Some("That is more than should come off at all.".to_owned())
    } else if amount_um > safe_um {
        Some(format!(
            "That is more than the safe step of {}: take less, and measure in between.",
            format_length(safe_um, unit)
        ))
    } else {
        None
    }
}

/// What the main button does.
#[must_use]
pub const fn what_it_writes() -> &'static str {
    "The log notes it with this measurement, and the place is cleared for the next one."
}

/// A thing to do, in a headline and a sentence with the VSWR to expect.
#[must_use]
pub fn remedy(remedy: &Remedy, vswr: f64, unit: LengthUnit) -> (String, String) {
    let length = |um: u32| format_length(um, unit);
    let then = format_decimal(vswr, 2);
    match remedy {
        Remedy::Leave => (
            "Leave it as it is".to_owned(),
            "No cut, screw or other hole would better it by much.".to_owned(),
        ),
        Remedy::Trim { whole_um, safe_um } if whole_um == safe_um => (
            format!("File {} off the wire", length(*whole_um)),
            format!("Then VSWR {then} at worst is to be expected."),
        ),
        Remedy::Trim { whole_um, safe_um } => (
            format!("File {} off the wire, then measure again", length(*safe_um)),
            format!(
                "About {} should come off in all; after all of it VSWR {then} at worst is to be expected.",
                length(*whole_um)
            ),
        ),
        Remedy::Lengthen { by_um } => (
            format!("Solder in a wire {} longer", length(*by_um)),
            format!("The wire is too short. Then VSWR {then} at worst is to be expected."),
        ),
        Remedy::Move {
            backshort_distance_um,
            length_um,
        } => (
            "Drill another hole".to_owned(),
            format!(
                "Its middle {} from the inside of the back wall, with a wire of {} from the inner wall. Close the old hole with a soldered patch of bare tinplate or brass: hot zinc gives off fumes that make you ill. Then VSWR {then} at worst is to be expected.",
                length(*backshort_distance_um),
                length(*length_um)
            ),
        ),
        Remedy::AddScrew(screw) => (
            "Put in a tuning screw".to_owned(),
            format!(
                "Leave the wire. A screw of {} opposite the wire, {} from the inside of the back wall, {} deep. Then VSWR {then} at worst is to be expected.",
                length(screw.diameter_um),
                length(screw.axial_um),
                length(screw.depth_um)
            ),
        ),
    }
}

/// What is pressed when it is done; a cut has a button of its own.
#[must_use]
pub const fn remedy_done(remedy: &Remedy) -> Option<&'static str> {
    match remedy {
        Remedy::Lengthen { .. } => Some("I have put the longer wire in"),
        Remedy::Move { .. } => Some("I have moved the wire"),
        Remedy::AddScrew(_) => Some("I have put the screw in"),
        Remedy::Leave | Remedy::Trim { .. } => None,
    }
}

/// The group of things to do.
#[must_use]
pub const fn what_to_do() -> &'static str {
    "What to do"
}

/// The other ways, folded.
#[must_use]
pub const fn other_ways() -> &'static str {
    "Other ways"
}

/// The work in hand.
#[must_use]
pub const fn working_out() -> &'static str {
    "Working out what to do"
}

/// Takes it up again after Stop.
#[must_use]
pub const fn work_out() -> &'static str {
    "Work out what to do"
}

/// Nothing can be advised.
#[must_use]
pub const fn nothing_to_advise() -> (&'static str, &'static str) {
    (
        "Nothing can be advised",
        "The can as found is outside what can be computed.",
    )
}

/// What stands at the cut.
#[must_use]
pub const fn wire_is_off() -> (&'static str, &'static str) {
    (
        "Wire that is off is off",
        "Take less than it says, measure, take again. A file takes what cutters can’t. Cut ends fly: wear eye protection, and take the burr off.",
    )
}

/// Its source.
#[must_use]
pub const fn wire_is_off_source() -> &'static str {
    "EN ISO 16321 and EN 166 (eye protection); common practice"
}
