//! The Make station.

use leptos::prelude::*;

/// The Make station.
#[component]
pub fn MakeStation() -> impl IntoView {
    view! { <h1>"Make"</h1> }
}
