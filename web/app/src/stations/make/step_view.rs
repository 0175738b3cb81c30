//! The open step: where one is, its one figure, its check, its buttons, its cautions.

use leptos::prelude::*;
use tinwave_maker::bench::{Stamp, Step};
use tinwave_words::make as words;

use super::bench::{Bench, Readiness};
use super::cautions::cautions_of;
use crate::kit::{
    CautionBlock, FindingBlock, FindingTone, Icon, IconName, LiveRegion, Pick, ShortList,
};
use crate::reactive::{live, memo};

/// Which step of how many, in words and as a row of pips.
#[component]
pub fn StepCount(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let pip = move |step: Step| {
        let class = move || match (bench.step.get() == step, bench.is_done(step)) {
            (true, _) => "pip here",
            (false, true) => "pip done",
            (false, false) => "pip",
        };
        view! { <i class=class></i> }
    };
    view! {
        <div class="step-count">
            <p class="where">{live(move || {
                let (number, all) = bench.place();
                words::step_of(number, all)
            })}</p>
            <span class="pips" aria-hidden="true">
                {live(move || bench.steps.get().into_iter().map(pip).collect_view())}
            </span>
        </div>
    }
}

/// The step's one figure, large, with the face that it is measured from.
#[component]
pub fn BigFigure(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let step = memo(move || bench.words(bench.step.get()));
    let rests_on_cut =
        move || matches!(bench.step.get(), Step::Mark | Step::CutWire | Step::Sleeve);
    let readiness = memo(move || {
        if rests_on_cut() {
            bench.readiness()
        } else {
            Readiness::Ready
        }
    });
    let figure = move || {
        let step = step.get();
        let value = match readiness.get() {
            Readiness::Searching => "…".to_owned(),
            _ => step.value,
        };
        (!value.is_empty()).then(|| {
            view! { <p class="bench-value">{value}<small>{step.unit}</small></p> }
        })
    };
    let note = move || match readiness.get() {
        Readiness::Ready => None,
        Readiness::Estimate => Some(words::is_estimate()),
        Readiness::Searching => Some(words::waits_for_cut()),
    };
    let said = move || {
        let step = step.get();
        format!("{}: {} {} {}", step.title, step.value, step.unit, step.from)
    };
    view! {
        <div class="bench-figure" class:copper=move || bench.step.get() == Step::CutWire
            class:unsure=move || readiness.get() != Readiness::Ready>
            {figure}
            <p class="bench-from">{live(move || step.with(|step| step.from.clone()))}</p>
        </div>
        {live(move || note().map(|note| view! { <p class="bench-unsure"><Icon name=IconName::Caution/>{note}</p> }))}
        <LiveRegion text=Signal::derive(said)/>
    }
}

/// The check from the other side, and how it is done.
#[component]
pub fn StepCheck(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let step = memo(move || bench.words(bench.step.get()));
    let has_words = move || step.with(|step| !step.check.is_empty() || !step.how.is_empty());
    let old = move || bench.done_to_other(bench.step.get());
    let old_text = move |Stamp(figures): Stamp| match (bench.step.get(), figures.first()) {
        (Step::Mark | Step::CutWire, Some(um)) => {
            words::tick_is_old_at(*um, bench.workshop.unit.get())
        }
        _ => words::tick_is_old().to_owned(),
    };
    view! {
        <Show when=has_words>
            <p class="bench-check">
                <strong>{live(move || step.with(|step| step.check.clone()))}</strong>
                " "{live(move || step.with(|step| step.how.clone()))}
            </p>
        </Show>
        {live(move || old().map(|stamp| view! {
            <FindingBlock tone=FindingTone::Caution headline=words::tick_is_old_head()
                text=old_text(stamp)/>
        }))}
        <Show when=move || bench.step.get() == Step::Cap><CapChoice bench/></Show>
    }
}

/// The cap's sheet, and what it does to the match.
#[component]
fn CapChoice(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    use tinwave_maker::bench::CapSheet;
    let picks = move || {
        let unit = bench.workshop.unit.get();
        let none = Pick::new("none", words::none());
        let sheets =
            CapSheet::ALL.map(|sheet| Pick::new(sheet.key(), words::cap_sheet(sheet, unit)));
        std::iter::once(none).chain(sheets).collect::<Vec<_>>()
    };
    let chosen = move || {
        let cap = bench.choices.with(|choices| choices.cap);
        cap.map_or("none", CapSheet::key).to_owned()
    };
    let choose = move |key: String| {
        bench
            .choices
            .update(|choices| choices.cap = CapSheet::from_key(&key));
    };
    view! {
        <ShortList label=words::cap() picks=Signal::derive(picks) chosen=Signal::derive(chosen)
            on_choose=choose/>
        <super::templates::FittingsSaid bench cap=true/>
    }
}

/// Back, the step's own verb, next.
#[component]
pub fn StepButtons(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let verb = move || bench.words(bench.step.get()).done;
    let go = move |by: isize| {
        if let Some(step) = bench.beside(by) {
            bench.go_to(step);
        }
    };
    let at_end = move |by: isize| bench.beside(by).is_none();
    let waits = move || bench.readiness() == Readiness::Searching;
    let note = move || {
        let step = bench.step.get();
        if step.makes_the_cut() && bench.follows_best() {
            words::makes_the_cut()
        } else {
            words::ticks_are_kept()
        }
    };
    view! {
        <div class="step-buttons">
            <button type="button" class="action turn" aria-label=words::back()
                disabled=move || at_end(-1) on:click=move |_| go(-1)><Icon name=IconName::Chevron/></button>
            <button type="button" class="action main" disabled=waits
                on:click=move |_| bench.done_and_on()>
                <Icon name=IconName::Cut/>{verb}
            </button>
            <button type="button" class="action turn on" aria-label=words::next()
                disabled=move || at_end(1) on:click=move |_| go(1)><Icon name=IconName::Chevron/></button>
        </div>
        <p class="note step-note">{note}</p>
    }
}

/// The cautions that belong to the open step.
#[component]
pub fn StepCautions(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    move || {
        let step = bench.step.get();
        let all = bench.workshop.work.with(|work| cautions_of(step, work));
        all.into_iter()
            .map(|caution| view! { <CautionBlock caution/> })
            .collect_view()
    }
}
