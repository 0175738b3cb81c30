//! The beam from the side, before its can.

use leptos::prelude::*;
use tinwave_drawing::beam_side_scene::{SIDE_BOX, SideScene};
use tinwave_words::beam as words;
use tinwave_words::figures::{degrees, distance, entered_distance};

use super::figures::spot_m;
use super::shown::{KnownBeam, Shown};
use crate::kit::{Part, TableFold, TableText};
use crate::state::Workshop;

/// Distances of the table beside the link's own, metres.
const DISTANCES: [f64; 3] = [100.0, 300.0, 1_000.0];

/// The picture; its place is kept while the beam is being worked out.
#[component]
pub fn SidePart(
    /// What is known of the beam.
    shown: Memo<Shown>,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, note) = words::pictures()[0];
    let drawn = move || {
        shown.with(|shown| {
            let beam = shown.beam()?;
            let cuts = beam.cuts.as_ref()?;
            let scene = workshop
                .work
                .with(|work| SideScene::new(cuts, beam.e, &work.design))?;
            Some(view! { <Side scene width_deg=beam.e.width_deg/> })
        })
    };
    let (table_name, head) = words::covers();
    let table = move || TableText {
        head: head.clone(),
        rows: shown.with(|shown| {
            shown
                .beam()
                .map_or_else(Vec::new, |beam| rows(workshop, beam))
        }),
    };
    view! {
        <Part title note wide=true>
            <div class="beam-side-place">{drawn}</div>
            <TableFold name=table_name table/>
        </Part>
    }
}

#[component]
fn Side(scene: SideScene, width_deg: Option<f64>) -> impl IntoView {
    let (wide, high) = SIDE_BOX;
    let view_box = format!("0 0 {wide} {high}");
    let said = words::side_description(width_deg);
    // Letters are a layer of their own: they keep their size however wide the picture is.
    let figure = scene.upper_end.zip(width_deg).map(|((x, y), width)| {
        let (left, top) = (100.0 * x / wide, 100.0 * y / high);
        view! {
            <text x=format!("{left:.1}%") y=format!("{top:.1}%") dx="-.5em" dy="1.1em">{degrees(width)}</text>
        }
    });
    view! {
        <svg class="beam-side" viewBox=view_box role="img" aria-label=said>
            <path class="lobe" d=scene.lobe/>
            <path class="axis" d=scene.axis/>
            <path class="half-power" d=scene.half_power/>
            <path class="wire" d=scene.wire/>
            <path class="can" d=scene.can/>
        </svg>
        <svg class="beam-side-letters" aria-hidden="true">{figure}</svg>
    }
}

/// What the beam covers at some distances, the link's own first.
fn rows(workshop: Workshop, beam: &KnownBeam) -> Vec<Vec<String>> {
    let unit = workshop.unit.get();
    let own = workshop.plan().entries.with(|plan| plan.distance_m);
    let others = DISTANCES.into_iter().filter(|metres| *metres != own);
    std::iter::once(own)
        .chain(others)
        .map(|metres| {
            let across = |width: Option<f64>| {
                spot_m(metres, width)
                    .map_or_else(|| words::no_edge().to_owned(), |spot| distance(spot, unit))
            };
            vec![
                entered_distance(metres, unit),
                across(beam.h_deg),
                across(beam.e.width_deg),
            ]
        })
        .collect()
}
