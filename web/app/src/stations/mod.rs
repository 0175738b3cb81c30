//! The stations, one folder each.

pub mod beam;
pub mod can;
pub mod feed;
pub mod link;
pub mod make;
pub mod measure;
pub mod shelf;

use leptos::prelude::*;
use tinwave_maker::station::Station;

use crate::state::Workshop;

/// The station that is open.
#[component]
pub fn OpenStation() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    move || match workshop.station.get() {
        Station::Can => view! { <can::CanStation/> }.into_any(),
        Station::Feed => view! { <feed::FeedStation/> }.into_any(),
        Station::Beam => view! { <beam::BeamStation/> }.into_any(),
        Station::Make => view! { <make::MakeStation/> }.into_any(),
        Station::Measure => view! { <measure::MeasureStation/> }.into_any(),
        Station::Link => view! { <link::LinkStation/> }.into_any(),
        Station::Shelf => view! { <shelf::ShelfStation/> }.into_any(),
    }
}
