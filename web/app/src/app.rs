//! The page's table of contents.

use leptos::prelude::*;

use crate::frame::{Rail, Strip, TopLine};
use crate::state::Workshop;
use crate::stations::OpenStation;

/// The whole page: the top line, the stations' names, and the station that is open.
#[component]
pub fn App() -> impl IntoView {
    provide_context(Workshop::open());
    view! {
        <TopLine/>
        <Rail/>
        <main id="station" class="station-place">
            <OpenStation/>
        </main>
        <Strip/>
    }
}
