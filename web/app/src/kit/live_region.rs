//! What is told to those who hear the page, once typing pauses.

use leptos::prelude::*;

use crate::browser::Timer;

/// How long a change rests before it is told, in milliseconds.
const PAUSE_MS: u32 = 1_000;

/// Tells a text politely whenever it has changed and then rested. What it says at
/// first is not told: the page has just been read.
///
/// ```ignore
/// view! { <LiveRegion text=move || verdict_line.get()/> }
/// ```
#[component]
pub fn LiveRegion(
    /// What is to be told.
    #[prop(into)]
    text: Signal<String>,
) -> impl IntoView {
    let told = RwSignal::new(String::new());
    let pause = Timer::new();
    Effect::new(move |before: Option<String>| {
        let now = text.get();
        if before.is_some_and(|before| before != now) {
            let next = now.clone();
            pause.set(PAUSE_MS, move || told.set(next));
        }
        now
    });
    view! { <p class="unseen" role="status">{told}</p> }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_is_a_polite_status_and_silent_at_first() {
        let html = Owner::new().with(|| view! { <LiveRegion text="Will do"/> }.to_html());
        assert!(
            html.contains("role=\"status\"") && !html.contains("Will do"),
            "{html}"
        );
    }
}
