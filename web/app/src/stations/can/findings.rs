//! What else is to be said of the can: further reasons of its grade, what is wrong
//! with the feed, and the cautions of the work that comes next.

use leptos::prelude::*;
use tinwave_core::verdict::Severity;
use tinwave_words::{Caution, Occasion, cautions, finding};

use crate::kit::{CautionBlock, FindingBlock, FindingTone};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// What the answer has no room for.
#[component]
pub fn CanFindings() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let further = memo(move || further(workshop));
    view! {
        <Show when=move || !further.with(Vec::is_empty)>
            <section class="part wide">
                {live(move || further.get().into_iter().map(|said| view! {
                    <FindingBlock tone=FindingTone::Caution headline=said.0 text=said.1/>
                }).collect_view())}
            </section>
        </Show>
    }
    .into_any()
}

/// What the work that comes next asks for.
#[component]
pub fn CanCautions() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let answers = workshop.answers;
    let metal = memo(move || workshop.work.with(|work| work.design.can.metal));
    let solder = move || {
        cautions(Occasion::Solder, metal.get())
            .into_iter()
            .filter(|text| matches!(text.caution, Caution::Coatings | Caution::PlatedFumes))
            .map(|caution| view! { <CautionBlock caution/> })
            .collect_view()
    };
    view! {
        <Show when=move || answers.has_cut()>
            <section class="part wide">{solder}</section>
        </Show>
    }
    .into_any()
}

/// Headline and text of each thing that the answer has no room for.
fn further(workshop: Workshop) -> Vec<(String, String)> {
    let unit = workshop.unit.get();
    let answers = workshop.answers;
    let design = workshop.work.with(|work| work.design.clone());
    let mut said: Vec<(String, String)> = answers.graded.with(|graded| {
        let rest = graded.reasons.iter().skip(1);
        rest.map(|reason| {
            let words = tinwave_words::grade::reason(reason, &design, unit);
            (words.headline.to_owned(), words.text())
        })
        .collect()
    });
    if answers.has_cut() {
        // What stops the maker's own cut from being computed.
        said.extend(answers.analysis.with(|known| {
            let verdict = known.iter().flat_map(|analysis| &analysis.verdict);
            verdict
                .filter(|found| found.severity() == Severity::Stop)
                .map(|found| {
                    let words = finding(found, unit);
                    (words.headline, words.sentence)
                })
                .collect::<Vec<_>>()
        }));
    }
    said
}
