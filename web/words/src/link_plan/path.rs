//! Is the path clear, in words.

use tinwave_core::radio_link::{CLEARANCE_WANTED, Clearance};
use tinwave_maker::entry::{LengthUnit, format_decimal};
use tinwave_maker::link_plan::{PathAnswer, PathState, PlanAnswer, Spot};

use super::names::material;
use crate::figures::{db, distance, entered_distance, hand_length};

/// The answer in one word or three; `None` is a path too long to lie along the ground.
#[must_use]
pub const fn path_headline(path: Option<&PathAnswer>) -> &'static str {
    match path {
        None => "Too long for a path along the ground.",
        Some(path) => match path.state {
            PathState::Clear => "Clear.",
            PathState::Tight => "In sight, but tight.",
            PathState::Blocked => "Blocked.",
        },
    }
}

/// What decides it, what is counted, and what would clear it.
#[must_use]
pub fn path_text(path: Option<&PathAnswer>, unit: LengthUnit) -> String {
    let Some(path) = path else {
        return "Beyond 1000 km nothing is said of hills and obstacles.".to_owned();
    };
    let worst = path.clearance.worst();
    let place = spot(path.tightest);
    let at = distance(worst.distance_m, unit);
    let mut sentences = vec![match path.state {
        PathState::Clear => format!(
            "At its tightest, over {place} at {at}, {} of the first Fresnel zone is free; 60 % is wanted.",
            share(worst)
        ),
        PathState::Tight => format!(
            "Over {place} at {at} only {} of the first Fresnel zone is free; 60 % is wanted.",
            share(worst)
        ),
        PathState::Blocked => {
            let below = hand_length(-worst.clearance_m, unit);
            match path.tightest {
                Spot::Ground => format!(
                    "At {at} the straight line passes {below} below the curve of the Earth."
                ),
                Spot::Obstacle(_) => {
                    format!("The straight line passes {below} below the top of {place} at {at}.")
                }
            }
        }
    }];
    if path.clearance.raise_both_m > 0.0 {
        let raise = distance(path.clearance.raise_both_m, unit);
        sentences.push(format!("Raise both ends by {raise} to clear it."));
    }
    if let Some(loss) = path.loss {
        let counted = db(loss.loss_db);
        sentences.push(match (loss.by, loss.several) {
            (Spot::Ground, _) => format!(
                "The ground counts with {counted}, as a single edge: that is roughly the least, and round ground takes more."
            ),
            (Spot::Obstacle(_), true) => format!(
                "The worst obstacle counts with {counted}, as a single edge; several take more together, which is not counted."
            ),
            (Spot::Obstacle(_), false) => {
                format!("The obstacle counts with {counted}, as a single edge.")
            }
        });
    }
    if path.state == PathState::Clear {
        return sentences.join(" ");
    }
    sentences.push(format!(
        "Over flat ground both ends need {}; the Earth’s curve takes {} of that in the middle (effective radius 4/3).",
        distance(path.even_heights_m, unit),
        hand_length(path.bulge_m, unit)
    ));
    sentences.join(" ")
}

fn spot(spot: Spot) -> String {
    match spot {
        Spot::Ground => "the ground".to_owned(),
        Spot::Obstacle(n) => format!("obstacle {}", n + 1),
    }
}

fn share(one: &Clearance) -> String {
    if one.ratio >= 1.0 {
        return "all".to_owned();
    }
    format!("{} %", format_decimal(one.ratio * 100.0, 0))
}

/// Ground and obstacles as a table: heads, then a row each.
#[must_use]
pub fn clearance_rows(path: &PathAnswer, unit: LengthUnit) -> (Vec<String>, Vec<Vec<String>>) {
    let head = ["What", "At", "Line over it", "60 % of the zone", "Loss"];
    let row = |name: String, one: &Clearance| {
        vec![
            name,
            distance(one.distance_m, unit),
            distance(one.clearance_m, unit),
            distance(CLEARANCE_WANTED * one.fresnel_radius_m, unit),
            db(one.loss_db),
        ]
    };
    let ground = row("Ground, tightest".to_owned(), &path.clearance.ground);
    let obstacles = path.obstacles.iter().zip(&path.clearance.obstacles);
    let obstacles = obstacles.map(|((n, _), one)| row(format!("Obstacle {}", n + 1), one));
    let rows = std::iter::once(ground).chain(obstacles).collect();
    (head.map(str::to_owned).to_vec(), rows)
}

/// What was entered and is not counted, a sentence each.
#[must_use]
pub fn not_counted(answer: &PlanAnswer, unit: LengthUnit) -> Vec<String> {
    let mut said = Vec::new();
    for wall in answer.walls.iter().filter(|wall| wall.loss_db.is_none()) {
        said.push(format!(
            "The wall of {} is not counted: ITU-R P.2040 has nothing of it at this frequency.",
            material(wall.wall.material)
        ));
    }
    if answer.trees.is_some_and(|trees| trees.loss.is_none()) {
        said.push(
            "The trees are not counted: the published forms do not reach this frequency."
                .to_owned(),
        );
    }
    let beyond = answer.path.iter().flat_map(|path| &path.beyond);
    for n in beyond {
        let at = answer
            .plan
            .obstacles
            .get(*n)
            .map_or(f64::NAN, |one| one.distance_m);
        said.push(format!(
            "Obstacle {} at {} does not stand between the ends: it is not counted.",
            n + 1,
            entered_distance(at, unit)
        ));
    }
    said
}

/// Words in the picture of the path.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PathLabels {
    /// At the straight line.
    pub line: &'static str,
    /// In the zone.
    pub zone: &'static str,
    /// At the left end.
    pub here: &'static str,
    /// At the right end.
    pub far: &'static str,
    /// Name of the axis of heights.
    pub height: &'static str,
}

/// Words in the picture of the path.
#[must_use]
pub const fn path_labels() -> PathLabels {
    PathLabels {
        line: "line of sight",
        zone: "keep 60 % of the zone free",
        here: "this end",
        far: "far end",
        height: "Height",
    }
}
