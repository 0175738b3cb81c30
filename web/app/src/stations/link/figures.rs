//! Margin, reach, aim, distance to keep.

use leptos::prelude::*;
use tinwave_core::radio_link::End;
use tinwave_maker::link_plan::Knowledge;
use tinwave_words::figures::{degrees, distance_at_least, distance_parts, whole_db_parts};
use tinwave_words::link_plan as words;

use super::{answer_of, of_link};
use crate::kit::{Figure, FigureState, FigureText, Figures, WhyText};
use crate::reactive::memo;
use crate::state::Workshop;

/// The station's four figures; none where nothing can be said.
#[component]
pub fn LinkFigures() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let is_there = memo(move || {
        let known = answer_of(workshop).and_then(|answer| answer.end(End::A).aim);
        known.is_some() || of_link(workshop, |_, _| ()).is_some()
    });
    view! {
        <Show when=move || is_there.get()>
            <Figures>
                <Figure label=words::figure_labels().margin text=move || margin(workshop)
                    why=move || reasons(workshop, words::why_margin)/>
                <Figure label=words::figure_labels().reach text=move || reach(workshop)
                    why=move || reasons(workshop, |_| words::why_reach())/>
                <Figure label=words::figure_labels().aim text=move || aim(workshop)
                    why=move || reasons(workshop, words::why_aim)/>
                <Figure label=words::figure_labels().keep_away text=move || keep_away(workshop)
                    why=move || reasons(workshop, |_| words::why_keep_away())/>
            </Figures>
        </Show>
    }
}

fn reasons(
    workshop: Workshop,
    of: impl FnOnce(&tinwave_maker::link_plan::PlanAnswer) -> words::Reasons,
) -> WhyText {
    let reasons = answer_of(workshop).map(|answer| of(&answer));
    let words::Reasons { how, sure, source } = reasons.unwrap_or_default();
    WhyText { how, sure, source }
}

/// An estimate while an antenna is still that of an endless pipe.
fn sure(workshop: Workshop, mut text: FigureText) -> FigureText {
    let is_estimate = answer_of(workshop).is_some_and(|answer| {
        let known = answer.ends.iter().filter_map(|end| end.antenna.as_ref());
        known
            .into_iter()
            .any(|antenna| antenna.knowledge == Knowledge::Estimated)
    });
    if is_estimate {
        text.state = FigureState::Estimate;
    }
    text
}

fn margin(workshop: Workshop) -> FigureText {
    let unit = workshop.unit.get();
    let text = of_link(workshop, |answer, link| {
        let (value, symbol) = whole_db_parts(link.weaker.margin_db);
        FigureText::plain(value, symbol, words::margin_note(answer, link, unit))
    });
    text.map_or_else(
        || FigureText::waiting(words::waits_note()),
        |text| sure(workshop, text),
    )
}

fn reach(workshop: Workshop) -> FigureText {
    let unit = workshop.unit.get();
    let text = of_link(workshop, |answer, link| {
        let note = words::reach_note(answer.plan.fade_db);
        if link.weaker.margin_db < 0.0 {
            return FigureText::plain("–", "", words::does_not_reach(answer, link, unit));
        }
        let (value, symbol) = distance_parts(link.reach.kept_m, unit);
        FigureText::plain(value, symbol, note)
    });
    text.map_or_else(
        || FigureText::waiting(words::waits_note()),
        |text| sure(workshop, text),
    )
}

fn aim(workshop: Workshop) -> FigureText {
    let known = answer_of(workshop).and_then(|answer| answer.end(End::A).aim);
    match known {
        None => FigureText::waiting(words::waits_note()),
        Some(aim) => match aim.within_deg() {
            Some([one, three]) => sure(
                workshop,
                FigureText::plain(degrees(one), "", words::aim_note(three)),
            ),
            None => FigureText::plain("–", "", words::aims_all_round()),
        },
    }
}

fn keep_away(workshop: Workshop) -> FigureText {
    let unit = workshop.unit.get();
    let Some(answer) = answer_of(workshop) else {
        return FigureText::waiting(words::waits_note());
    };
    match answer.keep_away_m() {
        Some(keep_m) => {
            let (value, symbol) = distance_at_least(keep_m, unit);
            FigureText::plain(value, symbol, words::keep_away_note())
        }
        None => FigureText::plain("–", "", words::keep_away_unknown(&answer)),
    }
}
