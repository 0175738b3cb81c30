//! Yes or no.

use leptos::prelude::*;

/// A box to tick, with its sentence; the whole line is pressed.
///
/// ```ignore
/// view! { <Check label="The wire keeps its insulation" checked=move || has_sleeve() on_change=move |on: bool| …/> }
/// ```
#[component]
pub fn Check(
    /// What a tick says.
    #[prop(into)]
    label: Signal<String>,
    /// More about it.
    #[prop(optional, into)]
    note: Signal<String>,
    /// Whether it is ticked.
    #[prop(into)]
    checked: Signal<bool>,
    /// Takes the new state.
    #[prop(into)]
    on_change: Callback<bool>,
) -> impl IntoView {
    view! {
        <label class="check">
            <input type="checkbox" checked=checked prop:checked=checked
                on:change=move |event| on_change.run(event_target_checked(&event))/>
            <span>{label}
                <Show when=move || !note.with(String::is_empty)><span class="sub">{note}</span></Show>
            </span>
        </label>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sentence_belongs_to_its_box() {
        let html = Owner::new()
            .with(|| view! { <Check label="Deburred" checked=true on_change=|_| {}/> }.to_html());
        let label = html.split("</label>").next().unwrap_or_default();
        assert!(
            label.contains(" checked") && label.contains("Deburred"),
            "{html}"
        );
    }
}
