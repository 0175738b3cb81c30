//! A list of at most ten things, by the browser's own means.

use leptos::prelude::*;

use crate::reactive::live;

use super::{Pick, new_id};

/// A short list to pick from. Longer ones are a [`super::Picker`].
///
/// ```ignore
/// view! { <ShortList label="Metal" picks=metals() chosen=move || key() on_choose=move |key: String| …/> }
/// ```
#[component]
pub fn ShortList(
    /// What is picked.
    #[prop(into)]
    label: Signal<String>,
    /// More about the choice, below the label.
    #[prop(optional, into)]
    note: Signal<String>,
    /// The things.
    #[prop(into)]
    picks: Signal<Vec<Pick>>,
    /// The key of the picked one.
    #[prop(into)]
    chosen: Signal<String>,
    /// Takes the key of another.
    #[prop(into)]
    on_choose: Callback<String>,
) -> impl IntoView {
    let id = new_id("list");
    let option = move |pick: Pick| {
        let key = StoredValue::new(pick.key);
        let is_chosen = move || chosen.with(|chosen| key.with_value(|key| key == chosen));
        view! { <option value=key.get_value() selected=is_chosen prop:selected=is_chosen>{pick.name}</option> }
    };
    // A list that is taken away while it is walked by keys says its last change then, when
    // nothing is there to hear.
    let on_change = move |event| {
        on_choose.try_run(event_target_value(&event));
    };
    view! {
        <div class="row">
            <label for=id.clone()>{label}
                <Show when=move || !note.with(String::is_empty)><span class="sub">{note}</span></Show>
            </label>
            <div class="cell list">
                <select id=id on:change=on_change>
                    {live(move || picks.get().into_iter().map(option).collect_view())}
                </select>
            </div>
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_label_is_tied_to_the_list_and_one_thing_is_picked() {
        let picks = vec![Pick::new("tin", "tinplate"), Pick::new("zinc", "zinc")];
        let html = Owner::new().with(|| {
            view! { <ShortList label="Metal" picks=picks chosen="zinc" on_choose=|_| {}/> }
                .to_html()
        });
        let id = html
            .split("for=\"")
            .nth(1)
            .and_then(|rest| rest.split('"').next())
            .unwrap_or_default();
        assert!(html.contains(&format!("<select id=\"{id}\"")), "{html}");
        assert_eq!(html.matches(" selected").count(), 1, "{html}");
    }
}
