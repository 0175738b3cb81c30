//! A place where nothing is yet: what would stand here, and what to do for it.

use leptos::prelude::*;

use super::{Icon, IconName};

/// An empty place.
///
/// ```ignore
/// view! { <Empty icon=IconName::Shelf title="The shelf is empty" text="Keep this design and it stands here.">
///     <Action text="Keep this design" on_press=keep/>
/// </Empty> }
/// ```
#[component]
pub fn Empty(
    /// A picture of it.
    icon: IconName,
    /// What is so.
    #[prop(into)]
    title: Signal<String>,
    /// What would stand here, and how it gets here.
    #[prop(optional, into)]
    text: Signal<String>,
    /// What can be pressed.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    view! {
        <div class="empty">
            <Icon name=icon/>
            <p class="headline">{title}</p>
            <p>{text}</p>
            {children.map(|children| view! { <div class="actions">{children()}</div> })}
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_empty_place_says_what_to_do() {
        let html = Owner::new().with(|| {
            view! { <Empty icon=IconName::Shelf title="The shelf is empty" text="Keep it">"press"</Empty> }
                .to_html()
        });
        assert!(
            html.contains("The shelf is empty") && html.contains("class=\"actions\""),
            "{html}"
        );
    }
}
