//! The Link station.

use leptos::prelude::*;

/// The Link station.
#[component]
pub fn LinkStation() -> impl IntoView {
    view! { <h1>"Link"</h1> }
}
