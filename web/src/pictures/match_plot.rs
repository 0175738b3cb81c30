//! When the match chart is drawn, and with what.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use leptos::prelude::*;
use tinwave_core::design::Band;
use tinwave_core::match_band::{MatchSummary, SweepPoint};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::HtmlCanvasElement;

use super::canvas_plot::MatchPlot;
use super::figure::follow;
use super::followed::{Followed, Watched};
use super::palette::Palette;
use crate::drawing::match_scale::{MatchScale, Quantity, best_vswr};
use crate::drawing::plot_frame::{PLOT_HEIGHT, PlotFrame};

/// Canvas pixels per CSS px: at least two, because the plotting library puts
/// lines on whole pixels.
const LEAST_RATIO: f64 = 2.0;
/// More is not seen, only paid for.
const MOST_RATIO: f64 = 3.0;

/// What the chart is drawn from.
#[derive(Clone, Copy)]
pub(super) struct Inputs {
    pub(super) sweep: Followed<Vec<SweepPoint>>,
    pub(super) compare: Followed<Vec<SweepPoint>>,
    pub(super) band: Followed<Band>,
    pub(super) summary: Followed<Option<MatchSummary>>,
    pub(super) shows_loss: Watched<bool>,
    pub(super) width: Watched<f64>,
    pub(super) theme: Followed<u32>,
}

/// What one drawing shows.
struct Shown {
    sweep: Vec<SweepPoint>,
    compare: Vec<SweepPoint>,
    band: Band,
    summary: Option<MatchSummary>,
    quantity: Quantity,
    width: f64,
}

/// The canvas, its colours, and whether a drawing is due.
struct Board {
    canvas: HtmlCanvasElement,
    palette: Cell<Option<Palette>>,
    shown: RefCell<Option<Shown>>,
    is_due: Cell<bool>,
}

/// Keeps the chart up to date: at most one drawing per frame, whenever
/// something that shows changes.
pub(super) fn keep_plot(canvas: HtmlCanvasElement, inputs: Inputs) {
    let board = Rc::new(Board {
        canvas,
        palette: Cell::new(None),
        shown: RefCell::new(None),
        is_due: Cell::new(false),
    });
    follow_system_theme(&board);
    let theme_before = Cell::new(None);
    follow(Box::new(move || {
        let theme = Some(inputs.theme.get());
        if theme_before.replace(theme) != theme {
            board.palette.set(None);
        }
        board.shown.replace(Some(Shown {
            sweep: inputs.sweep.get(),
            compare: inputs.compare.get(),
            band: inputs.band.get(),
            summary: inputs.summary.get(),
            quantity: if inputs.shows_loss.get() {
                Quantity::ReturnLoss
            } else {
                Quantity::Vswr
            },
            width: inputs.width.get(),
        }));
        due(&board);
    }));
}

fn follow_system_theme(board: &Rc<Board>) {
    let Ok(Some(query)) = window().match_media("(prefers-color-scheme: dark)") else {
        return;
    };
    let board = Rc::downgrade(board);
    let closure = Closure::<dyn FnMut()>::new(move || {
        if let Some(board) = board.upgrade() {
            board.palette.set(None);
            due(&board);
        }
    });
    // Refused only for a callback that is none.
    let _ = query.add_event_listener_with_callback("change", closure.as_ref().unchecked_ref());
    closure.forget();
}

fn due(board: &Rc<Board>) {
    if board.is_due.replace(true) {
        return;
    }
    let board = Rc::clone(board);
    request_animation_frame(move || {
        board.is_due.set(false);
        // Nothing to show it on where there is no canvas to draw on.
        let _ = draw(&board);
    });
}

fn draw(board: &Board) -> Option<()> {
    let shown = board.shown.try_borrow().ok()?;
    let shown = shown.as_ref()?;
    let canvas = &board.canvas;
    let ratio = window().device_pixel_ratio();
    let ratio = ratio.clamp(LEAST_RATIO, MOST_RATIO);
    // A canvas is at most some thousand px wide.
    let (across, down) = (
        (shown.width * ratio).round() as u32,
        (PLOT_HEIGHT * ratio).round() as u32,
    );
    let frame = PlotFrame::new(&shown.sweep, shown.width);
    // Setting the size also clears: what was drawn before is gone.
    if canvas.width() != across || canvas.height() != down || frame.is_none() {
        canvas.set_width(across);
        canvas.set_height(down);
    }
    let palette = match board.palette.get() {
        Some(palette) => palette,
        None => Palette::read(canvas)?,
    };
    board.palette.set(Some(palette));
    let worst = shown
        .summary
        .map(|s| (f64::from(s.worst_khz), s.worst_vswr_in_band));
    let best = |points: &[SweepPoint]| best_vswr(points).map_or(1.5, |best| best.1);
    MatchPlot {
        frame: frame?,
        ratio,
        palette,
        scale: MatchScale::new(
            shown.quantity,
            worst.map_or(20.0, |worst| worst.1),
            best(&shown.sweep).min(best(&shown.compare)),
        ),
        sweep: &shown.sweep,
        compare: &shown.compare,
        band: (
            f64::from(shown.band.low_khz),
            f64::from(shown.band.high_khz),
        ),
        worst,
    }
    .draw(canvas.clone())
}
