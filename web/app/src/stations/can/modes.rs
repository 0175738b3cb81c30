//! What passes at which frequency: a row a mode.

use leptos::prelude::*;
use tinwave_core::waveguide_mode::Mode;
use tinwave_drawing::mode_field::field_lines;
use tinwave_drawing::mode_ladder::{LadderRow, ModeLadder};
use tinwave_maker::mode_role::ModeRole;
use tinwave_words::can as words;
use tinwave_words::terms::Term;

use crate::kit::{Part, TableFold, TableText, TermHint};
use crate::reactive::{live, memo};
use crate::state::Workshop;

fn percent(share: f64) -> String {
    format!("{:.2}%", share * 100.0)
}

/// The modes as a part of the station.
#[component]
pub fn WhatPasses() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let band = memo(move || workshop.work.with(|work| work.design.band));
    // The cutoffs depend on the can alone: they never wait for a cut.
    let modes = memo(move || workshop.work.with(|work| mode_entries(&work.design)));
    let ladder = memo(move || modes.with(|modes| ModeLadder::new(modes, band.get())));
    let rows = move || {
        let ladder = ladder.get();
        ladder
            .rows
            .iter()
            .map(|row| view! { <ModeRow row=row.clone() band=ladder.band/> })
            .collect_view()
    };
    let more = move || {
        ladder.with(|ladder| match ladder.more {
            0 => String::new(),
            count => words::more_modes(count),
        })
    };
    let ticks = move || {
        ladder.with(|ladder| {
            let tick = |tick: &tinwave_drawing::mode_ladder::AxisTick| {
                view! { <text x=percent(tick.at) y="1.1em">{tick.mhz.to_string()}</text> }
            };
            ladder.ticks.iter().map(tick).collect_view()
        })
    };
    let table = move || TableText {
        head: words::mode_table_head().map(str::to_owned).to_vec(),
        rows: ladder.with(|ladder| {
            ladder
                .rows
                .iter()
                .map(|row| table_row(row, band.get()))
                .collect()
        }),
    };
    view! {
        <Part title=words::what_passes()>
            <p class="note">{words::each_row_is_a()}" "<TermHint of=Term::Mode/>{live(move || modes.with(|modes| words::what_passes_note(modes)))}</p>
            <div class="mode-rows">{rows}</div>
            <svg class="mode-axis" aria-hidden="true">
                {ticks}
                <text class="unit" x="100%" y="1.1em">"MHz"</text>
            </svg>
            <Show when=move || !more().is_empty()><p class="note">{more}</p></Show>
            <TableFold name=words::what_passes() table=table/>
        </Part>
    }
    .into_any()
}

fn mode_entries(design: &tinwave_core::design::Design) -> Vec<tinwave_core::verdict::ModeEntry> {
    tinwave_core::analysis::modes_of(design)
}

fn table_row(row: &LadderRow, band: tinwave_core::design::Band) -> Vec<String> {
    let names: Vec<String> = row.modes.iter().map(ToString::to_string).collect();
    let (_, place) = words::mode_row(&row.modes, row.cutoff_hz, row.role, band);
    let (from, where_to) = place.split_once(", ").unwrap_or((place.as_str(), ""));
    vec![names.join(", "), from.to_owned(), where_to.to_owned()]
}

/// A row: the mode's field, what it does, its bar over the band.
#[component]
fn ModeRow(row: LadderRow, band: (f64, f64)) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let design_band = workshop.work.with_untracked(|work| work.design.band);
    let (does, place) = words::mode_row(&row.modes, row.cutoff_hz, row.role, design_band);
    let wanted = row.modes.contains(&Mode::TE11);
    let class = match (wanted, row.role) {
        (true, _) => "mode-row wanted",
        (false, ModeRole::StaysOut) => "mode-row",
        (false, _) => "mode-row unwanted",
    };
    let mode = row.modes.first().copied().unwrap_or(Mode::TE11);
    let from = percent(row.from);
    view! {
        <div class=class>
            <EndView mode/>
            <p class="mode-words"><strong>{does}</strong><span>{place}</span></p>
            <svg class="mode-bar" aria-hidden="true">
                <rect class="band" x=percent(band.0) width=percent(band.1 - band.0) height="100%"/>
                <line class="bar" x1=from.clone() x2="100%" y1="50%" y2="50%"/>
                <line class="cutoff" x1=from.clone() x2=from y1="30%" y2="70%"/>
            </svg>
        </div>
    }
    .into_any()
}

/// The field of a mode as it stands across the can, the wire coming from below.
#[component]
fn EndView(mode: Mode) -> impl IntoView {
    let lines: String = field_lines(mode)
        .iter()
        .flat_map(|line| line.iter().enumerate())
        .map(|(place, (x, y))| {
            let letter = if place == 0 { 'M' } else { 'L' };
            // Upwards is downwards on the screen.
            format!("{letter}{x:.3} {:.3}", -y)
        })
        .collect();
    view! {
        <svg class="end-view" viewBox="-1.1 -1.1 2.2 2.2" aria-hidden="true">
            <path class="field" d=lines/>
            <circle r="1"/>
        </svg>
    }
    .into_any()
}
