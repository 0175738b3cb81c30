//! Headings of the station's parts, and what a fold says in its line.

use tinwave_maker::entry::LengthUnit;
use tinwave_maker::link_plan::{AimAnswer, LinkAnswer, PlanAnswer};

use crate::figures::{dbm, degrees, distance_at_least, joined};

/// A heading of the station's parts with the line below it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PartTitle {
    /// The reach.
    Reach,
    /// The path.
    Path,
    /// The aim.
    Aim,
    /// Which change buys most.
    Savings,
    /// The law.
    Law,
    /// Before it goes up.
    BeforeUp,
    /// The rest of that.
    AlsoBeforeUp,
    /// The budget as a table.
    Steps,
    /// What can be received.
    Receive,
    /// Safe distances.
    Safe,
    /// The entries.
    Entries,
}

/// Heading and the line below.
#[must_use]
pub const fn part_titles(part: PartTitle) -> (&'static str, &'static str) {
    match part {
        PartTitle::Reach => ("How far it reaches", "Margin in dB, in free space alone"),
        PartTitle::Path => (
            "Is the path clear?",
            "Heights are drawn larger than distances",
        ),
        PartTitle::Aim => ("How to aim", ""),
        PartTitle::Savings => (
            "What buys most",
            "Each alone, for the weaker direction. More power is not in the list: it helps one direction only, and the law limits it.",
        ),
        PartTitle::Law => ("Is it lawful?", ""),
        PartTitle::BeforeUp => ("Before it goes up", ""),
        PartTitle::AlsoBeforeUp => ("Lightning, ladders, water", "local code decides"),
        PartTitle::Steps => ("Link budget, step by step", ""),
        PartTitle::Receive => (
            "What can be received",
            "nothing is sent; what is uncertain is marked so",
        ),
        PartTitle::Safe => (
            "Keep away from the mouth",
            "From the rim of the mouth, straight ahead; sent all the time, all of it thrown back once more.",
        ),
        PartTitle::Entries => ("The link", ""),
    }
}

/// The aim in a fold's line.
#[must_use]
pub fn aim_summary(aim: &AimAnswer) -> String {
    match aim.within_deg() {
        Some([one, three]) => format!(
            "1 dB is lost at {}, 3 dB at {}",
            degrees(one),
            degrees(three)
        ),
        None => "it sends all round".to_owned(),
    }
}

/// The best change in a fold's line.
#[must_use]
pub fn savings_summary(what: &str, worth: &str) -> String {
    format!("{what}: {worth}")
}

/// The distance to keep in a fold's line.
#[must_use]
pub fn safe_summary(answer: &PlanAnswer, unit: LengthUnit) -> String {
    let never = "never look into a can that transmits";
    match answer.keep_away_m() {
        Some(keep_m) => format!(
            "{} at least; {never}",
            joined(distance_at_least(keep_m, unit))
        ),
        None => never.to_owned(),
    }
}

/// The budget in a fold's line.
#[must_use]
pub fn steps_summary(link: &LinkAnswer) -> String {
    format!(
        "{} received, {} needed",
        dbm(link.weaker.received_dbm),
        dbm(link.weaker.sensitivity_dbm)
    )
}
