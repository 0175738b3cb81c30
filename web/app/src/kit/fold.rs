//! A fold: what is rarely changed, with its values in the fold's own line.

use leptos::prelude::*;

use super::{Icon, IconName};

/// A fold. What is folded always says its values.
///
/// ```ignore
/// view! { <Fold title="Wall, recess, metal" summary=move || said.get()> <DesignField ../> </Fold> }
/// ```
#[component]
pub fn Fold(
    /// Its name.
    #[prop(into)]
    title: Signal<String>,
    /// The values that are folded in, in one line.
    #[prop(optional, into)]
    summary: Signal<String>,
    /// Whether it stands open at first.
    #[prop(optional)]
    open: bool,
    /// Told when it is opened or shut.
    #[prop(optional, into)]
    on_toggle: Option<Callback<bool>>,
    /// What is folded in.
    children: Children,
) -> impl IntoView {
    let toggled = move |event| {
        let details: web_sys::HtmlElement = event_target(&event);
        if let Some(told) = on_toggle {
            told.run(details.has_attribute("open"));
        }
    };
    view! {
        <details class="fold" open=open on:toggle=toggled>
            <summary>
                <span class="fold-title">{title}</span>
                <span class="fold-values">{summary}</span>
                <Icon name=IconName::Chevron/>
            </summary>
            <div class="folded">{children()}</div>
        </details>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fold_says_its_values_while_it_is_shut() {
        let html = Owner::new().with(|| {
            view! { <Fold title="Wall, metal" summary="0.2 mm, tinplate">"inside"</Fold> }.to_html()
        });
        let line = html.split("</summary>").next().unwrap_or_default();
        assert!(line.contains("0.2 mm, tinplate"), "{html}");
        assert!(!html.contains(" open"), "{html}");
    }
}
