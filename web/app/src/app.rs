//! The page's table of contents.

use leptos::prelude::*;

use crate::frame::{self, Rail, Said, SidePages, SkipLink, Strip, Told, TopLine};
use crate::state::Workshop;
use crate::stations::OpenStation;
use crate::stations::make::{Bench, BuildSheet, PaperSheets};

/// The whole page: the top line, the stations' names, and the station that is open.
#[component]
pub fn App() -> impl IntoView {
    let workshop = Workshop::open();
    provide_context(workshop);
    provide_context(Bench::open(workshop));
    frame::begin(workshop);
    let pages = expect_context::<SidePages>();
    let place = move || match pages.open() {
        Some(page) => pages.view(page).into_any(),
        None => view! { <OpenStation/> }.into_any(),
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
        <BuildSheet/>
        <PaperSheets/>
    }
}
