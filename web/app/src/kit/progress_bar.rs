//! Work that takes a while.

use leptos::prelude::*;
use tinwave_words::frame as words;

use super::Action;

/// How far work is, in words and as a bar, with Stop.
///
/// ```ignore
/// view! { <ProgressBar done=move || 0.2 text="Drawing cans: 400 of 2000" on_stop=move |()| task.stop()/> }
/// ```
#[component]
pub fn ProgressBar(
    /// Share done, 0 to 1.
    #[prop(into)]
    done: Signal<f32>,
    /// What is being done.
    #[prop(into)]
    text: Signal<String>,
    /// Ends it.
    #[prop(optional, into)]
    on_stop: Option<Callback<()>>,
) -> impl IntoView {
    let value = move || (done.get().clamp(0.0, 1.0) * 100.0).round().to_string();
    view! {
        <div class="progress">
            <label>
                <span>{text}</span>
                <progress max="100" value=value></progress>
            </label>
            {on_stop.map(|stop| view! { <Action text=words::stop() on_press=stop/> })}
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_share_is_told_and_kept_within_its_bounds() {
        let html = Owner::new().with(|| {
            view! { <ProgressBar done=0.2_f32 text="Searching" on_stop=|()| {}/> }.to_html()
        });
        assert!(html.contains("value=\"20\""), "{html}");
        assert!(html.contains("<button"), "{html}");
        let over = Owner::new().with(|| view! { <ProgressBar done=7.0_f32 text="x"/> }.to_html());
        assert!(
            over.contains("value=\"100\"") && !over.contains("<button"),
            "{over}"
        );
    }
}
