//! A list of many things, in groups, with a search.

use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use tinwave_words::frame as words;

use super::{Fault, Icon, IconName, Pick, PickGroup, new_id};
use crate::browser;
use crate::reactive::live;

/// A long list to pick from: typing searches it, arrows walk it, Enter picks.
///
/// With `take`, a text that is in no list is read as one's own ("2401-2483.5").
///
/// ```ignore
/// view! { <Picker label="Band" groups=bands() chosen=move || key() says=move || band_words()
///     on_choose=move |key: String| … take=move |text: String| …/> }
/// ```
#[component]
pub fn Picker(
    /// What is picked.
    #[prop(into)]
    label: Signal<String>,
    /// More about the choice, below the label.
    #[prop(optional, into)]
    note: Signal<String>,
    /// The things, in groups.
    #[prop(into)]
    groups: Signal<Vec<PickGroup>>,
    /// The key of the picked one; one that is in no group where the choice is one's own.
    #[prop(into)]
    chosen: Signal<String>,
    /// What stands in the cell where `chosen` is in no group.
    #[prop(optional, into)]
    says: Signal<String>,
    /// Takes the key of another.
    #[prop(into)]
    on_choose: Callback<String>,
    /// Reads a text that is in no list, or says what is wrong with it.
    #[prop(optional, into)]
    take: Option<Callback<String, Result<(), Fault>>>,
    /// The cell's name, for what leads to it.
    #[prop(optional, into)]
    id: Option<String>,
) -> impl IntoView {
    let id = id.unwrap_or_else(|| new_id("picker"));
    let list = PickerState {
        groups,
        chosen,
        says,
        on_choose,
        take,
        typed: RwSignal::new(None),
        open: RwSignal::new(false),
        active: RwSignal::new(0),
        fault: RwSignal::new(None),
        list_id: StoredValue::new(format!("{id}-list")),
    };
    let list_id = move || list.list_id.get_value();
    let fault_id = format!("{id}-fault");
    let expanded = move || if list.open.get() { "true" } else { "false" };
    let active = move || list.open.get().then(|| list.option_id(list.active.get()));
    let is_wrong = move || list.fault.with(Option::is_some);
    view! {
        <div class="row" class:wrong=is_wrong>
            <label for=id.clone()>{label}
                <Show when=move || !note.with(String::is_empty)><span class="sub">{note}</span></Show>
            </label>
            <div class="cell list picker">
                <input id=id type="text" role="combobox" autocomplete="off" spellcheck="false" autocapitalize="off"
                    enterkeyhint="done" aria-autocomplete="list" aria-expanded=expanded aria-controls=list_id
                    aria-activedescendant=active aria-describedby=fault_id.clone()
                    aria-invalid=move || is_wrong().then_some("true")
                    value=move || list.shown() prop:value=move || list.shown()
                    on:focus=move |event| browser::select_all(&event_target(&event))
                    on:click=move |_| list.unfold()
                    on:input=move |event| list.search(event_target_value(&event))
                    on:keydown=move |event| list.key(&event)
                    on:blur=move |_| list.leave()/>
                <Icon name=IconName::Chevron/>
                <ul id=list_id class="pick-list" role="listbox" aria-label=label hidden=move || !list.open.get()>
                    {live(move || list.open.get().then(|| list.options()))}
                </ul>
            </div>
            <div id=fault_id class="fault" role="status">
                {live(move || list.fault.get().map(|fault| view! {
                    <p><Icon name=IconName::Caution/><span>{fault.sentence}</span></p>
                }))}
            </div>
        </div>
    }
}

/// What is typed, which line is meant, what is open. A handle, copied freely.
#[derive(Clone, Copy)]
struct PickerState {
    groups: Signal<Vec<PickGroup>>,
    chosen: Signal<String>,
    says: Signal<String>,
    on_choose: Callback<String>,
    take: Option<Callback<String, Result<(), Fault>>>,
    typed: RwSignal<Option<String>>,
    open: RwSignal<bool>,
    /// The line that Enter picks, counted over all that match.
    active: RwSignal<usize>,
    fault: RwSignal<Option<Fault>>,
    list_id: StoredValue<String>,
}

impl PickerState {
    fn shown(self) -> String {
        if let Some(typed) = self.typed.get() {
            return typed;
        }
        let chosen = self.chosen.get();
        let name = self.groups.with(|groups| {
            let mut picks = groups.iter().flat_map(|group| &group.picks);
            picks
                .find(|pick| pick.key == chosen)
                .map(|pick| pick.name.clone())
        });
        name.unwrap_or_else(|| self.says.get())
    }

    /// The groups with the lines that match; all of them until something is typed.
    fn matching(self) -> Vec<PickGroup> {
        let typed = self.typed.get().unwrap_or_default();
        let mut groups = self.groups.get();
        for group in &mut groups {
            group.picks.retain(|pick| pick.matches(&typed));
        }
        groups.retain(|group| !group.picks.is_empty());
        groups
    }

    fn lines(self) -> Vec<Pick> {
        untrack(|| self.matching())
            .into_iter()
            .flat_map(|group| group.picks)
            .collect()
    }

    fn option_id(self, index: usize) -> String {
        format!("{}-{index}", self.list_id.get_value())
    }

    fn unfold(self) {
        let chosen = self.chosen.get_untracked();
        let at = self.lines().iter().position(|pick| pick.key == chosen);
        self.active.set(at.unwrap_or(0));
        self.open.set(true);
        self.show_active();
    }

    fn show_active(self) {
        let id = self.option_id(self.active.get_untracked());
        request_animation_frame(move || browser::bring_into_sight(&id));
    }

    fn search(self, text: String) {
        self.fault.set(None);
        let phrase = text.trim().to_ascii_lowercase();
        self.typed.set(Some(text));
        // The words may stand apart in many lines; whoever typed them in a row means that.
        let said = |pick: &Pick| pick.name.to_ascii_lowercase().starts_with(&phrase);
        let line = self.lines().iter().position(said);
        self.active.set(line.unwrap_or(0));
        self.open.set(true);
    }

    fn key(self, event: &KeyboardEvent) {
        let handled = match (event.key().as_str(), self.open.get_untracked()) {
            ("ArrowDown" | "ArrowUp", false) => {
                self.unfold();
                true
            }
            ("ArrowDown", true) => self.step(1),
            ("ArrowUp", true) => self.step(-1),
            ("Enter", open) => {
                self.enter(open);
                true
            }
            ("Escape", true) => {
                self.settle();
                true
            }
            _ => false,
        };
        if handled {
            event.prevent_default();
        }
    }

    fn step(self, by: isize) -> bool {
        let last = self.lines().len().saturating_sub(1);
        self.active
            .update(|active| *active = active.saturating_add_signed(by).min(last));
        self.show_active();
        true
    }

    /// Enter: what is typed as one's own is read as that, else the active line is picked.
    fn enter(self, open: bool) {
        let line = open
            .then(|| self.lines().into_iter().nth(self.active.get_untracked()))
            .flatten();
        match (line, self.typed.get_untracked()) {
            (Some(line), _) => self.choose(line.key),
            (None, Some(text)) => self.own(text),
            (None, None) => self.settle(),
        }
    }

    fn own(self, text: String) {
        let outcome = match self.take {
            Some(take) => take.run(text),
            None => Err(words::nothing_matches(&text).into()),
        };
        match outcome {
            Ok(()) => self.settle(),
            Err(fault) => {
                self.open.set(false);
                self.fault.set(Some(fault));
            }
        }
    }

    fn choose(self, key: String) {
        self.settle();
        browser::put_keypad_away();
        self.on_choose.run(key);
    }

    fn settle(self) {
        self.typed.set(None);
        self.fault.set(None);
        self.open.set(false);
    }

    /// The cell is left: a text of one's own is read; a search that picked nothing ends.
    fn leave(self) {
        // The list may have gone with its station, and the focus with it.
        if self.open.is_disposed() {
            return;
        }
        self.open.set(false);
        if self.fault.with_untracked(Option::is_some) {
            return;
        }
        let own = self
            .typed
            .get_untracked()
            .filter(|text| !text.trim().is_empty());
        match own {
            Some(text) if self.take.is_some() && self.lines().is_empty() => self.own(text),
            _ => self.settle(),
        }
    }

    fn options(self) -> impl IntoView + use<> {
        let chosen = self.chosen.get();
        let mut index = 0;
        let groups = self.matching();
        if groups.is_empty() {
            let typed = self.typed.get().unwrap_or_default();
            let text = if self.take.is_some() {
                String::new()
            } else {
                words::nothing_matches(&typed)
            };
            return view! { <li class="no-match" role="presentation">{text}</li> }.into_any();
        }
        let mut line = |pick: Pick| {
            let at = index;
            index += 1;
            let is_chosen = if pick.key == chosen { "true" } else { "false" };
            let key = StoredValue::new(pick.key);
            view! {
                <li id=self.option_id(at) role="option" aria-selected=is_chosen class="pick"
                    class:active=move || self.active.get() == at
                    // The cell keeps the focus, so that leaving it does not close the list first.
                    on:mousedown=move |event| event.prevent_default()
                    on:click=move |_| self.choose(key.get_value())>
                    <span>{pick.name}</span>
                    <span class="sub">{pick.detail}</span>
                </li>
            }
        };
        groups
            .into_iter()
            .map(|group| {
                let head = (!group.name.is_empty())
                    .then(|| view! { <span class="pick-head" role="presentation">{group.name.clone()}</span> });
                let lines = group.picks.into_iter().map(&mut line).collect_view();
                view! {
                    <li role="presentation" class="pick-group">{head}
                        <ul role="group" aria-label=group.name>{lines}</ul>
                    </li>
                }
            })
            .collect_view()
            .into_any()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn groups() -> Vec<PickGroup> {
        let group = |name: &str, picks| PickGroup {
            name: name.into(),
            picks,
        };
        vec![
            group(
                "Networks",
                vec![Pick::new("n", "2400 to 2483.5 MHz").with_detail("Europe")],
            ),
            group(
                "Amateur",
                vec![Pick::new("a", "9 cm"), Pick::new("b", "13 cm")],
            ),
        ]
    }

    fn state(chosen: RwSignal<String>) -> PickerState {
        PickerState {
            groups: Signal::derive(groups),
            chosen: chosen.into(),
            says: Signal::stored("2410 to 2420 MHz".into()),
            on_choose: Callback::new(move |key| chosen.set(key)),
            take: None,
            typed: RwSignal::new(None),
            open: RwSignal::new(false),
            active: RwSignal::new(0),
            fault: RwSignal::new(None),
            list_id: StoredValue::new("list".into()),
        }
    }

    #[test]
    fn it_is_a_combobox_with_a_listbox_and_shows_what_is_picked() {
        let html = Owner::new().with(|| {
            view! { <Picker label="Band" groups=groups() chosen="n" on_choose=|_| {}/> }.to_html()
        });
        assert!(
            html.contains("role=\"combobox\"") && html.contains("aria-expanded=\"false\""),
            "{html}"
        );
        let list = html
            .split("aria-controls=\"")
            .nth(1)
            .and_then(|rest| rest.split('"').next());
        assert!(
            html.contains(&format!("<ul id=\"{}\"", list.unwrap_or("none"))),
            "{html}"
        );
        assert!(html.contains("value=\"2400 to 2483.5 MHz\""), "{html}");
    }

    #[test]
    fn a_choice_of_ones_own_is_shown_as_it_is_said() {
        Owner::new().with(|| {
            assert_eq!(
                state(RwSignal::new("own".into())).shown(),
                "2410 to 2420 MHz"
            );
        });
    }

    #[test]
    fn typing_searches_and_enter_picks_the_line() {
        Owner::new().with(|| {
            let chosen = RwSignal::new("n".to_owned());
            let list = state(chosen);
            list.search("cm".into());
            assert_eq!(list.lines().len(), 2);
            list.active.set(1);
            list.enter(true);
            assert_eq!(chosen.get_untracked(), "b");
            assert!(!list.open.get_untracked());
        });
    }

    #[test]
    fn a_line_that_begins_with_what_is_typed_is_meant_first() {
        Owner::new().with(|| {
            let list = state(RwSignal::new("n".to_owned()));
            list.search("13".into());
            list.search("2400".into());
            assert_eq!(list.active.get_untracked(), 0);
            // "9 cm" and "13 cm" both have a "cm"; only one begins so.
            list.search("13 cm".into());
            let meant = list.lines().into_iter().nth(list.active.get_untracked());
            assert_eq!(meant.map(|pick| pick.key), Some("b".into()));
        });
    }

    #[test]
    fn what_matches_nothing_is_said_and_changes_nothing() {
        Owner::new().with(|| {
            let chosen = RwSignal::new("n".to_owned());
            let list = state(chosen);
            list.search("77 cm".into());
            list.enter(true);
            assert!(list.fault.get_untracked().is_some());
            assert_eq!(
                (chosen.get_untracked(), list.shown()),
                ("n".into(), "77 cm".into())
            );
        });
    }
}
