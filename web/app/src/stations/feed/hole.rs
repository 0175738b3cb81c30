//! Hole, sleeve, stray capacitance: what is rarely changed.

use leptos::prelude::*;
use tinwave_core::design_error::Field;
use tinwave_maker::feed::Opening;
use tinwave_maker::history::Change;
use tinwave_words::feed::{self as words, HoleSaid};

use crate::kit::{Check, Choice, DesignField, Fold, Pick};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// The fold, with one word for each of the two holes in its line.
#[component]
pub fn HoleFold() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let work = workshop.work;
    let hole = memo(move || {
        work.with(|work| HoleSaid {
            drill_um: work.connector.drill_um(),
            opening_um: work.opening_um(),
            opening: work.opening(),
            reference_milliohm: work.design.probe.reference_milliohm,
        })
    });
    let unit = workshop.unit;
    let picks = move || {
        let offered = |opening: &Opening| {
            *opening != Opening::Connector
                || work.with(|work| work.connector.line_hole_um().is_some())
        };
        let reference = hole.get().reference_milliohm;
        let pick =
            |opening: Opening| Pick::new(opening.key(), words::opening_by(opening, reference));
        Opening::ALL
            .into_iter()
            .filter(offered)
            .map(pick)
            .collect::<Vec<_>>()
    };
    let take = move |key: String| {
        if let Some(opening) = Opening::from_key(&key) {
            workshop.edit(Change::Field(Field::HoleDiameter), |work| {
                work.take_opening(opening)
            });
        }
    };
    let has_sleeve = memo(move || work.with(|work| work.design.probe.sleeve.is_some()));
    view! {
        <Fold title=words::hole_sleeve_stray() summary=move || words::hole_line(hole.get(), unit.get())>
            <p class="note">{live(move || words::hole_sentence(hole.get(), unit.get()))}</p>
            <Choice label=words::opening() labelled=true picks=Signal::derive(picks)
                chosen=move || hole.get().opening.key().to_owned() on_choose=take/>
            <Show when=move || hole.get().opening == Opening::Typed>
                <DesignField field=Field::HoleDiameter label=words::opening() help=words::opening_help()/>
            </Show>
            <Check label=words::sleeve() checked=has_sleeve
                on_change=move |on| workshop.edit(Change::Sleeve, |work| work.put_sleeve(on))/>
            <Show when=move || has_sleeve.get()>
                <DesignField field=Field::SleeveDiameter label=words::sleeve_outside()/>
                <DesignField field=Field::SleevePermittivity label=words::sleeve_permittivity()
                    help=words::sleeve_permittivity_help()/>
            </Show>
            <DesignField field=Field::Shunt label=words::stray() help=words::stray_help()/>
            <DesignField field=Field::Reference label=words::cable() help=words::cable_help()/>
        </Fold>
    }
}
