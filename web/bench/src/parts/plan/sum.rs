//! The whole plan in one line.

use tinwave_core::radio_link::lawful::Standing;
use tinwave_core::radio_link::{Budget, End, LinkError};
use tinwave_web::entry::format_decimal;

use super::lawful;
use super::link::Plan;
use super::words::{distance, whole_db};
use crate::reply::Reply;

pub(super) fn show(
    plan: &Plan,
    weaker: Option<&Budget>,
    reply: &mut Reply,
) -> Result<(), LinkError> {
    let Some(budget) = weaker else {
        reply.text("sum", "no end sends to one that listens");
        return Ok(());
    };
    let at = distance(plan.entries.distance_m, plan.unit);
    let margin = whole_db(budget.margin_db);
    let mut text = if budget.margin_db >= 0.0 {
        ["margin ", &margin, " at ", &at].concat()
    } else {
        [&margin, " missing at ", &at].concat()
    };
    if plan.is_blocked() {
        text.push_str(", path blocked");
    }
    text.push_str("; ");
    text.push_str(&rules(plan)?);
    reply.text("sum", &text);
    Ok(())
}

/// How the worse of the ends stands to the rules.
fn rules(plan: &Plan) -> Result<String, LinkError> {
    if plan.entries.rules.is_none() {
        return Ok("no rules chosen".to_owned());
    }
    let mut worst = None;
    for end in [End::A, End::B] {
        let Some(ruling) = lawful::of_end(plan, end)? else {
            continue;
        };
        let power = plan.link.end(end).transmit_power_dbm;
        let said = (
            ruling.standing,
            ruling.headroom_db.unwrap_or(f64::NAN),
            power,
        );
        let is_worse = worst.is_none_or(|before: (Standing, f64, Option<f64>)| {
            rank(said.0) > rank(before.0) || (said.0 == before.0 && said.1 < before.1)
        });
        if is_worse {
            worst = Some(said);
        }
    }
    let Some((standing, headroom_db, power_dbm)) = worst else {
        return Ok("nothing is sent".to_owned());
    };
    let power = power_dbm.map_or_else(String::new, |dbm| {
        [&format_decimal(dbm, 0), " dBm"].concat()
    });
    Ok(match standing {
        Standing::Inside => [&power, " is within the power limit of the chosen rules"].concat(),
        Standing::Over => [
            &power,
            " is ",
            &lawful::by(headroom_db),
            " over the chosen rules",
        ]
        .concat(),
        Standing::LicenceDecides => "the station’s licence decides".to_owned(),
        Standing::Listening | Standing::LimitsOnly => "nothing is sent".to_owned(),
        Standing::MustNotTransmit => "must not send by the chosen rules".to_owned(),
        Standing::NotCovered => "the chosen rules do not cover this channel".to_owned(),
    })
}

const fn rank(standing: Standing) -> u8 {
    match standing {
        Standing::Listening | Standing::LimitsOnly => 0,
        Standing::Inside => 1,
        Standing::LicenceDecides => 2,
        Standing::NotCovered => 3,
        Standing::Over => 4,
        Standing::MustNotTransmit => 5,
    }
}
