//! A line of text.

use leptos::prelude::*;

use super::{EntryRow, EntryState, Fault};

/// A text to type, such as a name.
///
/// ```ignore
/// view! { <TextField label="Name" value=move || name.get() take=move |text: String| { put(text); Ok(()) }/> }
/// ```
#[component]
pub fn TextField(
    /// What it is.
    #[prop(into)]
    label: Signal<String>,
    /// What holds.
    #[prop(into)]
    value: Signal<String>,
    /// Applies a text, or says what is wrong.
    #[prop(into)]
    take: Callback<String, Result<(), Fault>>,
    /// What it is for, in one sentence.
    #[prop(optional, into)]
    help: Signal<String>,
    /// Ends a run of typing.
    #[prop(optional, into)]
    on_commit: Option<Callback<()>>,
    /// The cell's name, for what leads to it.
    #[prop(optional, into)]
    id: Option<String>,
) -> impl IntoView {
    let on_commit = on_commit.unwrap_or_else(|| Callback::new(|()| {}));
    let entry = EntryState::new(value, take, on_commit);
    let id = id.unwrap_or_else(|| super::new_id("text"));
    view! { <EntryRow entry label help id wide=true/> }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_has_no_unit_and_no_steps() {
        let html = Owner::new().with(|| {
            view! { <TextField label="Name" value="North can" take=|_| Ok(())/> }.to_html()
        });
        assert!(
            html.contains("value=\"North can\"") && html.contains("cell wide"),
            "{html}"
        );
        assert!(
            !html.contains("class=\"unit\"") && !html.contains("class=\"step\""),
            "{html}"
        );
    }
}
