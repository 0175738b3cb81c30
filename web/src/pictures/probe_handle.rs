//! Taking hold of the probe: its tip (how long) or its body (where).

use std::cell::RefCell;
use std::rc::Rc;

use leptos::prelude::*;
use tinwave_core::design::Design;
use tinwave_core::design_error::Field;
use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlElement, KeyboardEvent, PointerEvent};

use super::figure::{listen, set_attribute, set_style};
use crate::drawing::drag::{HandleKey, HandleRange};
use crate::drawing::fixed_point::push_tenths;
use crate::drawing::section_outline::TouchBox;
use crate::drawing::{DragEdit, DragPhase};
use crate::entry::{LengthUnit, format_length, format_length_number};

/// Where a handle stands on its sheet.
#[derive(Clone, Copy)]
pub(super) struct Place {
    pub(super) area: TouchBox,
    /// Width and height of the sheet.
    pub(super) size: (f64, f64),
    pub(super) px_per_um: f64,
}

/// A finger or a mouse that holds the handle.
#[derive(Clone, Copy)]
struct Grab {
    pointer_id: i32,
    /// Place along the handle's direction when it was taken, CSS px.
    from: f64,
    start_um: u32,
    last_um: u32,
}

/// What the listeners of one handle share.
struct Held {
    is_tip: bool,
    on_drag: Callback<DragEdit>,
    element: HtmlElement,
    value_um: u32,
    range: HandleRange,
    px_per_um: f64,
    sheet_width: f64,
    grab: Option<Grab>,
    /// The value last sent for a key that is still down.
    key_um: Option<u32>,
}

/// A handle: an empty box over the drawing, for fingers and keys.
pub(super) struct ProbeHandle {
    held: Rc<RefCell<Held>>,
}

/// What to tell the page after an event.
type Edits = Vec<(u32, DragPhase)>;

impl ProbeHandle {
    pub(super) fn new(element: HtmlElement, is_tip: bool, on_drag: Callback<DragEdit>) -> Self {
        let held = Rc::new(RefCell::new(Held {
            is_tip,
            on_drag,
            element: element.clone(),
            value_um: 0,
            range: HandleRange {
                low_um: 0,
                high_um: 0,
            },
            px_per_um: 1.0,
            sheet_width: 1.0,
            grab: None,
            key_um: None,
        }));
        let on = |event: &str, run: fn(&mut Held, &Event) -> Edits| {
            let held = Rc::clone(&held);
            listen(
                &element,
                event,
                Box::new(move |event| {
                    let (edits, field, on_drag) = {
                        let Ok(mut held) = held.try_borrow_mut() else {
                            return;
                        };
                        (run(&mut held, &event), held.field(), held.on_drag)
                    };
                    // The page may answer at once by moving this very handle.
                    for (um, phase) in edits {
                        on_drag.try_run(DragEdit { field, um, phase });
                    }
                }),
            );
        };
        on("pointerdown", |held, event| {
            held.take(event.unchecked_ref())
        });
        on("pointermove", |held, event| {
            held.drag(event.unchecked_ref())
        });
        on("keydown", |held, event| {
            held.key_down(event.unchecked_ref())
        });
        for end in ["pointerup", "pointercancel", "lostpointercapture"] {
            on(end, |held, _| held.release());
        }
        for end in ["keyup", "blur"] {
            on(end, |held, _| held.key_up());
        }
        Self { held }
    }

    /// Puts the handle where the design has it.
    pub(super) fn place(&mut self, design: &Design, unit: LengthUnit, place: Place) {
        let Ok(mut held) = self.held.try_borrow_mut() else {
            return;
        };
        let value = if held.is_tip {
            design.probe.length_um
        } else {
            design.probe.backshort_distance_um
        };
        let range = HandleRange::of(design, held.field());
        held.value_um = value;
        held.range = range;
        held.px_per_um = place.px_per_um;
        held.sheet_width = place.size.0;
        let element = &held.element;
        let number = |um: u32| format_length_number(um, unit);
        set_attribute(element, "aria-valuenow", &number(value));
        set_attribute(element, "aria-valuemin", &number(range.low_um.min(value)));
        set_attribute(element, "aria-valuemax", &number(range.high_um.max(value)));
        set_attribute(element, "aria-valuetext", &format_length(value, unit));
        let (width, height) = place.size;
        set_style(element, "left", &percent(place.area.left / width));
        set_style(element, "top", &percent(place.area.top / height));
        set_style(element, "height", &percent(place.area.height / height));
    }
}

/// A part of the sheet in per cent, to a thousandth of it.
fn percent(part: f64) -> String {
    let mut text = String::from("calc(");
    push_tenths(&mut text, part * 10_000.0);
    text.push_str("% / 100)");
    text
}

impl Held {
    fn field(&self) -> Field {
        if self.is_tip {
            Field::ProbeLength
        } else {
            Field::BackshortDistance
        }
    }

    /// Place of an event along the handle's direction: up is longer, right is
    /// farther from the back wall.
    fn along(&self, event: &PointerEvent) -> f64 {
        if self.is_tip {
            -f64::from(event.client_y())
        } else {
            f64::from(event.client_x())
        }
    }

    fn take(&mut self, event: &PointerEvent) -> Edits {
        if event.button() != 0 || self.grab.is_some() {
            return Edits::new();
        }
        // Refused only where the pointer is gone already; then no move comes.
        let _ = self.element.set_pointer_capture(event.pointer_id());
        self.grab = Some(Grab {
            pointer_id: event.pointer_id(),
            from: self.along(event),
            start_um: self.value_um,
            last_um: self.value_um,
        });
        vec![(self.value_um, DragPhase::Start)]
    }

    fn drag(&mut self, event: &PointerEvent) -> Edits {
        let along = self.along(event);
        let shown = self
            .element
            .parent_element()
            .map_or(self.sheet_width, |stage| f64::from(stage.client_width()));
        // The sheet is drawn 1:1 unless the page is narrower than any phone.
        let css_per_um = (self.px_per_um * shown / self.sheet_width).max(1e-9);
        let range = self.range;
        let Some(grab) = self.grab.as_mut() else {
            return Edits::new();
        };
        if grab.pointer_id != event.pointer_id() {
            return Edits::new();
        }
        let um = range.nearest(f64::from(grab.start_um) + (along - grab.from) / css_per_um);
        if um == grab.last_um {
            return Edits::new();
        }
        grab.last_um = um;
        vec![(um, DragPhase::Move)]
    }

    fn release(&mut self) -> Edits {
        let grab = self.grab.take();
        grab.map(|grab| (grab.last_um, DragPhase::End))
            .into_iter()
            .collect()
    }

    fn key_down(&mut self, event: &KeyboardEvent) -> Edits {
        let key = event.key();
        if key == "Escape" {
            // Lets go and puts the probe back.
            let Some(grab) = self.grab.take() else {
                return Edits::new();
            };
            event.prevent_default();
            let back = grab.start_um;
            return vec![(back, DragPhase::Move), (back, DragPhase::End)];
        }
        if event.ctrl_key() || event.alt_key() || event.meta_key() {
            return Edits::new();
        }
        let Some(step) = HandleKey::from_key(&key, event.shift_key()) else {
            return Edits::new();
        };
        event.prevent_default();
        let um = self.range.after_key(self.value_um, step);
        let begun = self.key_um.replace(um).is_some();
        let mut edits = Edits::new();
        if !begun {
            edits.push((self.value_um, DragPhase::Start));
        }
        edits.push((um, DragPhase::Move));
        edits
    }

    fn key_up(&mut self) -> Edits {
        let um = self.key_um.take();
        um.map(|um| (um, DragPhase::End)).into_iter().collect()
    }
}
