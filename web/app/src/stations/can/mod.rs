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
use tinwave_core::grade::LITTLE_ROOM;
use tinwave_core::judge::one_mode_range;
use tinwave_core::si::{SiDesign, micrometres};
use tinwave_drawing::section::SectionFor;
use tinwave_maker::station::Station;
use tinwave_words::grade as grade_words;

use crate::browser;
use crate::frame::FirstTime;
use crate::kit::{LiveRegion, StationPage, field_id};
use crate::pictures::SectionPicture;
use crate::reactive::memo;
use crate::state::Workshop;
use crate::stations::later::{Later, LaterPart};
use answer::WhatToDo;
use figures::CanFigures;
use findings::{CanCautions, CanFindings};
use fits::FitsPlace;
use gauge::WidthGauge;
use modes::WhatPasses;
use shelf::OnTheShelf;
use size::SizeEntries;
pub use ways_on::WaysOn;

/// The Can station.
#[component]
pub fn CanStation() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let answers = workshop.answers;
    provide_context(FitsPlace::new());
    let grade = memo(move || answers.graded.with(|graded| graded.grade));
    let reason = move || answer::reason(workshop).what;
    view! {
        <StationPage station=Station::Can entries_first=true
            answer=move || grade_words::grade(grade.get()).to_owned() reason=reason
            grade=move || Some(grade.get())
            todo=|| view! { <WhatToDo/> }
            picture=|| view! { <Later part=LaterPart::CanPicture/> }
            figures=|| view! { <CanFigures/> }
            entries=|| view! { <SizeEntries/> }
            more=|| view! {
                <FirstTime/> <Later part=LaterPart::OtherCans/>
            }/>
        <LiveRegion text=move || answer::told(workshop)/>
    }
    .into_any()
}

/// The can with its cut, to scale.
#[component]
pub fn CanPicture() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    view! {
        <div class="can-picture">
            <SectionPicture shown_for=SectionFor::Can would_do_um=move || width_that_would_do(workshop)
                on_field=|field| browser::focus(&field_id(field))/>
        </div>
    }
}

/// What was found of the can, which widths carry one wave, which waves pass, which other
/// sizes do, and the cautions.
#[component]
pub fn OtherCans() -> impl IntoView {
    view! {
        <div class="other-cans"><CanFindings/> <WidthGauge/> <WhatPasses/> <OnTheShelf/> <CanCautions/></div>
    }
}

/// The nearest inside diameter that carries one wave over the band with room to spare,
/// where the can's own does not.
fn width_that_would_do(workshop: Workshop) -> Option<u32> {
    if workshop.answers.has_cut() {
        return None;
    }
    workshop.work.with(|work| {
        let range = one_mode_range(&SiDesign::new(&work.design))?;
        let own_um = work.design.can.inside_diameter_um;
        let low_um = micrometres(range.low_m * (1.0 + LITTLE_ROOM));
        let high_um = micrometres(range.high_m / (1.0 + LITTLE_ROOM));
        (low_um < high_um).then(|| own_um.clamp(low_um, high_um))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_maker::history::Change;

    /// The station's markup, with a can of that width; `awake`: the worker is at it.
    fn page(inside_um: Option<u32>, awake: bool) -> String {
        Owner::new().with(|| {
            let workshop = Workshop::open();
            provide_context(workshop);
            provide_context(crate::frame::Lines::new(workshop));
            if awake {
                workshop.answers.wake();
            }
            if let Some(um) = inside_um {
                workshop.edit(Change::Diameter, |work| {
                    work.design.can.inside_diameter_um = um;
                });
            }
            view! { <CanStation/> }.to_html()
        })
    }

    fn place(html: &str, part: &str) -> Option<usize> {
        html.find(part)
    }

    #[test]
    fn entries_come_before_the_answer_and_the_figures_after_it() {
        let html = page(None, false);
        let entries = place(&html, "id=\"field-insidediameter\"");
        let answer = place(&html, "<h1");
        let figures = place(&html, "class=\"figures\"");
        assert!(entries.is_some() && entries < answer && answer < figures);
        assert!(html.contains(tinwave_words::can::example_note()));
        // The example's own best cut: 69.81 mm, 0.2 of wall and 4 of recess.
        assert!(html.contains("74.0") && html.contains("31.5"), "{html}");
    }

    #[test]
    fn a_can_that_will_not_do_has_no_figure_to_drill_by() {
        for um in [65_000, 155_000] {
            let html = page(Some(um), false);
            assert!(html.contains(grade_words::grade(tinwave_core::grade::Grade::WillNotDo)));
            assert!(!html.contains(tinwave_words::can::drill_at()), "{um}");
            assert!(!html.contains("class=\"figures\""), "{um}");
            assert!(!html.contains(tinwave_words::can::example_note()), "{um}");
        }
    }

    #[test]
    fn while_a_new_can_is_searched_no_other_cans_figures_stand_there() {
        let html = page(Some(90_000), true);
        let figures = html.split("class=\"figures\"").nth(1).unwrap_or_default();
        let figures = figures.split("place-picture").next().unwrap_or_default();
        assert_eq!(figures.matches("figure waiting").count(), 4, "{figures}");
        assert!(!figures.contains("74.0") && !figures.contains("31.5"));
    }
}
