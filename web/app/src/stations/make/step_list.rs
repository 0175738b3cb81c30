//! All steps with their figures and ticks.

use leptos::prelude::*;
use tinwave_maker::bench::Step;
use tinwave_words::make as words;

use super::bench::Bench;
use crate::kit::EntryGroup;
use crate::reactive::{live, memo};

/// All steps; the figure's line opens a step, the box ticks it.
#[component]
pub fn StepList(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let line = move |(index, step): (usize, Step)| {
        let said = memo(move || bench.words(step));
        let is_open = move || (bench.step.get() == step).then_some("step");
        view! {
            <li class:open=move || bench.step.get() == step>
                <label class="tick">
                    <input type="checkbox" aria-label=move || words::tick_of(said.get().short)
                        prop:checked=move || bench.is_done(step)
                        on:change=move |event| bench.tick(step, event_target_checked(&event))/>
                </label>
                <button type="button" aria-current=is_open on:click=move |_| bench.go_to(step)>
                    <span>{index + 1}" "{live(move || said.get().short)}</span>
                    <span class="step-figure">{live(move || said.get().line)}</span>
                </button>
            </li>
        }
    };
    view! {
        <EntryGroup title=words::steps()>
            <ol class="step-list">
                {live(move || bench.steps.get().into_iter().enumerate().map(line).collect_view())}
            </ol>
        </EntryGroup>
    }
}
