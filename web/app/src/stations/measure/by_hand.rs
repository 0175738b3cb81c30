//! A table by hand, and one reading.

use leptos::prelude::*;
use tinwave_core::diagnosis::Measurement;
use tinwave_maker::entry::parse_frequency;
use tinwave_maker::measured::{Column, decimal, read_table};
use tinwave_words::measure as words;

use crate::kit::{Action, Choice, Fault, NumberField, Pick, new_id};
use crate::reactive::memo;
use crate::state::{Brought, Source, Workshop};

/// A table: frequency and VSWR or return loss, a pair on each line.
#[component]
pub fn ByTable() -> impl IntoView {
    let measuring = expect_context::<Workshop>().measuring();
    let id = new_id("table");
    let fault_id = format!("{id}-fault");
    let (text, fault) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let column = RwSignal::new(Column::Vswr);
    let [vswr, loss] = words::columns();
    let picks = vec![Pick::new("vswr", vswr), Pick::new("loss", loss)];
    let chosen = move || match column.get() {
        Column::Vswr => "vswr".to_owned(),
        Column::ReturnLoss => "loss".to_owned(),
    };
    let choose = move |key: String| {
        column.set(if key == "loss" {
            Column::ReturnLoss
        } else {
            Column::Vswr
        });
    };
    let take = move |()| match read_table(&text.get_untracked(), column.get_untracked()) {
        Ok(read) => {
            fault.set(String::new());
            measuring.bring(Brought {
                name: words::table_name().to_owned(),
                source: Source::ByHand(read.measurement, read.turned),
            });
        }
        Err(wrong) => fault.set(words::table_wrong(&wrong)),
    };
    view! {
        <Choice label=words::second_column() labelled=true picks=picks chosen=chosen
            on_choose=choose/>
        <div class="table-entry">
            <label for=id.clone()>{words::table_label()}<span class="sub">{words::table_help()}</span></label>
            <textarea id=id rows="5" spellcheck="false" autocomplete="off" aria-describedby=fault_id.clone()
                prop:value=move || text.get()
                on:input=move |event| text.set(event_target_value(&event))></textarea>
            <p id=fault_id class="fault-line" role="status">{fault}</p>
            <Action text=words::take_table() on_press=take/>
        </div>
    }
}

/// One reading: a frequency and the VSWR there.
#[component]
pub fn ByReading() -> impl IntoView {
    let measuring = expect_context::<Workshop>().measuring();
    let frequency = RwSignal::new(None::<f64>);
    let vswr = RwSignal::new(None::<f64>);
    let (at, there) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let take_frequency = move |text: String| -> Result<(), Fault> {
        frequency.set(None);
        let read = parse_frequency(&text)?;
        frequency.set(Some(f64::from(read.value) * 1e3));
        at.set(text);
        Ok(())
    };
    let take_vswr = move |text: String| -> Result<(), Fault> {
        vswr.set(None);
        let read = decimal(&text).ok_or_else(|| words::no_number().to_owned())?;
        if !(1.0..=1e6).contains(&read) {
            return Err(words::vswr_from_one().to_owned().into());
        }
        vswr.set(Some(read));
        there.set(text);
        Ok(())
    };
    let reading = memo(move || {
        let (hz, vswr) = (frequency.get()?, vswr.get()?);
        Measurement::from_best(hz, vswr).ok()
    });
    let take = move |()| {
        if let Some(measurement) = reading.get_untracked() {
            measuring.bring(Brought {
                name: words::reading_name().to_owned(),
                source: Source::ByHand(measurement, false),
            });
        }
    };
    view! {
        <NumberField label=words::reading_at() unit="MHz" value=at take=take_frequency/>
        <NumberField label=words::reading_vswr() value=there take=take_vswr/>
        <p class="note">{words::reading_note()}</p>
        <Action text=words::take_reading() disabled=move || reading.with(Option::is_none) on_press=take/>
    }
}
