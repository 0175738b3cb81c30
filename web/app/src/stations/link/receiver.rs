//! How weak a signal the receivers still hear.

use leptos::prelude::*;
use tinwave_core::radio_link::{ChannelWidth, Coding, End, OlderRate};
use tinwave_maker::link_plan::{PlanNumber, Rate, Role, SensitivityBy};
use tinwave_words::link_plan::{self as words, ChoiceWord, choice_words};

use super::plan_field::PlanField;
use crate::kit::{Choice, Pick, PickGroup, Picker};
use crate::reactive::memo;
use crate::state::Workshop;

const WAYS: [(&str, SensitivityBy); 3] = [
    ("table", SensitivityBy::Table),
    ("stated", SensitivityBy::Stated),
    ("noise", SensitivityBy::Noise),
];

/// The receiver's entries.
#[component]
pub fn Receiver() -> impl IntoView {
    let plan = expect_context::<Workshop>().plan();
    let by = memo(move || plan.entries.with(|plan| plan.sensitivity));
    let listens_here = memo(move || plan.entries.with(|plan| plan.role == Role::ListensHere));
    let picks: Vec<Pick> = WAYS
        .iter()
        .map(|(key, by)| Pick::new(*key, words::sensitivity_by(*by)))
        .collect();
    let chosen = move || {
        let found = WAYS.iter().find(|(_, one)| *one == by.get());
        found.map_or_else(String::new, |(key, _)| (*key).to_owned())
    };
    let choose = move |key: String| {
        if let Some((_, by)) = WAYS.iter().find(|(known, _)| *known == key) {
            plan.change(|plan| plan.sensitivity = *by);
        }
    };
    view! {
        <Choice label=choice_words(ChoiceWord::KnownBy) picks=picks chosen=chosen on_choose=choose labelled=true/>
        <Show when=move || by.get() == SensitivityBy::Table>
            <RateEntry/>
            <WidthEntry/>
        </Show>
        <Show when=move || by.get() == SensitivityBy::Stated>
            <PlanField number=PlanNumber::Stated(End::A)/>
            <PlanField number=PlanNumber::Stated(End::B)/>
        </Show>
        <Show when=move || by.get() != SensitivityBy::Table>
            <PlanField number=PlanNumber::Bandwidth/>
        </Show>
        <Show when=move || by.get() == SensitivityBy::Noise || listens_here.get()>
            <PlanField number=PlanNumber::NoiseFigure/>
        </Show>
        <Show when=move || by.get() == SensitivityBy::Noise>
            <PlanField number=PlanNumber::Snr/>
        </Show>
        <Show when=move || listens_here.get()><PlanField number=PlanNumber::AntennaNoise/></Show>
    }
}

/// Every rate, with the key of its place.
fn rates() -> impl Iterator<Item = (String, Rate)> {
    let coded = Coding::ALL.into_iter().map(Rate::Coded);
    let older = OlderRate::ALL.into_iter().map(Rate::Older);
    coded
        .chain(older)
        .enumerate()
        .map(|(n, rate)| (n.to_string(), rate))
}

#[component]
fn RateEntry() -> impl IntoView {
    let plan = expect_context::<Workshop>().plan();
    let groups = move || {
        let width = plan.entries.with(|plan| plan.width);
        let picks = |older: bool| {
            rates()
                .filter(move |(_, rate)| matches!(rate, Rate::Older(_)) == older)
                .map(|(key, rate)| {
                    let (name, detail) = words::rate(rate, width);
                    Pick::new(key, name).with_detail(detail)
                })
                .collect()
        };
        let (of_one_stream, older) = words::rate_groups();
        vec![
            PickGroup {
                name: of_one_stream.to_owned(),
                picks: picks(false),
            },
            PickGroup {
                name: older.to_owned(),
                picks: picks(true),
            },
        ]
    };
    let chosen = move || {
        let rate = plan.entries.with(|plan| plan.rate);
        let mut all = rates();
        all.find(|(_, one)| *one == rate)
            .map_or_else(String::new, |(key, _)| key)
    };
    let choose = move |key: String| {
        if let Some((_, rate)) = rates().find(|(known, _)| *known == key) {
            plan.change(|plan| plan.rate = rate);
        }
    };
    view! {
        <Picker label=choice_words(ChoiceWord::Rate) groups=groups chosen=chosen on_choose=choose/>
        <p class="note">{words::rate_note()}</p>
    }
}

/// Width of the channel; the older rates have but one.
#[component]
fn WidthEntry() -> impl IntoView {
    let plan = expect_context::<Workshop>().plan();
    let is_coded = move || {
        plan.entries
            .with(|plan| matches!(plan.rate, Rate::Coded(_)))
    };
    let picks = || {
        ChannelWidth::ALL
            .into_iter()
            .enumerate()
            .map(|(n, width)| Pick::new(n.to_string(), words::width(width)))
            .collect::<Vec<_>>()
    };
    let chosen = move || {
        let width = plan.entries.with(|plan| plan.width);
        let place = ChannelWidth::ALL.iter().position(|one| *one == width);
        place.unwrap_or_default().to_string()
    };
    let choose = move |key: String| {
        let place: Option<usize> = key.parse().ok();
        if let Some(width) = place.and_then(|n| ChannelWidth::ALL.get(n).copied()) {
            plan.change(|plan| plan.width = width);
        }
    };
    view! {
        <Show when=is_coded>
            <Choice label=choice_words(ChoiceWord::ChannelWidth) picks=picks() chosen=chosen on_choose=choose
                labelled=true/>
        </Show>
    }
}
