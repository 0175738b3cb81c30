//! What is typed, apart from what holds.
//!
//! A good text applies at once; a wrong one stays in the cell, and what held before
//! holds on.

use leptos::prelude::*;

use crate::browser::Timer;
use crate::reactive::memo;

/// A wrong text is told of after this pause, in milliseconds: nobody is told off in
/// the middle of a number.
const TELL_MS: u32 = 700;

/// A reading that is most likely meant.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Meant {
    /// What is typed in its place.
    pub text: String,
    /// What is on the button.
    pub offer: String,
}

/// What is wrong with a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// In a sentence that says what would be right.
    pub sentence: String,
    /// What is most likely meant.
    pub meant: Option<Meant>,
}

impl From<String> for Fault {
    fn from(sentence: String) -> Self {
        Self {
            sentence,
            meant: None,
        }
    }
}

impl From<tinwave_maker::entry::EntryError> for Fault {
    fn from(error: tinwave_maker::entry::EntryError) -> Self {
        error.to_string().into()
    }
}

/// The state of one entry. A handle, copied freely.
#[derive(Clone, Copy)]
pub struct EntryState {
    /// The text of what holds.
    value: Memo<String>,
    /// Reads a text and applies it.
    take: Callback<String, Result<(), Fault>>,
    /// Ends a run of typing.
    on_commit: Callback<()>,
    /// A text that differs from the value's own, while it is typed or because it is
    /// wrong.
    typed: RwSignal<Option<String>>,
    /// What is wrong with it.
    fault: RwSignal<Option<Fault>>,
    focused: RwSignal<bool>,
    pause: Timer,
}

impl EntryState {
    /// An entry of `value`; `take` reads a text and applies it, `on_commit` ends a run.
    #[must_use]
    pub fn new(
        value: Signal<String>,
        take: Callback<String, Result<(), Fault>>,
        on_commit: Callback<()>,
    ) -> Self {
        let state = Self {
            value: memo(move || value.get()),
            take,
            on_commit,
            typed: RwSignal::new(None),
            fault: RwSignal::new(None),
            focused: RwSignal::new(false),
            pause: Timer::new(),
        };
        // What held was changed from elsewhere: it is shown, whatever was typed.
        Effect::new(move |before: Option<String>| {
            let now = state.value.get();
            if before.is_some_and(|before| before != now) && !state.focused.get_untracked() {
                state.settle();
            }
            now
        });
        state
    }

    /// What is in the cell.
    #[must_use]
    pub fn shown(self) -> String {
        self.typed.get().unwrap_or_else(|| self.value.get())
    }

    /// Whether what is in the cell is what holds: nothing was typed since.
    #[must_use]
    pub fn is_settled(self) -> bool {
        self.typed.with(Option::is_none)
    }

    /// What is wrong with it.
    #[must_use]
    pub fn fault(self) -> Option<Fault> {
        self.fault.get()
    }

    /// Whether it is being typed in.
    #[must_use]
    pub fn is_focused(self) -> bool {
        self.focused.get()
    }

    /// The cell is entered.
    pub fn enter(self) {
        self.focused.set(true);
    }

    /// A text was typed.
    pub fn input(self, text: String) {
        self.typed.set(Some(text.clone()));
        match self.take.run(text) {
            Ok(()) => {
                self.pause.clear();
                self.fault.set(None);
            }
            Err(fault) if self.fault.with_untracked(Option::is_some) => self.tell(fault),
            Err(fault) => self.pause.set(TELL_MS, move || self.tell(fault)),
        }
    }

    /// Enter was pressed, or the cell is left: a good text takes the value's own form,
    /// a wrong one stays.
    pub fn commit(self) {
        self.pause.clear();
        if let Some(text) = self.typed.get_untracked() {
            match self.take.run(text) {
                Ok(()) => self.settle(),
                Err(fault) => self.tell(fault),
            }
            self.on_commit.run(());
        }
    }

    /// Whether the entry went with its station: a cell that is taken away is left too, and
    /// the browser tells of it when nothing is there to hear.
    #[must_use]
    pub fn is_gone(self) -> bool {
        self.focused.is_disposed()
    }

    /// The cell is left.
    pub fn leave(self) {
        if self.is_gone() {
            return;
        }
        self.focused.set(false);
        self.commit();
    }

    /// Tells of a fault; the same one again is no news, and its button stays as it is: the
    /// press that leaves the cell may be on it.
    fn tell(self, fault: Fault) {
        if self
            .fault
            .with_untracked(|told| told.as_ref() != Some(&fault))
        {
            self.fault.set(Some(fault));
        }
    }

    /// The likeliest meaning is taken.
    pub fn take_meant(self, meant: Meant) {
        self.input(meant.text);
        self.commit();
    }

    /// Shows what holds.
    pub fn settle(self) {
        self.pause.clear();
        self.typed.set(None);
        self.fault.set(None);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reactive::derived;

    fn number(value: RwSignal<u32>) -> EntryState {
        EntryState::new(
            derived(move || value.get().to_string()),
            Callback::new(move |text: String| match text.parse() {
                Ok(number) => {
                    value.set(number);
                    Ok(())
                }
                Err(_) => Err(Fault::from("Write digits.".to_owned())),
            }),
            Callback::new(|()| {}),
        )
    }

    #[test]
    fn a_good_text_applies_at_once_and_a_wrong_one_stays() {
        Owner::new().with(|| {
            let value = RwSignal::new(87);
            let entry = number(value);
            entry.enter();
            entry.input("099".into());
            assert_eq!(
                (value.get_untracked(), entry.shown()),
                (99, "099".to_owned())
            );
            entry.input("9x".into());
            assert_eq!(value.get_untracked(), 99, "the last good one holds");
            entry.leave();
            assert_eq!(entry.shown(), "9x");
            assert!(entry.fault().is_some());
        });
    }

    #[test]
    fn a_good_text_takes_the_values_own_form_when_it_is_left() {
        Owner::new().with(|| {
            let entry = number(RwSignal::new(87));
            entry.enter();
            entry.input("0088".into());
            entry.leave();
            assert_eq!(entry.shown(), "88");
            assert!(entry.fault().is_none());
        });
    }

    #[test]
    fn a_cell_that_goes_with_its_station_is_left_in_peace() {
        let station = Owner::new();
        let value = RwSignal::new(87);
        let entry = station.with(|| number(value));
        entry.enter();
        entry.input("88".into());
        station.cleanup();
        assert!(entry.is_gone());
        entry.leave();
        assert_eq!(value.get_untracked(), 88);
    }

    #[test]
    fn the_likeliest_meaning_is_taken_by_a_press() {
        Owner::new().with(|| {
            let value = RwSignal::new(87);
            let entry = number(value);
            entry.input("ninety".into());
            entry.commit();
            entry.take_meant(Meant {
                text: "90".into(),
                offer: "Take it as 90".into(),
            });
            assert_eq!(value.get_untracked(), 90);
            assert!(entry.fault().is_none());
        });
    }
}
