//! Taking hold of the probe: its tip (how long) or its body (where).

use leptos::ev::{KeyboardEvent, PointerEvent};
use leptos::prelude::*;
use tinwave_core::design::Design;
use tinwave_core::design_error::Field;
use wasm_bindgen::JsCast;
use web_sys::Element;

use crate::drawing::drag::{HandleKey, HandleRange};
use crate::drawing::fixed_point::tenths;
use crate::drawing::section_outline::TouchBox;
use crate::drawing::section_sheet::SectionSheet;
use crate::drawing::{DragEdit, DragPhase};
use crate::entry::{LengthUnit, format_length, format_length_number};

/// A finger or a mouse that holds a handle.
#[derive(Clone, Copy)]
struct Grab {
    pointer_id: i32,
    /// Place along the handle's direction when it was taken, CSS px.
    from: f64,
    start_um: u32,
    last_um: u32,
}

/// What a handle needs to know.
#[derive(Clone, Copy)]
pub(super) struct ProbeHandle {
    pub(super) field: Field,
    pub(super) design: Signal<Design>,
    pub(super) unit: Signal<LengthUnit>,
    pub(super) sheet: Memo<SectionSheet>,
    pub(super) on_drag: Callback<DragEdit>,
    grab: StoredValue<Option<Grab>>,
    /// The value last sent for a key that is still down.
    key_um: StoredValue<Option<u32>>,
}

impl ProbeHandle {
    pub(super) fn new(
        field: Field,
        design: Signal<Design>,
        unit: Signal<LengthUnit>,
        sheet: Memo<SectionSheet>,
        on_drag: Callback<DragEdit>,
    ) -> Self {
        Self {
            field,
            design,
            unit,
            sheet,
            on_drag,
            grab: StoredValue::new(None),
            key_um: StoredValue::new(None),
        }
    }

    fn is_tip(self) -> bool {
        self.field == Field::ProbeLength
    }

    fn value(self, design: &Design) -> u32 {
        if self.is_tip() {
            design.probe.length_um
        } else {
            design.probe.backshort_distance_um
        }
    }

    fn send(self, um: u32, phase: DragPhase) {
        self.on_drag.run(DragEdit {
            field: self.field,
            um,
            phase,
        });
    }

    /// Place of an event along the handle's direction: up is longer, right is
    /// farther from the back wall.
    fn along(self, event: &PointerEvent) -> f64 {
        if self.is_tip() {
            -f64::from(event.client_y())
        } else {
            f64::from(event.client_x())
        }
    }

    fn take(self, event: &PointerEvent) {
        if event.button() != 0 || self.grab.get_value().is_some() {
            return;
        }
        if let Some(element) = element_of(event) {
            // Refused only where the pointer is gone already; then no move comes.
            let _ = element.set_pointer_capture(event.pointer_id());
        }
        let start_um = self.design.with_untracked(|design| self.value(design));
        self.grab.set_value(Some(Grab {
            pointer_id: event.pointer_id(),
            from: self.along(event),
            start_um,
            last_um: start_um,
        }));
        self.send(start_um, DragPhase::Start);
    }

    fn drag(self, event: &PointerEvent) {
        let Some(grab) = self.grab.get_value() else {
            return;
        };
        if grab.pointer_id != event.pointer_id() {
            return;
        }
        let (px_per_um, sheet_width) = self
            .sheet
            .with_untracked(|sheet| (sheet.scale.px_per_um, sheet.scale.width));
        // The sheet is drawn 1:1 unless the page is narrower than any phone.
        let shown = element_of(event)
            .and_then(|element| element.parent_element())
            .map_or(sheet_width, |stage| f64::from(stage.client_width()));
        let css_per_um = (px_per_um * shown / sheet_width).max(1e-9);
        let moved_um = (self.along(event) - grab.from) / css_per_um;
        let range = self.range();
        let um = range.nearest(f64::from(grab.start_um) + moved_um);
        if um != grab.last_um {
            self.grab.set_value(Some(Grab {
                last_um: um,
                ..grab
            }));
            self.send(um, DragPhase::Move);
        }
    }

    fn release(self) {
        if let Some(grab) = self.grab.get_value() {
            self.grab.set_value(None);
            self.send(grab.last_um, DragPhase::End);
        }
    }

    fn range(self) -> HandleRange {
        self.design
            .with_untracked(|design| HandleRange::of(design, self.field))
    }

    fn key_down(self, event: &KeyboardEvent) {
        let key = event.key();
        if key == "Escape" {
            if let Some(grab) = self.grab.get_value() {
                self.grab.set_value(None);
                self.send(grab.start_um, DragPhase::Move);
                self.send(grab.start_um, DragPhase::End);
                event.prevent_default();
            }
            return;
        }
        if event.ctrl_key() || event.alt_key() || event.meta_key() {
            return;
        }
        let Some(step) = HandleKey::from_key(&key, event.shift_key()) else {
            return;
        };
        event.prevent_default();
        let now = self.design.with_untracked(|design| self.value(design));
        if self.key_um.get_value().is_none() {
            self.send(now, DragPhase::Start);
        }
        let um = self.range().after_key(now, step);
        self.key_um.set_value(Some(um));
        self.send(um, DragPhase::Move);
    }

    fn key_up(self) {
        if let Some(um) = self.key_um.get_value() {
            self.key_um.set_value(None);
            self.send(um, DragPhase::End);
        }
    }

    fn touch_box(self, sheet: &SectionSheet) -> TouchBox {
        let (tip, body) = sheet.probe.touch_boxes(&sheet.scale);
        if self.is_tip() { tip } else { body }
    }

    /// A length of the box as a part of the sheet, per cent.
    fn part(self, pick: fn(&TouchBox, &SectionSheet) -> f64) -> String {
        let part = self.sheet.with(|sheet| pick(&self.touch_box(sheet), sheet));
        let mut text = tenths(part * 1_000.0);
        text.insert_str(0, "calc(");
        text.push_str("% / 10)");
        text
    }

    /// The handle: an empty box over the drawing, for fingers and keys.
    pub(super) fn view(self) -> AnyView {
        let (name, direction, class) = if self.is_tip() {
            ("Probe length", "vertical", "pic-handle pic-handle-tip")
        } else {
            (
                "Probe distance from the back wall",
                "horizontal",
                "pic-handle pic-handle-body",
            )
        };
        let number = move |um: u32| format_length_number(um, self.unit.get());
        let now = move || self.design.with(|design| self.value(design));
        let range = move || {
            self.design
                .with(|design| HandleRange::of(design, self.field))
        };
        view! {
            <div
                class=class
                role="slider"
                tabindex="0"
                aria-label=name
                aria-orientation=direction
                aria-valuenow=move || number(now())
                aria-valuemin=move || number(range().low_um.min(now()))
                aria-valuemax=move || number(range().high_um.max(now()))
                aria-valuetext=move || format_length(now(), self.unit.get())
                style:left=move || self.part(|area, sheet| area.left / sheet.scale.width)
                style:top=move || self.part(|area, sheet| area.top / sheet.scale.height)
                style:height=move || self.part(|area, sheet| area.height / sheet.scale.height)
                on:pointerdown=move |event| self.take(&event)
                on:pointermove=move |event| self.drag(&event)
                on:pointerup=move |_| self.release()
                on:pointercancel=move |_| self.release()
                on:lostpointercapture=move |_| self.release()
                on:keydown=move |event| self.key_down(&event)
                on:keyup=move |_| self.key_up()
                on:blur=move |_| self.key_up()
            ></div>
        }
        .into_any()
    }
}

fn element_of(event: &PointerEvent) -> Option<Element> {
    event.current_target()?.dyn_into().ok()
}
