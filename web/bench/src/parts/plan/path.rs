//! Is the path clear?

use tinwave_core::radio_link::{
    CLEARANCE_WANTED, Clearance, PathClearance, PathProfile, equal_heights_over_flat_ground_m,
};
use tinwave_web::entry::format_decimal;

use super::link::Plan;
use super::side_view;
use super::words::{db, distance, small};
use crate::html::row;
use crate::reply::Reply;

const TOO_LONG: &str = "A path of more than 1000 km is no path along the ground: nothing is said of hills and obstacles.";

pub(super) fn show(plan: &Plan, reply: &mut Reply) {
    let Some((profile, clearance)) = &plan.path else {
        reply.text("path-says", TOO_LONG);
        reply.place("path-picture", String::new());
        reply.place("path-table", String::new());
        return;
    };
    let says = sentence(plan, profile, clearance);
    let picture = side_view::picture(profile, &plan.entries.obstacles, &says, plan.unit);
    reply.text("path-says", &says);
    reply.place("path-picture", picture);
    reply.place("path-table", table(plan, clearance));
}

fn sentence(plan: &Plan, profile: &PathProfile, clearance: &PathClearance) -> String {
    let worst = clearance.worst();
    let at_obstacle = clearance
        .worst_obstacle
        .filter(|n| clearance.obstacles.get(*n) == Some(worst));
    let place = at_obstacle.map_or_else(
        || "the ground".to_owned(),
        |n| obstacle_name(n).to_lowercase(),
    );
    let at = distance(worst.distance_m, plan.unit);
    let mut text = if worst.is_clear() {
        [
            "Clear: at its tightest, over ",
            &place,
            " at ",
            &at,
            ", the line has ",
            &share(worst),
            " of the first Fresnel zone free; 60 % is wanted.",
        ]
        .concat()
    } else if worst.clearance_m >= 0.0 {
        [
            "You can see the far end, but not enough is free: over ",
            &place,
            " at ",
            &at,
            " only ",
            &share(worst),
            " of the first Fresnel zone; 60 % is wanted.",
        ]
        .concat()
    } else {
        [
            "Blocked by ",
            &place,
            " at ",
            &at,
            ": the straight line passes ",
            &small(-worst.clearance_m, plan.unit),
            if at_obstacle.is_some() {
                " below its top."
            } else {
                " below the curve of the Earth."
            },
        ]
        .concat()
    };
    if clearance.raise_both_m > 0.0 {
        let raise = distance(clearance.raise_both_m, plan.unit);
        text.push_str(&[" Raise both ends by ", &raise, " to clear it."].concat());
    }
    let loss = clearance.obstacle_loss_db();
    if let Some(ground_db) = plan.ground_loss_db().filter(|loss| *loss >= 0.05) {
        text.push_str(
            &[
                " The ground is reckoned with ",
                &db(ground_db),
                " in the budget, as a single edge: that is roughly the least, and round ground takes more.",
            ]
            .concat(),
        );
    } else if loss >= 0.05 {
        text.push_str(
            &[
                " The obstacle is reckoned with ",
                &db(loss),
                " in the budget, as a single edge; several lose more together.",
            ]
            .concat(),
        );
    }
    let even = equal_heights_over_flat_ground_m(
        profile.distance_m,
        profile.frequency_hz,
        profile.earth_factor,
    );
    let bulge = middle_bulge_m(profile);
    text.push_str(
        &[
            " Over flat ground both ends need ",
            &distance(even, plan.unit),
            "; the Earth’s curve takes ",
            &small(bulge, plan.unit),
            " of that in the middle (effective radius 4/3).",
        ]
        .concat(),
    );
    text
}

fn middle_bulge_m(profile: &PathProfile) -> f64 {
    let half = 0.5 * profile.distance_m;
    tinwave_core::radio_link::earth_bulge_m(half, half, profile.earth_factor)
}

fn share(one: &Clearance) -> String {
    if one.ratio >= 1.0 {
        return "all".to_owned();
    }
    [&format_decimal(one.ratio * 100.0, 0), " %"].concat()
}

/// An obstacle by its place in the list.
fn obstacle_name(n: usize) -> String {
    ["Obstacle ", &(n + 1).to_string()].concat()
}

/// Ground and obstacles, one row each.
fn table(plan: &Plan, clearance: &PathClearance) -> String {
    let mut markup = String::from(
        "<table class=\"sizes\"><caption class=\"unseen\">Clearance along the path</caption><thead><tr><th scope=\"col\">What</th><th scope=\"col\">At</th><th scope=\"col\">Line over it</th><th scope=\"col\">60 % of the zone</th><th scope=\"col\">Loss</th></tr></thead><tbody>",
    );
    let ground = ("Ground, tightest".to_owned(), &clearance.ground);
    let numbered = |(n, one): (usize, _)| (obstacle_name(n), one);
    let obstacles = clearance.obstacles.iter().enumerate().map(numbered);
    for (name, one) in std::iter::once(ground).chain(obstacles) {
        markup.push_str(&row(&[
            &name,
            &distance(one.distance_m, plan.unit),
            &distance(one.clearance_m, plan.unit),
            &distance(CLEARANCE_WANTED * one.fresnel_radius_m, plan.unit),
            &db(one.loss_db),
        ]));
    }
    markup.push_str("</tbody></table>");
    markup
}
