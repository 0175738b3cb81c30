//! The Can station.

use leptos::prelude::*;

/// The Can station.
#[component]
pub fn CanStation() -> impl IntoView {
    view! { <h1>"Can"</h1> }
}
