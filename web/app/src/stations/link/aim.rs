//! How exactly to aim this end.

use leptos::prelude::*;
use tinwave_core::radio_link::End;
use tinwave_maker::link_plan::PlanNumber;
use tinwave_words::link_plan::{self as words, PartTitle};

use super::answer_of;
use super::plan_field::PlanField;
use crate::kit::Fold;
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// The aim: table and sentences; nothing while the antenna is not known.
#[component]
pub fn AimPart() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, _) = words::part_titles(PartTitle::Aim);
    let aim = memo(move || answer_of(workshop).and_then(|answer| answer.end(End::A).aim));
    let rows = move || {
        let unit = workshop.unit.get();
        aim.get().map(|aim| words::aim_rows(&aim, unit))
    };
    let sentences = move || {
        let polarisation = workshop.plan().entries.with(words::aim_polarisation);
        let of_beam = aim.get().map(|aim| {
            let lost = aim.planes.map(|_| words::aim_wrong(&aim));
            [lost.unwrap_or_default(), words::aim_lean(&aim)]
        });
        let mut all = of_beam.map_or_else(Vec::new, |both| both.to_vec());
        all.push(polarisation);
        all.retain(|sentence| !sentence.is_empty());
        all
    };
    let summary = move || aim.with(|aim| aim.as_ref().map(words::aim_summary));
    view! {
        <Show when=move || aim.with(Option::is_some)>
            <Fold title=title summary=move || summary().unwrap_or_default()>
                {live(move || rows().filter(|(_, rows)| !rows.is_empty()).map(|(head, rows)| view! {
                    <PlainTable name=title head rows/>
                }))}
                {live(move || sentences().into_iter().map(|one| view! { <p class="note">{one}</p> }).collect_view())}
                <PlanField number=PlanNumber::Arm/>
            </Fold>
        </Show>
    }
}

/// A table that stands open.
#[component]
pub fn PlainTable(
    /// Its caption, for those who hear it.
    #[prop(into)]
    name: String,
    /// Heads of its columns.
    head: Vec<String>,
    /// Its rows; the first cell names the row.
    rows: Vec<Vec<String>>,
) -> impl IntoView {
    let region = name.clone();
    view! {
        <div class="wide-table" role="region" tabindex="0" aria-label=region>
            <table class="figures-table">
                <caption class="unseen">{name}</caption>
                <thead><tr>
                    {head.into_iter().map(head_cell).collect_view()}
                </tr></thead>
                <tbody>{rows.into_iter().map(row).collect_view()}</tbody>
            </table>
        </div>
    }
}

/// The corner of a table heads nothing.
fn head_cell(text: String) -> AnyView {
    if text.is_empty() {
        view! { <td></td> }.into_any()
    } else {
        view! { <th scope="col">{text}</th> }.into_any()
    }
}

fn row(cells: Vec<String>) -> impl IntoView {
    let mut cells = cells.into_iter();
    let name = cells.next().unwrap_or_default();
    view! {
        <tr>
            <th scope="row">{name}</th>
            {cells.map(|cell| view! { <td>{cell}</td> }).collect_view()}
        </tr>
    }
}
