//! What is off, as far as it can be known.

use leptos::prelude::*;
use tinwave_core::diagnosis::{Conclusion, Diagnosis};
use tinwave_core::dimension::Dimension;
use tinwave_maker::history::Change;
use tinwave_protocol::measure::Diagnosed;
use tinwave_words::measure as words;

use super::facts::OpenTable;
use crate::browser;
use crate::kit::{Action, Check, FindingBlock, FindingTone, Part, TableText};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// The table of causes with their bounds; for a measurement that is not explained, what
/// to look at; nothing for one that tells no cause.
#[component]
pub fn WhatIsOff() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let found = memo(move || workshop.measuring().found());
    move || match found.get() {
        Some(Diagnosed::Found(found)) if found.conclusion == Conclusion::Unexplained => {
            let (headline, text) = words::look_at();
            view! { <FindingBlock tone=FindingTone::Caution headline text/> }.into_any()
        }
        Some(Diagnosed::Found(found)) => view! { <Causes found/> }.into_any(),
        _ => ().into_any(),
    }
}

#[component]
fn Causes(found: Diagnosis) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let measuring = workshop.measuring();
    let found = StoredValue::new(found);
    let table = move || found.with_value(|found| table(workshop, found));
    let notes = move || found.with_value(|found| notes(workshop, found));
    let differs = found.with_value(|found| found.conclusion != Conclusion::AsDrawn);
    let has_port = found.with_value(|found| found.port_length_m.is_some());
    view! {
        <Part title=words::off_title() note=found.with_value(words::off_note)>
            <OpenTable name=words::off_title() table=Signal::derive(table)/>
            {live(move || notes().into_iter().map(|text| view! { <p class="note">{text}</p> }).collect_view())}
            {has_port.then(|| view! {
                <Check label=words::take_out() checked=measuring.take_out
                    on_change=move |on: bool| measuring.take_out.set(on)/>
            })}
            {differs.then(|| view! {
                <div class="actions">
                    <Action text=words::take_as_found() disabled=move || measuring.advice().is_none()
                        on_press=move |()| take_as_found(workshop)/>
                </div>
                <p class="note">{words::take_as_found_note()}</p>
            })}
        </Part>
    }
}

fn table(workshop: Workshop, found: &Diagnosis) -> TableText {
    let unit = workshop.unit.get();
    let prior = workshop.measuring().prior.get();
    let rows = found.estimates.iter().map(|estimate| {
        let dimension = estimate.dimension;
        let off = words::with_bound(estimate, unit);
        let before = prior
            .as_ref()
            .and_then(|prior| prior.knowledge.sd_of(dimension))
            .map_or_else(String::new, |sd| words::bound(dimension, sd, unit));
        let off = if estimate.measured {
            off
        } else {
            words::not_told(&off)
        };
        vec![words::dimension_head(dimension).to_owned(), off, before]
    });
    TableText {
        head: words::off_heads(),
        rows: rows.collect(),
    }
}

fn notes(workshop: Workshop, found: &Diagnosis) -> Vec<String> {
    let unit = workshop.unit.get();
    let measuring = workshop.measuring();
    let another = measuring
        .prior
        .with(|prior| prior.as_ref().is_some_and(|prior| prior.another_can));
    let mut estimates = found.estimates.iter();
    let length = estimates.find(|estimate| estimate.dimension == Dimension::ProbeLength);
    let sharpened = if another {
        Some(words::another_can().to_owned())
    } else {
        length.and_then(|length| words::sharpened(&measuring.earlier_sds_m(), length.sd, unit))
    };
    let port = found
        .port_length_m
        .map(|(length, sd)| words::port_length(length, sd, unit));
    [words::alike(found), sharpened, port]
        .into_iter()
        .flatten()
        .collect()
}

/// The design becomes the can as it was found.
fn take_as_found(workshop: Workshop) {
    let measuring = workshop.measuring();
    let Some((told, advice)) = measuring.told().zip(untrack(|| measuring.advice())) else {
        return;
    };
    let present = workshop.work.get_untracked().design;
    let mut built = advice.as_built;
    built.name.clone_from(&present.name);
    if built.check().is_err() || built == present {
        return;
    }
    measuring.logs.update(|logs| {
        logs.change(|log| log.redrawn(&told, &present, &built, browser::today()));
    });
    workshop.edit(Change::Measured, |work| {
        work.design = built;
        work.cut = tinwave_maker::workpiece::Cut::AsCut;
    });
}
