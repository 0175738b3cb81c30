//! Which modes pass where, against the band.

use leptos::html::Div;
use leptos::prelude::*;
use tinwave_core::design::Band;
use tinwave_core::verdict::ModeEntry;

use super::measured_width::measured_width;
use crate::drawing::fixed_point::{push_integer, push_tenths, tenths};
use crate::drawing::mode_rungs::{HEIGHT, Ladder, MOST_RUNGS, MOST_TICKS, Rung, TOP};
use crate::drawing::section_scale::FIRST_WIDTH;

/// The mode ladder: one rung per mode, the band as an upright stripe.
#[component]
pub fn ModeLadder(
    /// Modes, ascending by cutoff.
    #[prop(into)]
    modes: Signal<Vec<ModeEntry>>,
    /// The band to serve.
    #[prop(into)]
    band: Signal<Band>,
    /// Whether this is the last good picture.
    #[prop(into)]
    stale: Signal<bool>,
) -> impl IntoView {
    let stage = NodeRef::<Div>::new();
    let width = measured_width(stage, FIRST_WIDTH);
    let ladder =
        Memo::new(move |_| modes.with(|modes| Ladder::new(modes, band.get(), width.get())));
    view! {
        <figure class="picture mode-ladder" class:pic-stale=stale>
            <div class="pic-stage pic-ladder-stage" node_ref=stage>
                {ladder_view(ladder)}
            </div>
            <figcaption class="pic-note">{move || ladder.with(|ladder| ladder.more.clone())}</figcaption>
        </figure>
    }
}

fn ladder_view(ladder: Memo<Ladder>) -> AnyView {
    let view_box = move || {
        let mut text = String::from("0 0 ");
        push_tenths(&mut text, ladder.with(|ladder| ladder.axis.right) + 4.0);
        text.push(' ');
        push_tenths(&mut text, HEIGHT);
        text
    };
    let band_x = move || ladder.with(|ladder| tenths(ladder.band_x.0));
    let band_width = move || ladder.with(|ladder| tenths(ladder.band_x.1 - ladder.band_x.0));
    let texts: Vec<AnyView> = (0..MOST_RUNGS)
        .map(|slot| rung_text(ladder, slot))
        .collect();
    let ticks: Vec<AnyView> = (0..MOST_TICKS)
        .map(|slot| tick_text(ladder, slot))
        .collect();
    view! {
        <svg class="pic-sheet" viewBox=view_box role="img"
            aria-labelledby="pic-ladder-title" aria-describedby="pic-ladder-desc">
            <title id="pic-ladder-title">"Modes against the band"</title>
            <desc id="pic-ladder-desc">
                {move || ladder.with(|ladder| ladder.summary.clone())}
            </desc>
            <defs>
                <pattern id="pic-bar-hatch" width="6" height="6"
                    patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
                    <path class="pic-bar-hatch" d="M0 0V6"/>
                </pattern>
            </defs>
            <rect class="pic-band" y=tenths(TOP - 6.0) height=tenths(HEIGHT - TOP - 24.0)
                x=band_x width=band_width/>
            {line(ladder, "pic-band-edge", |ladder| &ladder.band_edges)}
            {line(ladder, "pic-below", |ladder| &ladder.below)}
            {line(ladder, "pic-bar pic-bar-out", |ladder| &ladder.bars_out)}
            {line(ladder, "pic-bar pic-bar-signal", |ladder| &ladder.bars_signal)}
            <path class="pic-bar pic-bar-unwanted" fill="url(#pic-bar-hatch)"
                d=move || ladder.with(|ladder| ladder.bars_unwanted.clone())/>
            {line(ladder, "pic-thin", |ladder| &ladder.axis_lines)}
            <text class="pic-figure" text-anchor="middle" y="13"
                x=move || ladder.with(|ladder| tenths(ladder.band_label_x))>
                {move || ladder.with(|ladder| ladder.band_words.clone())}
            </text>
            {texts}
            {ticks}
        </svg>
    }
    .into_any()
}

fn line(ladder: Memo<Ladder>, class: &'static str, data: fn(&Ladder) -> &str) -> AnyView {
    view! { <path class=class d=move || ladder.with(|ladder| data(ladder).to_owned())/> }.into_any()
}

/// Name and words of one rung; empty where the ladder has fewer.
fn rung_text(ladder: Memo<Ladder>, slot: usize) -> AnyView {
    let pick =
        move |pick: fn(&Rung) -> String| ladder.with(|ladder| ladder.rungs.get(slot).map(pick));
    view! {
        <text class="pic-words" x="4" y=move || pick(|rung| tenths(rung.y + 15.0))>
            <tspan class="pic-figure">{move || pick(|rung| rung.name.clone())}</tspan>
            " "
            <tspan>{move || pick(|rung| rung.words.clone())}</tspan>
        </text>
    }
    .into_any()
}

fn tick_text(ladder: Memo<Ladder>, slot: usize) -> AnyView {
    let tick = move || ladder.with(|ladder| ladder.ticks.get(slot).copied());
    let says = move || {
        tick().map(|tick| {
            let mut text = String::new();
            push_integer(&mut text, tick.mhz);
            if slot == 0 {
                text.push_str(" MHz");
            }
            text
        })
    };
    view! {
        <text class="pic-words" text-anchor="middle" y=tenths(HEIGHT - 5.0)
            x=move || tick().map(|tick| tenths(tick.x))>
            {says}
        </text>
    }
    .into_any()
}
