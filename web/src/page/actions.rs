//! What the maker does: every button, choice, entry and key of the page, heard
//! in one place and looked up by the name in its `data-do`.

use leptos::prelude::*;
use tinwave_core::json::design_to_json;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, HtmlInputElement, KeyboardEvent};

use super::band::channel_band;
use super::browser::{self, Timer};
use super::feed::{self, Hole};
use super::keep_part;
use super::match_part;
use super::model::{Copied, DiameterBy};
use super::mouth_part;
use super::outside_job::OutsideJob;
use super::slots::Slots;
use super::state::Page;
use crate::bands;
use crate::connectors::{ConnectorKind, Mounting};
use crate::entry::LengthUnit;
use crate::history::{Change, History};
use crate::store::Theme;
use tinwave_core::design_error::Field;
use tinwave_core::metal::Metal;

/// How long 'copied' stays in the button.
const SAID_MS: u32 = 2_500;

/// What the actions work on.
#[derive(Clone, Copy)]
pub(super) struct Actions {
    pub(super) page: Page,
    pub(super) slots: Slots,
    pub(super) outside: OutsideJob,
    said: Timer,
}

impl Actions {
    pub(super) fn new(page: Page, slots: Slots, outside: OutsideJob) -> Self {
        Self {
            page,
            slots,
            outside,
            said: Timer::new(),
        }
    }

    /// Listens within `root`, and to the keys of the whole page.
    pub(super) fn listen(self, root: &Element) {
        let on = |name: &str, act: fn(Self, &Event)| {
            browser::on_event(root, name, Box::new(move |event| act(self, &event)));
        };
        on("click", Self::click);
        on("input", Self::input);
        on("change", Self::change);
        on("keydown", Self::entry_key);
        on("focusin", |_, event| {
            // A text that is only there to be copied is selected at once.
            if let Some(input) = target::<HtmlInputElement>(event)
                && input.read_only()
            {
                input.select();
            }
        });
        browser::on_event(
            &window(),
            "keydown",
            Box::new(move |event| self.page_key(&event)),
        );
    }

    fn click(self, event: &Event) {
        let Some(button) = target::<Element>(event)
            .and_then(|element| element.closest("button[data-do]").ok().flatten())
        else {
            return;
        };
        let argument = button.get_attribute("data-arg").unwrap_or_default();
        let verb = button.get_attribute("data-do").unwrap_or_default();
        self.press(&verb, &argument);
    }

    fn press(self, verb: &str, argument: &str) {
        let page = self.page;
        let index = || argument.parse::<usize>().unwrap_or(usize::MAX);
        match verb {
            "less" => self.step(argument, -1),
            "more" => self.step(argument, 1),
            "undo" => page.walk(History::undo),
            "redo" => page.walk(History::redo),
            "cut" => self.take_cut(argument),
            "stop-solving" => self.outside.stop(),
            "solve-again" => self.outside.again(),
            "copy-link" => self.copy_link(),
            "share" => {
                page.commit();
                let name = page.look(|model| model.work.design.name.clone());
                browser::share(&name, &page.link());
            }
            "keep" => keep_part::keep(page),
            "open-kept" => keep_part::open_kept(page, index()),
            "remove-kept" => keep_part::remove_kept(page, index()),
            "save-file" => {
                let text = page.look(|model| design_to_json(&model.work.design));
                browser::download("tinwave-design.json", "application/json", &text);
            }
            "close-notice" => page.set(&|model| model.notice = None),
            _ => {}
        }
    }

    fn take_cut(self, argument: &str) {
        let cut = self.page.look(|model| match_part::cut_of(model, argument));
        if let Some(cut) = cut {
            self.page.alter(Change::BestCut, &|work| {
                work.design.probe.length_um = cut.length_um;
                work.design.probe.backshort_distance_um = cut.backshort_distance_um;
            });
        }
    }

    fn copy_link(self) {
        let page = self.page;
        page.commit();
        let link = page.link();
        let by_hand = link.clone();
        browser::copy(
            &link,
            Box::new(move |worked| {
                if worked {
                    page.set(&|model| model.copied = Copied::Yes);
                    self.said.set(
                        SAID_MS,
                        Box::new(move || {
                            page.set(&|model| model.copied = Copied::No);
                        }),
                    );
                } else {
                    page.set(&|model| model.copied = Copied::ByHand(by_hand.clone()));
                }
            }),
        );
    }

    fn input(self, event: &Event) {
        let Some(input) = target::<HtmlInputElement>(event) else {
            return;
        };
        let page = self.page;
        let typed = self.slots.at(&input.id(), |slot| {
            let work = page.look(|model| slot.typed(model));
            Some((slot.entry.change(), work))
        });
        let Some((change, work)) = typed else {
            return;
        };
        self.note_waiting();
        match work {
            Some(work) => page.put(&work, change),
            None => page.tell_edition(),
        }
    }

    /// Brings the model in line with whether an entry is wrong.
    fn note_waiting(self) {
        let waits = self.slots.wait();
        self.page.change(&|model| model.waits = waits);
    }

    fn step(self, id: &str, steps: i64) {
        let page = self.page;
        let stepped = self.slots.at(id, |slot| {
            let work = page.look(|model| slot.stepped(steps, model))?;
            Some((slot.entry.change(), work))
        });
        if let Some((change, work)) = stepped {
            self.note_waiting();
            page.put(&work, change);
            page.commit_soon();
        }
    }

    fn entry_key(self, event: &Event) {
        let (Some(key), Some(input)) = (
            event.dyn_ref::<KeyboardEvent>(),
            target::<HtmlInputElement>(event),
        ) else {
            return;
        };
        let id = input.id();
        if self.slots.at(&id, |_| Some(())).is_none() {
            return;
        }
        let many = if key.shift_key() { 10 } else { 1 };
        match key.key().as_str() {
            "ArrowUp" => self.step(&id, many),
            "ArrowDown" => self.step(&id, -many),
            "Enter" => {
                self.page.commit();
                return;
            }
            _ => return,
        }
        event.prevent_default();
    }

    /// Ctrl or Command with Z undoes; with Shift too, or with Y, redoes. The
    /// browser's own undo of a text field would leave the design behind.
    fn page_key(self, event: &Event) {
        let Some(key) = event.dyn_ref::<KeyboardEvent>() else {
            return;
        };
        if !(key.ctrl_key() || key.meta_key()) || key.alt_key() {
            return;
        }
        match (key.key().as_str(), key.shift_key()) {
            ("z", false) => self.page.walk(History::undo),
            ("Z" | "z", true) | ("y", _) => self.page.walk(History::redo),
            _ => return,
        }
        event.prevent_default();
    }

    fn change(self, event: &Event) {
        let Some(element) = target::<Element>(event) else {
            return;
        };
        let Some(verb) = element.get_attribute("data-do") else {
            self.page.commit();
            return;
        };
        if verb == "open-file" {
            let page = self.page;
            if let Some(input) = target::<HtmlInputElement>(event) {
                browser::chosen_file(
                    &input,
                    Box::new(move |text| keep_part::open_file(page, text)),
                );
            }
            return;
        }
        let value = browser::value_of(&element);
        self.choose_design(&verb, &value);
        self.choose_page(&verb, &value);
    }

    /// A choice that changes the design.
    fn choose_design(self, verb: &str, value: &str) {
        let page = self.page;
        match verb {
            "metal" => {
                if let Some(metal) = Metal::from_key(value) {
                    page.alter(Change::Metal, &|work| work.design.can.metal = metal);
                }
            }
            "band" | "channel" => {
                let band = if verb == "band" {
                    bands::band_by_key(value).map(|band| band.band())
                } else {
                    channel_band(value)
                };
                match band {
                    Some(band) => page.alter(Change::Band, &|work| work.design.band = band),
                    // 'None' says nothing: the list goes back to what holds.
                    None => page.tell(),
                }
            }
            "gauge" => match feed::gauge_diameter_um(value) {
                Some(um) => page.alter(Change::Field(Field::WireDiameter), &|work| {
                    work.design.probe.wire_diameter_um = um;
                }),
                None => page.tell(),
            },
            "connector" => {
                if let Some(kind) = ConnectorKind::from_key(value) {
                    page.alter(Change::Connector, &|work| feed::take_kind(work, kind));
                }
            }
            "mounting" => {
                if let Some(mounting) = Mounting::from_key(value) {
                    page.alter(Change::Connector, &|work| {
                        feed::take_mounting(work, mounting)
                    });
                }
            }
            "mouth" => page.alter(Change::Mouth, &|work| mouth_part::take_kind(work, value)),
            "sleeve" => page.alter(Change::Sleeve, &feed::switch_sleeve),
            "hole-by" => {
                let hole = match value {
                    "line" => Hole::Line,
                    "connector" => Hole::Connector,
                    _ => Hole::Typed,
                };
                page.change(&|model| model.hole_typed = hole == Hole::Typed);
                page.alter(Change::Field(Field::HoleDiameter), &|work| {
                    feed::take_hole(work, hole);
                });
            }
            _ => {}
        }
    }

    /// A choice that changes how the page shows the design.
    fn choose_page(self, verb: &str, value: &str) {
        let page = self.page;
        match verb {
            "diameter-by" => {
                let by = match value {
                    "outside" => DiameterBy::Outside,
                    "circumference" => DiameterBy::Circumference,
                    _ => DiameterBy::Inside,
                };
                page.set(&|model| model.diameter_by = by);
            }
            "unit" => {
                let unit = LengthUnit::from_key(value).unwrap_or_default();
                page.change(&|model| {
                    model.unit = unit;
                    model.kept.unit = unit;
                });
                page.keep();
                page.tell_edition();
            }
            "theme" => {
                let theme = Theme::from_key(value).unwrap_or_default();
                page.change(&|model| {
                    model.theme = theme;
                    model.kept.theme = theme;
                });
                page.keep();
                super::show_theme(theme);
                page.tell_edition();
            }
            _ => {}
        }
    }
}

fn target<T: JsCast>(event: &Event) -> Option<T> {
    event.target()?.dyn_into().ok()
}
