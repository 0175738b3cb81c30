//! The beam from the side, before its can.

use leptos::prelude::*;
use tinwave_drawing::beam_scene::SIDE_BOX;
use tinwave_words::beam as words;
use tinwave_words::figures::degrees;

use super::shown::Shown;
use crate::kit::Part;

/// The picture; its place is kept while the beam is being worked out.
#[component]
pub fn SidePart(
    /// What is known of the beam.
    shown: Memo<Shown>,
) -> impl IntoView {
    let (title, note) = words::pictures()[0];
    let drawn = move || {
        shown.with(|shown| {
            let beam = shown.beam()?;
            let scene = beam.cuts.as_ref()?.side(beam.e)?;
            let width = beam.e.width_deg;
            let (wide, high) = SIDE_BOX;
            let view_box = format!("0 0 {wide} {high}");
            let said = words::side_description(width);
            Some(view! {
                <svg class="beam-side" viewBox=view_box role="img" aria-label=said>
                    <path class="lobe" d=scene.lobe/>
                    <path class="axis" d=scene.axis/>
                    <path class="half-power" d=scene.half_power/>
                    <path class="wire" d=scene.wire/>
                    <path class="can" d=scene.can/>
                    {width.map(|width| view! {
                        <text x=wide - 6.0 y=16 text-anchor="end">{degrees(width)}</text>
                    })}
                </svg>
            })
        })
    };
    view! {
        <Part title note wide=true>
            <div class="beam-side-place">{drawn}</div>
        </Part>
    }
}
