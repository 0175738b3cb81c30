//! The pattern all the way round.

use leptos::prelude::*;
use tinwave_drawing::beam_scene::{BeamCuts, ROUND, RoundScene, angle_deg};
use tinwave_maker::entry::format_decimal;
use tinwave_words::beam as words;
use tinwave_words::figures::whole_degrees;

use super::shown::Shown;
use crate::kit::{Part, TableFold, TableText};

/// Degrees between two rows of the table.
const ROW_STEP: usize = 5;

/// The picture and its table.
#[component]
pub fn RoundPart(
    /// What is known of the beam.
    shown: Memo<Shown>,
) -> impl IntoView {
    let (title, note) = words::pictures()[1];
    let cuts = move || shown.with(|shown| shown.beam()?.cuts.clone());
    let drawn = move || {
        let scene = cuts()?.round()?;
        Some(view! { <Round scene/> })
    };
    let table = move || cuts().map_or_else(TableText::default, |cuts| rows(&cuts));
    view! {
        <Part title note>
            <div class="beam-round-place">{drawn}</div>
            <TableFold name=title table/>
        </Part>
    }
}

#[component]
fn Round(scene: RoundScene) -> impl IntoView {
    let view_box = format!("0 0 {ROUND} {ROUND}");
    let [ahead, back, e_name, h_name] = words::round_names();
    let last = scene.rings.len().saturating_sub(1);
    let rings = scene
        .rings
        .into_iter()
        .enumerate()
        .map(|(n, (y, level))| {
            let text = words::ring_level(level, n == last);
            view! { <text class="ring" x=ROUND / 2.0 + 4.0 y=y + 13.0>{text}</text> }
        })
        .collect_view();
    let (h_x, h_y) = scene.h_name;
    view! {
        <svg class="beam-round" viewBox=view_box role="img" aria-label=words::pictures()[1].0>
            <path class="grid" d=scene.grid/>
            <path class="h-plane" d=scene.h/>
            <path class="e-plane" d=scene.e/>
            {rings}
            <text x=ROUND / 2.0 y=18 text-anchor="middle">{ahead}</text>
            <text x=ROUND / 2.0 y=ROUND - 6.0 text-anchor="middle">{back}</text>
            <text class="e-name" x=ROUND / 2.0 - 24.0 y=48>{e_name}</text>
            <text class="h-name" x=h_x y=h_y text-anchor="end">{h_name}</text>
        </svg>
    }
}

fn rows(cuts: &BeamCuts) -> TableText {
    let level = |levels: &[f64], index: usize| {
        levels
            .get(index)
            .map_or_else(String::new, |level| format_decimal(*level, 1))
    };
    let [_, _, e_name, h_name] = words::round_names();
    TableText {
        head: vec![
            "°".to_owned(),
            format!("{e_name}, dBi"),
            format!("{h_name}, dBi"),
        ],
        rows: (0..cuts.e_dbi.len())
            .step_by(ROW_STEP)
            .map(|index| {
                vec![
                    whole_degrees(angle_deg(index)),
                    level(&cuts.e_dbi, index),
                    level(&cuts.h_dbi, index),
                ]
            })
            .collect(),
    }
}
