//! Which change buys most.

use leptos::prelude::*;
use tinwave_words::figures::db;
use tinwave_words::link_plan::{self as words, PartTitle};

use super::of_link;
use crate::kit::Fold;
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// So many are listed.
const MOST: usize = 8;

/// The changes, the best first.
#[component]
pub fn SavingsPart() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, note) = words::part_titles(PartTitle::Savings);
    let savings = memo(move || {
        let listed = of_link(workshop, |answer, link| {
            let best = link.savings.iter().take(MOST);
            best.map(|one| (words::change(answer, one.change), db(one.gained_db)))
                .collect::<Vec<_>>()
        });
        listed.unwrap_or_default()
    });
    let summary = move || {
        savings.with(|savings| {
            let first = savings.first();
            first.map_or_else(String::new, |(what, worth)| {
                words::savings_summary(what, worth)
            })
        })
    };
    view! {
        <Show when=move || savings.with(|savings| !savings.is_empty())>
            <Fold title=title summary=summary>
                <ol class="savings">
                    {live(move || savings.get().into_iter().map(|(what, worth)| view! {
                        <li><span>{what}</span><b>{worth}</b></li>
                    }).collect_view())}
                </ol>
                <p class="note">{note}</p>
            </Fold>
        </Show>
    }
}
