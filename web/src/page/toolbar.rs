//! Undo, unit, theme and the link.

use leptos::prelude::*;

use super::browser::{self, Timer};
use super::parts::{button, choice, option_html, radios};
use super::state::Page;
use crate::entry::LengthUnit;
use crate::store::Theme;

/// How long 'copied' stays in the button.
const SAID_MS: u32 = 2_500;

/// The toolbar.
pub(super) fn toolbar(page: Page) -> AnyView {
    view! {
        <div class="toolbar" role="group" aria-label="Whole design">
            <button type="button" id="undo" aria-keyshortcuts="Control+Z"
                disabled=move || !page.can_undo.get() on:click=move |_| page.undo()>"Undo"</button>
            <button type="button" id="redo" aria-keyshortcuts="Control+Shift+Z"
                disabled=move || !page.can_redo.get() on:click=move |_| page.redo()>"Redo"</button>
            {radios(
                "unit",
                "Lengths in",
                &[("mm", LengthUnit::Millimetre), ("inch", LengthUnit::Inch)],
                page.unit.into(),
                pick_unit,
                page,
            )}
            {copy_link(page)}
            {theme_choice(page)}
        </div>
    }
    .into_any()
}

fn pick_unit(page: Page, unit: LengthUnit) {
    page.unit.set(unit);
    page.kept.update(|kept| kept.unit = unit);
    page.keep();
}

fn theme_choice(page: Page) -> AnyView {
    let mut list = String::new();
    option_html(&mut list, "system", "as the device");
    option_html(&mut list, "light", "light");
    option_html(&mut list, "dark", "dark");
    Effect::new(move |_| {
        let word = match page.theme.get() {
            Theme::System => "system",
            Theme::Light => "light",
            Theme::Dark => "dark",
        };
        if let Some(root) = document().document_element() {
            let _ = root.set_attribute("data-theme", word);
        }
    });
    choice(
        "theme",
        "Colours",
        list,
        Signal::derive(move || {
            match page.theme.get() {
                Theme::System => "system",
                Theme::Light => "light",
                Theme::Dark => "dark",
            }
            .to_owned()
        }),
        Box::new(move |word| {
            let theme = match word.as_str() {
                "light" => Theme::Light,
                "dark" => Theme::Dark,
                _ => Theme::System,
            };
            page.theme.set(theme);
            page.kept.update(|kept| kept.theme = theme);
            page.keep();
        }),
    )
}

/// What became of a copy.
#[derive(Clone, PartialEq)]
enum Copied {
    No,
    Yes,
    /// The clipboard refused: here it is to be copied by hand.
    ByHand(String),
}

fn copy_link(page: Page) -> AnyView {
    let copied = RwSignal::new(Copied::No);
    let timer = Timer::new();
    let copy = move |_| {
        page.commit();
        let link = page.link();
        let by_hand = link.clone();
        browser::copy(
            &link,
            Box::new(move |worked| {
                if worked {
                    copied.set(Copied::Yes);
                    timer.set(SAID_MS, Box::new(move || copied.set(Copied::No)));
                } else {
                    copied.set(Copied::ByHand(by_hand.clone()));
                }
            }),
        );
    };
    let by_hand = move || {
        match copied.get() {
        Copied::ByHand(link) => Some(
            view! {
                <label class="by-hand">
                    <span>"Copy this link"</span>
                    <input id="link-by-hand" type="text" readonly=true prop:value=link on:focus=|event| select_all(&event)/>
                </label>
            }
            .into_any(),
        ),
        _ => None,
    }
    };
    let share = browser::can_share().then(|| {
        button(
            "",
            "Share",
            Box::new(move || {
                page.commit();
                let name = page.work.with_untracked(|work| work.design.name.clone());
                browser::share(&name, &page.link());
            }),
        )
    });
    view! {
        <button type="button" id="copy-link" on:click=copy>
            <span role="status">{move || if copied.get() == Copied::Yes { "Link copied" } else { "Copy link" }}</span>
        </button>
        {share}
        {by_hand}
    }
    .into_any()
}

/// Selects the whole text of the field that got the focus.
fn select_all(event: &leptos::ev::FocusEvent) {
    event_target::<web_sys::HtmlInputElement>(event).select();
}
