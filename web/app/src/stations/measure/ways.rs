//! Other ways than a cut.

use leptos::prelude::*;
use tinwave_core::diagnosis::Remedy;
use tinwave_maker::can_log::Work;
use tinwave_words::measure as words;

use super::take_off::work_done;
use crate::kit::{Action, FindingBlock, Part};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// What else can be done, the least work first.
#[component]
pub fn Ways() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let remedies = memo(move || {
        let advice = workshop.measuring().advice();
        advice.map_or_else(Vec::new, |advice| advice.remedies)
    });
    let is_cut = |(remedy, _): &(Remedy, f64)| matches!(remedy, Remedy::Trim { .. });
    let others = move || {
        let all = remedies.get();
        all.into_iter()
            .filter(|one| !is_cut(one))
            .collect::<Vec<_>>()
    };
    let title = move || {
        let title = if remedies.with(|all| all.iter().any(is_cut)) {
            words::other_ways()
        } else {
            words::what_to_do()
        };
        title.to_owned()
    };
    let way = move |(remedy, vswr): (Remedy, f64)| {
        let unit = workshop.unit.get();
        let (headline, text) = words::remedy(&remedy, vswr, unit);
        let done = words::remedy_done(&remedy).map(|done| {
            let press = move |()| work_done(workshop, Work::Remedy(remedy), Some(vswr));
            view! { <Action text=done on_press=press/> }
        });
        view! { <FindingBlock headline text>{done}</FindingBlock> }
    };
    view! {
        <Show when=move || !others().is_empty()>
            <Part title=title>{live(move || others().into_iter().map(way).collect_view())}</Part>
        </Show>
    }
}
