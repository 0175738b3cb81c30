//! The Measure station.

use leptos::prelude::*;

/// The Measure station.
#[component]
pub fn MeasureStation() -> impl IntoView {
    view! { <h1>"Measure"</h1> }
}
