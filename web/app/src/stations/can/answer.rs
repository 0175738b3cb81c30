//! The answer: what the grade rests on, and what to do.

use leptos::prelude::*;
use tinwave_core::grade::Grade;
use tinwave_core::ruler::RulerFigures;
use tinwave_maker::entry::format_length;
use tinwave_maker::workpiece::Cut;
use tinwave_words::can as words;
use tinwave_words::grade::{self as grade_words, ReasonWords};

use crate::kit::{Action, ActionKind};
use crate::reactive::{live, memo};
use crate::state::{Freshness, Workshop};
use crate::stations::later::{Later, LaterPart};
use crate::worker::TaskState;

/// A difference of VSWR that is worth a word.
const WORTH_SAYING: f64 = 0.03;

/// What the grade rests on.
pub(super) fn reason(workshop: Workshop) -> ReasonWords {
    let unit = workshop.unit.get();
    workshop.answers.graded.with(|graded| {
        workshop
            .work
            .with(|work| grade_words::answer(graded, &work.design, unit))
    })
}

/// The verdict and the cut, for those who hear the page.
pub(super) fn told(workshop: Workshop) -> String {
    let answers = workshop.answers;
    let unit = workshop.unit.get();
    let grade = answers.graded.with(|graded| graded.grade);
    if !answers.has_cut() || answers.freshness.get() == Freshness::Pending {
        return words::told(grade, "", "");
    }
    workshop.work.with(|work| {
        let ruler = RulerFigures::new(&work.design);
        let wire = super::figures::wire_from_face_um(work);
        words::told(
            grade,
            &format_length(ruler.hole_from_closed_rim_um, unit),
            &format_length(wire, unit),
        )
    })
}

/// Below the reason: when it is good enough, the ways on from a can that will not do,
/// and the better cut where the maker has one of their own.
#[component]
pub fn WhatToDo() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let answers = workshop.answers;
    let advice = memo(move || reason(workshop).advice);
    let trouble = memo(move || trouble(workshop));
    let better = memo(move || better_cut(workshop));
    let will_not_do = memo(move || answers.graded.with(|graded| graded.grade) == Grade::WillNotDo);
    view! {
        <Show when=move || !advice.with(String::is_empty)>
            <p class="advice"><strong>{grade_words::what_to_do()}</strong>" "{advice}</p>
        </Show>
        <Show when=move || !trouble.get().is_empty()>
            <p class="advice" role="status">{trouble}</p>
        </Show>
        <Show when=move || better.with(Option::is_some)>
            <p class="advice">{live(move || better.get())}</p>
            <Action text=words::follow_again() kind=ActionKind::Plain
                on_press=move |()| workshop.cut_follows()/>
        </Show>
        <Show when=move || will_not_do.get()><Later part=LaterPart::WaysOn/></Show>
    }
    .into_any()
}

/// Why the best cut does not come.
fn trouble(workshop: Workshop) -> &'static str {
    let answers = workshop.answers;
    if answers.freshness.get() != Freshness::Pending || !answers.has_cut() {
        return "";
    }
    answers.search_state().with(|state| match state {
        TaskState::Refused => words::no_worker(),
        _ => "",
    })
}

/// What the maker's own cut has and what the best would have, where that is better.
fn better_cut(workshop: Workshop) -> Option<String> {
    let answers = workshop.answers;
    if workshop.work.with(|work| work.cut == Cut::FollowsBest) || !answers.has_cut() {
        return None;
    }
    let worst = |analysis: &tinwave_core::analysis::Analysis| {
        analysis
            .match_summary
            .map(|summary| summary.worst_vswr_in_band)
    };
    let own = answers.analysis.with(|known| worst(known.as_ref()?))?;
    let best = answers.best_analysis.with(|known| worst(known.as_ref()?))?;
    (own > best + WORTH_SAYING).then(|| words::cut_stays(own, best))
}
