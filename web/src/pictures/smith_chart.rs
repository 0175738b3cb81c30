//! The reflection over the sweep on a Smith chart.

use leptos::prelude::*;
use tinwave_core::complex::Complex;
use tinwave_core::design::Band;
use tinwave_core::match_band::SweepPoint;

use crate::drawing::fixed_point::{push_integer, tenths};
use crate::drawing::match_rows::{interpolate, nearest, within_band};
use crate::drawing::match_words::locus_text;
use crate::drawing::smith_coordinates::{
    CENTRE, LINES, grid, locus, note_place, place, resistance_label_x, rim, vswr_radius,
};

/// The Smith chart of a sweep.
#[component]
pub fn SmithChart(
    /// The design's sweep; empty: not computed.
    #[prop(into)]
    sweep: Signal<Vec<SweepPoint>>,
    /// A second line to compare with; empty: none.
    #[prop(into)]
    compare: Signal<Vec<SweepPoint>>,
    /// The band to serve: the thick part of the line.
    #[prop(into)]
    band: Signal<Band>,
    /// Reference impedance, milliohm.
    #[prop(into)]
    reference_milliohm: Signal<u32>,
    /// Frequency that is read off, kHz; shared with the match chart.
    cursor: RwSignal<Option<u32>>,
    /// Whether this is the last good picture.
    #[prop(into)]
    stale: Signal<bool>,
) -> impl IntoView {
    let says = move || sweep.with(|points| locus_text(points, band.get()));
    let in_band = Memo::new(move |_| sweep.with(|points| within_band(points, band.get())));
    view! {
        <figure class="picture smith-chart" class:pic-stale=stale>
            <div class="pic-stage pic-smith-stage">
                <svg class="pic-sheet" viewBox="0 0 320 320" role="img"
                    aria-labelledby="pic-smith-title" aria-describedby="pic-smith-summary">
                    <title id="pic-smith-title">"Impedance on a Smith chart"</title>
                    <path class="pic-grid" d=grid()/>
                    <path class="pic-rim" d=rim()/>
                    {resistances(reference_milliohm)}
                    {standing_waves()}
                    <path class="pic-ghost" d=move || compare.with(|points| locus(points))/>
                    <path class="pic-locus" d=move || sweep.with(|points| locus(points))/>
                    <path class="pic-locus-band" d=move || in_band.with(|points| locus(points))/>
                    {end_mark(sweep, band, true)}
                    {end_mark(sweep, band, false)}
                    {cursor_mark(sweep, cursor)}
                </svg>
            </div>
            <figcaption class="pic-note" id="pic-smith-summary">{says}</figcaption>
        </figure>
    }
}

/// Resistances along the real axis, ohm.
fn resistances(reference_milliohm: Signal<u32>) -> Vec<AnyView> {
    LINES
        .into_iter()
        .map(|r| {
            let ohm = move || {
                let mut text = String::new();
                let ohm = f64::from(reference_milliohm.get()) / 1e3 * r;
                // At most 5 times 500 ohm.
                push_integer(&mut text, ohm.round() as u32);
                if r == 1.0 {
                    text.push_str(" Ω");
                }
                text
            };
            view! {
                <text class="pic-words pic-small" text-anchor="start"
                    x=tenths(resistance_label_x(r) + 3.0) y=tenths(CENTRE - 4.0)>
                    {ohm}
                </text>
            }
            .into_any()
        })
        .collect()
}

/// Circles of VSWR 1.5 and 2.
fn standing_waves() -> Vec<AnyView> {
    [(1.5, "1.5"), (2.0, "2")]
        .into_iter()
        .map(|(vswr, says)| {
            let radius = vswr_radius(vswr);
            view! {
                <circle class="pic-limit" cx=tenths(CENTRE) cy=tenths(CENTRE) r=tenths(radius)/>
                <text class="pic-words pic-small" text-anchor="middle"
                    x=tenths(CENTRE) y=tenths(CENTRE + radius + 12.0)>
                    "VSWR " {says}
                </text>
            }
            .into_any()
        })
        .collect()
}

/// Mark and word at one edge of the band.
fn end_mark(sweep: Signal<Vec<SweepPoint>>, band: Signal<Band>, is_low: bool) -> AnyView {
    let at = move || -> Option<Complex> {
        let band = band.get();
        let khz = if is_low { band.low_khz } else { band.high_khz };
        sweep.with(|points| Some(interpolate(points, khz)?.reflection))
    };
    let word = if is_low { "low" } else { "high" };
    let radius = move || at().map_or("0", |_| "4");
    let says = move || at().map(|_| word);
    let of = move |pick: fn((f64, f64)) -> f64| at().map(|at| tenths(pick(place(at))));
    let note = move |pick: fn((f64, f64)) -> f64| at().map(|at| tenths(pick(note_place(at, 16.0))));
    let class = if is_low {
        "pic-end pic-end-low"
    } else {
        "pic-end pic-end-high"
    };
    view! {
        <circle class=class r=radius cx=move || of(|p| p.0) cy=move || of(|p| p.1)/>
        <text class="pic-figure" text-anchor="middle"
            x=move || note(|p| p.0) y=move || note(|p| p.1)>
            {says}
        </text>
    }
    .into_any()
}

fn cursor_mark(sweep: Signal<Vec<SweepPoint>>, cursor: RwSignal<Option<u32>>) -> AnyView {
    let at = move || {
        let khz = cursor.get()?;
        sweep.with(|points| Some(place(nearest(points, khz)?.at?.reflection)))
    };
    let radius = move || at().map_or("0", |_| "6");
    view! {
        <circle class="pic-cursor-mark" r=radius
            cx=move || at().map(|p| tenths(p.0)) cy=move || at().map(|p| tenths(p.1))/>
    }
    .into_any()
}
