//! Cautions, where they arise and once more together.

use leptos::prelude::*;

use super::parts::section;
use super::state::Page;
use crate::words::{self, CautionText, Occasion};

/// One caution.
pub(super) fn caution(text: &CautionText) -> AnyView {
    view! {
        <li>
            <strong>{text.headline}</strong>
            <p>{text.text}" "<small>{text.source}</small></p>
        </li>
    }
    .into_any()
}

/// The cautions of some occasions for the chosen metal.
pub(super) fn list(page: Page, occasions: &'static [Occasion]) -> AnyView {
    let metal = Memo::new(move |_| page.work.with(|work| work.design.can.metal));
    let items = move || {
        let metal = metal.get();
        occasions
            .iter()
            .flat_map(|occasion| words::cautions(*occasion, metal))
            .map(|text| caution(&text))
            .collect::<Vec<AnyView>>()
    };
    view! { <ul class="cautions">{items}</ul> }.into_any()
}

/// The section.
pub(super) fn caution_section(page: Page) -> AnyView {
    section(
        page,
        "cautions",
        "8 Cautions",
        true,
        |_| "soldering, power and law, putting it up".to_owned(),
        vec![list(
            page,
            &[Occasion::Solder, Occasion::Power, Occasion::Mount],
        )],
    )
}
