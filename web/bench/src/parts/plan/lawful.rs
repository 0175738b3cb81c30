//! What the chosen rules say of the power; nothing where none are chosen.

use tinwave_core::radio_link::lawful::{
    Basis, Conditions, Rule, RuleSet, Ruling, Standing, Transmission, ruling,
};
use tinwave_core::radio_link::{End, LinkError};

use super::link::Plan;
use super::typed;
use super::words::{db, dbm, milliwatts};
use crate::html::{escaped, result};
use crate::reply::Reply;

const NONE_CHOSEN: &str = "<p class=\"note\">No rules are chosen, so nothing is said of what is lawful. Check with your own administration.</p>";

/// Makes differ by this much (common practice, no source).
const CABLE: &str = "Loss of the cable is counted in your favour; cables of one type differ by 20 to 40 %: measure yours, or leave it out.";

pub(super) fn show(plan: &Plan, reply: &mut Reply) -> Result<(), LinkError> {
    let Some(set) = plan.entries.rules else {
        reply.place("lawful", NONE_CHOSEN.to_owned());
        return Ok(());
    };
    let mut markup = String::new();
    if set != RuleSet::ReceiveOnly {
        for part in ["<p>", &escaped(&judged(plan)), "</p>"] {
            markup.push_str(part);
        }
    }
    let mut seen = Vec::new();
    let mut cable_helps = false;
    for end in [End::A, End::B] {
        let Some(ruling) = of_end(plan, end)? else {
            continue;
        };
        push_end(&mut markup, plan, end, &ruling);
        // Where the transmitter's output is limited, a cable is no excuse.
        let radiated = ruling.eirp_limit_dbm.is_some() && ruling.conducted_limit_dbm.is_none();
        cable_helps |= radiated && plan.link.end(end).line.is_some();
        seen.push(ruling);
    }
    push_conditions(&mut markup, set, &seen, cable_helps);
    reply.place("lawful", markup);
    Ok(())
}

/// The one channel that is judged.
fn judged(plan: &Plan) -> String {
    [
        "Judged for a channel ",
        &typed::short(plan.entries.bandwidth_hz / 1e6),
        " MHz wide at ",
        &typed::short(plan.frequency_hz / 1e6),
        " MHz, the middle of this design’s band. Another channel of the band may have other limits.",
    ]
    .concat()
}

/// Distance from the limit, never told as none.
pub(super) fn by(headroom_db: f64) -> String {
    if headroom_db.abs() < 0.05 {
        return "less than 0.1 dB".to_owned();
    }
    db(headroom_db.abs())
}

/// What the rules say of an end; `None` without rules, and for an end that only listens
/// by its entries while the rules are of sending.
pub(super) fn of_end(plan: &Plan, end: End) -> Result<Option<Ruling>, LinkError> {
    let one = plan.link.end(end);
    let listens = plan.entries.rules == Some(RuleSet::ReceiveOnly);
    if one.transmit_power_dbm.is_none() && !listens {
        return Ok(None);
    }
    let sent = Transmission {
        frequency_hz: plan.frequency_hz,
        bandwidth_hz: plan.entries.bandwidth_hz,
        // The strongest direction counts, and a loss by reflection is no excuse.
        gain_dbi: plan.antenna(end).peak_gain_dbi,
        line_loss_db: one.feed_loss_db(plan.frequency_hz)?,
        transmit_power_dbm: one.transmit_power_dbm,
        arrangement: plan.entries.arrangement,
        power_control: plan.entries.power_control,
    };
    Ok(ruling(plan.entries.rules, &sent))
}

fn push_end(markup: &mut String, plan: &Plan, end: End, ruling: &Ruling) {
    let name = match end {
        End::A => "This end",
        End::B => "The far end",
    };
    for part in [
        "<p class=\"plan-heading\">",
        name,
        "</p><p>",
        &escaped(&standing(plan, end, ruling)),
        "</p><dl class=\"results\">",
    ] {
        markup.push_str(part);
    }
    let figures = [
        ("EIRP (power times gain)", ruling.eirp_dbm),
        ("Limit of the EIRP", ruling.eirp_limit_dbm),
        ("Limit at the transmitter", ruling.conducted_limit_dbm),
        (
            "Most transmit power by that limit",
            // Never rounded up.
            ruling
                .transmit_power_limit_dbm
                .map(|dbm| (dbm * 10.0 + 1e-6).floor() / 10.0),
        ),
    ];
    for (what, level) in figures {
        if let Some(level) = level {
            let value = [&dbm(level), " (", &milliwatts(level), ")"].concat();
            markup.push_str(&result(what, &value));
        }
    }
    markup.push_str("</dl>");
}

/// How an end stands, in a sentence.
fn standing(plan: &Plan, end: End, ruling: &Ruling) -> String {
    let power = plan
        .link
        .end(end)
        .transmit_power_dbm
        .map_or_else(String::new, dbm);
    let by = ruling.headroom_db.map_or_else(String::new, by);
    match ruling.standing {
        Standing::Inside => [
            &power,
            " is within the power limit of the chosen rules, by ",
            &by,
            ". The conditions below must hold as well.",
        ]
        .concat(),
        Standing::Over => {
            [&power, " is over the chosen rules’ limit by ", &by, ": turn the power down."].concat()
        }
        Standing::LicenceDecides => "The licence of the station decides the power and the frequency. Without a licence these rules allow no sending.".to_owned(),
        Standing::Listening => "A station that only listens sends nothing, so there is no power to limit.".to_owned(),
        Standing::MustNotTransmit => "These rules are for listening only, but a transmit power is entered: this end must not send.".to_owned(),
        Standing::LimitsOnly => "Limits of the chosen rules:".to_owned(),
        Standing::NotCovered => "Some of this channel lies outside all bands of the chosen rules, or it is narrower than they ask, so nothing can be said. That does not make it lawful.".to_owned(),
    }
}

fn push_conditions(markup: &mut String, set: RuleSet, seen: &[Ruling], cable_helps: bool) {
    let mut sentences: Vec<&str> = Vec::new();
    let mut sources: Vec<String> = Vec::new();
    for ruling in seen {
        for sentence in conditions(&ruling.conditions) {
            if !sentences.contains(&sentence) {
                sentences.push(sentence);
            }
        }
        for rule in &ruling.rules {
            let source = source(rule);
            if !sources.contains(&source) {
                sources.push(source);
            }
        }
    }
    if cable_helps {
        sentences.push(CABLE);
    }
    if matches!(set, RuleSet::UsUnlicensed | RuleSet::EuLicenceExempt) {
        sentences.push("Limits of power density and other tests of the device come on top; they are not reckoned here.");
    }
    sentences.push("Rules change and this copy may be old. Check with your own administration before you transmit.");
    markup.push_str("<ul class=\"cautions\">");
    for sentence in sentences {
        for part in ["<li>", &escaped(sentence), "</li>"] {
            markup.push_str(part);
        }
    }
    markup.push_str("</ul>");
    for source in sources {
        for part in ["<p class=\"note\">Source: ", &escaped(&source), "</p>"] {
            markup.push_str(part);
        }
    }
}

/// What the rules ask besides power.
fn conditions(asked: &Conditions) -> Vec<&'static str> {
    [
        (asked.changed_antenna_may_be_forbidden, "Another antenna than the one a device was certified with may be forbidden, even where the power is far below the limit."),
        (asked.needs_licence, "The operator needs a licence."),
        (asked.dynamic_frequency_selection, "The device must give way to radar (dynamic frequency selection)."),
        (asked.transmitter_power_control, "The device must control its power, or stay lower (transmitter power control)."),
        (asked.indoor_only, "Indoors only."),
        (asked.fixed_point_to_point_only, "These limits hold only for two fixed stations that serve each other and nobody else."),
        (asked.steep_beams_limited, "Beams that point more than 30° upwards have a lower limit."),
        (asked.duty_cycle_limited, "The time on the air is limited (duty cycle)."),
        (asked.national_limits_differ, "Countries differ in edges and powers."),
        (asked.listening_may_be_restricted, "Listening to what is not meant for you, or passing it on, may be forbidden."),
    ]
    .into_iter()
    .filter_map(|(holds, sentence)| holds.then_some(sentence))
    .collect()
}

/// Where a row is written, of when, and how it is known.
fn source(rule: &Rule) -> String {
    let date = match rule.source.date {
        Some((year, Some(month))) => {
            let zero = if month < 10 { "0" } else { "" };
            [
                ", text of ",
                &year.to_string(),
                "-",
                zero,
                &month.to_string(),
            ]
            .concat()
        }
        Some((year, None)) => [", text of ", &year.to_string()].concat(),
        None => ", the copy had no date".to_owned(),
    };
    let basis = match rule.source.basis {
        Basis::Read => "; read",
        Basis::SecondHand => {
            "; taken from a database of national limits, not from the standard itself"
        }
        Basis::Memory => "; from memory, check it",
    };
    [rule.source.citation, &date, basis, "."].concat()
}
