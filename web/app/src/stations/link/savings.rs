//! Which change buys most.

use leptos::prelude::*;
use tinwave_words::figures::db;
use tinwave_words::link_plan::{self as words, PartTitle};

use super::of_link;
use crate::kit::Part;
use crate::state::Workshop;

/// So many are listed.
const MOST: usize = 8;

/// The changes, the best first.
#[component]
pub fn SavingsPart() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, note) = words::part_titles(PartTitle::Savings);
    let savings = Memo::new(move |_| {
        let listed = of_link(workshop, |answer, link| {
            let best = link.savings.iter().take(MOST);
            best.map(|one| (words::change(answer, one.change), db(one.gained_db)))
                .collect::<Vec<_>>()
        });
        listed.unwrap_or_default()
    });
    view! {
        <Show when=move || savings.with(|savings| !savings.is_empty())>
            <Part title note>
                <ol class="savings">
                    {move || savings.get().into_iter().map(|(what, worth)| view! {
                        <li><span>{what}</span><b>{worth}</b></li>
                    }).collect_view()}
                </ol>
            </Part>
        </Show>
    }
}
