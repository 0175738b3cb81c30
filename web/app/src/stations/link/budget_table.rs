//! Every step of the budget, both ways side by side.

use leptos::prelude::*;
use tinwave_words::link_plan::{self as words, PartTitle};

use super::aim::PlainTable;
use super::of_link;
use crate::kit::Fold;
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// The budget as a table, with the figures of an end that only listens.
#[component]
pub fn StepsTable() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, _) = words::part_titles(PartTitle::Steps);
    let rows = memo(move || {
        let unit = workshop.unit.get();
        of_link(workshop, |answer, link| {
            words::budget_rows(answer, link, unit)
        })
    });
    let summary = move || of_link(workshop, |_, link| words::steps_summary(link));
    let receiver = move || {
        let found = of_link(workshop, |_, link| link.receiver).flatten();
        found.map_or_else(Vec::new, |receiver| words::receiver_rows(&receiver))
    };
    view! {
        <Show when=move || rows.with(Option::is_some)>
            <Fold title=title summary=move || summary().unwrap_or_default()>
                <dl class="receiver-figures">
                    {live(move || receiver().into_iter().map(|[name, value]| view! {
                        <div><dt>{name}</dt><dd>{value}</dd></div>
                    }).collect_view())}
                </dl>
                {live(move || rows.get().map(|(head, rows)| view! { <PlainTable name=title head rows/> }))}
            </Fold>
        </Show>
    }
}
