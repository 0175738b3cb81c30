//! Letters over a plot, placed by per cent: they follow the user's letter size, and the
//! plot any width.

use leptos::prelude::*;

use crate::reactive::live;
use tinwave_drawing::chart::{ChartLayout, ChartSpec, NamePlace, Side, TickPlace};

/// A share of the plot as an attribute.
pub(super) fn percent(share: f64) -> String {
    format!("{:.2}%", share * 100.0)
}

/// Figures at the axes, the unit, the band's name, the curves' names.
pub(super) fn letters(spec: Memo<ChartSpec>, layout: Memo<ChartLayout>) -> AnyView {
    let beside = |tick: &TickPlace| {
        let text = tick.text.clone()?;
        Some(
            view! { <text class="beside" x="-6" y=percent(1.0 - tick.share) dy=".35em">{text}</text> },
        )
    };
    let below = |tick: &TickPlace| {
        let text = tick.text.clone()?;
        Some(view! { <text class="below" x=percent(tick.share) y="100%" dy="1.65em">{text}</text> })
    };
    let unit = move || {
        let unit = spec.with(|spec| spec.x.unit.clone());
        view! { <text class="unit" x="100%" y="100%" dy="1.65em">{unit}</text> }
    };
    let band = move || {
        let (share, side) = layout.with(|layout| layout.band_name)?;
        let anchor = Side::anchor(side);
        let name = spec.with(|spec| spec.band_name.clone());
        Some(
            view! { <text class="band" x=percent(share) y="0" dy="-.55em" text-anchor=anchor>{name}</text> },
        )
    };
    view! {
        {live(move || layout.with(|layout| layout.y_ticks.iter().filter_map(beside).collect_view()))}
        {live(move || layout.with(|layout| layout.x_ticks.iter().filter_map(below).collect_view()))}
        {unit}
        {band}
        {live(move || layout.with(|layout| layout.names.iter().map(name).collect_view()))}
    }
    .into_any()
}

fn name(place: &NamePlace) -> impl IntoView + use<> {
    let class = place.style.map_or("name", |style| match style.class() {
        "of-this" => "name of-this",
        "of-measured" => "name of-measured",
        _ => "name",
    });
    view! {
        <text class=class x=percent(place.x) y=percent(1.0 - place.y) dy=".35em">{place.text.clone()}</text>
    }
}
