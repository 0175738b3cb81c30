//! How wide may it be: the gauge of diameters, with this can and the trade sizes.

use leptos::ev::{KeyboardEvent, PointerEvent};
use leptos::html::Div;
use leptos::prelude::*;
use tinwave_drawing::diameter_gauge::{DiameterGauge, Stand, Zone, ZoneKind};
use tinwave_maker::entry::{format_metres, strip_round};
use tinwave_words::can::{self as words, Carries};

use super::fits::{Fits, SizeRow};
use crate::kit::{Action, ActionKind, Part};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// A range narrower than this has its name on two lines.
const ONE_LINE: f64 = 0.25;

/// A share of the width as an attribute.
fn percent(share: f64) -> String {
    format!("{:.2}%", share * 100.0)
}

const fn anchor(stand: Stand) -> &'static str {
    match stand {
        Stand::Start => "start",
        Stand::Middle => "middle",
        Stand::End => "end",
    }
}

const fn carries(kind: ZoneKind) -> Carries {
    match kind {
        ZoneKind::TooNarrow => Carries::Nothing,
        ZoneKind::One => Carries::One,
        ZoneKind::Two => Carries::Two,
        ZoneKind::Many => Carries::Many,
    }
}

const fn class(kind: ZoneKind) -> &'static str {
    match kind {
        ZoneKind::TooNarrow => "zone none",
        ZoneKind::One => "zone one",
        ZoneKind::Two => "zone two",
        ZoneKind::Many => "zone many",
    }
}

/// The gauge as a part of the station.
#[component]
pub fn WidthGauge() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let fits = Fits::of_station();
    let sizes = memo(move || {
        fits.rows.with(|rows| {
            let mut sizes: Vec<(usize, u32)> = rows
                .iter()
                .map(|row| (row.fit.index, row.fit.size().inside_um))
                .collect();
            sizes.sort_unstable();
            sizes
        })
    });
    let gauge = memo(move || {
        workshop.work.with(|work| {
            let design = &work.design;
            let sizes = sizes.get();
            DiameterGauge::new(
                design.band,
                design.can.inside_diameter_um,
                sizes.into_iter(),
            )
        })
    });
    let note = move || {
        let band = workshop.work.with(|work| work.design.band);
        words::how_wide_note(band, workshop.unit.get())
    };
    view! {
        <Part title=words::how_wide() note>
            <div class="gauge">
                <svg class="gauge-bar" role="img" aria-label=move || described(workshop, gauge)>
                    <defs>
                        <pattern id="gauge-none" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V6"/></pattern>
                        <pattern id="gauge-two" width="14" height="14" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V14"/></pattern>
                        <pattern id="gauge-many" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V8M0 0H8"/></pattern>
                    </defs>
                    {live(move || zones(workshop, gauge))}
                    {live(move || pointer(workshop, gauge))}
                </svg>
                <SizeStrokes gauge/>
            </div>
        </Part>
    }
    .into_any()
}

fn described(workshop: Workshop, gauge: Memo<DiameterGauge>) -> String {
    let unit = workshop.unit.get();
    let can_um = workshop
        .work
        .with(|work| work.design.can.inside_diameter_um);
    gauge.with(|gauge| {
        let limits = gauge
            .limits
            .iter()
            .map(|limit| format_metres(limit.metres, unit));
        let ranges: Vec<(Carries, String)> = gauge
            .zones
            .iter()
            .zip(std::iter::once(String::new()).chain(limits))
            .map(|(zone, from)| (carries(zone.kind), from))
            .collect();
        words::gauge_described(&ranges, can_um, unit)
    })
}

/// The ranges with their names and limits.
fn zones(workshop: Workshop, gauge: Memo<DiameterGauge>) -> impl IntoView {
    let unit = workshop.unit.get();
    gauge.with(|gauge| {
        let zones = gauge
            .zones
            .iter()
            .map(|zone| {
                let name = zone.is_named.then(|| zone_name(zone));
                view! {
                    <rect class=class(zone.kind) x=percent(zone.from) width=percent(zone.to - zone.from) y="2.4em" height="3.1em"/>
                    {name}
                }
            })
            .collect_view();
        let limits = gauge
            .limits
            .iter()
            .map(|limit| {
                let number = format_metres(limit.metres, unit);
                let number = number.trim_end_matches(unit.symbol()).trim_end().to_owned();
                let x = percent(limit.at);
                view! {
                    <line class="limit" x1=x.clone() x2=x.clone() y1="2.4em" y2="5.5em"/>
                    <text class="limit-figure" x=x y="7em" text-anchor=anchor(limit.stand)>{number}</text>
                }
            })
            .collect_view();
        view! {
            {zones}
            <line class="edge" x1="0" x2="100%" y1="2.4em" y2="2.4em"/>
            <line class="edge" x1="0" x2="100%" y1="5.5em" y2="5.5em"/>
            {limits}
        }
    })
}

/// The name of a range: on two lines where one would be too wide.
fn zone_name(zone: &Zone) -> impl IntoView + use<> {
    let x = percent((zone.from + zone.to) / 2.0);
    let name = words::carries(carries(zone.kind));
    match name.split_once(' ') {
        Some((first, second)) if zone.to - zone.from < ONE_LINE => view! {
            <text class="zone-name" x=x.clone() y="3.85em">
                {first}<tspan x=x.clone() dy="1.15em">{second}</tspan>
            </text>
        }
        .into_any(),
        _ => view! { <text class="zone-name" x=x y="4.35em">{name}</text> }.into_any(),
    }
}

/// This can.
fn pointer(workshop: Workshop, gauge: Memo<DiameterGauge>) -> impl IntoView {
    let unit = workshop.unit.get();
    let can_um = workshop
        .work
        .with(|work| work.design.can.inside_diameter_um);
    let (can, is_beyond) = gauge.with(|gauge| (gauge.can, gauge.can_is_beyond));
    let text = if is_beyond {
        words::your_can_beyond(can_um, unit, can.at > 0.5)
    } else {
        words::your_can(can_um, unit)
    };
    let x = percent(can.at);
    view! {
        <text class="can-figure" x=x.clone() y="1em" text-anchor=anchor(can.stand)>{text}</text>
        <svg class="can-pointer" x=x.clone() y="1.55em"><path d="M-8 0H8L0 12Z"/></svg>
        <line class="can-line" x1=x.clone() x2=x y1="2.4em" y2="3.1em"/>
    }
    .into_any()
}

/// The trade sizes as strokes: pressed or walked with the arrow keys, with all
/// measures of the chosen one below.
#[component]
fn SizeStrokes(gauge: Memo<DiameterGauge>) -> impl IntoView {
    let fits = Fits::of_station();
    // A size, by its place in the list of trade sizes: it stays chosen while the gauge
    // changes about it.
    let chosen = RwSignal::new(None::<usize>);
    let place = memo(move || {
        let index = chosen.get()?;
        gauge.with(|gauge| {
            gauge
                .strokes
                .iter()
                .position(|stroke| stroke.index == index)
        })
    });
    let count = move || gauge.with(|gauge| gauge.strokes.len());
    let has_any = move || count() > 0;
    let choose = move |place: usize| {
        let index =
            gauge.with_untracked(|gauge| gauge.strokes.get(place).map(|stroke| stroke.index));
        if index.is_some() {
            chosen.set(index);
        }
    };
    let row = memo(move || {
        let index = chosen.get()?;
        fits.rows
            .with(|rows| rows.iter().find(|row| row.fit.index == index).cloned())
    });
    let lane = NodeRef::<Div>::new();
    let press = move |event: PointerEvent| {
        if let Some(at) = share_of(lane, &event)
            && let Some(place) = gauge.with_untracked(|gauge| gauge.nearest(at))
        {
            choose(place);
        }
    };
    let key = move |event: KeyboardEvent| {
        let last = untrack(count).saturating_sub(1);
        let next = match (event.key().as_str(), place.get_untracked()) {
            ("ArrowRight" | "ArrowUp", Some(place)) => (place + 1).min(last),
            ("ArrowLeft" | "ArrowDown", Some(place)) => place.saturating_sub(1),
            ("ArrowRight" | "ArrowUp" | "ArrowLeft" | "ArrowDown" | "Home", _) => 0,
            ("End", _) => last,
            _ => return,
        };
        event.prevent_default();
        choose(next);
    };
    let strokes = move || {
        gauge.with(|gauge| {
            let chosen = chosen.get();
            let stroke = |stroke: &tinwave_drawing::diameter_gauge::Stroke| {
                let class = if chosen == Some(stroke.index) {
                    "stroke chosen"
                } else {
                    "stroke"
                };
                let x = percent(stroke.at);
                view! { <line class=class x1=x.clone() x2=x y1="25%" y2="75%"/> }
            };
            gauge.strokes.iter().map(stroke).collect_view()
        })
    };
    view! {
        <Show when=has_any fallback=|| view! { <p class="note">{words::no_strokes()}</p> }>
            <div class="size-strokes" node_ref=lane role="slider" tabindex="0"
                aria-label=words::trade_sizes() aria-valuemin="1" aria-valuemax=move || count().to_string()
                aria-valuenow=move || place.get().map_or(1, |place| place + 1).to_string()
                aria-valuetext=move || line_of(row.get(), fits) on:pointerdown=press on:keydown=key>
                <svg aria-hidden="true">{strokes}</svg>
            </div>
            <div class="stroke-line">
                <p class="note">{live(move || line_of(row.get(), fits))}</p>
                {live(move || row.get().map(|row| view! { <TakeStroke row/> }))}
            </div>
        </Show>
    }
    .into_any()
}

/// Where a press lies on an element, as a share of its width.
fn share_of(lane: NodeRef<Div>, event: &PointerEvent) -> Option<f64> {
    let bounds = lane.get_untracked()?.get_bounding_client_rect();
    Some((f64::from(event.client_x()) - bounds.left()) / bounds.width().max(1.0))
}

fn line_of(row: Option<SizeRow>, fits: Fits) -> String {
    let Some(row) = row else {
        return words::strokes_note().to_owned();
    };
    let unit = fits.unit();
    let fit = &row.fit;
    let strip = strip_round(fit.outside_um());
    let measures = [strip, fit.outside_um(), fit.length_um()];
    let mut line = words::size_line(fit.size(), measures, fit.has_own_length(), unit);
    if let Some(matched) = &row.matched {
        let worst = matched.cut.map(|cut| cut.worst_vswr);
        let grade = words::less_than_good(matched.graded.grade);
        line = [line, words::with_vswr(worst)].join(", ");
        if !grade.is_empty() {
            line = [&line, grade].join(", ");
        }
    }
    line
}

#[component]
fn TakeStroke(row: SizeRow) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let fits = Fits::of_station();
    let fit = row.fit.clone();
    let is_taken = memo(move || workshop.work.with(|work| fit.is_can_of(&work.design)));
    let says = format!("{} {}", words::take(), row.fit.size().name);
    view! {
        <Show when=move || !is_taken.get()
            fallback=|| view! { <span class="taken">{words::taken()}</span> }>
            <Action text=words::take() kind=ActionKind::Words says=says.clone()
                on_press={ let row = row.clone(); move |()| fits.take(&row) }/>
        </Show>
    }
    .into_any()
}
