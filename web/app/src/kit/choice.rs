//! A choice between two to four things, all in sight.

use leptos::prelude::*;

use crate::reactive::live;

use super::{Pick, new_id};

/// Segments, one of them chosen: radio buttons for keys and for those who hear.
///
/// ```ignore
/// view! { <Choice label="Lengths in" picks=vec![Pick::new("mm", "mm"), Pick::new("in", "inch")]
///     chosen=move || unit.get().key().to_owned() on_choose=move |key: String| …/> }
/// ```
#[component]
pub fn Choice(
    /// What is chosen; read out, not seen, unless `labelled`.
    #[prop(into)]
    label: Signal<String>,
    /// The things.
    #[prop(into)]
    picks: Signal<Vec<Pick>>,
    /// The key of the chosen one.
    #[prop(into)]
    chosen: Signal<String>,
    /// Takes the key of another.
    #[prop(into)]
    on_choose: Callback<String>,
    /// Whether the label is seen above.
    #[prop(optional)]
    labelled: bool,
) -> impl IntoView {
    let group = new_id("choice");
    let segment = move |pick: Pick| {
        let key = StoredValue::new(pick.key);
        let is_chosen = move || chosen.with(|chosen| key.with_value(|key| key == chosen));
        view! {
            <label>
                <input type="radio" name=group.clone() value=key.get_value() checked=is_chosen
                    prop:checked=is_chosen on:change=move |_| on_choose.run(key.get_value())/>
                <span>{pick.name}</span>
            </label>
        }
    };
    view! {
        <fieldset class="choice">
            <legend class=if labelled { "choice-label" } else { "unseen" }>{label}</legend>
            <div class="segments">
                {live(move || picks.get().into_iter().map(&segment).collect_view())}
            </div>
        </fieldset>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_segment_is_chosen_and_all_belong_together() {
        let picks = vec![Pick::new("mm", "mm"), Pick::new("in", "inch")];
        let html = Owner::new().with(|| {
            view! { <Choice label="Lengths in" picks=picks chosen="in" on_choose=|_| {}/> }
                .to_html()
        });
        assert_eq!(html.matches(" checked").count(), 1, "{html}");
        assert!(
            html.contains("<legend class=\"unseen\">Lengths in"),
            "{html}"
        );
        let names: Vec<_> = html
            .split("name=\"")
            .skip(1)
            .filter_map(|rest| rest.split('"').next())
            .collect();
        assert_eq!(names.len(), 2);
        assert_eq!(names[0], names[1]);
    }
}
