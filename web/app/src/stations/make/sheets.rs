//! The sheets as they will be printed, to look at.

use leptos::prelude::*;
use tinwave_protocol::print::{DrawSheets, PrintError, SheetDrawn, SheetsDrawn};
use tinwave_words::make as words;

use super::bench::{Bench, Readiness};
use super::saving::refusal;
use super::templates::{paper_name, part_name};
use crate::kit::Part;
use crate::reactive::{effect, live, memo};
use crate::worker::{Task, TaskState};

/// A small picture of each sheet, with how many there are.
#[component]
pub fn SheetPreviews(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let task = Task::<Result<SheetsDrawn, PrintError>>::new();
    // Drawn anew whenever the design or a choice has changed and the worker is done
    // with what belongs to it.
    let job = memo(move || {
        let ready = bench.readiness() != Readiness::Searching;
        let found = bench.fittings().filter(|_| ready)?;
        bench.print_job(&found)
    });
    effect(move || {
        if let Some(job) = job.get() {
            task.run(DrawSheets { job });
        }
    });
    // The last ones stay until the next are there: nothing moves.
    let drawn = Memo::new(
        move |before: Option<&Option<Result<SheetsDrawn, PrintError>>>| {
            task.state().with(|state| match state {
                TaskState::Done(drawn) => Some(drawn.clone()),
                _ => before.cloned().flatten(),
            })
        },
    );
    let note = move || {
        drawn.with(|drawn| match drawn {
            Some(Ok(drawn)) => {
                let paper = bench.choices.with(|choices| paper_name(choices.paper));
                words::sheet_count(drawn.sheets.len(), paper)
            }
            Some(Err(error)) => refusal(error, bench.workshop.unit.get()),
            None => words::working_out().into(),
        })
    };
    let balance = move || {
        let unit = bench.workshop.unit.get();
        let balance = drawn.with(|drawn| drawn.as_ref()?.as_ref().ok()?.balance)?;
        let grams = (balance.mass_mg + 500) / 1_000;
        Some(words::balance(grams, balance.from_closed_rim_um, unit))
    };
    let pictures = move || {
        drawn.with(|drawn| {
            let sheets = drawn.as_ref()?.as_ref().ok()?.sheets.clone();
            let all = sheets.len();
            let views = sheets.into_iter().enumerate();
            Some(
                views
                    .map(|(index, sheet)| preview(index + 1, all, sheet))
                    .collect_view(),
            )
        })
    };
    view! {
        <Part title=words::preview() note=Signal::derive(note) wide=true>
            // While they lie on the browser's paper their names stand there alone.
            <Show when=move || bench.on_paper.with(Option::is_none)>
                <ul class="sheet-previews">{pictures}</ul>
            </Show>
            <p class="note">{live(balance)}</p>
        </Part>
    }
}

fn preview(number: usize, all: usize, sheet: SheetDrawn) -> impl IntoView {
    let names: Vec<_> = sheet.parts.iter().copied().map(part_name).collect();
    let name = words::sheet_name(number, all, &names.join(", "));
    view! {
        <li>
            // The sheet's own SVG, of nothing but numbers and escaped words.
            <div class="sheet" role="img" aria-label=name.clone() inner_html=sheet.svg></div>
            <p class="note">{name}</p>
        </li>
    }
}
