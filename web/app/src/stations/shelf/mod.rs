//! The Shelf station: what is kept on this device, and how a design is passed on.

pub mod card;
pub mod cards;
pub mod design_file;
pub mod keep;
pub mod share;

use leptos::prelude::*;
use tinwave_maker::station::Station;
use tinwave_words::shelf as words;

use crate::kit::StationPage;
use crate::reactive::memo;
use crate::state::Workshop;

use cards::{Cards, ShelfActions};
use share::ShareEntries;

/// The Shelf station.
#[component]
pub fn ShelfStation() -> impl IntoView {
    let memory = expect_context::<Workshop>().memory;
    let kept = memo(move || memory.kept.with(|kept| kept.saved.len()));
    view! {
        <StationPage station=Station::Shelf answer=move || words::answer(kept.get()) reason=words::reason()
            picture=|| view! { <Cards/><ShelfActions/> } entries=|| view! { <ShareEntries/> }/>
    }
}
