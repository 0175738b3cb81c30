//! Something found about the design, in a headline and a sentence.

use leptos::prelude::*;

use super::{Icon, IconName};

/// How a finding is meant.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FindingTone {
    /// To know.
    #[default]
    Note,
    /// To watch.
    Caution,
    /// All well.
    Good,
}

/// A finding: what is so, what follows from it, where it is from.
///
/// ```ignore
/// view! { <FindingBlock tone=FindingTone::Caution headline="Two modes pass" text="TM01 …" source="…"/> }
/// ```
#[component]
pub fn FindingBlock(
    /// How it is meant.
    #[prop(optional)]
    tone: FindingTone,
    /// What is so.
    #[prop(into)]
    headline: Signal<String>,
    /// What follows from it, and what to do.
    #[prop(optional, into)]
    text: Signal<String>,
    /// A published source.
    #[prop(optional, into)]
    source: Signal<String>,
    /// Something to press below it.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let name = match tone {
        FindingTone::Note => IconName::Note,
        FindingTone::Caution => IconName::Caution,
        FindingTone::Good => IconName::Cut,
    };
    view! {
        <div class="finding">
            <Icon name/>
            <div>
                <p class="headline">{headline}</p>
                <Show when=move || !text.with(String::is_empty)><p>{text}</p></Show>
                <Show when=move || !source.with(String::is_empty)><p class="source">{source}</p></Show>
                {children.map(|children| children())}
            </div>
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn headline_text_and_source_stand_apart() {
        let html = Owner::new().with(|| {
            view! { <FindingBlock headline="Two modes pass" text="The beam tilts." source="A book"/> }
                .to_html()
        });
        assert!(html.contains("class=\"headline\">Two modes pass"), "{html}");
        assert!(html.contains("class=\"source\">A book"), "{html}");
    }

    #[test]
    fn nothing_stands_where_nothing_is_to_be_said() {
        let html = Owner::new().with(|| view! { <FindingBlock headline="All well"/> }.to_html());
        assert_eq!(
            html.matches("<p ").count() + html.matches("<p>").count(),
            1,
            "{html}"
        );
    }
}
