//! Labels and notes of the station's figures, and of the chart of its reach.

use tinwave_core::radio_link::End;
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::link_plan::{LinkAnswer, PlanAnswer};

use crate::figures::{degrees, distance, entered_distance, whole_db, whole_db_parts};

/// Below the margin's figure.
#[must_use]
pub fn margin_note(answer: &PlanAnswer, link: &LinkAnswer, unit: LengthUnit) -> String {
    let at = entered_distance(answer.plan.distance_m, unit);
    match (link.budgets.len(), link.is_alike(), link.weaker.from) {
        (2, true, _) => format!("at {at}, both ways"),
        (2, false, End::A) => format!("at {at}, at the far end"),
        (2, false, End::B) => format!("at {at}, at this end"),
        _ => format!("at {at}, one way"),
    }
}

/// Below the reach's figure; the reach itself is in free space alone.
#[must_use]
pub fn reach_note(fade_db: f64) -> String {
    format!("free space, {} kept", whole_db(fade_db))
}

/// Labels of the station's figures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FigureLabels {
    /// Of the margin.
    pub margin: &'static str,
    /// Of the reach.
    pub reach: &'static str,
    /// Of the aim.
    pub aim: &'static str,
    /// Of the distance to keep.
    pub keep_away: &'static str,
}

/// Labels of the station's figures.
#[must_use]
pub const fn figure_labels() -> FigureLabels {
    FigureLabels {
        margin: "Margin",
        reach: "Reaches",
        aim: "Aim within",
        keep_away: "Keep away",
    }
}

/// Below a figure that waits for an antenna.
#[must_use]
pub const fn waits_note() -> &'static str {
    "waits for both antennas"
}

/// Below the reach where nothing is heard at the distance entered. What stands in the way
/// stands there at that distance only, so nothing is said of a shorter one.
#[must_use]
pub fn does_not_reach(answer: &PlanAnswer, link: &LinkAnswer, unit: LengthUnit) -> String {
    let is_free = answer.path.as_ref().is_none_or(|path| path.loss.is_none());
    if is_free && link.reach.out_m >= 1.0 {
        format!(
            "does not reach; {} at most",
            distance(link.reach.out_m, unit)
        )
    } else {
        "does not reach".to_owned()
    }
}

/// Below the aim's figure.
#[must_use]
pub fn aim_note(three_db_deg: f64) -> String {
    format!("costs 1 dB; {} costs 3", degrees(three_db_deg))
}

/// Of an antenna that sends all round.
#[must_use]
pub const fn aims_all_round() -> &'static str {
    "it sends all round"
}

/// Below the distance to keep.
#[must_use]
pub const fn keep_away_note() -> &'static str {
    "from the mouth, at least"
}

/// Where no distance to keep can be given.
#[must_use]
pub fn keep_away_unknown(answer: &PlanAnswer) -> &'static str {
    if answer.ends.iter().any(|end| !end.safe.is_empty()) {
        "not worked out for so much power"
    } else {
        "waits for an antenna that sends"
    }
}

/// Names of the reach chart's axes: distance and margin.
#[must_use]
pub const fn reach_axes() -> (&'static str, &'static str) {
    ("Distance", "Margin")
}

/// A direction beside its curve.
#[must_use]
pub const fn direction(from: End) -> &'static str {
    match from {
        End::A => "this end sends",
        End::B => "the far end sends",
    }
}

/// At the distance entered, on the reach chart.
#[must_use]
pub fn reach_mark(at_m: f64, margin_db: f64, unit: LengthUnit) -> String {
    let (value, symbol) = whole_db_parts(margin_db);
    format!("{}: {value} {symbol}", entered_distance(at_m, unit))
}

/// Where the margin kept against fading runs out, on the reach chart.
#[must_use]
pub fn kept_mark(at_m: f64, fade_db: f64, unit: LengthUnit) -> String {
    format!("{} kept: {}", whole_db(fade_db), distance(at_m, unit))
}
