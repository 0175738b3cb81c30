//! How a measurement comes in, and which one is there.

use leptos::prelude::*;
use tinwave_core::diagnosis::Measurement;
use tinwave_protocol::measure::FileRefused;
use tinwave_words::measure as words;

use super::by_hand::{ByReading, ByTable};
use crate::kit::{
    Action, ActionKind, Choice, DroppedFile, EntryGroup, FileDrop, FindingBlock, FindingTone, Pick,
    ProgressBar, ShortList,
};
use crate::reactive::{effect, live, memo};
use crate::state::{Measuring, NotTaken, Source, Trust, Workshop};

/// The entry: file, table or reading; once one is there, its line and what belongs to it.
#[component]
pub fn Bring() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let measuring = workshop.measuring();
    let another = RwSignal::new(false);
    let is_there = memo(move || measuring.brought.with(Option::is_some));
    // What was brought shuts the ways to bring one.
    effect(move || {
        measuring.brought.track();
        another.set(false);
    });
    view! {
        <EntryGroup title=words::the_measurement() quiet=true>
            <Show when=move || is_there.get()><Present another/></Show>
            <Show when=move || !is_there.get() || another.get()><WaysIn/></Show>
            <Trouble/>
            <Show when=move || is_there.get() && !another.get()><Details/></Show>
        </EntryGroup>
    }
}

/// The three ways to bring one.
#[component]
fn WaysIn() -> impl IntoView {
    let measuring = expect_context::<Workshop>().measuring();
    let way = RwSignal::new("file".to_owned());
    let [file, table, reading] = words::ways();
    let picks = vec![
        Pick::new("file", file),
        Pick::new("table", table),
        Pick::new("reading", reading),
    ];
    let take = move |file: DroppedFile| measuring.read_file(file.name, file.bytes);
    let entry = move || match way.get().as_str() {
        "table" => view! { <ByTable/> }.into_any(),
        "reading" => view! { <ByReading/> }.into_any(),
        _ => view! {
            <FileDrop label=words::choose_file() note=words::which_files()
                accept=".s1p,.s2p,.ts,.txt".to_owned() on_file=take/>
        }
        .into_any(),
    };
    view! {
        <Choice label=words::how_brought() picks=picks chosen=way
            on_choose=move |key: String| way.set(key)/>
        {entry}
    }
}

/// The line of the measurement that is there.
#[component]
fn Present(another: RwSignal<bool>) -> impl IntoView {
    let measuring = expect_context::<Workshop>().measuring();
    let name = move || {
        let brought = measuring.brought.get();
        brought.map_or_else(String::new, |brought| brought.name)
    };
    let toggle_text = move || {
        let text = if another.get() {
            words::keep_this()
        } else {
            words::another()
        };
        text.to_owned()
    };
    view! {
        <div class="measurement-line">
            <div>
                <p class="headline">{name}</p>
                <p class="note">{live(move || holds(measuring))}</p>
            </div>
            <Action text=toggle_text kind=ActionKind::Words
                on_press=move |()| another.update(|is| *is = !*is)/>
            <Action text=words::put_away() kind=ActionKind::Words
                on_press=move |()| measuring.put_away()/>
        </div>
    }
}

/// Points, range and port of the measurement that is there.
fn holds(measuring: Measuring) -> String {
    let Some(measurement) = measuring.measurement.get() else {
        return String::new();
    };
    let ends = |hz: Vec<f64>| {
        let range = hz.first().copied().zip(hz.last().copied());
        (hz.len(), range)
    };
    let (points, range) = match measurement.as_ref() {
        Measurement::Reflection(points) => ends(points.iter().map(|point| point.0).collect()),
        Measurement::Magnitude(points) => ends(points.iter().map(|point| point.0).collect()),
        Measurement::BestAt { frequency_hz, .. } => ends(vec![*frequency_hz]),
    };
    let ports = measuring
        .brought
        .with(|brought| brought.as_ref().map_or(1, |one| one.ports()));
    let port = (ports > 1).then(|| measuring.port.get() + 1);
    words::holds(points, range, port)
}

/// Port, trust, and notes on what was read.
#[component]
fn Details() -> impl IntoView {
    let measuring = expect_context::<Workshop>().measuring();
    let ports = memo(move || {
        let brought = measuring.brought.get();
        brought.map_or(1, |brought| brought.ports())
    });
    let port_picks = move || {
        (1..=ports.get())
            .map(|n| Pick::new(n.to_string(), words::port(n)))
            .collect::<Vec<_>>()
    };
    let trusts = Trust::ALL.into_iter().zip(words::trusts());
    let trusts: Vec<Pick> = trusts
        .map(|(trust, name)| Pick::new(format!("{trust:?}"), name))
        .collect();
    let choose_trust = move |key: String| {
        if let Some(trust) = Trust::ALL
            .into_iter()
            .find(|trust| format!("{trust:?}") == key)
        {
            measuring.trust.set(trust);
        }
    };
    let choose_port = move |key: String| {
        if let Ok(number) = key.parse::<usize>() {
            measuring.port.set(number.saturating_sub(1));
        }
    };
    view! {
        <Show when=move || { ports.get() > 1 }>
            <ShortList label=words::port_label() picks=Signal::derive(port_picks)
                chosen=move || (measuring.port.get() + 1).to_string() on_choose=choose_port/>
        </Show>
        <ShortList label=words::trust_label() picks=trusts
            chosen=move || format!("{:?}", measuring.trust.get()) on_choose=choose_trust/>
        {live(move || notes(measuring).into_iter().map(|text| view! { <p class="note">{text}</p> }).collect_view())}
    }
}

/// What is worth a word about what was read.
fn notes(measuring: Measuring) -> Vec<String> {
    measuring
        .brought
        .with(|brought| match brought.as_ref().map(|one| &one.source) {
            Some(Source::File(read)) => read
                .warnings
                .iter()
                .filter_map(words::file_warned)
                .collect(),
            Some(Source::ByHand(_, true)) => vec![words::table_turned().to_owned()],
            _ => Vec::new(),
        })
}

/// A file that is being read, or was not taken.
#[component]
fn Trouble() -> impl IntoView {
    let measuring = expect_context::<Workshop>().measuring();
    let reading = measuring.reading;
    let is_reading = move || reading.state().with(crate::worker::TaskState::is_working);
    let why = move |not_taken: NotTaken| {
        let why = match &not_taken.why {
            FileRefused::Empty => words::file_empty().to_owned(),
            FileRefused::NotText => words::file_no_text().to_owned(),
            FileRefused::Wrong(error) => words::file_wrong(error),
        };
        let stays = measuring.brought.with(Option::is_some);
        view! {
            <FindingBlock tone=FindingTone::Caution headline=words::refused(&not_taken.name) text=why>
                {stays.then(|| view! { <p class="note">{words::former_stays()}</p> })}
            </FindingBlock>
        }
    };
    view! {
        <Show when=is_reading>
            <ProgressBar done=0.0_f32 text=words::reading_file() on_stop=move |()| reading.stop()/>
        </Show>
        <div role="status">{live(move || measuring.not_taken.get().map(why))}</div>
    }
}
