//! A row of the entries: label left, cell with its unit right.

use leptos::ev::{FocusEvent, KeyboardEvent, MouseEvent};
use leptos::prelude::*;
use tinwave_words::frame as words;

use super::{Action, ActionKind, EntryState, Fault, Icon, IconName, new_id};
use crate::browser::{self, Timer};
use crate::reactive::live;

/// Help, − and + go this long after their cell is left, in milliseconds: what is pressed
/// next must not move under the finger.
const HELP_GOES_MS: u32 = 350;

/// Of a value that was changed from elsewhere: by a link, by undo.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Was {
    /// By what, and what it was ("From the link; it was 0.0 mm").
    pub sentence: String,
}

/// A row with a cell to type in: what [`super::NumberField`], [`super::DesignField`]
/// and [`super::TextField`] are made of.
///
/// ```ignore
/// let entry = EntryState::new(value, take, commit);
/// view! { <EntryRow entry label="Length inside" unit="mm" help="From the back wall to the mouth's rim."/> }
/// ```
#[component]
pub fn EntryRow(
    /// What is typed and what holds.
    entry: EntryState,
    /// What it is.
    #[prop(into)]
    label: Signal<String>,
    /// More about the value, below the label.
    #[prop(optional, into)]
    sub: Signal<String>,
    /// How to measure or choose it: one sentence, seen while the cell is typed in.
    #[prop(optional, into)]
    help: Signal<String>,
    /// The unit behind the number.
    #[prop(optional, into)]
    unit: Signal<String>,
    /// `decimal` (digits, point, comma) or `text` (the full keyboard).
    #[prop(default = Signal::stored("text".to_owned()), into)]
    keyboard: Signal<String>,
    /// Steps the value by −1 or 1 (Shift: ten times); without it there is no − and +.
    #[prop(optional, into)]
    on_step: Option<Callback<i32>>,
    /// That it was changed from elsewhere.
    #[prop(optional, into)]
    was: Signal<Option<Was>>,
    /// Puts it back.
    #[prop(optional, into)]
    on_put_back: Option<Callback<()>>,
    /// The cell's name, for what leads to it; else one is made.
    #[prop(optional, into)]
    id: Option<String>,
    /// Whether the cell is for a text: wide, and not in figures.
    #[prop(optional)]
    wide: bool,
) -> impl IntoView {
    let id = id.unwrap_or_else(|| new_id("entry"));
    let (help_id, fault_id) = (format!("{id}-help"), format!("{id}-fault"));
    let describes = format!("{help_id} {fault_id}");
    let help_open = RwSignal::new(false);
    let help_goes = Timer::new();
    let entering = StoredValue::new(false);
    let is_wrong = move || entry.fault().is_some();
    let cell_class = if wide { "cell wide" } else { "cell" };

    let on_focus = move |event: FocusEvent| {
        help_goes.clear();
        help_open.set(true);
        entering.set_value(true);
        entry.enter();
        browser::select_all(&event_target::<web_sys::HtmlInputElement>(&event));
    };
    // The press that enters a cell would put the caret into it: it selects instead.
    let on_mouse_up = move |event: MouseEvent| {
        if entering.get_value() {
            event.prevent_default();
            browser::select_all(&event_target::<web_sys::HtmlInputElement>(&event));
        }
        entering.set_value(false);
    };
    let on_blur = move |_| {
        if entry.is_gone() {
            return;
        }
        entry.leave();
        help_goes.set(HELP_GOES_MS, move || help_open.set(false));
    };
    let on_key = move |event: KeyboardEvent| {
        let step = if event.shift_key() { 10 } else { 1 };
        match (event.key().as_str(), on_step) {
            ("Enter", _) => {
                entry.commit();
                if !browser::put_keypad_away() {
                    browser::select_all(&event_target::<web_sys::HtmlInputElement>(&event));
                }
            }
            ("Escape", _) => entry.settle(),
            ("ArrowUp", Some(on_step)) => stepped(&event, entry, on_step, step),
            ("ArrowDown", Some(on_step)) => stepped(&event, entry, on_step, -step),
            _ => entering.set_value(false),
        }
    };

    view! {
        <div class="row" class:open=move || help_open.get() class:wrong=is_wrong class:changed=move || was.with(Option::is_some)>
            <label for=id.clone()>
                {label}
                <span class="unseen">{live(move || unit.with(|unit| said_unit(unit)))}</span>
                <Show when=move || !sub.with(String::is_empty)><span class="sub">{sub}</span></Show>
            </label>
            <div class=cell_class>
                {on_step.map(|step| view! { <StepButton entry label step by=-1/> })}
                <input id=id type="text" inputmode=keyboard autocomplete="off" spellcheck="false"
                    autocapitalize="off" enterkeyhint="done" value=move || entry.shown()
                    prop:value=move || entry.shown() aria-describedby=describes
                    aria-invalid=move || is_wrong().then_some("true")
                    data-settled=move || entry.is_settled().then_some("")
                    on:input=move |event| entry.input(event_target_value(&event))
                    on:focus=on_focus on:mouseup=on_mouse_up on:blur=on_blur on:keydown=on_key/>
                <Show when=move || !unit.with(String::is_empty)>
                    <span class="unit" aria-hidden="true">{unit}</span>
                </Show>
                {on_step.map(|step| view! { <StepButton entry label step by=1/> })}
            </div>
            <p id=help_id class="help" hidden=move || !help_open.get() || is_wrong()>{help}</p>
            <div id=fault_id class="fault" role="status">
                {live(move || entry.fault().map(|fault| view! { <FaultText entry fault/> }))}
            </div>
            {live(move || was.get().map(|was| view! {
                <div class="was">
                    <span>{was.sentence}</span>
                    {on_put_back.map(|put_back| view! {
                        <Action text=words::put_back() kind=ActionKind::Words on_press=put_back/>
                    })}
                </div>
            }))}
        </div>
    }
}

fn said_unit(unit: &str) -> String {
    if unit.is_empty() {
        String::new()
    } else {
        words::in_unit(unit)
    }
}

fn stepped(event: &KeyboardEvent, entry: EntryState, on_step: Callback<i32>, by: i32) {
    event.prevent_default();
    entry.commit();
    on_step.run(by);
    entry.settle();
}

/// − or +, inside the cell while it is typed in. Keys have the arrows, so it is no
/// stop of theirs; a press leaves the focus in the cell.
#[component]
fn StepButton(
    entry: EntryState,
    label: Signal<String>,
    step: Callback<i32>,
    by: i32,
) -> impl IntoView {
    let (sign, name): (_, fn(&str) -> String) = if by < 0 {
        ("−", words::less)
    } else {
        ("+", words::more)
    };
    view! {
        <button type="button" class="step" tabindex="-1" aria-label=move || label.with(|label| name(label))
            on:mousedown=move |event| event.prevent_default()
            on:click=move |event| {
                let by = if event.shift_key() { by * 10 } else { by };
                entry.commit();
                step.run(by);
                entry.settle();
            }>
            {sign}
        </button>
    }
}

#[component]
fn FaultText(entry: EntryState, fault: Fault) -> impl IntoView {
    view! {
        <p><Icon name=IconName::Caution/><span>{fault.sentence}</span></p>
        {fault.meant.map(|meant| {
            let offer = meant.offer.clone();
            view! {
                // The cell keeps the focus, so that nothing closes before the press is done.
                <div on:mousedown=move |event| event.prevent_default()>
                    <Action text=offer kind=ActionKind::Words
                        on_press=move |()| entry.take_meant(meant.clone())/>
                </div>
            }
        })}
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kit::Meant;

    fn entry(wrong: bool) -> EntryState {
        let state = EntryState::new(
            Signal::stored("87".to_owned()),
            Callback::new(move |_| {
                Err(Fault {
                    sentence: "Too small.".into(),
                    meant: Some(Meant {
                        text: "3 7/8 in".into(),
                        offer: "Take it as 3 7/8 in".into(),
                    }),
                })
            }),
            Callback::new(|()| {}),
        );
        if wrong {
            state.input("3 7/8".into());
            state.leave();
        }
        state
    }

    fn row(wrong: bool) -> String {
        Owner::new().with(|| {
            let entry = entry(wrong);
            view! { <EntryRow entry label="Across the inside" unit="mm" help="Across the mouth." on_step=|_| {}/> }
                .to_html()
        })
    }

    #[test]
    fn label_help_and_unit_belong_to_the_cell() {
        let html = row(false);
        let id = html
            .split("for=\"")
            .nth(1)
            .and_then(|rest| rest.split('"').next())
            .unwrap_or_default();
        assert!(html.contains(&format!("<input id=\"{id}\"")), "{html}");
        assert!(
            html.contains(&format!("aria-describedby=\"{id}-help {id}-fault\"")),
            "{html}"
        );
        assert!(html.contains(", mm"), "{html}");
        assert!(
            html.contains("value=\"87\"") && !html.contains("aria-invalid"),
            "{html}"
        );
        assert_eq!(html.matches("class=\"step\"").count(), 2);
    }

    #[test]
    fn a_wrong_text_stays_with_its_sentence_and_its_likeliest_meaning() {
        let html = row(true);
        assert!(
            html.contains("value=\"3 7/8\"") && html.contains("aria-invalid=\"true\""),
            "{html}"
        );
        assert!(
            html.contains("Too small.") && html.contains("Take it as 3 7/8 in"),
            "{html}"
        );
    }
}
