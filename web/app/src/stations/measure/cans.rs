//! If you make ten: how many come out well.

use leptos::prelude::*;
use tinwave_core::tolerance::{Yield, at_least, batch};
use tinwave_words::measure::{dimension_head, vswr};
use tinwave_words::tolerance as words;

use super::careful::Careful;
use super::facts::Facts;
use super::tolerances::{BATCH, CountField, SAMPLES, SEED};
use crate::kit::{Action, Choice, Pick, ProgressBar, TableFold, TableText};
use crate::reactive::{live, memo};
use crate::worker::TaskState;

/// The chance that the batch's least number is stated with.
const BATCH_CHANCE: f64 = 0.9;

/// Cans drawn at random, and what follows for a batch.
#[component]
pub fn Cans(
    /// What is worked out.
    careful: Careful,
) -> impl IntoView {
    let Careful {
        tolerances,
        drawing,
        drawn,
        ..
    } = careful;
    let state = drawing.state();
    let samples = move || tolerances.samples.get();
    let done = move || {
        state.with(|state| match state {
            TaskState::Working { done, .. } => *done,
            _ => 1.0,
        })
    };
    let is_working = move || state.with(TaskState::is_working);
    let whole =
        move || drawn.with(|drawn| drawn.as_ref().is_some_and(|one| one.samples >= samples()));
    let exact = memo(move || tolerances.all().iter().all(|(_, size)| *size == 0.0));
    let can_draw = move || !is_working() && !whole() && !exact.get();
    let note = move || {
        if exact.get() {
            return words::all_exact().to_owned();
        }
        let failed = state.with(|state| matches!(state, TaskState::Done(None)));
        match drawn.get() {
            Some(drawn) => words::cans_note(drawn.samples, samples()),
            None if failed => words::none_drawn().to_owned(),
            None => words::cans_note(0, samples()),
        }
    };
    let (label, [strict, lax]) = words::limits();
    let picks = vec![Pick::new("1.5", strict), Pick::new("2", lax)];
    let limit_key = move || {
        if tolerances.limit.get() > 1.75 {
            "2"
        } else {
            "1.5"
        }
        .to_owned()
    };
    view! {
        <h3>{live(move || words::cans_title(tolerances.batch.get()))}</h3>
        <p class="note">{note}</p>
        <Show when=is_working>
            <ProgressBar done=Signal::derive(done) text=move || words::drawing(samples())
                on_stop=move |()| drawing.stop()/>
        </Show>
        <Show when=can_draw>
            <Action text=move || words::draw(samples()) on_press=move |()| careful.draw()/>
        </Show>
        {live(move || drawn.get().map(|drawn| view! { <Drawn careful drawn/> }))}
        <Choice label labelled=true picks=picks chosen=limit_key
            on_choose=move |key: String| tolerances.limit.set(if key == "2" { 2.0 } else { 1.5 })/>
        <CountField said=words::batch_label() count=tolerances.batch range=BATCH/>
        <CountField said=words::samples_label() count=tolerances.samples range=SAMPLES/>
        <CountField said=words::seed_label() count=tolerances.seed range=SEED/>
    }
}

#[component]
fn Drawn(careful: Careful, drawn: Yield) -> impl IntoView {
    let tolerances = careful.tolerances;
    let drawn = StoredValue::new(drawn);
    let rows = move || {
        drawn.with_value(|drawn| {
            let size = tolerances.batch.get();
            let cans = batch(size, drawn.pass);
            let least = at_least(size, drawn.pass, BATCH_CHANCE);
            let mut rows = words::yield_rows(drawn, tolerances.limit.get());
            rows.extend(words::batch_rows(size, cans.expected, least, cans.all));
            rows
        })
    };
    let care = move || {
        drawn.with_value(|drawn| TableText {
            head: words::care_heads(),
            rows: drawn
                .care
                .iter()
                .map(|care| {
                    vec![
                        dimension_head(care.dimension).to_owned(),
                        words::per_cent(care.pass_if_exact),
                        vswr(care.mean_vswr_alone),
                    ]
                })
                .collect(),
        })
    };
    let help = drawn.with_value(words::would_help);
    let error = drawn.with_value(|drawn| words::stand_in(drawn.surrogate_error));
    view! {
        <Facts rows=Signal::derive(rows)/>
        {help.map(|text| view! { <p class="note">{text}</p> })}
        <TableFold name=words::care_title() table=Signal::derive(care)/>
        <p class="note">{error}</p>
    }
}
