//! The build sheet on the browser's own paper: printing the page from any station gives
//! it, with all figures, steps and cautions.

use leptos::prelude::*;

use crate::reactive::{effect, live};
use tinwave_drawing::bench::{BenchView, bench_scene};
use tinwave_maker::bench::Step;
use tinwave_maker::entry::format_frequency_exact;
use tinwave_words::{CautionText, make as words, metal};

use super::bench::{Bench, Readiness};
use super::cautions::cautions_of;
use super::figures_table::{figure_rows, leeway, table};
use super::picture::drawn;
use super::print_job::cap_note;

/// Width of the pictures, px: half of an A4's text width.
const PICTURE_PX: f64 = 320.0;

/// The build sheet. It is in the page but not seen, until the page is printed; made once
/// the page runs, so that the first paint does without it.
#[component]
pub fn BuildSheet() -> impl IntoView {
    let bench = Bench::of_page();
    let is_made = RwSignal::new(false);
    effect(move || is_made.set(true));
    let content = move || {
        if bench.workshop.answers.has_cut() && bench.readiness() != Readiness::Searching {
            view! { <Sheet bench/> }.into_any()
        } else {
            view! { <p>{words::no_cut()}</p> }.into_any()
        }
    };
    view! {
        <Show when=move || is_made.get()>
            <section class="build-sheet" aria-label=words::build_sheet()>
                <p class="sheet-head">{words::build_sheet()}</p>
                <h1>{live(move || title(bench))}</h1>
                <p>{live(move || can_line(bench))}</p>
                <p>{live(move || band_line(bench))}</p>
                {content}
                <p class="sheet-link">{live(move || bench.workshop.link())}</p>
            </section>
        </Show>
    }
}

fn title(bench: Bench) -> String {
    let name = bench.workshop.work.with(|work| work.design.name.clone());
    if name.is_empty() {
        words::unnamed().into()
    } else {
        name
    }
}

fn can_line(bench: Bench) -> String {
    let unit = bench.workshop.unit.get();
    bench.workshop.work.with(|work| {
        let can = &work.design.can;
        words::can_in_words(
            can.inside_diameter_um,
            can.open_length_um,
            can.wall_um,
            metal(can.metal),
            unit,
        )
    })
}

fn band_line(bench: Bench) -> String {
    let answers = bench.workshop.answers;
    let vswr = answers.analysis.with(|analysis| {
        let summary = analysis.as_ref()?.match_summary.as_ref()?;
        Some(summary.worst_vswr_in_band)
    });
    let vswr = vswr.filter(|_| answers.has_cut());
    bench.workshop.work.with(|work| {
        let band = work.design.band;
        words::band_in_words(
            &format_frequency_exact(band.low_khz),
            &format_frequency_exact(band.high_khz),
            vswr,
        )
    })
}

#[component]
fn Sheet(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let rows = move || {
        let unit = bench.workshop.unit.get();
        let leeway = leeway(bench);
        let work = bench.workshop.work;
        table(work.with(|work| figure_rows(work, leeway, unit)), unit)
    };
    let pictures = move || {
        [Step::Mark, Step::CutWire]
            .into_iter()
            .map(|step| picture(bench, step))
            .collect_view()
    };
    let note = move || {
        let unsure = (bench.readiness() == Readiness::Estimate).then(words::is_estimate);
        let cap = bench.fittings().and_then(|found| found.cap);
        [unsure.map(str::to_owned), cap.as_ref().map(cap_note)]
            .into_iter()
            .flatten()
            .map(|note| view! { <p>{note}</p> })
            .collect_view()
    };
    view! {
        <div class="sheet-pictures">{pictures}</div>
        <h2>{words::all_figures()}</h2>
        <p>{live(move || words::plus_and_minus_note(leeway(bench).to_two))}</p>
        {rows}
        {note}
        <h2>{words::steps()}</h2>
        <ol class="sheet-steps">
            {live(move || bench.steps.get().into_iter().map(|step| step_line(bench, step)).collect_view())}
        </ol>
    }
}

fn picture(bench: Bench, step: Step) -> impl IntoView {
    let said = bench.words(step);
    let scene = bench.workshop.work.with(|work| {
        let view = BenchView {
            work,
            unit: bench.workshop.unit.get(),
            width: PICTURE_PX,
        };
        bench_scene(step, &view)
    });
    scene.map(|scene| drawn(scene, words::shows(step, &said.line, &said.from)))
}

fn step_line(bench: Bench, step: Step) -> impl IntoView {
    let said = bench.words(step);
    let cautions = bench.workshop.work.with(|work| cautions_of(step, work));
    let caution = |text: CautionText| {
        view! { <p class="sheet-caution"><strong>{text.headline}"."</strong>" "{text.text}</p> }
    };
    let has_figure = !said.value.is_empty();
    view! {
        <li>
            <p>
                <strong>{said.title}</strong>
                {has_figure.then(|| view! { ": "<strong>{said.value}" "{said.unit}</strong> })}
                " "{said.from}". "{said.check}" "{said.how}
            </p>
            {cautions.into_iter().map(caution).collect_view()}
        </li>
    }
}
