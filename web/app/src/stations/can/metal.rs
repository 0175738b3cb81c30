//! The can's metal.

use leptos::prelude::*;
use tinwave_core::metal::Metal;
use tinwave_maker::history::Change;
use tinwave_words::can as words;

use crate::kit::{Pick, ShortList};
use crate::state::Workshop;

/// A short list of metals.
#[component]
pub fn MetalEntry() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let metals: Vec<Pick> = Metal::ALL
        .iter()
        .map(|metal| Pick::new(metal.key(), tinwave_words::metal(*metal)))
        .collect();
    let choose = move |key: String| {
        if let Some(metal) = Metal::ALL.into_iter().find(|metal| metal.key() == key) {
            workshop.edit(Change::Metal, |work| work.design.can.metal = metal);
        }
    };
    view! {
        <ShortList label=words::metal_label() picks=metals
            chosen=move || workshop.work.with(|work| work.design.can.metal.key().to_owned())
            on_choose=choose/>
    }
    .into_any()
}
