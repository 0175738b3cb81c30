//! Before it goes up: cautions, each once, and the distance to keep.

use leptos::prelude::*;
use tinwave_words::link_plan::{self as words, PartTitle};
use tinwave_words::{Caution, CautionText, Occasion, cautions};

use super::aim::PlainTable;
use super::answer_of;
use crate::kit::{CautionBlock, FindingBlock, FindingTone, Part};
use crate::state::Workshop;

fn of(workshop: Workshop, occasion: Occasion) -> Vec<CautionText> {
    let metal = workshop.work.with(|work| work.design.can.metal);
    cautions(occasion, metal)
}

/// The cautions of putting it up, with the distance from a mains line.
#[component]
pub fn BeforeUp() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, note) = words::part_titles(PartTitle::BeforeUp);
    let fall = move || {
        let unit = workshop.unit.get();
        workshop.plan.entries.with(|plan| words::fall(plan, unit))
    };
    view! {
        <Part title note>
            {move || of(workshop, Occasion::Mount).into_iter().map(|caution| {
                // With the heights entered, the distance from a line is known.
                if caution.caution == Caution::PowerLines {
                    let text = move || [caution.text, " ", &fall()].concat();
                    view! {
                        <FindingBlock tone=FindingTone::Caution headline=caution.headline text
                            source=caution.source/>
                    }.into_any()
                } else {
                    view! { <CautionBlock caution/> }.into_any()
                }
            }).collect_view()}
        </Part>
    }
}

/// The distance to keep from a mouth that transmits, with the cautions of power.
#[component]
pub fn KeepAway() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, note) = words::part_titles(PartTitle::Safe);
    let rows = move || {
        let unit = workshop.unit.get();
        answer_of(workshop).map(|answer| words::safe_rows(&answer, unit))
    };
    view! {
        <Part title note>
            {move || rows().filter(|(_, rows)| !rows.is_empty()).map(|(head, rows)| view! {
                <PlainTable name=title head rows/>
            })}
            {move || of(workshop, Occasion::Power).into_iter().map(|caution| {
                view! { <CautionBlock caution/> }
            }).collect_view()}
        </Part>
    }
}
