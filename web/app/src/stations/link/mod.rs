//! The Link station: levels from end to end, margin, reach, aim, law, safety.

pub mod aim;
pub mod antenna;
pub mod before_up;
pub mod budget_table;
pub mod cables;
pub mod entries;
pub mod figures;
pub mod in_the_way;
pub mod levels;
pub mod obstacles;
pub mod path_view;
pub mod plan_field;
pub mod reach;
pub mod receive;
pub mod receiver;
pub mod rules;
pub mod savings;

use std::sync::Arc;

use leptos::prelude::*;
use tinwave_maker::link_plan::{LinkAnswer, PlanAnswer};
use tinwave_maker::station::Station;
use tinwave_words::frame::line_waits;
use tinwave_words::link_plan as words;

use crate::kit::{Action, FindingBlock, FindingTone, StationPage};
use crate::reactive::memo;
use crate::state::Workshop;
use aim::AimPart;
use before_up::{BeforeUp, KeepAway};
use budget_table::StepsTable;
use entries::LinkEntries;
use figures::LinkFigures;
use levels::Levels;
use path_view::PathPart;
use reach::ReachPart;
use receive::ReceivePart;
use savings::SavingsPart;

/// The line below the station's name.
#[must_use]
pub fn line(workshop: Workshop) -> String {
    let unit = workshop.unit.get();
    workshop.plan().answer.with(|answer| {
        let said = answer.as_ref().map(|answer| words::in_short(answer, unit));
        said.unwrap_or_else(|| line_waits(Station::Link).to_owned())
    })
}

/// The Link station.
#[component]
pub fn LinkStation() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let plan = workshop.plan();
    let waits = memo(move || plan.waits_for_this_can());
    let answer = move || {
        let unit = workshop.unit.get();
        plan.answer.with(|answer| match answer {
            Some(_) if waits.get() => words::waits().0.to_owned(),
            Some(answer) => words::answer(answer, unit),
            None => words::out_of_range().0.to_owned(),
        })
    };
    let reason = move || {
        plan.answer.with(|answer| match answer {
            Some(_) if waits.get() => words::waits().1.to_owned(),
            Some(answer) => words::reason(answer),
            None => words::out_of_range().1.to_owned(),
        })
    };
    let todo = move || {
        waits.get().then(|| {
            view! {
                <Action text=words::waits().2 on_press=move |()| workshop.go_to(Station::Can)/>
            }
        })
    };
    view! {
        <StationPage station=Station::Link answer reason todo=move || view! { {todo} }
            picture=|| view! { <Levels/> <NotCounted/> } figures=|| view! { <LinkFigures/> }
            entries=|| view! { <LinkEntries/> } more=|| view! { <More/> }/>
    }
}

/// Further pictures and tables.
#[component]
fn More() -> impl IntoView {
    view! {
        <ReachPart/>
        <PathPart/>
        <BeforeUp/>
        <div class="part folds">
            <AimPart/>
            <KeepAway/>
            <SavingsPart/>
            <StepsTable/>
            <ReceivePart/>
        </div>
    }
}

/// What was entered and is not counted.
#[component]
fn NotCounted() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let said = move || {
        let unit = workshop.unit.get();
        workshop.plan().answer.with(|answer| {
            let sentences = answer
                .as_ref()
                .map(|answer| words::not_counted(answer, unit));
            sentences.unwrap_or_default()
        })
    };
    move || {
        said()
            .into_iter()
            .map(|sentence| {
                view! { <FindingBlock tone=FindingTone::Caution headline=sentence/> }
            })
            .collect_view()
    }
}

/// The answer, for what needs one.
fn answer_of(workshop: Workshop) -> Option<Arc<PlanAnswer>> {
    workshop.plan().answer.get()
}

/// Something of the link, where both antennas are known and the far field holds.
fn of_link<T>(workshop: Workshop, make: impl FnOnce(&PlanAnswer, &LinkAnswer) -> T) -> Option<T> {
    let answer = answer_of(workshop)?;
    let link = answer
        .link
        .as_ref()
        .filter(|link| link.near_field_m.is_none())?;
    Some(make(&answer, link))
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_core::radio_link::End;
    use tinwave_core::radio_link::lawful::RuleSet;
    use tinwave_maker::example::example;
    use tinwave_maker::link_plan::EndAntenna;

    /// The station's markup after something was done.
    fn station(change: impl FnOnce(Workshop)) -> String {
        Owner::new().with(|| {
            let workshop = Workshop::open();
            provide_context(workshop);
            change(workshop);
            view! { <LinkStation/> }.to_html()
        })
    }

    fn heading(html: &str) -> &str {
        let after = html.split("<h1").nth(1).unwrap_or_default();
        let text = after.split_once('>').map_or("", |(_, text)| text);
        text.split('<').next().unwrap_or_default()
    }

    #[test]
    fn the_example_is_answered_with_its_levels_and_four_figures() {
        let html = station(|_| {});
        assert!(heading(&html).contains("dB to spare at 300 m"), "{html}");
        assert_eq!(html.matches("class=\"figure-label\"").count(), 4);
        assert_eq!(html.matches("level-bar gain").count(), 2);
        assert_eq!(html.matches("class=\"level-mark needed\"").count(), 1);
    }

    #[test]
    fn a_can_that_will_not_do_gives_no_figure_and_its_entries_stay() {
        let html = station(|workshop| {
            let mut work = example();
            work.design.can.inside_diameter_um = 155_000;
            workshop.open_work(work);
        });
        assert_eq!(heading(&html), words::waits().0);
        assert!(!html.contains("figure-label") && !html.contains("level-bar"));
        assert!(html.contains("id=\"plan-distance\"") && html.contains("path-area"));
        // With both antennas stated there is a link again.
        let html = station(|workshop| {
            let mut work = example();
            work.design.can.inside_diameter_um = 155_000;
            workshop.open_work(work);
            workshop.plan().change(|plan| {
                plan.here.antenna = EndAntenna::Stated;
                plan.far.antenna = EndAntenna::Stated;
            });
        });
        assert!(heading(&html).contains("dB to spare"), "{html}");
    }

    #[test]
    fn a_link_that_does_not_reach_says_so_and_gives_no_reach() {
        let html = station(|workshop| workshop.plan().change(|plan| plan.distance_m = 60e3));
        assert!(heading(&html).starts_with("Does not reach"), "{html}");
        assert!(html.contains("margin-bracket short"), "{html}");
        assert!(!html.contains("0.00 "), "{html}");
    }

    #[test]
    fn like_ends_are_judged_once_and_nothing_without_rules() {
        let judged = |html: &str| html.matches("class=\"law-lines\"").count();
        assert_eq!(judged(&station(|_| {})), 0);
        let by_europe = |workshop: Workshop, far_dbm: f64| {
            workshop.plan().change(|plan| {
                plan.rules = Some(RuleSet::EuLicenceExempt);
                plan.end_mut(End::B).power_dbm = far_dbm;
            });
        };
        // The conditions are a list more.
        assert_eq!(judged(&station(|workshop| by_europe(workshop, 18.0))), 2);
        assert_eq!(judged(&station(|workshop| by_europe(workshop, 3.0))), 3);
    }

    #[test]
    fn a_kept_design_that_is_of_no_use_here_is_told() {
        let html = station(|workshop| {
            workshop
                .plan()
                .change(|plan| plan.far.antenna = EndAntenna::Kept("v=1&b=2401".to_owned()));
        });
        assert!(html.contains(words::kept_unusable().0), "{html}");
    }
}
