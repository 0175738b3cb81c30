//! The Measure station: a measurement laid over the prediction, what is off, what to do.

pub mod answer;
pub mod bring;
pub mod by_hand;
pub mod cans;
pub mod careful;
pub mod compare;
pub mod facts;
pub mod figures;
pub mod log;
pub mod off;
pub mod ranking;
pub mod screw_found;
pub mod screws;
pub mod take_off;
pub mod tolerances;
pub mod ways;

use leptos::prelude::*;
use tinwave_maker::station::Station;
use tinwave_protocol::measure::Diagnosed;
use tinwave_words::frame::line_waits;
use tinwave_words::measure as words;
use tinwave_words::{Caution, caution};

use crate::kit::{Action, CautionBlock, FindingBlock, LiveRegion, StationPage};
use crate::reactive::memo;
use crate::state::Workshop;
use bring::Bring;
use careful::HowCareful;
use compare::CompareChart;
use figures::MeasureFigures;
use log::LogFold;
use off::WhatIsOff;
use screws::TuneWithAScrew;
use take_off::TakeOff;
use ways::Ways;

/// The line below the station's name.
#[must_use]
pub fn line(workshop: Workshop) -> String {
    let measuring = workshop.measuring();
    if measuring.measured.with(Option::is_none) {
        return line_waits(Station::Measure).to_owned();
    }
    match measuring.found() {
        Some(Diagnosed::Found(found)) => words::line(&found, workshop.unit.get()),
        _ => words::line_compared().to_owned(),
    }
}

/// The Measure station.
#[component]
pub fn MeasureStation() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let has_cut = memo(move || workshop.answers.has_cut());
    move || {
        if has_cut.get() {
            view! { <Station/> }.into_any()
        } else {
            let (title, text, action) = words::waits();
            let todo = move || view! { <Action text=action on_press=move |()| workshop.go_to(Station::Can)/> };
            view! { <StationPage station=Station::Measure answer=title reason=text todo=todo/> }
                .into_any()
        }
    }
}

/// The station of a can that has a cut.
#[component]
fn Station() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let said = memo(move || answer::answer(workshop));
    let heading = move || said.with(|(heading, _)| heading.clone());
    view! {
        <StationPage station=Station::Measure entries_first=true answer=heading
            reason=move || said.with(|(_, sentence)| sentence.clone())
            picture=|| view! { <CompareChart/> }
            figures=|| view! { <MeasureFigures/> <TakeOff/> }
            entries=|| view! { <Bring/> }
            more=|| view! { <More/> }/>
        <LiveRegion text=heading/>
    }
}

/// What comes after the picture.
#[component]
fn More() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let nothing = memo(move || workshop.measuring().measured.with(Option::is_none));
    view! {
        <WhatIsOff/>
        <Ways/>
        <Show when=move || nothing.get()>
            <div class="before-measuring">
                <CautionBlock caution=caution(Caution::Analyser)/>
                <FindingBlock headline=words::how_to_measure().0 text=words::how_to_measure().1/>
            </div>
        </Show>
        <div class="folds">
            <LogFold/>
            <TuneWithAScrew/>
            <HowCareful/>
        </div>
    }
}
