//! What stands in or near the path.

use leptos::prelude::*;
use tinwave_core::radio_link::Obstacle;
use tinwave_maker::link_plan::{MOST_OBSTACLES, PlanNumber};
use tinwave_words::link_plan::{self as words, ChoiceWord, choice_words};

use super::plan_field::PlanField;
use crate::kit::{Action, ActionKind};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// Height of an obstacle that is added, m: a tree of the garden.
const USUAL_HEIGHT_M: f64 = 3.0;

/// The obstacles' entries.
#[component]
pub fn Obstacles() -> impl IntoView {
    let plan = expect_context::<Workshop>().plan();
    let count = memo(move || plan.entries.with(|plan| plan.obstacles.len()));
    let add = move |()| {
        plan.change(|plan| {
            plan.obstacles.push(Obstacle {
                distance_m: (0.5 * plan.distance_m).round().clamp(0.5, 1e6),
                height_m: USUAL_HEIGHT_M,
            });
        });
    };
    let remove = move |n: usize| {
        plan.change(|plan| {
            if n < plan.obstacles.len() {
                plan.obstacles.remove(n);
            }
        });
    };
    view! {
        {live(move || (0..count.get()).map(|n| view! {
            <PlanField number=PlanNumber::ObstacleDistance(n)/>
            <PlanField number=PlanNumber::ObstacleHeight(n)/>
            <Action text=choice_words(ChoiceWord::Remove) says=words::remove_obstacle(n)
                kind=ActionKind::Words on_press=move |()| remove(n)/>
        }).collect_view())}
        <Show when=move || count.get() < MOST_OBSTACLES>
            <div class="list-add">
                <Action text=choice_words(ChoiceWord::AddObstacle) kind=ActionKind::Words on_press=add/>
            </div>
        </Show>
    }
}
