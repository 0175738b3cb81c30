//! What stands round every station: top line, rail, strip.

use leptos::prelude::*;
use tinwave_maker::station::Station;

use crate::state::Workshop;

/// The top line: name, verdict, undo, more.
#[component]
pub fn TopLine() -> impl IntoView {
    view! { <header class="top-line"><p>"Tinwave"</p></header> }
}

/// The stations at the left of a desk's screen.
#[component]
pub fn Rail() -> impl IntoView {
    view! { <nav class="rail" aria-label="Stations"></nav> }
}

/// The stations at the bottom of a phone's screen.
#[component]
pub fn Strip() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    view! {
        <nav class="strip" aria-label="Stations">
            {Station::ALL.map(|station| view! {
                <button type="button" on:click=move |_| workshop.go_to(station)>{station.key()}</button>
            }).collect_view()}
        </nav>
    }
}
