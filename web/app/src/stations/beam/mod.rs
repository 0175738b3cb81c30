//! The Beam station.

use leptos::prelude::*;

/// The Beam station.
#[component]
pub fn BeamStation() -> impl IntoView {
    view! { <h1>"Beam"</h1> }
}
