//! The Shelf station.

use leptos::prelude::*;

/// The Shelf station.
#[component]
pub fn ShelfStation() -> impl IntoView {
    view! { <h1>"Shelf"</h1> }
}
