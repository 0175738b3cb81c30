//! What each millimetre matters: a bar for each dimension, from "as drawn" to the worst.

use leptos::prelude::*;
use tinwave_drawing::chart::{Axis, nice_step};
use tinwave_maker::entry::LengthUnit;
use tinwave_protocol::matters::{Matter, Matters};
use tinwave_words::feed as words;

use super::known::Feed;
use crate::kit::Part;
use crate::reactive::memo;

/// Beyond this a bar ends at the axis' end; its figure says how far it goes.
const MOST: f64 = 3.0;

/// The bars, on one axis.
#[component]
pub fn WhatMattersPart() -> impl IntoView {
    let feed = expect_context::<Feed>();
    let known = memo(move || feed.matters().or_else(|| feed.last_matters()));
    let stale = move || feed.matters().is_none();
    let note = move || {
        let as_drawn = known.with(|known| known.as_ref().and_then(|known| known.as_drawn));
        as_drawn.map_or_else(String::new, words::matters_note)
    };
    let bars = move || {
        known.with(|known| {
            let (known, as_drawn) = known
                .as_ref()
                .and_then(|known| Some((known, known.as_drawn?)))?;
            let unit = feed.workshop.unit.get();
            Some(view! { <Bars known=known.clone() as_drawn unit/> })
        })
    };
    let waits = move || {
        let nothing =
            known.with(|known| known.as_ref().is_none_or(|known| known.as_drawn.is_none()));
        nothing.then(|| {
            let said = if feed.is_asking() {
                words::waits_for_computation()
            } else if feed.workshop.answers.is_awake() {
                words::no_match()
            } else {
                words::waits_for_touch()
            };
            view! { <p class="chart-empty">{said}</p> }
        })
    };
    view! {
        <Part title=words::matters_title() note wide=true>
            <div class="matters" class:stale=stale>{bars}{waits}</div>
        </Part>
    }
}

#[component]
fn Bars(known: Matters, as_drawn: f64, unit: LengthUnit) -> impl IntoView {
    let axis = axis(&known, as_drawn);
    let start = axis.share(as_drawn.min(MOST));
    let ticks = axis.tick_values(5);
    let texts = axis.tick_texts(&ticks);
    let ticks: Vec<(f64, String)> = ticks
        .iter()
        .map(|tick| axis.share(*tick))
        .zip(texts)
        .collect();
    let row = |matter: &Matter| {
        let name = words::dimension(matter.dimension);
        let tolerance = words::tolerance(matter.dimension, matter.change, unit);
        let worst = matter
            .worst_vswr
            .map_or_else(|| words::impossible().to_owned(), words::vswr);
        let end = axis
            .share(matter.worst_vswr.unwrap_or(MOST).clamp(1.0, axis.high))
            .max(start);
        let grid = ticks.iter().map(|(share, _)| {
            view! { <line class="grid" x1=percent(*share) x2=percent(*share) y1="0" y2="100%"/> }
        });
        view! {
            <li aria-label=words::matter(name, &tolerance, &worst)>
                <span class="matter-name">{name}</span>
                <span class="matter-change">{tolerance.clone()}</span>
                <svg class="matter-bar" aria-hidden="true">
                    {grid.collect_view()}
                    <rect x=percent(start) width=percent(end - start) y="15%" height="70%"/>
                    <line class="drawn" x1=percent(start) x2=percent(start) y1="0" y2="100%"/>
                </svg>
                <b class="matter-worst">{worst.clone()}</b>
            </li>
        }
    };
    let axis_text = |(share, text): &(f64, String)| {
        // The first tells what the axis is.
        let (anchor, text) = if *share < 0.01 {
            ("start", words::vswr_tick(text))
        } else {
            ("middle", text.clone())
        };
        view! { <text x=percent(*share) y="1.1em" text-anchor=anchor>{text}</text> }
    };
    view! {
        <ul class="matter-list">{known.dimensions.iter().map(row).collect_view()}</ul>
        <div class="matter-axis" aria-hidden="true">
            <svg>{ticks.iter().map(axis_text).collect_view()}</svg>
        </div>
        <p class="note">{words::matters_source()}</p>
    }
}

/// From 1 to a round end that holds the longest bar.
fn axis(known: &Matters, as_drawn: f64) -> Axis {
    let costs = known
        .dimensions
        .iter()
        .filter_map(|matter| matter.worst_vswr);
    let highest = costs.fold(as_drawn, f64::max).clamp(1.05, MOST);
    let step = nice_step((highest - 1.0) / 4.0);
    Axis::new(
        "VSWR",
        "",
        1.0,
        1.0 + (((highest - 1.0) / step).ceil()) * step,
    )
}

fn percent(share: f64) -> String {
    format!("{:.2}%", share * 100.0)
}
