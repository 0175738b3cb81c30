//! The Make station: one step at a time, the templates, all figures.

pub mod bench;
pub mod build_sheet;
pub mod cautions;
pub mod choices;
pub mod figures_table;
pub mod paper;
pub mod picture;
pub mod print_job;
pub mod saving;
pub mod sheets;
pub mod step_list;
pub mod step_view;
pub mod templates;
pub mod text_image;

use leptos::prelude::*;
use tinwave_maker::station::Station;
use tinwave_words::make as words;

use crate::frame::Lines;
use crate::kit::{StationPage, Waits};
use crate::reactive::{effect, memo};
pub use bench::Bench;
pub use build_sheet::BuildSheet;
pub use paper::PaperSheets;

use figures_table::FiguresTable;
use picture::StepPicture;
use sheets::SheetPreviews;
use step_list::StepList;
use step_view::{BigFigure, StepButtons, StepCautions, StepCheck, StepCount};
use templates::Templates;

/// The Make station.
#[component]
pub fn MakeStation() -> impl IntoView {
    let bench = Bench::of_page();
    let has_cut = memo(move || bench.workshop.answers.has_cut());
    move || {
        if has_cut.get() {
            view! { <AtTheBench bench/> }.into_any()
        } else {
            view! { <NothingToMake/> }.into_any()
        }
    }
}

/// A can that will not do: no drilling figure, no template.
#[component]
fn NothingToMake() -> impl IntoView {
    let waits = || {
        view! {
            <Waits station=Station::Make title=words::no_cut_head() text=words::no_cut()
                action=tinwave_words::frame::to_the_can() to=Station::Can/>
        }
    };
    view! { <StationPage station=Station::Make answer=words::no_cut_head() picture=waits/> }
}

/// What the rail says of the work at the bench.
fn rail_line(bench: Bench) -> String {
    let (number, all) = bench.place();
    if bench.count_done() == all {
        words::all_done(all)
    } else {
        words::rail_line(number, all, bench.words(bench.step.get()).short)
    }
}

#[component]
fn AtTheBench(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let title = move || bench.words(bench.step.get()).title.to_owned();
    if let Some(lines) = use_context::<Lines>() {
        effect(move || lines.say(Station::Make, rail_line(bench)));
    }
    view! {
        <StationPage station=Station::Make answer=Signal::derive(title)
            whereabouts=move || view! { <StepCount bench/> }
            picture=move || view! { <BigFigure bench/> <StepPicture bench/> }
            entries=move || view! {
                <StepCheck bench/>
                <StepButtons bench/>
                <StepList bench/>
                <StepCautions bench/>
            }
            more=move || view! { <Templates bench/> <FiguresTable bench/> <SheetPreviews bench/> }/>
    }
}
