//! How exactly to aim, in words.

use tinwave_core::radio_link::{
    End, MOST_POLARISATION_LOSS_DB, Polarisation, practical_polarisation_loss_db,
};
use tinwave_maker::entry::{LengthUnit, format_decimal};
use tinwave_maker::link_plan::{AimAnswer, LinkPlan, PlaneAim, WRONG_BY_DEG};

use crate::figures::{db, degrees, distance, hand_length};

/// The aim as a table: heads, then a row each.
#[must_use]
pub fn aim_rows(aim: &AimAnswer, unit: LengthUnit) -> (Vec<String>, Vec<Vec<String>>) {
    let head = ["", "Along the wire", "Across it"];
    let Some(planes) = aim.planes else {
        return (Vec::new(), Vec::new());
    };
    let mut rows = Vec::new();
    let mut row = |name: &str, value: &dyn Fn(&PlaneAim) -> Option<String>| {
        let [e, h] = &planes;
        if let (Some(e), Some(h)) = (value(e), value(h)) {
            rows.push(vec![name.to_owned(), e, h]);
        }
    };
    row("Half-power width", &|plane| Some(degrees(plane.width_deg)));
    row("Turn that costs 1 dB", &|plane| {
        Some(degrees(plane.turn_1_db_deg))
    });
    row("the same at the mouth", &|plane| {
        plane.mouth_1_db_m.map(|at| hand_length(at, unit))
    });
    row("the same at the arm", &|plane| {
        Some(hand_length(plane.arm_1_db_m, unit))
    });
    row("Turn that costs 3 dB", &|plane| {
        Some(degrees(plane.turn_3_db_deg))
    });
    row("Spot at the far end", &|plane| {
        plane
            .spot_m
            .is_finite()
            .then(|| distance(plane.spot_m, unit))
    });
    (head.map(str::to_owned).to_vec(), rows)
}

/// What an error of pointing costs.
#[must_use]
pub fn aim_wrong(aim: &AimAnswer) -> String {
    let pairs: Vec<String> = WRONG_BY_DEG
        .iter()
        .zip(aim.loss_db)
        .map(|(error, loss)| format!("{} at {}°", db(loss), format_decimal(*error, 0)))
        .collect();
    let by = if aim.of_pattern {
        "in the worst direction of its pattern"
    } else {
        "by the law of the main lobe"
    };
    format!("Off its aim it loses {}, {by}.", pairs.join(", "))
}

/// That the beam leans; empty where it does not.
#[must_use]
pub fn aim_lean(aim: &AimAnswer) -> String {
    if aim.lean_deg.abs() < 0.5 {
        return String::new();
    }
    let side = if aim.lean_deg > 0.0 {
        "towards"
    } else {
        "away from"
    };
    format!(
        "The beam leans {} {side} the connector’s side: aim by signal strength, not by the eye along the can.",
        degrees(aim.lean_deg.abs())
    )
}

/// What unlike wires cost, and how to mount them.
#[must_use]
pub fn aim_polarisation(plan: &LinkPlan) -> String {
    let (here, far) = (plan.polarisation(End::A), plan.polarisation(End::B));
    let loss = practical_polarisation_loss_db(here, far);
    match far {
        Polarisation::Linear { .. } if loss < 0.05 => {
            "Mount both wires alike: upright to upright. 90° apart loses nearly everything. Then turn each can slowly for the strongest signal, one end at a time.".to_owned()
        }
        Polarisation::Linear { .. } => {
            let most = if loss >= MOST_POLARISATION_LOSS_DB { " or more" } else { "" };
            format!(
                "The wires are turned against each other: {}{most} are lost. Turn one can about its axis until both wires lie alike.",
                db(loss)
            )
        }
        _ => format!(
            "A straight wire takes half of a circular wave however it is turned: {} are lost.",
            db(loss)
        ),
    }
}
