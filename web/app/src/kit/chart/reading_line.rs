//! The reading line: moved by finger, pointer and arrow keys.

use leptos::ev::{KeyboardEvent, PointerEvent};
use leptos::prelude::*;
use tinwave_drawing::chart::{ChartSpec, Reading, ReadingKey};
use wasm_bindgen::JsCast;

use super::letters::percent;

/// A line across the plot, with a ring on each curve.
pub(super) fn line(spec: Memo<ChartSpec>, reading: Memo<Reading>) -> AnyView {
    let x = move || spec.with(|spec| percent(spec.x.share(reading.with(|reading| reading.x))));
    let rings = move || {
        let at = x();
        spec.with(|spec| {
            let ring = |value: &tinwave_drawing::chart::Value| {
                let share = spec.y.share(value.value?);
                (0.0..=1.0).contains(&share).then(|| {
                    view! { <circle class=value.style.class() cx=at.clone() cy=percent(1.0 - share) r="4.5"/> }
                })
            };
            reading.with(|reading| reading.values.iter().filter_map(ring).collect_view())
        })
    };
    view! {
        <g class="reading-line">
            <line x1=x x2=x y1="0" y2="100%"/>
            {rings}
        </g>
    }
    .into_any()
}

/// What moves the line.
#[derive(Clone, Copy)]
pub(super) struct LineKeys {
    pub(super) spec: Memo<ChartSpec>,
    pub(super) chosen: RwSignal<Option<f64>>,
}

impl LineKeys {
    /// A key.
    pub(super) fn press(self, event: &KeyboardEvent) {
        if event.ctrl_key() || event.alt_key() || event.meta_key() {
            return;
        }
        if let Some(key) = ReadingKey::from_key(&event.key(), event.shift_key()) {
            event.prevent_default();
            let next = self.spec.with_untracked(|spec| {
                let now = self.chosen.get_untracked().unwrap_or_else(|| spec.rest());
                spec.after_key(spec.x.kept(now), key)
            });
            self.chosen.set(Some(next));
        }
    }

    /// A finger or a button goes down.
    pub(super) fn take(self, event: &PointerEvent) {
        if event.button() != 0 {
            return;
        }
        if let Some(plot) = plot_of(event) {
            // Refused only where the pointer is gone already; then no move comes.
            let _ = plot.set_pointer_capture(event.pointer_id());
        }
        self.put(event);
    }

    /// It moves; a mouse need not be pressed.
    pub(super) fn follow(self, event: &PointerEvent) {
        if event.buttons() == 1 || (event.buttons() == 0 && event.pointer_type() == "mouse") {
            self.put(event);
        }
    }

    fn put(self, event: &PointerEvent) {
        let Some(plot) = plot_of(event) else { return };
        let area = plot.get_bounding_client_rect();
        if area.width() > 0.0 {
            let share = (f64::from(event.client_x()) - area.left()) / area.width();
            let place = self.spec.with_untracked(|spec| spec.place_at(share));
            if self.chosen.get_untracked() != Some(place) {
                self.chosen.set(Some(place));
            }
        }
    }
}

fn plot_of(event: &PointerEvent) -> Option<web_sys::Element> {
    event.current_target()?.dyn_into().ok()
}
