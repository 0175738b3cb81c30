//! The entries in the page: what each holds, and what stands beside it.

use std::cell::RefCell;

use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlInputElement};

use super::browser::{self, part};
use super::entries::Entry;
use super::model::Model;
use crate::entry::LengthUnit;

/// What stands beside an entry.
#[derive(Clone, PartialEq, Eq)]
enum Beside {
    Nothing,
    Remark(String),
    Wrong(String),
}

/// One entry in the page.
pub(super) struct Slot {
    pub(super) entry: Entry,
    field: Element,
    input: HtmlInputElement,
    message: Element,
    unit: Element,
    beside: Beside,
    /// What the entry was last brought in line with.
    seen: Option<Seen>,
}

#[derive(Clone, PartialEq)]
struct Seen {
    refill: u32,
    unit: LengthUnit,
    exact: String,
}

impl Slot {
    /// Writes the entry into its place in the page, after the pattern there.
    fn write(root: &Element, entry: Entry) -> Option<Self> {
        let id = entry.id();
        let field = part(root, &["[data-entry=\"", id, "\"]"].concat())?;
        field.set_class_name("field");
        browser::stamp(&field, "entry");
        let (plain, trade, help) = entry.label();
        let label = part(&field, "label")?;
        label.set_text_content(Some(plain));
        set(&label, "for", id);
        let help_box = part(&field, ".help")?;
        set(
            &part(&help_box, "summary")?,
            "aria-label",
            &["Help: ", plain].concat(),
        );
        let trade = if trade.is_empty() {
            String::new()
        } else {
            ["In the trade: ", trade, ". "].concat()
        };
        part(&help_box, "p")?.set_text_content(Some(&[&trade, help].concat()));
        let input: HtmlInputElement = part(&field, "input")?.unchecked_into();
        set(&input, "id", id);
        set(
            &input,
            "inputmode",
            if entry.is_decimal() {
                "decimal"
            } else {
                "text"
            },
        );
        let message_id = [id, "-message"].concat();
        set(&input, "aria-describedby", &message_id);
        let message = part(&field, ".message")?;
        set(&message, "id", &message_id);
        for (way, button) in ["less", "more"]
            .into_iter()
            .zip(browser::elements(&field, ".step"))
        {
            if field.has_attribute("data-plain") {
                button.remove();
            } else {
                set(&button, "data-arg", id);
                set(&button, "aria-label", &[plain, ", ", way].concat());
            }
        }
        Some(Self {
            entry,
            input,
            message,
            unit: part(&field, ".unit")?,
            field,
            beside: Beside::Nothing,
            seen: None,
        })
    }

    pub(super) fn is_wrong(&self) -> bool {
        matches!(self.beside, Beside::Wrong(_))
    }

    /// Shows the work's value when it changes from elsewhere. What was typed
    /// stays as typed while it means the same, or while it means nothing yet.
    pub(super) fn follow(&mut self, model: &Model) {
        let exact = self.entry.text(&model.work, model.unit);
        let now = Seen {
            refill: model.refill,
            unit: model.unit,
            exact,
        };
        let shown = self.entry.shown(model);
        let show_again = match &self.seen {
            None => true,
            Some(seen) if *seen == now && shown => false,
            Some(seen) => {
                !shown
                    || seen.refill != now.refill
                    || (seen.unit != now.unit && !self.is_wrong())
                    || (seen.exact != now.exact && seen.unit == now.unit && !self.means(model))
            }
        };
        if self.seen.as_ref().is_none_or(|seen| seen.unit != now.unit) {
            self.unit
                .set_text_content(Some(self.entry.unit_symbol(model.unit)));
        }
        if show_again {
            self.input.set_value(&now.exact);
            self.say(Beside::Nothing);
        }
        let _ = self.field.toggle_attribute_with_force("hidden", !shown);
        self.seen = Some(now);
    }

    /// Whether the text, as it stands, says what the work already is.
    fn means(&self, model: &Model) -> bool {
        let mut read = model.work.clone();
        self.entry
            .read(
                &self.input.value(),
                model.unit,
                model.diameter_by,
                &mut read,
            )
            .is_ok()
            && read == model.work
    }

    /// Reads what was typed into the work; `None` if it can't be used.
    pub(super) fn typed(&mut self, model: &Model) -> Option<crate::workpiece::Workpiece> {
        let mut work = model.work.clone();
        let text = self.input.value();
        match self
            .entry
            .read(&text, model.unit, model.diameter_by, &mut work)
        {
            Ok(remark) => {
                self.say(remark.map_or(Beside::Nothing, Beside::Remark));
                Some(work)
            }
            Err(sentence) => {
                self.say(Beside::Wrong(sentence));
                None
            }
        }
    }

    /// The work with the entry's number moved by whole steps; `None` where the
    /// step would leave the range.
    pub(super) fn stepped(
        &mut self,
        steps: i64,
        model: &Model,
    ) -> Option<crate::workpiece::Workpiece> {
        let mut work = model.work.clone();
        match self
            .entry
            .step(steps, model.unit, model.diameter_by, &mut work)
        {
            Ok(()) => {
                self.input.set_value(&self.entry.text(&work, model.unit));
                self.say(Beside::Nothing);
                Some(work)
            }
            Err(sentence) => {
                // The number stays as it is; only the sentence says why.
                if !self.is_wrong() {
                    self.say(Beside::Remark(sentence));
                }
                None
            }
        }
    }

    fn say(&mut self, beside: Beside) {
        if self.beside == beside {
            return;
        }
        let (text, wrong) = match &beside {
            Beside::Nothing => ("", false),
            Beside::Remark(text) => (text.as_str(), false),
            Beside::Wrong(text) => (text.as_str(), true),
        };
        self.message.set_text_content(Some(text));
        let class = if wrong { "field wrong" } else { "field" };
        self.field.set_class_name(class);
        set(
            &self.input,
            "aria-invalid",
            if wrong { "true" } else { "false" },
        );
        self.beside = beside;
    }
}

/// Sets an attribute; the names used here are valid, so it is never refused.
fn set(element: &Element, name: &str, value: &str) {
    let _ = element.set_attribute(name, value);
}

/// All entries of the page.
#[derive(Clone, Copy)]
pub(super) struct Slots(&'static RefCell<Vec<Slot>>);

impl Slots {
    pub(super) fn new() -> Self {
        Self(Box::leak(Box::default()))
    }

    /// Writes every entry into its place in the page.
    pub(super) fn write(self, root: &Element) {
        let slots = Entry::ALL.into_iter();
        let slots = slots.filter_map(|entry| Slot::write(root, entry)).collect();
        self.0.replace(slots);
    }

    /// Whether some entry holds text that can't be used.
    pub(super) fn wait(self) -> bool {
        self.0.borrow().iter().any(Slot::is_wrong)
    }

    pub(super) fn follow(self, model: &Model) {
        for slot in self.0.borrow_mut().iter_mut() {
            slot.follow(model);
        }
    }

    /// Does something with the entry of that id.
    pub(super) fn at<T>(self, id: &str, act: impl FnOnce(&mut Slot) -> Option<T>) -> Option<T> {
        let mut slots = self.0.borrow_mut();
        let slot = slots.iter_mut().find(|slot| slot.entry.id() == id)?;
        act(slot)
    }
}
