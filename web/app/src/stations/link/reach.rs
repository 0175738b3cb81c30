//! How far it reaches: margin over distance.

use leptos::prelude::*;
use tinwave_drawing::chart::{Axis, ChartSpec};
use tinwave_drawing::reach_chart::reach_chart;
use tinwave_words::link_plan::{self as words, PartTitle};

use super::of_link;
use crate::kit::XyChart;
use crate::reactive::memo;
use crate::state::Workshop;

/// The chart; nothing where there is no link.
#[component]
pub fn ReachPart() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, note) = words::part_titles(PartTitle::Reach);
    let chart = memo(move || {
        let unit = workshop.unit.get();
        of_link(workshop, |_, link| reach_chart(link, unit))
    });
    let spec = move || {
        let (distance, margin) = words::reach_axes();
        let nothing = || {
            let axes = (
                Axis::new(distance, "m", 0.0, 1.0),
                Axis::new(margin, "dB", 0.0, 1.0),
            );
            ChartSpec::new(axes.0, axes.1)
        };
        chart.get().unwrap_or_else(nothing)
    };
    view! {
        <Show when=move || chart.with(Option::is_some)>
            <XyChart title note spec/>
        </Show>
    }
}
