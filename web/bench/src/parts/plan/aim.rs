//! How exactly to aim.

use tinwave_core::radio_link::{
    Aim, MOST_POLARISATION_LOSS_DB, Polarisation, practical_polarisation_loss_db, spot_width_m,
};
use tinwave_web::entry::format_decimal;

use super::antenna::Antenna;
use super::link::Plan;
use super::words::{db, degrees, distance, small};
use crate::html::row;
use crate::reply::Reply;

/// Errors of pointing whose cost is told, degrees.
const ERRORS_DEG: [f64; 4] = [5.0, 10.0, 20.0, 30.0];

pub(super) fn show(plan: &Plan, reply: &mut Reply) {
    let table = plan.here.widths_deg.zip(plan.here.length_m);
    let table = table.map(|(widths, length_m)| table_of(plan, widths, length_m));
    reply.place("aim-table", table.unwrap_or_default());
    reply.text("aim-says", &says(plan));
}

fn table_of(plan: &Plan, widths_deg: [f64; 2], length_m: f64) -> String {
    let arm_m = plan.entries.arm_m;
    let aims = widths_deg.map(|width| {
        // The law of the main lobe is for beams, not for half circles.
        let width = width.min(170.0).to_radians();
        Aim::new(length_m, arm_m, width, plan.entries.distance_m)
    });
    let unit = plan.unit;
    let mut markup = String::from(
        "<table class=\"sizes\"><caption class=\"unseen\">Aiming this end</caption><thead><tr><th scope=\"col\">This end</th><th scope=\"col\">Along the wire (E plane)</th><th scope=\"col\">Across it (H plane)</th></tr></thead><tbody>",
    );
    let [e, h] = widths_deg.map(degrees);
    markup.push_str(&row(&["Half-power width", &e, &h]));
    let mut add = |name: &str, value: &dyn Fn(&Aim) -> String| {
        let [e, h] = &aims;
        markup.push_str(&row(&[name, &value(e), &value(h)]));
    };
    add("Turn that costs 1 dB", &|aim| degrees(aim.degrees_for_1_db));
    add("The same at the can’s mouth", &|aim| {
        small(aim.mouth_for_1_db_m, unit)
    });
    add("The same at the arm’s end", &|aim| {
        small(aim.tripod_for_1_db_m, unit)
    });
    add("Turn that costs 3 dB", &|aim| degrees(aim.degrees_for_3_db));
    add("Spot at the far end", &|aim| {
        distance(aim.spot_width_m, unit)
    });
    let [one, _] = &aims;
    let both = [
        (
            "Turn per mm at the mouth",
            thousandths(one.degrees_per_mm_at_mouth),
        ),
        (
            "Turn per mm at the arm’s end",
            thousandths(one.degrees_per_mm_at_tripod),
        ),
        (
            "Beam moves at the far end, per mm at the mouth",
            small(one.far_end_per_mm_m, unit),
        ),
    ];
    for (name, value) in both {
        markup.push_str(&row(&[name, &value, &value]));
    }
    markup.push_str("</tbody></table>");
    markup
}

fn thousandths(value_deg: f64) -> String {
    [&format_decimal(value_deg, 3), "°"].concat()
}

fn says(plan: &Plan) -> String {
    let mut text = String::from("Off its aim this end loses ");
    for (n, error) in ERRORS_DEG.into_iter().enumerate() {
        if n > 0 {
            text.push_str(", ");
        }
        text.push_str(&db(plan.here.pointing_loss_db(error)));
        text.push_str(" at ");
        text.push_str(&format_decimal(error, 0));
        text.push('°');
    }
    text.push_str(if plan.here.has_pattern() {
        ", in the worst direction of its computed pattern."
    } else {
        ", by the law of the main lobe."
    });
    text.push_str(&lean(&plan.here));
    if let Some([e, h]) = plan.far.widths_deg {
        let widest = e.max(h);
        if widest >= 180.0 {
            text.push_str(" The far end’s antenna sends to all sides.");
        } else {
            let spot = spot_width_m(plan.entries.distance_m, widest.to_radians());
            let says = [
                " The far end’s beam is ",
                &distance(spot, plan.unit),
                " wide where it meets this end.",
            ];
            text.push_str(&says.concat());
        }
    }
    text.push_str(&polarisation(plan));
    text
}

fn lean(antenna: &Antenna) -> String {
    if antenna.lean_deg.abs() < 0.5 {
        return String::new();
    }
    let side = if antenna.lean_deg > 0.0 {
        " towards"
    } else {
        " away from"
    };
    [
        " The beam leans ",
        &degrees(antenna.lean_deg.abs()),
        side,
        " the connector’s side: aim by signal strength, not by the eye along the can.",
    ]
    .concat()
}

fn polarisation(plan: &Plan) -> String {
    let (here, far) = (plan.link.a.polarisation, plan.link.b.polarisation);
    let loss = practical_polarisation_loss_db(here, far);
    match far {
        Polarisation::Linear { .. } if loss < 0.05 => {
            " Both wires lie alike: nothing is lost by polarisation.".to_owned()
        }
        Polarisation::Linear { .. } => {
            let most = if loss >= MOST_POLARISATION_LOSS_DB {
                " or more"
            } else {
                ""
            };
            [
                " The wires are turned against each other: ",
                &db(loss),
                most,
                " are lost. Turn one can about its axis until both wires lie alike.",
            ]
            .concat()
        }
        _ => [
            " A straight wire takes half of a circular wave however it is turned: ",
            &db(loss),
            " are lost.",
        ]
        .concat(),
    }
}
