//! The page's table of contents.

use leptos::prelude::*;

use crate::frame::{self, Rail, Said, SidePages, SkipLink, Strip, Told, TopLine};
use crate::reactive::memo;
use crate::state::Workshop;
use crate::stations::OpenStation;
use crate::stations::later::{Later, LaterPart};

/// The whole page: the top line, the stations' names, and the station that is open.
#[component]
pub fn App() -> impl IntoView {
    let workshop = Workshop::open();
    provide_context(workshop);
    frame::begin(workshop);
    let pages = expect_context::<SidePages>();
    let place = move || match pages.open() {
        Some(page) => view! { <Later part=LaterPart::Page(page)/> }.into_any(),
        None => view! { <OpenStation/> }.into_any(),
    };
    // The sheets bring the other stations' program along: once somebody is here, and for a
    // design of one's own at once, which may be printed untouched.
    let is_used = memo(move || workshop.answers.is_awake() || !workshop.is_example());
    let papers = move || {
        is_used
            .get()
            .then(|| view! { <Later part=LaterPart::Papers/> })
    };
    view! {
        <SkipLink/>
        <TopLine/>
        <Rail/>
        <main id="station" class="station-place">
            <Said/>
            {place}
        </main>
        <Strip/>
        <Told/>
        {papers}
    }
}
