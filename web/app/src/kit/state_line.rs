//! A line that says in which state something is, with one thing to press.

use leptos::prelude::*;

use crate::reactive::live;

use super::{Action, ActionKind, Icon, IconName};

/// A state: icon, what it is, what that means, and what changes it.
///
/// ```ignore
/// view! { <StateLine icon=IconName::Follows title="Follows the best" text="Changes with can, wire and band"
///     action="I have cut it" on_press=move |()| workshop.cut_stays()/> }
/// ```
#[component]
pub fn StateLine(
    /// A sign of it.
    #[prop(into)]
    icon: Signal<IconName>,
    /// What it is.
    #[prop(into)]
    title: Signal<String>,
    /// What that means.
    #[prop(optional, into)]
    text: Signal<String>,
    /// What is on the button; no button where it is empty.
    #[prop(optional, into)]
    action: Signal<String>,
    /// What that does.
    #[prop(optional, into)]
    on_press: Option<Callback<()>>,
) -> impl IntoView {
    view! {
        <div class="state-line">
            {live(move || view! { <Icon name=icon.get()/> })}
            <div>
                <p class="headline">{title}</p>
                <p class="note">{text}</p>
            </div>
            {on_press.map(|press| view! {
                <Show when=move || !action.with(String::is_empty)>
                    <Action text=action kind=ActionKind::Words on_press=press/>
                </Show>
            })}
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_state_without_a_button_has_none() {
        let html = Owner::new().with(|| {
            view! { <StateLine icon=IconName::Cut title="As cut" text="Stays put"/> }.to_html()
        });
        assert!(
            html.contains("As cut") && !html.contains("<button"),
            "{html}"
        );
    }

    #[test]
    fn its_button_says_what_it_does() {
        let html = Owner::new().with(|| {
            view! { <StateLine icon=IconName::Cut title="As cut" action="Follow again" on_press=|()| {}/> }
                .to_html()
        });
        assert!(
            html.contains("<button") && html.contains("Follow again"),
            "{html}"
        );
    }
}
