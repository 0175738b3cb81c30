//! The Can station: will this can do, with which cut, and what else would.

pub mod answer;
pub mod band;
pub mod figures;
pub mod findings;
mod fits;
pub mod gauge;
pub mod metal;
pub mod modes;
pub mod shelf;
pub mod size;
pub mod ways_on;
pub mod width;

use leptos::prelude::*;
use tinwave_maker::station::Station;
use tinwave_words::grade as grade_words;

use crate::frame::FirstTime;
use crate::kit::{LiveRegion, StationPage};
use crate::state::Workshop;
use answer::WhatToDo;
use figures::CanFigures;
use findings::{CanCautions, CanFindings};
use fits::Fits;
use gauge::WidthGauge;
use modes::WhatPasses;
use shelf::OnTheShelf;
use size::SizeEntries;

/// The Can station.
#[component]
pub fn CanStation() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let answers = workshop.answers;
    provide_context(Fits::open(workshop));
    let grade = Memo::new(move |_| answers.graded.with(|graded| graded.grade));
    let reason = move || answer::reason(workshop).what;
    view! {
        <StationPage station=Station::Can entries_first=true
            answer=move || grade_words::grade(grade.get()).to_owned() reason=reason
            grade=move || Some(grade.get())
            todo=|| view! { <WhatToDo/> }
            figures=|| view! { <CanFigures/> }
            entries=|| view! { <SizeEntries/> }
            more=|| view! {
                <FirstTime/> <CanFindings/> <WidthGauge/> <WhatPasses/> <OnTheShelf/> <CanCautions/>
            }/>
        <LiveRegion text=move || answer::told(workshop)/>
    }
}
