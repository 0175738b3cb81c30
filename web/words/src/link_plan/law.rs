//! What the chosen rules say, in words. Nothing where none are chosen.

use tinwave_core::radio_link::End;
use tinwave_core::radio_link::lawful::{Basis, Conditions, Rule};
use tinwave_maker::link_plan::{CheckedLimit, LawAnswer, LawStanding, PlanAnswer, UncheckedLimit};

use crate::figures::{db, dbm, trimmed, watts};

/// Where no rules are chosen: headline and text.
#[must_use]
pub const fn no_rules() -> (&'static str, &'static str) {
    (
        "No rules are chosen",
        "So nothing is said of what is lawful. Limits are mostly on power times gain: an antenna with gain may mean that you must turn the power down. They differ by country and band, and amateur bands need a licence.",
    )
}

/// An end, or both where they stand alike, at a sentence's begin.
const fn which(end: Option<End>) -> &'static str {
    match end {
        Some(End::A) => "This end",
        Some(End::B) => "The far end",
        None => "Either end",
    }
}

/// How an end stands, or both where no end is named, in a few words.
#[must_use]
pub fn law_headline(end: Option<End>, law: &LawAnswer) -> String {
    let end = which(end);
    match law.standing {
        LawStanding::Within => format!("{end}: within the rules"),
        LawStanding::NotAllChecked => format!("{end}: below the power limit, not all is checked"),
        LawStanding::Over => {
            let by = law.over_db().unwrap_or(f64::NAN);
            format!("{end}: over the limit by {}", at_least_a_tenth(by))
        }
        LawStanding::LicenceDecides => format!("{end}: the licence decides"),
        LawStanding::Listening => format!("{end}: only listens"),
        LawStanding::MustNotTransmit => format!("{end}: must not send"),
        LawStanding::NotCovered => format!("{end}: not covered by these rules"),
    }
}

fn at_least_a_tenth(by_db: f64) -> String {
    if by_db.abs() < 0.05 {
        "less than 0.1 dB".to_owned()
    } else {
        db(by_db.abs())
    }
}

/// What that means, in a sentence.
#[must_use]
pub const fn law_text(law: &LawAnswer) -> &'static str {
    match law.standing {
        LawStanding::Within => {
            "Every limit of the chosen rules was checked. The conditions below must hold as well."
        }
        LawStanding::NotAllChecked => {
            "That does not make it lawful yet: what is not checked and the conditions below must hold as well."
        }
        LawStanding::Over => "Turn the power down.",
        LawStanding::LicenceDecides => {
            "The licence of the station decides power and frequency. Without a licence these rules allow no sending. What may be said, encrypted or not, and the call sign are matters of the licence too."
        }
        LawStanding::Listening => {
            "A station that only listens sends nothing, so there is no power to limit."
        }
        LawStanding::MustNotTransmit => {
            "These rules are for listening only, but a power is entered."
        }
        LawStanding::NotCovered => {
            "Some of this channel lies outside all bands of the chosen rules, or it is narrower than they ask, so nothing can be said. That does not make it lawful."
        }
    }
}

/// Each limit: what was checked with its figures, what was not, and the most power.
#[must_use]
pub fn law_lines(law: &LawAnswer) -> Vec<String> {
    let with_watts = |level: f64| format!("{} ({})", dbm(level), watts(level));
    let mut lines: Vec<String> = law
        .checked
        .iter()
        .map(|limit| match limit {
            CheckedLimit::Eirp { most_dbm, sent_dbm } => format!(
                "Checked: power times gain (EIRP), {} of at most {}.",
                with_watts(*sent_dbm),
                with_watts(*most_dbm)
            ),
            CheckedLimit::Output { most_dbm, sent_dbm } => format!(
                "Checked: power at the radio’s output, {} of at most {} with this gain.",
                with_watts(*sent_dbm),
                with_watts(*most_dbm)
            ),
        })
        .collect();
    if !law.unchecked.is_empty() {
        let names: Vec<&str> = law.unchecked.iter().map(|one| unchecked(*one)).collect();
        lines.push(format!("Not checked: {}.", names.join("; ")));
    }
    if let Some(most) = law.most_power_dbm {
        lines.push(format!(
            "By what is checked the radio may send {}.",
            with_watts(most)
        ));
    }
    if law.cable_helps {
        lines.push("Loss of the cable is counted in your favour; cables of one kind differ by 20 to 40 % (common practice, no source): measure yours, or leave it out.".to_owned());
    }
    lines
}

const fn unchecked(limit: UncheckedLimit) -> &'static str {
    match limit {
        UncheckedLimit::Density => "power in each part of the channel (power density)",
        UncheckedLimit::TimeOnAir => "time on the air (duty cycle)",
        UncheckedLimit::SteepBeams => {
            "beams that point more than 30° upwards, which have a lower limit"
        }
        UncheckedLimit::OutOfBand => "power outside the channel",
    }
}

/// What the rules of all ends ask besides, a sentence each, none twice.
#[must_use]
pub fn law_conditions(answer: &PlanAnswer) -> Vec<&'static str> {
    let mut said: Vec<&'static str> = Vec::new();
    for law in answer.ends.iter().filter_map(|end| end.law.as_ref()) {
        for sentence in conditions(&law.ruling.conditions) {
            if !said.contains(&sentence) {
                said.push(sentence);
            }
        }
    }
    said
}

fn conditions(asked: &Conditions) -> impl Iterator<Item = &'static str> + use<> {
    [
        (asked.changed_antenna_may_be_forbidden, "Another antenna than the one a device was certified with may be forbidden, even where the power is far below the limit."),
        (asked.needs_licence, "The operator needs a licence."),
        (asked.dynamic_frequency_selection, "The device must give way to radar (dynamic frequency selection)."),
        (asked.transmitter_power_control, "The device must control its power, or stay lower (transmitter power control)."),
        (asked.indoor_only, "Indoors only."),
        (asked.fixed_point_to_point_only, "These limits hold only for two fixed stations that serve each other and nobody else."),
        (asked.national_limits_differ, "Countries differ in edges and powers."),
        (asked.listening_may_be_restricted, "Listening to what is not meant for you, or passing it on, may be forbidden."),
    ]
    .into_iter()
    .filter_map(|(holds, sentence)| holds.then_some(sentence))
}

/// The channel that was judged, and where the rules are written, of when, how they are
/// known.
#[must_use]
pub fn law_sources(answer: &PlanAnswer) -> Vec<String> {
    let mut said = vec![format!(
        "Judged for a channel {} MHz wide at {} MHz, the middle of this design’s band; another channel of the band may have other limits.",
        trimmed(answer.plan.channel_hz() / 1e6, 3),
        trimmed(answer.frequency_hz / 1e6, 2)
    )];
    let laws = answer.ends.iter().filter_map(|end| end.law.as_ref());
    for rule in laws.flat_map(|law| &law.ruling.rules) {
        let source = source(rule);
        if !said.contains(&source) {
            said.push(source);
        }
    }
    said.push("Rules change and this copy may be old. Check with your own administration before you transmit; this is no legal advice.".to_owned());
    said
}

fn source(rule: &Rule) -> String {
    let date = match rule.source.date {
        Some((year, Some(month))) => format!("text of {year}-{month:02}"),
        Some((year, None)) => format!("text of {year}"),
        None => "the copy had no date".to_owned(),
    };
    let basis = match rule.source.basis {
        Basis::Read => "read",
        Basis::SecondHand => "taken from a database of national limits, not from the text itself",
        Basis::Memory => "from memory, check it",
    };
    format!("{}, {date}; {basis}.", rule.source.citation)
}

/// Heads what the rules ask besides.
#[must_use]
pub const fn conditions_title() -> &'static str {
    "Conditions and sources"
}

/// How many conditions there are.
#[must_use]
pub fn conditions_summary(count: usize) -> String {
    match count {
        0 => "none are known; check with your administration".to_owned(),
        1 => "one to be met as well".to_owned(),
        _ => format!("{count} to be met as well"),
    }
}
