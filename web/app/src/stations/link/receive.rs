//! What can be received without sending anything.

use leptos::prelude::*;
use tinwave_words::link_plan::{self as words, PartTitle, Received};

use crate::kit::Fold;
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// The bands that are only received.
#[component]
pub fn ReceivePart() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, note) = words::part_titles(PartTitle::Receive);
    let bands = memo(move || workshop.work.with(|work| words::received(&work.design)));
    view! {
        <Fold title=title summary=note>
            <ul class="received">
                {live(move || bands.get().into_iter().map(|band| view! { <Band band/> }).collect_view())}
            </ul>
        </Fold>
    }
}

#[component]
fn Band(band: Received) -> impl IntoView {
    view! {
        <li>
            <b>{band.name}</b>" "{band.band}
            <p>{band.suits}" "{band.note}</p>
        </li>
    }
}
