//! The can's entries: width by three ways, length, band, and what is finer.

use leptos::prelude::*;
use tinwave_core::design_error::Field;
use tinwave_words::{can as words, label};

use super::band::BandEntry;
use super::metal::MetalEntry;
use super::width::{WallEntry, WidthEntry};
use crate::kit::{Choice, DesignField, EntryGroup, Fold, Pick};
use crate::reactive::{derived, memo};
use crate::state::Workshop;
use words::WidthBy;

/// Width, length and band, all in the first sight of a phone.
#[component]
pub fn SizeEntries() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let by = RwSignal::new(WidthBy::default());
    let ways: Vec<Pick> = WidthBy::ALL
        .map(|way| Pick::new(way.key(), way.name()))
        .to_vec();
    let choose = move |key: String| {
        if let Some(way) = WidthBy::from_key(&key) {
            by.set(way);
        }
    };
    let finer = move || {
        let unit = workshop.unit.get();
        workshop.work.with(|work| {
            let can = &work.design.can;
            words::wall_recess_metal_values(can.wall_um, can.base_recess_um, can.metal, unit)
        })
    };
    // A station that is opened for a can of one's own needs no such line.
    let began_as_example = untrack(|| workshop.is_example());
    view! {
        <EntryGroup title=words::size() quiet=true>
            {began_as_example.then(|| view! { <ExampleNote/> })}
            <Choice label=words::measured_how() picks=ways
                chosen=move || by.get().key().to_owned() on_choose=choose/>
            <WidthEntry by/>
            <DesignField field=Field::OpenLength label=words::length_inside()
                help=words::length_help()/>
            <BandEntry/>
            <Fold title=words::wall_recess_metal() summary=finer>
                <WallEntry by/>
                <DesignField field=Field::BaseRecess label=label(Field::BaseRecess).plain
                    help=label(Field::BaseRecess).help/>
                <MetalEntry/>
            </Fold>
        </EntryGroup>
    }
    .into_any()
}

/// That it is an example; from the first edit on, that it no longer is. Both take the
/// same room: what is typed in below must not move under the finger.
#[component]
fn ExampleNote() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let is_example = memo(move || workshop.is_example());
    let said = |sentence: &'static str, is_true: Signal<bool>| {
        view! { <span class:covered=move || !is_true.get()>{sentence}</span> }
    };
    view! {
        <p class="example-note">
            {said(words::example_note(), is_example.into())}
            {said(words::own_note(), derived(move || !is_example.get()))}
        </p>
    }
}
