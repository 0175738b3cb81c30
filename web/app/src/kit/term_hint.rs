//! A term of the trade, explained by a tap.

use leptos::prelude::*;
use tinwave_words::terms::{Term, term};

use super::new_id;

/// A term that opens two sentences. It stands in notes and headings, never in a label.
///
/// ```ignore
/// view! { <p class="note"><TermHint of=Term::Vswr/>", lower is better"</p> }
/// ```
#[component]
pub fn TermHint(
    /// Which term.
    of: Term,
) -> impl IntoView {
    let text = term(of);
    let id = new_id("term");
    let open = RwSignal::new(false);
    let expanded = move || if open.get() { "true" } else { "false" };
    view! {
        <span class="term">
            <button type="button" aria-expanded=expanded aria-controls=id.clone()
                on:click=move |_| open.update(|open| *open = !*open)>
                {text.name}
            </button>
            <span id=id class="term-text" role="note" hidden=move || !open.get()>{text.text}</span>
        </span>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_term_is_shut_at_first_and_names_its_sentences() {
        let html = Owner::new().with(|| view! { <TermHint of=Term::Vswr/> }.to_html());
        assert!(
            html.contains("aria-expanded=\"false\"") && html.contains(" hidden"),
            "{html}"
        );
        let id = html
            .split("aria-controls=\"")
            .nth(1)
            .and_then(|rest| rest.split('"').next());
        assert!(
            html.contains(&format!("id=\"{}\"", id.unwrap_or("none"))),
            "{html}"
        );
    }
}
