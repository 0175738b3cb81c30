//! The step at the wire: the main button, another amount, cautions.

use leptos::prelude::*;
use tinwave_core::diagnosis::worst_vswr_as_built;
use tinwave_maker::can_log::Work;
use tinwave_maker::entry::{LengthUnit, format_length_exact, format_length_number, parse_length};
use tinwave_maker::history::Change;
use tinwave_maker::workpiece::Cut;
use tinwave_words::measure as words;
use tinwave_words::{Caution, caution};

use super::figures::{milli, trim_of};
use crate::browser;
use crate::kit::{
    Action, ActionKind, CautionBlock, Fault, FindingBlock, FindingTone, NumberField, ProgressBar,
};
use crate::reactive::{live, memo};
use crate::state::Workshop;
use crate::worker::TaskState;

/// What is to be done at the wire, with its cautions.
#[component]
pub fn TakeOff() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let measuring = workshop.measuring();
    let has_measured = memo(move || workshop.measuring().measured.with(Option::is_some));
    let trim = memo(move || trim_of(measuring.advice().as_ref()));
    view! {
        <Show when=move || has_measured.get()>
            <div class="take-off">
                <Advising/>
                {live(move || trim.get().map(|(whole, safe, _)| view! { <Step whole safe/> }))}
                <Show when=move || trim.with(Option::is_some)>
                    <FindingBlock tone=FindingTone::Caution headline=words::wire_is_off().0
                        text=words::wire_is_off().1 source=words::wire_is_off_source()/>
                </Show>
                <CautionBlock caution=caution(Caution::Analyser)/>
            </div>
        </Show>
    }
}

/// The advice on its way.
#[component]
fn Advising() -> impl IntoView {
    let measuring = expect_context::<Workshop>().measuring();
    let advising = measuring.advising;
    let explained = memo(move || measuring.explained().is_some());
    let done = move || {
        advising.state().with(|state| match state {
            TaskState::Working { done, .. } => *done,
            _ => 1.0,
        })
    };
    let is_working = move || advising.state().with(TaskState::is_working);
    let is_idle =
        move || explained.get() && advising.state().with(|state| *state == TaskState::Idle);
    let none = move || {
        advising
            .state()
            .with(|state| matches!(state, TaskState::Done(None)))
    };
    view! {
        <Show when=is_working>
            <ProgressBar done=Signal::derive(done) text=words::working_out() on_stop=move |()| advising.stop()/>
        </Show>
        <Show when=is_idle>
            <Action text=words::work_out() on_press=move |()| measuring.advise()/>
        </Show>
        <Show when=none>
            <FindingBlock headline=words::nothing_to_advise().0 text=words::nothing_to_advise().1/>
        </Show>
    }
}

/// The first step: the main button, and another amount.
#[component]
fn Step(whole: u32, safe: u32) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let unit = workshop.unit;
    let own = RwSignal::new(None::<u32>);
    let amount = move || own.get().unwrap_or_else(|| offered(safe, unit.get()));
    let value = move || match own.get() {
        Some(um) => format_length_exact(um, unit.get()),
        None => format_length_number(offered(safe, unit.get()), unit.get()),
    };
    let take = move |text: String| -> Result<(), Fault> {
        let um = parse_length(&text, unit.get_untracked())?.value;
        let wire = workshop
            .work
            .with_untracked(|work| work.design.probe.length_um);
        if um == 0 || um >= wire {
            return Err(words::no_wire_left().to_owned().into());
        }
        own.set(Some(um));
        Ok(())
    };
    let said = move || {
        words::too_much(
            amount(),
            offered(safe, unit.get()).max(safe),
            whole,
            unit.get(),
        )
    };
    let done = move |()| {
        let um = untrack(amount);
        work_done(workshop, Work::Cut(um), untrack(|| after_cut(workshop, um)));
    };
    let full_keyboard = move || unit.get() == LengthUnit::Inch;
    view! {
        <Action text=move || words::have_taken_off(amount(), unit.get()) kind=ActionKind::Main on_press=done/>
        <p class="note">{words::what_it_writes()}</p>
        <NumberField label=words::other_amount() help=words::other_amount_help() value=value take=take
            unit=move || unit.get().symbol().to_owned() full_keyboard=full_keyboard/>
        {live(move || said().map(|text| view! { <FindingBlock tone=FindingTone::Caution headline=text/> }))}
    }
}

/// A safe step as a maker can set it, never more than it is.
pub(super) const fn offered(safe_um: u32, unit: LengthUnit) -> u32 {
    match unit {
        LengthUnit::Millimetre => safe_um / 100 * 100,
        LengthUnit::Inch => safe_um * 10 / 254 * 254 / 10,
    }
}

/// Worst VSWR to expect with so much wire off the can as it most likely is.
pub(super) fn after_cut(workshop: Workshop, cut_um: u32) -> Option<f64> {
    let mut built = workshop.measuring().advice()?.as_built;
    built.probe.length_um = built.probe.length_um.checked_sub(cut_um)?;
    let outside = workshop.answers.outside.get();
    worst_vswr_as_built(&built, outside.as_ref()).ok().flatten()
}

/// Notes work in the log; the design follows where something new was made. The
/// measurement belongs to the can before it, and is put away.
pub(super) fn work_done(workshop: Workshop, work: Work, expected: Option<f64>) {
    let measuring = workshop.measuring();
    let Some(told) = measuring.told() else { return };
    let before = workshop.work.get_untracked().design;
    let mut after = None;
    measuring.logs.update(|logs| {
        logs.change(|log| {
            after = log.work(
                &told,
                &before,
                work,
                expected.and_then(milli),
                browser::today(),
            );
        });
    });
    if let Some(after) = after {
        // What was cut stays cut: it no longer follows the best.
        workshop.edit(Change::Measured, |work| {
            work.design = after;
            work.cut = Cut::AsCut;
        });
        measuring.put_away();
    }
}

#[cfg(test)]
mod tests {
    use super::offered;
    use tinwave_maker::entry::LengthUnit::{Inch, Millimetre};

    #[test]
    fn a_step_is_what_a_hand_can_set_and_never_more() {
        assert_eq!(offered(780, Millimetre), 700);
        // 0.030 in is 762 micrometres.
        assert_eq!(offered(780, Inch), 762);
        for um in 0..3_000 {
            assert!(
                offered(um, Millimetre) <= um && offered(um, Inch) <= um,
                "{um}"
            );
        }
    }
}
