//! A text entry with its label, help, steps and message.

use leptos::ev::KeyboardEvent;
use leptos::prelude::*;

use super::entries::{Entry, NAME_CHARACTERS};
use super::state::Page;
use crate::entry::LengthUnit;
use crate::workpiece::Workpiece;

/// What stands beside the entry.
#[derive(Clone, PartialEq, Eq)]
enum Beside {
    Nothing,
    Remark(String),
    Wrong(String),
}

/// One entry's own state.
#[derive(Clone, Copy)]
struct Slot {
    page: Page,
    entry: Entry,
    text: RwSignal<String>,
    beside: RwSignal<Beside>,
}

/// An entry, with step buttons if `steps`.
pub(super) fn entry_field(page: Page, entry: Entry, steps: bool) -> AnyView {
    let unit = page.unit.get_untracked();
    let slot = Slot {
        page,
        entry,
        text: RwSignal::new(page.work.with_untracked(|work| entry.text(work, unit))),
        beside: RwSignal::new(Beside::Nothing),
    };
    slot.follow();
    on_cleanup(move || page.mark(entry.id(), false));
    let (plain, trade, help) = entry.label();
    let id = entry.id();
    let is_name = entry == Entry::Name;
    let less = steps.then(|| slot.step_button(-1));
    let more = steps.then(|| slot.step_button(1));
    view! {
        <div class="field" class:wrong=move || slot.is_wrong()>
            <div class="field-head">
                <label for=id>{plain}</label>
                <span class="unit">{move || entry.unit_symbol(page.unit.get())}</span>
                {help_for(plain, trade, help)}
            </div>
            <div class="entry" class:stepped=steps>
                {less}
                <input
                    id=id
                    type="text"
                    inputmode=if is_name || entry == Entry::Band || entry == Entry::Wire { "text" } else { "decimal" }
                    autocomplete="off"
                    autocapitalize="off"
                    spellcheck="false"
                    enterkeyhint="done"
                    maxlength=if is_name { NAME_CHARACTERS } else { 40 }
                    aria-describedby=[id, "-message"].concat()
                    aria-invalid=move || if slot.is_wrong() { "true" } else { "false" }
                    prop:value=slot.text
                    on:input=move |event| slot.typed(event_target_value(&event))
                    on:change=move |_| page.commit()
                    on:keydown=move |event| slot.key(&event)
                />
                {more}
            </div>
            <p class="message" id=[id, "-message"].concat()>{move || slot.message()}</p>
        </div>
    }
    .into_any()
}

/// The help behind the question mark.
fn help_for(plain: &'static str, trade: &'static str, help: &'static str) -> Option<AnyView> {
    (!help.is_empty() || !trade.is_empty()).then(|| {
        let trade = (!trade.is_empty()).then(|| ["In the trade: ", trade, ". "].concat());
        view! {
            <details class="help">
                <summary aria-label=["Help: ", plain].concat()>"?"</summary>
                <p>{trade}{help}</p>
            </details>
        }
        .into_any()
    })
}

impl Slot {
    /// Shows the work's value when it changes from elsewhere. What was typed
    /// stays as typed while it means the same, or while it means nothing yet.
    fn follow(self) {
        let Self { page, entry, .. } = self;
        Effect::new(move |last: Option<(u32, LengthUnit, String)>| {
            let refill = page.refill.get();
            let unit = page.unit.get();
            page.work.with(|work| {
                let exact = entry.text(work, unit);
                if let Some((last_refill, last_unit, last_exact)) = last {
                    let reset =
                        refill != last_refill || (unit != last_unit && !self.is_wrong_untracked());
                    let moved = exact != last_exact && !self.means(work, unit);
                    if reset || (moved && unit == last_unit) {
                        self.text.set(exact.clone());
                        self.say(Beside::Nothing);
                    }
                }
                (refill, unit, exact)
            })
        });
    }

    /// Whether the text, as it stands, says what the work already is.
    fn means(self, work: &Workpiece, unit: LengthUnit) -> bool {
        let mut read = work.clone();
        let by = self.page.diameter_by.get_untracked();
        self.text
            .with_untracked(|text| self.entry.read(text, unit, by, &mut read).is_ok())
            && read == *work
    }

    fn is_wrong(self) -> bool {
        self.beside
            .with(|beside| matches!(beside, Beside::Wrong(_)))
    }

    fn is_wrong_untracked(self) -> bool {
        self.beside
            .with_untracked(|beside| matches!(beside, Beside::Wrong(_)))
    }

    fn message(self) -> String {
        self.beside.with(|beside| match beside {
            Beside::Nothing => String::new(),
            Beside::Remark(text) | Beside::Wrong(text) => text.clone(),
        })
    }

    fn say(self, beside: Beside) {
        self.page
            .mark(self.entry.id(), matches!(beside, Beside::Wrong(_)));
        if self.beside.with_untracked(|old| *old != beside) {
            self.beside.set(beside);
        }
    }

    fn typed(self, text: String) {
        let page = self.page;
        let mut work = page.work.get_untracked();
        let read = self.entry.read(
            &text,
            page.unit.get_untracked(),
            page.diameter_by.get_untracked(),
            &mut work,
        );
        self.text.set(text);
        match read {
            Ok(remark) => {
                self.say(remark.map_or(Beside::Nothing, Beside::Remark));
                page.put(work, self.entry.change());
            }
            Err(sentence) => self.say(Beside::Wrong(sentence)),
        }
    }

    fn step(self, steps: i64) {
        let page = self.page;
        let unit = page.unit.get_untracked();
        let mut work = page.work.get_untracked();
        let by = page.diameter_by.get_untracked();
        match self.entry.step(steps, unit, by, &mut work) {
            Ok(()) => {
                self.text.set(self.entry.text(&work, unit));
                self.say(Beside::Nothing);
                page.put(work, self.entry.change());
                page.commit_soon();
            }
            // The number stays; only the sentence says why.
            Err(sentence) if !self.is_wrong_untracked() => self.say_only(sentence),
            Err(_) => {}
        }
    }

    /// A remark that does not make the entry wrong: the work is still its text.
    fn say_only(self, sentence: String) {
        self.beside.set(Beside::Remark(sentence));
    }

    fn step_button(self, steps: i64) -> AnyView {
        let (plain, _, _) = self.entry.label();
        let (sign, word) = if steps < 0 {
            ("\u{2212}", ", less")
        } else {
            ("+", ", more")
        };
        view! {
            <button
                type="button"
                class="step"
                aria-label=[plain, word].concat()
                on:click=move |_| self.step(steps)
            >
                {sign}
            </button>
        }
        .into_any()
    }

    fn key(self, event: &KeyboardEvent) {
        let many = if event.shift_key() { 10 } else { 1 };
        match event.key().as_str() {
            "ArrowUp" => self.step(many),
            "ArrowDown" => self.step(-many),
            "Enter" => {
                self.page.commit();
                return;
            }
            _ => return,
        }
        event.prevent_default();
    }
}
