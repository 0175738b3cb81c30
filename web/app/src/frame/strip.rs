//! The stations at the bottom of a phone's screen.

use leptos::prelude::*;
use tinwave_maker::station::Station;
use tinwave_words::frame as words;

use super::station_link::StationLink;

/// Seven equal places. A keyboard on the screen hides them (the styles do that).
#[component]
pub fn Strip() -> impl IntoView {
    view! {
        <nav class="strip" aria-label=words::stations()>
            <ul>
                {Station::ALL.map(|station| view! { <li><StationLink station/></li> }).collect_view()}
            </ul>
        </nav>
    }
}
