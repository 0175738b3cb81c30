//! Whether the power is lawful: by the rules that are chosen, and never without.

use leptos::prelude::*;
use tinwave_core::radio_link::End;
use tinwave_core::radio_link::lawful::{Arrangement, RuleSet};
use tinwave_maker::link_plan::{LawAnswer, LawStanding};
use tinwave_words::link_plan::{self as words, ChoiceWord, PartTitle, choice_words};
use tinwave_words::{Caution, caution};

use super::answer_of;
use crate::kit::{
    CautionBlock, Check, Choice, EntryGroup, FindingBlock, FindingTone, Fold, Pick, ShortList,
};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// Rules and what they say.
#[component]
pub fn Rules() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let plan = workshop.plan();
    let rules = memo(move || plan.entries.with(|plan| plan.rules));
    let sets = || std::iter::once(None).chain(RuleSet::ALL.into_iter().map(Some));
    let key = |set: Option<RuleSet>| set.map_or("", RuleSet::key);
    let picks: Vec<Pick> = sets()
        .map(|set| Pick::new(key(set), words::rules(set).0))
        .collect();
    let choose = move |key: String| {
        plan.change(|plan| plan.rules = RuleSet::from_key(&key));
    };
    view! {
        <EntryGroup title=words::part_titles(PartTitle::Law).0>
            <ShortList label=choice_words(ChoiceWord::Rules) note=move || words::rules(rules.get()).1
                picks=picks chosen=move || key(rules.get()) on_choose=choose/>
            <Show when=move || needs_no_licence(rules.get())>
                <ArrangementEntry/>
                <Check label=choice_words(ChoiceWord::PowerControl)
                    checked=move || plan.entries.with(|plan| plan.power_control)
                    on_change=move |on| plan.change(|plan| plan.power_control = on)/>
            </Show>
            <Show when=move || rules.get().is_some() fallback=|| view! {
                <FindingBlock headline=words::no_rules().0 text=words::no_rules().1/>
            }>
                <Laws/>
                <Besides/>
            </Show>
        </EntryGroup>
    }
}

/// Whether the rules are of sending without a licence.
const fn needs_no_licence(rules: Option<RuleSet>) -> bool {
    matches!(
        rules,
        Some(RuleSet::UsUnlicensed | RuleSet::EuLicenceExempt)
    )
}

#[component]
fn ArrangementEntry() -> impl IntoView {
    let plan = expect_context::<Workshop>().plan();
    let kinds = [
        ("other", Arrangement::Other),
        ("point", Arrangement::FixedPointToPoint),
    ];
    let picks: Vec<Pick> = kinds
        .iter()
        .map(|(key, kind)| Pick::new(*key, words::arrangement(*kind)))
        .collect();
    let chosen = move || {
        let kind = plan.entries.with(|plan| plan.arrangement);
        let found = kinds.iter().find(|(_, one)| *one == kind);
        found.map_or_else(String::new, |(key, _)| (*key).to_owned())
    };
    let choose = move |key: String| {
        if let Some((_, kind)) = kinds.iter().find(|(known, _)| *known == key) {
            plan.change(|plan| plan.arrangement = *kind);
        }
    };
    view! {
        <Choice label=choice_words(ChoiceWord::Stations) picks=picks chosen=chosen on_choose=choose
            labelled=true/>
    }
}

/// How the ends stand: told once where they stand alike.
#[component]
fn Laws() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let laws = memo(move || {
        let answer = answer_of(workshop);
        let of = |end: End| {
            let answer = answer.as_ref()?;
            Some((Some(end), answer.end(end).law.clone()?))
        };
        match (of(End::A), of(End::B)) {
            (Some((_, here)), Some((_, far))) if here == far => vec![(None, here)],
            (here, far) => [here, far].into_iter().flatten().collect(),
        }
    });
    move || {
        laws.get()
            .into_iter()
            .map(|(end, law)| view! { <EndLaw end law/> })
            .collect_view()
    }
}

/// How an end stands, or both.
#[component]
fn EndLaw(end: Option<End>, law: LawAnswer) -> impl IntoView {
    let tone = match law.standing {
        LawStanding::Within => FindingTone::Good,
        LawStanding::Over | LawStanding::MustNotTransmit => FindingTone::Caution,
        LawStanding::NotAllChecked
        | LawStanding::LicenceDecides
        | LawStanding::Listening
        | LawStanding::NotCovered => FindingTone::Note,
    };
    let lines = words::law_lines(&law);
    view! {
        <FindingBlock tone headline=words::law_headline(end, &law) text=words::law_text(&law)>
            <ul class="law-lines">
                {lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}
            </ul>
        </FindingBlock>
    }
}

/// What the rules ask besides, and where they are written.
#[component]
fn Besides() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let conditions = move || {
        let answer = answer_of(workshop);
        answer.map_or_else(Vec::new, |answer| words::law_conditions(&answer))
    };
    let sources = move || {
        let answer = answer_of(workshop);
        answer.map_or_else(Vec::new, |answer| words::law_sources(&answer))
    };
    view! {
        <Fold title=words::conditions_title() summary=move || words::conditions_summary(conditions().len())>
            <Show when=move || needs_no_licence(workshop.plan().entries.with(|plan| plan.rules))>
                <CautionBlock caution=caution(Caution::CertifiedDevice)/>
            </Show>
            <ul class="law-lines">
                {live(move || conditions().into_iter().map(|line| view! { <li>{line}</li> }).collect_view())}
            </ul>
            {live(move || sources().into_iter().map(|line| view! { <p class="note">{line}</p> }).collect_view())}
        </Fold>
    }
}
