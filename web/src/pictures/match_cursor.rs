//! Reading a frequency off the match chart, by pointer or keys.

use tinwave_core::design::Band;
use tinwave_core::match_band::SweepPoint;
use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlElement, KeyboardEvent, PointerEvent};

use super::figure::{Picture, follow, listen, set_attribute, set_style};
use super::followed::{Followed, Watched};
use crate::drawing::fixed_point::{push_tenths, tenths};
use crate::drawing::match_rows::nearest;
use crate::drawing::match_words::point_text;
use crate::drawing::plot_frame::{PLOT_LEFT, PlotFrame, step};
use crate::entry::format_frequency;

const HINT: &str = "Point at the chart, or use the arrow keys on it, to read it off.";

/// The cursor of the match chart.
#[derive(Clone, Copy)]
pub(super) struct Cursor {
    pub(super) sweep: Followed<Vec<SweepPoint>>,
    pub(super) band: Followed<Band>,
    pub(super) width: Watched<f64>,
    pub(super) khz: Watched<Option<u32>>,
}

impl Cursor {
    /// Binds the cursor to its elements.
    pub(super) fn keep(self, picture: &Picture) -> Option<()> {
        let area = picture.part(".pic-cursor-area")?;
        let line = picture.part(".pic-cursor-line")?;
        let says = picture.part(".pic-readout")?;
        for event in ["pointermove", "pointerdown"] {
            let point = move |event: Event| self.point(event.unchecked_ref());
            listen(&area, event, Box::new(point));
        }
        let key = move |event: Event| self.key(event.unchecked_ref());
        listen(&area, "keydown", Box::new(key));
        follow(Box::new(move || self.show(&area, &line, &says)));
        Some(())
    }

    fn show(self, area: &HtmlElement, line: &HtmlElement, says: &HtmlElement) {
        let points = self.sweep.get();
        let cursor = self.khz.get();
        let now = cursor.unwrap_or_else(|| self.band.get().centre_khz());
        let mhz = |khz: f64| tenths(khz / 1e3);
        set_attribute(area, "aria-valuenow", &mhz(f64::from(now)));
        set_attribute(area, "aria-valuetext", &format_frequency(now));
        let frame = PlotFrame::new(&points, self.width.get());
        if let Some(frame) = &frame {
            set_attribute(area, "aria-valuemin", &mhz(frame.axis.low_khz));
            set_attribute(area, "aria-valuemax", &mhz(frame.axis.high_khz));
        }
        let point = cursor.and_then(|khz| nearest(&points, khz));
        let text = point.map_or_else(|| HINT.into(), |p| point_text(p.frequency_khz, p.at));
        says.set_text_content(Some(&text));
        let (Some(point), Some(frame)) = (point, frame) else {
            line.set_hidden(true);
            return;
        };
        line.set_hidden(false);
        let x = frame.axis.place(f64::from(point.frequency_khz)) - PLOT_LEFT;
        let mut left = String::new();
        push_tenths(&mut left, x);
        left.push_str("px");
        set_style(line, "left", &left);
    }

    fn point(self, event: &PointerEvent) {
        let width = self.width.get_untracked();
        let points = self.sweep.get_untracked();
        let x = f64::from(event.offset_x()) + PLOT_LEFT;
        let found = PlotFrame::new(&points, width).and_then(|frame| frame.point_at(x, &points));
        if found.is_some() {
            self.khz.set(found);
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
                self.khz.set(None);
                return;
            }
            _ => return,
        };
        event.prevent_default();
        let now = self.khz.get_untracked();
        let points = self.sweep.get_untracked();
        let from = now.unwrap_or_else(|| self.band.get_untracked().centre_khz());
        if let Some(next) = step(&points, from, steps) {
            self.khz.set(Some(next));
        }
    }
}
