//! The wire's tip as a knob: moved by pointer and by arrow keys.

use leptos::ev::{KeyboardEvent, PointerEvent};
use leptos::prelude::*;
use tinwave_drawing::section::SectionScene;
use tinwave_drawing::section::knob::{Tip, TipKey, TipRange};
use tinwave_maker::history::Change;
use tinwave_maker::workpiece::Cut;
use tinwave_words::section as words;
use wasm_bindgen::JsCast;

use crate::browser;
use crate::reactive::memo;
use crate::state::Workshop;

/// A hand that holds the tip.
#[derive(Clone, Copy)]
struct Grab {
    pointer_id: i32,
    /// Where it was taken, CSS px.
    from: (f64, f64),
    tip: Tip,
    um_per_px: f64,
}

/// What the listeners share.
#[derive(Clone, Copy)]
struct Hand {
    scene: Memo<SectionScene>,
    workshop: Workshop,
    grab: StoredValue<Option<Grab>>,
    /// Where the hand wants it; put there before the next repaint.
    wanted: StoredValue<Option<Tip>>,
}

/// The knob over a drawing: a ring at the tip, with arrows that show which ways it goes.
pub(super) fn knob(scene: Memo<SectionScene>, workshop: Workshop) -> AnyView {
    let hand = Hand {
        scene,
        workshop,
        grab: StoredValue::new(None),
        wanted: StoredValue::new(None),
    };
    let tip = memo(move || workshop.work.with(|work| Tip::of(&work.design)));
    let range = memo(move || workshop.work.with(|work| TipRange::of(&work.design)));
    let place = move || {
        let (x, y) = scene.with(|scene| {
            scene
                .probe
                .map_or((-99.0, -99.0), |probe| (probe.x, probe.tip_y))
        });
        format!("translate({x:.1} {y:.1})")
    };
    let said = move || {
        let tip = tip.get();
        words::tip(tip.length_um, tip.distance_um, workshop.unit.get())
    };
    view! {
        <g class="knob" role="slider" tabindex="0" transform=place aria-label=words::the_tip()
            aria-orientation="vertical" aria-valuetext=said
            aria-valuenow=move || tip.get().length_um.to_string()
            aria-valuemin=move || range.get().length_um.0.min(tip.get().length_um).to_string()
            aria-valuemax=move || range.get().length_um.1.max(tip.get().length_um).to_string()
            on:pointerdown=move |event| hand.take(&event)
            on:pointermove=move |event| hand.drag(&event)
            on:pointerup=move |_| hand.release()
            on:pointercancel=move |_| hand.release()
            on:lostpointercapture=move |_| hand.release()
            on:keydown=move |event| hand.press(&event)>
            <circle class="touch" r="22"/>
            <path class="ways" d="M0 -20l4.500 7.500h-9zM-20 0l7.500 -4.500v9zM20 0l-7.500 -4.500v9z"/>
            <circle class="ring" r="8"/>
        </g>
    }
    .into_any()
}

impl Hand {
    fn tip(self) -> Tip {
        self.workshop
            .work
            .with_untracked(|work| Tip::of(&work.design))
    }

    fn range(self) -> TipRange {
        self.workshop
            .work
            .with_untracked(|work| TipRange::of(&work.design))
    }

    fn take(self, event: &PointerEvent) {
        if event.button() != 0 || self.grab.get_value().is_some() {
            return;
        }
        let knob = event
            .current_target()
            .and_then(|knob| knob.dyn_into::<web_sys::Element>().ok());
        let Some(knob) = knob else { return };
        // Refused only where the pointer is gone already; then no move comes.
        let _ = knob.set_pointer_capture(event.pointer_id());
        let shown = knob
            .closest("svg")
            .ok()
            .flatten()
            .map_or(0.0, |svg| svg.get_bounding_client_rect().width());
        let um_per_px = self.scene.with_untracked(|scene| {
            let drawn = scene.scale.sheet.width;
            let css = if shown > 0.0 { shown / drawn } else { 1.0 };
            1.0 / (scene.scale.px_per_um * css).max(1e-9)
        });
        self.workshop.commit();
        self.grab.set_value(Some(Grab {
            pointer_id: event.pointer_id(),
            from: (f64::from(event.client_x()), f64::from(event.client_y())),
            tip: self.tip(),
            um_per_px,
        }));
    }

    fn drag(self, event: &PointerEvent) {
        let Some(grab) = self.grab.get_value() else {
            return;
        };
        if grab.pointer_id != event.pointer_id() {
            return;
        }
        let farther = (f64::from(event.client_x()) - grab.from.0) * grab.um_per_px;
        let longer = (grab.from.1 - f64::from(event.client_y())) * grab.um_per_px;
        let waits = self.wanted.get_value().is_some();
        self.wanted
            .set_value(Some(grab.tip.moved(self.range(), longer, farther)));
        if !waits {
            browser::on_next_frame(move || self.catch_up());
        }
    }

    /// Puts the tip where the hand has it.
    fn catch_up(self) {
        if let Some(tip) = self.wanted.try_update_value(Option::take).flatten() {
            self.put(tip);
        }
    }

    fn release(self) {
        self.catch_up();
        if self.grab.try_update_value(Option::take).flatten().is_some() {
            self.workshop.commit();
        }
    }

    fn press(self, event: &KeyboardEvent) {
        if event.key() == "Escape"
            && let Some(grab) = self.grab.get_value()
        {
            // Lets go and puts the tip back.
            event.prevent_default();
            self.wanted.set_value(Some(grab.tip));
            self.release();
            return;
        }
        if event.ctrl_key() || event.alt_key() || event.meta_key() {
            return;
        }
        if let Some(key) = TipKey::from_key(&event.key(), event.shift_key()) {
            event.prevent_default();
            self.put(self.tip().after_key(self.range(), key));
            self.workshop.commit_soon();
        }
    }

    /// A cut that a hand made no longer follows the best.
    fn put(self, tip: Tip) {
        if tip == self.tip() {
            return;
        }
        self.workshop.put(Change::ProbeDrag, |work| {
            work.design.probe.length_um = tip.length_um;
            work.design.probe.backshort_distance_um = tip.distance_um;
            work.cut = Cut::AsCut;
        });
    }
}
