//! The station's answer, its picture and its figures in words.

use tinwave_core::radio_link::{Budget, End};
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::link_plan::{Knowledge, LinkAnswer, PlanAnswer};

use super::names::end;
use crate::figures::{dbm, distance, entered_distance, whole_db};

/// The answer: the station's heading.
#[must_use]
pub fn answer(answer: &PlanAnswer, unit: LengthUnit) -> String {
    let Some(link) = &answer.link else {
        return "The link waits for an antenna".to_owned();
    };
    let at = entered_distance(answer.plan.distance_m, unit);
    if let Some(begins_m) = link.near_field_m {
        return format!(
            "Too near to tell: the beam forms at {}",
            distance(begins_m, unit)
        );
    }
    let missing: Vec<&Budget> = not_heard(link);
    match missing.as_slice() {
        [] => {
            let margin = whole_db(link.weaker.margin_db);
            if answer.is_at_best() {
                format!("At best {margin} to spare at {at}")
            } else {
                format!("{margin} to spare at {at}")
            }
        }
        [one] if link.budgets.len() == 2 => format!(
            "{} cannot hear {}: {} short",
            hearer(one),
            end(one.from),
            whole_db(one.margin_db)
        ),
        _ => format!(
            "Does not reach: {} short at {at}",
            whole_db(link.weaker.margin_db)
        ),
    }
}

fn not_heard(link: &LinkAnswer) -> Vec<&Budget> {
    let mut all: Vec<&Budget> = link.budgets.iter().collect();
    all.retain(|budget| budget.margin_db < 0.0);
    all
}

const fn hearer(budget: &Budget) -> &'static str {
    match budget.from {
        End::A => "The far end",
        End::B => "This end",
    }
}

/// One sentence or two of reason.
#[must_use]
pub fn reason(answer: &PlanAnswer) -> String {
    let Some(link) = &answer.link else {
        return "What is entered is kept; path, law and aim are told as far as they are known."
            .to_owned();
    };
    if link.near_field_m.is_some() {
        return "Nearer than that an antenna has no gain to speak of, so no margin is given."
            .to_owned();
    }
    let mut sentences = match link.budgets.as_slice() {
        [one, _] if link.is_alike() => vec![heard("Each end hears the other", one)],
        budgets => budgets
            .iter()
            .map(|one| heard(&format!("{} hears {}", hearer(one), end(one.from)), one))
            .collect(),
    };
    if answer.is_at_best() {
        sentences.push(at_best(answer).to_owned());
    }
    sentences.join(" ")
}

/// How one direction stands.
fn heard(who: &str, budget: &Budget) -> String {
    let wanted = budget.margin_db - budget.spare_db;
    let spare = whole_db(budget.spare_db);
    let fade = whole_db(wanted);
    if budget.margin_db < 0.0 {
        format!("{who} only once {} are gained.", whole_db(budget.margin_db))
    } else if budget.meets_fade_margin() {
        format!("{who} with {spare} more than the {fade} kept against fading.")
    } else {
        format!("{who}, but {spare} are missing of the {fade} kept against fading.")
    }
}

fn at_best(answer: &PlanAnswer) -> &'static str {
    let path = answer.path.as_ref();
    if path.is_some_and(|path| path.is_low_over_ground()) {
        "The ends are low over the ground, which takes more than is counted here: the real link is weaker, or not there at all."
    } else if path.is_some_and(|path| path.is_at_best()) {
        "Several things stand in the way and only the worst is counted: the real link is weaker."
    } else {
        "Something in the way is not counted, because nothing is published of it at this frequency."
    }
}

/// The answer as one live line, for the list of stations.
#[must_use]
pub fn in_short(answer: &PlanAnswer, unit: LengthUnit) -> String {
    let Some(link) = &answer.link else {
        return "waits for an antenna".to_owned();
    };
    let at = entered_distance(answer.plan.distance_m, unit);
    if link.near_field_m.is_some() {
        return "too near to tell".to_owned();
    }
    let margin = whole_db(link.weaker.margin_db);
    if link.weaker.margin_db < 0.0 {
        format!("{margin} short at {at}")
    } else {
        format!("{margin} to spare at {at}")
    }
}

/// The picture's heading.
#[must_use]
pub fn picture_title(from: End) -> String {
    format!("From {} to {}", end(from), end(from.other()))
}

/// What is drawn, and which direction.
#[must_use]
pub fn directions_note(link: &LinkAnswer) -> &'static str {
    match (link.budgets.len(), link.is_alike()) {
        (2, true) => "Level in dBm, steps in dB; both directions are alike",
        (2, false) => "Level in dBm, steps in dB; the weaker direction",
        _ => "Level in dBm, steps in dB; the only direction",
    }
}

/// The picture in a sentence, for those who hear it.
#[must_use]
pub fn picture_description(budget: &Budget) -> String {
    let sent = budget.items.first().map_or(f64::NAN, |item| item.level_dbm);
    format!(
        "From {} at the transmitter to {} at the receiver, which needs {}.",
        dbm(sent),
        dbm(budget.received_dbm),
        dbm(budget.sensitivity_dbm)
    )
}

/// The last two rows of the picture: what is received, and what is needed.
#[must_use]
pub const fn level_names() -> (&'static str, &'static str) {
    ("Received", "Needed")
}

/// What stands at the bracket between the received and the needed level.
#[must_use]
pub fn margin_bracket(margin_db: f64) -> String {
    let margin = whole_db(margin_db);
    if margin_db < 0.0 {
        format!("{margin} short")
    } else {
        format!("{margin} to spare")
    }
}

/// What the station waits for, where this design gives no antenna: title and text.
#[must_use]
pub const fn waits() -> (&'static str, &'static str, &'static str) {
    (
        "No link with this can yet",
        "A can that will not do has no gain to plan with. Choose another can or band, or say below what stands at this end instead: an antenna whose gain you know, or a design that you kept.",
        crate::frame::to_the_can(),
    )
}

/// Of a kept design that gives no antenna in this band.
#[must_use]
pub const fn kept_unusable() -> (&'static str, &'static str) {
    (
        "This design can’t be used here",
        "It will not do in the present band, or its link can’t be read. Choose another, or state gain and width.",
    )
}

/// How an antenna is known, behind its gain.
#[must_use]
pub(super) const fn knowledge(knowledge: Knowledge) -> &'static str {
    match knowledge {
        Knowledge::Computed => "worked out for the whole can",
        Knowledge::WithoutProbe => "worked out without the match",
        Knowledge::Estimated => "an estimate, taken as that of an endless pipe",
        Knowledge::Stated => "as stated",
    }
}

/// Where the formulas do not take a number: headline and text.
#[must_use]
pub const fn out_of_range() -> (&'static str, &'static str) {
    (
        "Not worked out at this band",
        "One of the link’s numbers is outside what the published formulas cover at this band.",
    )
}
