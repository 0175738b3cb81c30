//! Before it goes up: cautions, each once, and the distance to keep.

use leptos::prelude::*;
use tinwave_words::link_plan::{self as words, PartTitle};
use tinwave_words::{Caution, CautionText, Occasion, caution, cautions};

use super::aim::PlainTable;
use super::answer_of;
use crate::kit::{CautionBlock, FindingBlock, FindingTone, Fold, Part};
use crate::reactive::live;
use crate::state::Workshop;

fn of(workshop: Workshop, occasion: Occasion) -> Vec<CautionText> {
    let metal = workshop.work.with(|work| work.design.can.metal);
    cautions(occasion, metal)
}

/// The cautions of putting it up: the mains line in sight, with its distance; the others
/// in a fold.
#[component]
pub fn BeforeUp() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, note) = words::part_titles(PartTitle::BeforeUp);
    let (also, summary) = words::part_titles(PartTitle::AlsoBeforeUp);
    let lines = caution(Caution::PowerLines);
    let text = move || {
        let unit = workshop.unit.get();
        let fall = workshop.plan().entries.with(|plan| words::fall(plan, unit));
        [lines.text, " ", &fall].concat()
    };
    let others = move || {
        let mut others = of(workshop, Occasion::Mount);
        others.retain(|one| one.caution != Caution::PowerLines);
        others
    };
    view! {
        <Part title note>
            <FindingBlock tone=FindingTone::Caution headline=lines.headline text source=lines.source/>
            <Fold title=also summary=summary>
                {live(move || others().into_iter().map(|caution| view! { <CautionBlock caution/> }).collect_view())}
            </Fold>
        </Part>
    }
}

/// The distance to keep from a mouth that transmits.
#[component]
pub fn KeepAway() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, note) = words::part_titles(PartTitle::Safe);
    let rows = move || {
        let unit = workshop.unit.get();
        answer_of(workshop).map(|answer| words::safe_rows(&answer, unit))
    };
    let summary = move || {
        let unit = workshop.unit.get();
        let said = answer_of(workshop).map(|answer| words::safe_summary(&answer, unit));
        said.unwrap_or_default()
    };
    view! {
        <Fold title=title summary=summary>
            {live(move || rows().filter(|(_, rows)| !rows.is_empty()).map(|(head, rows)| view! {
                <PlainTable name=title head rows/>
                <p class="note">{note}</p>
            }))}
            <CautionBlock caution=caution(Caution::PowerNearEyes)/>
        </Fold>
    }
}
