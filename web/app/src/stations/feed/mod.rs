//! The Feed station.

use leptos::prelude::*;

/// The Feed station.
#[component]
pub fn FeedStation() -> impl IntoView {
    view! { <h1>"Feed"</h1> }
}
