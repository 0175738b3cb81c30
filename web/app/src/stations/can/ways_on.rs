//! The ways on from a can that will not do: another can, another band. Only what has
//! been computed is offered.

use leptos::prelude::*;
use tinwave_words::{can as words, grade as grade_words};

use super::fits::Fits;
use crate::kit::{Action, ActionKind, ProgressBar};
use crate::reactive::memo;

/// At most one size and one band, each with what it would give.
#[component]
pub fn WaysOn() -> impl IntoView {
    let fits = Fits::of_station();
    let size = memo(move || {
        let row = fits.nearest_size()?;
        let matched = row.matched.as_ref()?;
        let worst = matched.cut?.worst_vswr;
        let text = words::take_a_can(row.fit.size(), worst, matched.graded.grade);
        Some((text, row))
    });
    let band = memo(move || {
        let (fit, matched) = fits.nearest_band()?;
        let worst = matched.cut?.worst_vswr;
        Some(words::use_for_band(fit.band, worst, matched.graded.grade))
    });
    let band_note = move || {
        fits.nearest_band()
            .map(|(fit, _)| words::about_band(fit.band))
    };
    let take = move |()| {
        if let Some((_, row)) = size.get_untracked() {
            fits.take(&row);
        }
    };
    let use_for = move |()| {
        if let Some((fit, matched)) = untrack(|| fits.nearest_band()) {
            fits.use_for(&fit, &matched);
        }
    };
    let is_looking = memo(move || fits.is_looking());
    let has_nothing =
        move || !is_looking.get() && size.with(Option::is_none) && band.with(Option::is_none);
    view! {
        <p class="what-to-do">{grade_words::what_to_do()}</p>
        // An offer may still get better while others are matched: none is shown before.
        <Show when=move || is_looking.get()>
            <ProgressBar done=move || fits.sizes_done().unwrap_or_default() text=words::matching_bands()/>
        </Show>
        <Show when=move || !is_looking.get() && size.with(Option::is_some)>
            <Action text=move || size.get().map(|(text, _)| text).unwrap_or_default()
                kind=ActionKind::Main on_press=take/>
        </Show>
        <Show when=move || !is_looking.get() && band.with(Option::is_some)>
            <Action text=move || band.get().unwrap_or_default() on_press=use_for/>
            <p class="note">{band_note}</p>
        </Show>
        <Show when=has_nothing><p class="advice">{words::nothing_would_do()}</p></Show>
    }
    .into_any()
}
