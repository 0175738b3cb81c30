//! The stations, one folder each.

pub mod beam;
pub mod can;
pub mod feed;
pub mod later;
pub mod link;
pub mod make;
pub mod measure;
pub mod shelf;

use leptos::prelude::*;
use tinwave_maker::station::Station;

use crate::state::Workshop;

use later::{Later, LaterPart};

/// The station that is open.
#[component]
pub fn OpenStation() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    move || match workshop.station.get() {
        Station::Can => view! { <can::CanStation/> }.into_any(),
        station => view! { <Later part=LaterPart::Station(station)/> }.into_any(),
    }
}
