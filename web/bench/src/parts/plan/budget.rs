//! The budget both ways: sentence, picture, table.

use tinwave_core::radio_link::{
    Budget, BudgetItemKind, End, LinkError, ReceiveStation, foliage_loss,
};

use super::antenna::{Antenna, Knowledge};
use super::entries::{Role, Way};
use super::link::{Plan, end_words};
use super::names;
use super::waterfall::{self, has_row};
use super::words::{db, dbm, degrees, distance, signed_db, small, whole_db};
use crate::html::{escaped, result, row};
use crate::reply::Reply;
use tinwave_web::entry::{format_decimal, format_hertz};

/// Shows it all; the budget of the weaker direction comes back.
pub(super) fn show(plan: &Plan, reply: &mut Reply) -> Result<Option<Budget>, LinkError> {
    let both = plan.link.budgets()?;
    let weaker = plan.link.weaker_budget()?;
    let wanted = match plan.entries.way {
        Way::Weaker => None,
        Way::FromHere => Some(End::A),
        Way::FromFar => Some(End::B),
    };
    let drawn = both
        .iter()
        .find(|budget| Some(budget.from) == wanted)
        .or(weaker.as_ref());
    reply.text("says", &sentences(plan, &both));
    reply.place("antennas", antennas(plan));
    reply.place(
        "waterfall",
        drawn.map_or_else(String::new, |budget| picture(plan, budget)),
    );
    reply.place("steps", table(plan, &both));
    reply.place("receiver", receiver(plan, &both));
    Ok(weaker)
}

/// What each end hears, in plain words.
fn sentences(plan: &Plan, both: &[Budget]) -> String {
    let alike = match both {
        [one, other] => (one.margin_db - other.margin_db).abs() < 0.05,
        _ => false,
    };
    if let (true, Some(one)) = (alike, both.first()) {
        let subject = "Each end hears the other";
        return [subject, &heard(one), &wanted(plan, one), ground(plan)].concat();
    }
    let mut text = String::new();
    for budget in both {
        let hearer = match budget.from {
            End::A => "The far end hears this end",
            End::B => "This end hears the far end",
        };
        if !text.is_empty() {
            text.push(' ');
        }
        text.push_str(&[hearer, &heard(budget), &wanted(plan, budget)].concat());
    }
    if !text.is_empty() {
        text.push_str(ground(plan));
    }
    text
}

/// What the budget does not know of the ground.
fn ground(plan: &Plan) -> &'static str {
    if !plan.is_low_over_ground() {
        return "";
    }
    " The ends are too low over the ground, and the budget counts that as a single sharp edge at most. Round ground takes more: the real link is weaker than it says, or not there at all."
}

fn heard(budget: &Budget) -> String {
    let margin = whole_db(budget.margin_db);
    if budget.margin_db >= 0.0 {
        [" with ", &margin, " to spare"].concat()
    } else {
        [" not at all by this reckoning: ", &margin, " are missing"].concat()
    }
}

fn wanted(plan: &Plan, budget: &Budget) -> String {
    let fade = whole_db(plan.entries.fade_db);
    if budget.margin_db < 0.0 {
        return ".".to_owned();
    }
    let spare = format_decimal(budget.spare_db.abs(), 0);
    if budget.meets_fade_margin() {
        [
            ", ",
            &spare,
            " more than the ",
            &fade,
            " wanted against fading.",
        ]
        .concat()
    } else {
        [
            ", ",
            &spare,
            " less than the ",
            &fade,
            " wanted against fading.",
        ]
        .concat()
    }
}

/// The antennas at both ends.
fn antennas(plan: &Plan) -> String {
    let mut markup = result(
        "Frequency, middle of the band",
        &format_hertz(plan.frequency_hz),
    );
    markup.push_str(&result("Antenna here", &antenna(&plan.here)));
    markup.push_str(&result("Antenna at the far end", &antenna(&plan.far)));
    let walls = plan.link.walls.iter().enumerate();
    for (n, wall) in walls {
        // The figure that the budget has, and the steadier one.
        let both = (
            wall.loss_db(plan.frequency_hz),
            wall.averaged_loss_db(plan.frequency_hz),
        );
        if let (Ok(exact), Ok(about)) = both {
            let name = [
                "Wall ",
                &(n + 1).to_string(),
                ", ",
                names::material(wall.material),
                ", ",
                &small(wall.thickness_m, plan.unit),
            ]
            .concat();
            let value = [&db(exact), "; ", &db(about), " on average of like walls"].concat();
            markup.push_str(&result(&name, &value));
        }
    }
    if let (true, Ok(trees)) = (
        plan.entries.foliage_m > 0.0,
        foliage_loss(plan.entries.foliage_m, plan.frequency_hz),
    ) {
        let span = [
            &format_decimal(trees.low_db, 0),
            " to ",
            &db(trees.high_db),
            " by other published forms",
        ]
        .concat();
        markup.push_str(&result(
            "Trees",
            &[&db(trees.usual_db), "; ", &span].concat(),
        ));
    }
    for (name, line) in [
        ("Cable here", plan.entries.here.line),
        ("Cable at the far end", plan.entries.far.line),
    ] {
        let Some(line) = line else { continue };
        if let Ok(loss) = line.loss_db(plan.frequency_hz) {
            let basis = names::cable_basis(line.coax, plan.frequency_hz);
            let value = [&db(loss), ", ", basis].concat();
            markup.push_str(&result(
                &[name, ", ", names::cable(line.coax)].concat(),
                &value,
            ));
        }
    }
    markup
}

fn antenna(antenna: &Antenna) -> String {
    let mut text = [&format_decimal(antenna.realised_gain_dbi(), 1), " dBi"].concat();
    if let Some([e, h]) = antenna.widths_deg {
        text.push_str(", ");
        text.push_str(&degrees(e));
        if (e - h).abs() > 0.05 {
            text.push_str(" by ");
            text.push_str(&degrees(h));
        }
        text.push_str(" wide");
    }
    text.push_str(match antenna.knowledge {
        Knowledge::Computed => ", computed",
        Knowledge::WithoutProbe => ", computed without the match",
        Knowledge::Estimated => ", estimate of an endless pipe",
        Knowledge::Stated => ", as stated",
    });
    text
}

fn picture(plan: &Plan, budget: &Budget) -> String {
    let title = [
        "From ",
        end_words(budget.from),
        " to ",
        end_words(budget.from.other()),
    ]
    .concat();
    let description = [
        "From ",
        &dbm(budget.items.first().map_or(f64::NAN, |item| item.level_dbm)),
        " at the transmitter down to ",
        &dbm(budget.received_dbm),
        " at the receiver, which needs ",
        &dbm(budget.sensitivity_dbm),
        ". The table has every step.",
    ]
    .concat();
    let heading = ["<p class=\"plan-heading\">", &escaped(&title), "</p>"].concat();
    let drawing = waterfall::picture(budget, &title, &description, |kind| names::step(plan, kind));
    [heading, drawing].concat()
}

/// Every step, both ways side by side.
fn table(plan: &Plan, both: &[Budget]) -> String {
    let Some(first) = both.first() else {
        return String::new();
    };
    let mut markup = String::from(
        "<table class=\"sizes\"><caption class=\"unseen\">Link budget, step by step</caption><thead><tr><th scope=\"col\">Step</th>",
    );
    for budget in both {
        let name = match budget.from {
            End::A => "this end sends",
            End::B => "far end sends",
        };
        for what in ["dB, ", "dBm, "] {
            markup.push_str("<th scope=\"col\">");
            markup.push_str(what);
            markup.push_str(name);
            markup.push_str("</th>");
        }
    }
    markup.push_str("</tr></thead><tbody>");
    for (n, item) in first.items.iter().enumerate() {
        let same: Vec<_> = both
            .iter()
            .filter_map(|budget| budget.items.get(n))
            .collect();
        if !same.iter().any(|item| has_row(item)) {
            continue;
        }
        let mut cells = vec![names::step(plan, item.kind)];
        for item in same {
            let is_power = item.kind == BudgetItemKind::TransmitPower;
            cells.push(if is_power {
                String::new()
            } else {
                signed_db(item.change_db)
            });
            cells.push(format_decimal(item.level_dbm, 1));
        }
        markup.push_str(&cells_row(&cells));
    }
    for (name, value) in [
        (
            "Received",
            (|budget| budget.received_dbm) as fn(&Budget) -> f64,
        ),
        ("Needed (sensitivity)", |budget| budget.sensitivity_dbm),
    ] {
        let mut cells = vec![name.to_owned()];
        for budget in both {
            cells.push(String::new());
            cells.push(format_decimal(value(budget), 1));
        }
        markup.push_str(&cells_row(&cells));
    }
    for (name, value) in [
        ("Margin", (|budget| budget.margin_db) as fn(&Budget) -> f64),
        ("Margin over the one wanted", |budget| budget.spare_db),
    ] {
        let mut cells = vec![name.to_owned()];
        for budget in both {
            cells.push(signed_db(value(budget)));
            cells.push(String::new());
        }
        markup.push_str(&cells_row(&cells));
    }
    markup.push_str("</tbody></table>");
    markup
}

fn cells_row(cells: &[String]) -> String {
    let cells: Vec<&str> = cells.iter().map(String::as_str).collect();
    row(&cells)
}

/// The figures of an end that only listens.
fn receiver(plan: &Plan, both: &[Budget]) -> String {
    if plan.entries.role != Role::ListensHere {
        return String::new();
    }
    let feed = plan.link.a.feed_loss_db(plan.frequency_hz).unwrap_or(0.0);
    let station = ReceiveStation {
        gain_dbi: plan.here.realised_gain_dbi(),
        antenna_temperature_k: plan.entries.antenna_k,
        line_loss_db: feed,
        line_temperature_k: 290.0,
        noise_figure_db: plan.entries.noise_figure_db,
    };
    let mut markup = result(
        "Figure of merit of this end, G/T",
        &[&format_decimal(station.g_over_t_db_per_k(), 1), " dB/K"].concat(),
    );
    let temperature = [&format_decimal(station.system_temperature_k(), 0), " K"].concat();
    markup.push_str(&result("System noise temperature", &temperature));
    if let Some(budget) = both.first() {
        // All between the sender's mouth and this end's terminals, this end's gain apart.
        let path = budget.eirp_dbm - budget.received_dbm + station.gain_dbi - feed;
        let ratio = station.carrier_to_noise_db(budget.eirp_dbm, path, plan.entries.bandwidth_hz);
        let width = [
            "Signal over noise (C/N) in ",
            &format_decimal(plan.entries.bandwidth_hz / 1e6, 3),
            " MHz",
        ]
        .concat();
        markup.push_str(&result(&width, &db(ratio)));
    }
    markup.push_str(&result(
        "From a distance of",
        &distance(plan.entries.distance_m, plan.unit),
    ));
    markup
}
