//! What is pressed: a button of the page, and a link that looks like one.

use leptos::prelude::*;

/// How much a button stands out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ActionKind {
    /// Framed: one of several things that can be done.
    #[default]
    Plain,
    /// Filled: the one thing to be done here. At most one in sight.
    Main,
    /// Underlined words, inside a line.
    Words,
}

impl ActionKind {
    const fn class(self) -> &'static str {
        match self {
            Self::Plain => "action",
            Self::Main => "action main",
            Self::Words => "words-action",
        }
    }
}

/// A button. Its text is a verb of the work: Take, Keep, Follow again.
///
/// ```ignore
/// view! { <Action text="Keep this design" kind=ActionKind::Main on_press=move |()| keep()/> }
/// ```
#[component]
pub fn Action(
    /// What is on it.
    #[prop(into)]
    text: Signal<String>,
    /// What it does.
    #[prop(into)]
    on_press: Callback<()>,
    /// How much it stands out.
    #[prop(optional)]
    kind: ActionKind,
    /// Whether it can't be pressed now.
    #[prop(optional, into)]
    disabled: Signal<bool>,
    /// Words for those who hear it alone ("Take 307 × 306"); else its text.
    #[prop(optional, into)]
    says: Signal<String>,
) -> impl IntoView {
    let label = move || Some(says.get()).filter(|says| !says.is_empty());
    view! {
        <button type="button" class=kind.class() disabled=disabled aria-label=label
            on:click=move |_| on_press.run(())>
            {text}
        </button>
    }
}

/// A link that looks like a button.
///
/// ```ignore
/// view! { <ActionLink text="To the can" href=move || workshop.address_of(Station::Can)/> }
/// ```
#[component]
pub fn ActionLink(
    /// What is on it.
    #[prop(into)]
    text: Signal<String>,
    /// Where it leads.
    #[prop(into)]
    href: Signal<String>,
    /// How much it stands out.
    #[prop(optional)]
    kind: ActionKind,
) -> impl IntoView {
    view! { <a class=kind.class() href=href>{text}</a> }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_button_has_its_text_and_its_fuller_name() {
        let html = Owner::new().with(|| {
            view! { <Action text="Take" says="Take 307 × 306" on_press=|()| {}/> }.to_html()
        });
        assert!(html.contains("type=\"button\""), "{html}");
        assert!(html.contains("aria-label=\"Take 307 × 306\""), "{html}");
        assert!(html.contains(">Take"), "{html}");
    }

    #[test]
    fn a_button_that_cannot_be_pressed_says_so() {
        let html = Owner::new()
            .with(|| view! { <Action text="Undo" disabled=true on_press=|()| {}/> }.to_html());
        assert!(html.contains(" disabled"), "{html}");
        assert!(!html.contains("aria-label"), "{html}");
    }
}
