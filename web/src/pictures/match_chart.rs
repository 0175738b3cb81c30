//! The match over the band: a chart on a canvas, a cursor, a table.

use leptos::ev::{KeyboardEvent, PointerEvent};
use leptos::html::{Canvas, Div};
use leptos::prelude::*;
use tinwave_core::design::Band;
use tinwave_core::match_band::{MatchSummary, SweepPoint};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::MediaQueryList;

use super::canvas_plot::MatchPlot;
use super::match_table::match_table;
use super::measured_width::measured_width;
use super::palette::Palette;
use crate::drawing::fixed_point::{push_tenths, tenths};
use crate::drawing::match_rows::nearest;
use crate::drawing::match_scale::{MatchScale, Quantity, best_vswr};
use crate::drawing::match_words::{match_summary_text, point_text};
use crate::drawing::plot_frame::{PLOT_HEIGHT, PLOT_LEFT, PlotFrame, step};
use crate::drawing::section_scale::FIRST_WIDTH;
use crate::entry::format_frequency;

/// Canvas pixels per CSS px: at least two, because the plotting library puts
/// lines on whole pixels.
const LEAST_RATIO: f64 = 2.0;
/// More is not seen, only paid for.
const MOST_RATIO: f64 = 3.0;

/// VSWR or return loss over frequency.
#[component]
pub fn MatchChart(
    /// The design's sweep; empty: not computed.
    #[prop(into)]
    sweep: Signal<Vec<SweepPoint>>,
    /// A second line to compare with; empty: none.
    #[prop(into)]
    compare: Signal<Vec<SweepPoint>>,
    /// What the second line is.
    #[prop(into)]
    compare_name: Signal<String>,
    /// The band to serve.
    #[prop(into)]
    band: Signal<Band>,
    /// The match over the band in figures.
    #[prop(into)]
    summary: Signal<Option<MatchSummary>>,
    /// Frequency that is read off, kHz; shared with the Smith chart.
    cursor: RwSignal<Option<u32>>,
    /// Whether this is the last good picture.
    #[prop(into)]
    stale: Signal<bool>,
    /// Anything that changes when the page's colours do.
    #[prop(into)]
    theme: Signal<u32>,
) -> impl IntoView {
    let quantity = RwSignal::new(Quantity::Vswr);
    let stage = NodeRef::<Div>::new();
    let canvas = NodeRef::<Canvas>::new();
    let width = measured_width(stage, FIRST_WIDTH);
    let plot = Plot {
        sweep,
        compare,
        band,
        summary,
        quantity,
        width,
        canvas,
        palette: StoredValue::new_local(None),
        is_due: StoredValue::new(false),
    };
    plot.follow(theme);
    let says = move || {
        sweep.with(|points| summary.with(|summary| match_summary_text(points, summary.as_ref())))
    };
    let reads = Cursor {
        sweep,
        band,
        width,
        cursor,
    };
    view! {
        <figure class="picture match-chart" class:pic-stale=stale>
            {toolbar(quantity, compare, compare_name)}
            <div class="pic-stage pic-chart-stage" node_ref=stage>
                <canvas class="pic-canvas" node_ref=canvas role="img"
                    aria-label="Match over frequency" aria-describedby="pic-match-summary"></canvas>
                {reads.view()}
            </div>
            <output class="pic-readout">{move || reads.says()}</output>
            <figcaption class="pic-note" id="pic-match-summary">{says}</figcaption>
            {match_table(sweep, band)}
        </figure>
    }
}

fn toolbar(
    quantity: RwSignal<Quantity>,
    compare: Signal<Vec<SweepPoint>>,
    compare_name: Signal<String>,
) -> AnyView {
    let choice = move |of: Quantity, name: &'static str| {
        let pressed = move || {
            if quantity.get() == of {
                "true"
            } else {
                "false"
            }
        };
        view! {
            <button type="button" class="pic-choice" aria-pressed=pressed
                on:click=move |_| quantity.set(of)>
                {name}
            </button>
        }
    };
    let has_no_compare = move || compare.with(Vec::is_empty);
    view! {
        <div class="pic-toolbar">
            <div class="pic-choices" role="group" aria-label="Show the match as">
                {choice(Quantity::Vswr, "VSWR")}
                {choice(Quantity::ReturnLoss, "Return loss, dB")}
            </div>
            <span class="pic-key pic-key-line">"this design"</span>
            <span class="pic-key pic-key-ghost" class:pic-absent=has_no_compare>
                {move || compare_name.get()}
            </span>
            <span class="pic-key pic-key-band">"band"</span>
            <span class="pic-unit">"MHz"</span>
        </div>
    }
    .into_any()
}

/// The drawing on the canvas, and when it is due.
#[derive(Clone, Copy)]
struct Plot {
    sweep: Signal<Vec<SweepPoint>>,
    compare: Signal<Vec<SweepPoint>>,
    band: Signal<Band>,
    summary: Signal<Option<MatchSummary>>,
    quantity: RwSignal<Quantity>,
    width: ReadSignal<f64>,
    canvas: NodeRef<Canvas>,
    palette: StoredValue<Option<Palette>, LocalStorage>,
    is_due: StoredValue<bool>,
}

impl Plot {
    /// Redraws once per frame at most, whenever something that shows changes.
    fn follow(self, theme: Signal<u32>) {
        Effect::new(move |_| {
            self.sweep.track();
            self.compare.track();
            self.band.track();
            self.summary.track();
            self.quantity.track();
            self.canvas.track();
            self.due();
        });
        Effect::new(move |_| {
            theme.track();
            self.width.track();
            self.palette.try_set_value(None);
            self.due();
        });
        self.follow_system_theme();
    }

    fn follow_system_theme(self) {
        let kept = StoredValue::new_local(None::<(MediaQueryList, Closure<dyn FnMut()>)>);
        let query = window().match_media("(prefers-color-scheme: dark)");
        let Ok(Some(query)) = query else {
            return;
        };
        let closure = Closure::<dyn FnMut()>::new(move || {
            self.palette.try_set_value(None);
            self.due();
        });
        query.set_onchange(Some(closure.as_ref().unchecked_ref()));
        kept.set_value(Some((query, closure)));
        on_cleanup(move || {
            kept.try_update_value(|kept| {
                if let Some((query, _)) = kept.take() {
                    query.set_onchange(None);
                }
            });
        });
    }

    fn due(self) {
        if self.is_due.try_get_value() == Some(false) {
            self.is_due.set_value(true);
            request_animation_frame(move || {
                if self.is_due.try_set_value(false).is_none() {
                    // Nothing shows where the canvas is gone already.
                    let _ = self.draw();
                }
            });
        }
    }

    fn draw(self) -> Option<()> {
        let canvas = self.canvas.try_get_untracked()??;
        let ratio = window().device_pixel_ratio().clamp(LEAST_RATIO, MOST_RATIO);
        let width = self.width.try_get_untracked()?;
        // A canvas is at most some thousand px wide.
        let (across, down) = (
            (width * ratio).round() as u32,
            (PLOT_HEIGHT * ratio).round() as u32,
        );
        if canvas.width() != across || canvas.height() != down {
            canvas.set_width(across);
            canvas.set_height(down);
        }
        let palette = match self.palette.get_value() {
            Some(palette) => palette,
            None => Palette::read(&canvas)?,
        };
        self.palette.set_value(Some(palette));
        let sweep = self.sweep.try_get_untracked()?;
        let compare = self.compare.try_get_untracked()?;
        let summary = self.summary.try_get_untracked()?;
        let band = self.band.try_get_untracked()?;
        let best = |points: &[SweepPoint]| best_vswr(points).map_or(1.5, |best| best.1);
        let worst = summary.map(|s| (f64::from(s.worst_khz), s.worst_vswr_in_band));
        let Some(frame) = PlotFrame::new(&sweep, width) else {
            // Nothing computed: an empty sheet.
            canvas.set_width(across);
            return Some(());
        };
        MatchPlot {
            frame,
            ratio,
            palette,
            scale: MatchScale::new(
                self.quantity.try_get_untracked()?,
                worst.map_or(20.0, |worst| worst.1),
                best(&sweep).min(best(&compare)),
            ),
            sweep: &sweep,
            compare: &compare,
            band: (f64::from(band.low_khz), f64::from(band.high_khz)),
            worst,
        }
        .draw(canvas)
    }
}

/// Reading a frequency off the chart.
#[derive(Clone, Copy)]
struct Cursor {
    sweep: Signal<Vec<SweepPoint>>,
    band: Signal<Band>,
    width: ReadSignal<f64>,
    cursor: RwSignal<Option<u32>>,
}

impl Cursor {
    fn now(self) -> u32 {
        self.cursor
            .get()
            .unwrap_or_else(|| self.band.get().centre_khz())
    }

    fn says(self) -> String {
        let Some(khz) = self.cursor.get() else {
            return "Point at the chart, or use the arrow keys on it, to read it off.".into();
        };
        self.sweep.with(|points| {
            let point = nearest(points, khz);
            point.map_or_else(String::new, |p| point_text(p.frequency_khz, p.at))
        })
    }

    fn frame(self) -> Option<PlotFrame> {
        self.sweep
            .with(|points| PlotFrame::new(points, self.width.get()))
    }

    fn point(self, event: &PointerEvent) {
        let x = f64::from(event.offset_x()) + PLOT_LEFT;
        let width = self.width.get_untracked();
        let found = self.sweep.with_untracked(|points| {
            PlotFrame::new(points, width).and_then(|frame| frame.point_at(x, points))
        });
        if found.is_some() && found != self.cursor.get_untracked() {
            self.cursor.set(found);
        }
    }

    fn key(self, event: &KeyboardEvent) {
        if event.ctrl_key() || event.alt_key() || event.meta_key() {
            return;
        }
        let far = if event.shift_key() { 10 } else { 1 };
        let steps = match event.key().as_str() {
            "ArrowRight" | "ArrowUp" => far,
            "ArrowLeft" | "ArrowDown" => -far,
            "PageUp" => 10,
            "PageDown" => -10,
            "Home" => isize::MIN,
            "End" => isize::MAX,
            "Escape" => {
                self.cursor.set(None);
                return;
            }
            _ => return,
        };
        event.prevent_default();
        let from = self.cursor.get_untracked();
        let from = from.unwrap_or_else(|| self.band.get_untracked().centre_khz());
        let next = self
            .sweep
            .with_untracked(|points| step(points, from, steps));
        if next.is_some() {
            self.cursor.set(next);
        }
    }

    fn view(self) -> AnyView {
        let mhz = |khz: f64| tenths(khz / 1e3);
        let ends = move |pick: fn(&PlotFrame) -> f64| {
            self.frame()
                .map_or_else(|| "0".to_owned(), |frame| mhz(pick(&frame)))
        };
        let left = move || {
            let khz = self.cursor.get()?;
            let frame = self.frame()?;
            let mut text = String::new();
            push_tenths(&mut text, frame.axis.place(f64::from(khz)) - PLOT_LEFT);
            text.push_str("px");
            Some(text)
        };
        let is_absent = move || self.cursor.with(Option::is_none);
        view! {
            <div class="pic-cursor-area" role="slider" tabindex="0"
                aria-label="Frequency to read off the chart"
                aria-valuemin=move || ends(|frame| frame.axis.low_khz)
                aria-valuemax=move || ends(|frame| frame.axis.high_khz)
                aria-valuenow=move || mhz(f64::from(self.now()))
                aria-valuetext=move || format_frequency(self.now())
                on:pointermove=move |event| self.point(&event)
                on:pointerdown=move |event| self.point(&event)
                on:keydown=move |event| self.key(&event)>
                <div class="pic-cursor-line" class:pic-absent=is_absent style:left=left></div>
            </div>
        }
        .into_any()
    }
}
