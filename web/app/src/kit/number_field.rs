//! Any number that is not one of the design's own.

use leptos::prelude::*;

use super::{EntryRow, EntryState, Fault};

/// A number to type. What is typed is read and applied by `take`, at once when it is
/// good; while it is not, the sentence that `take` gave back stands below.
///
/// ```ignore
/// view! { <NumberField label="Distance" unit="m" help="From mouth to mouth."
///     value=move || written(distance.get())
///     take=move |text: String| { distance.set(read_metres(&text)?); Ok(()) }/> }
/// ```
#[component]
pub fn NumberField(
    /// What it is.
    #[prop(into)]
    label: Signal<String>,
    /// The text of what holds.
    #[prop(into)]
    value: Signal<String>,
    /// Reads a text and applies it, or says what is wrong.
    #[prop(into)]
    take: Callback<String, Result<(), Fault>>,
    /// How to measure or choose it, in one sentence.
    #[prop(optional, into)]
    help: Signal<String>,
    /// More about the value, below the label.
    #[prop(optional, into)]
    sub: Signal<String>,
    /// The unit behind the number.
    #[prop(optional, into)]
    unit: Signal<String>,
    /// Ends a run of typing or stepping.
    #[prop(optional, into)]
    on_commit: Option<Callback<()>>,
    /// Steps the value by −1 or 1, or ten times that.
    #[prop(optional, into)]
    on_step: Option<Callback<i32>>,
    /// Whether texts such as `3 7/8 in` belong here: the full keyboard.
    #[prop(optional, into)]
    full_keyboard: Signal<bool>,
    /// The cell's name, for what leads to it.
    #[prop(optional, into)]
    id: Option<String>,
) -> impl IntoView {
    let on_commit = on_commit.unwrap_or_else(|| Callback::new(|()| {}));
    let entry = EntryState::new(value, take, on_commit);
    let keyboard = move || {
        if full_keyboard.get() {
            "text"
        } else {
            "decimal"
        }
    };
    let id = id.unwrap_or_else(|| super::new_id("number"));
    match on_step {
        Some(on_step) => {
            view! { <EntryRow entry label sub help unit keyboard id on_step/> }.into_any()
        }
        None => view! { <EntryRow entry label sub help unit keyboard id/> }.into_any(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_get_the_number_keyboard_unless_more_belongs_there() {
        let field = |full: bool| {
            Owner::new().with(|| {
                view! { <NumberField label="Distance" unit="m" value="300" full_keyboard=full take=|_| Ok(())/> }
                    .to_html()
            })
        };
        assert!(field(false).contains("inputmode=\"decimal\""));
        assert!(field(true).contains("inputmode=\"text\""));
        assert!(
            !field(false).contains("class=\"step\""),
            "no steps unless asked for"
        );
    }
}
