//! A place for a file: dropped, chosen, or pasted as text.

use leptos::prelude::*;
use tinwave_words::frame as words;
use web_sys::{DragEvent, File, FileList, HtmlInputElement};

use super::{Action, ActionKind, new_id};
use crate::browser;

/// Larger files belong nowhere on this page.
const MOST_MEGABYTES: u32 = 20;

/// A file that was handed over.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DroppedFile {
    /// Its name.
    pub name: String,
    /// What is in it.
    pub bytes: Vec<u8>,
}

/// A place where a file is dropped, chosen or pasted.
///
/// ```ignore
/// view! { <FileDrop label="Bring a measurement" note="A one-port file of an analyser" accept=".s1p,.s2p"
///     on_file=move |file: DroppedFile| open(file)/> }
/// ```
#[component]
pub fn FileDrop(
    /// What is wanted.
    #[prop(into)]
    label: Signal<String>,
    /// More about it: which kinds of file.
    #[prop(optional, into)]
    note: Signal<String>,
    /// Endings of the files that are offered first, such as `.s1p,.json`.
    #[prop(into)]
    accept: String,
    /// Takes the file.
    #[prop(into)]
    on_file: Callback<DroppedFile>,
    /// Whether its text may be pasted as well.
    #[prop(default = true)]
    paste: bool,
) -> impl IntoView {
    let (input_id, text_id) = (new_id("file"), new_id("paste"));
    let trouble = RwSignal::new(String::new());
    let over = RwSignal::new(false);
    let pasted = RwSignal::new(String::new());
    let take = move |files: Option<FileList>| {
        if let Some(file) = files.and_then(|files| files.get(0)) {
            hand_over(&file, on_file, trouble);
        }
    };
    let on_drop = move |event: DragEvent| {
        event.prevent_default();
        over.set(false);
        take(event.data_transfer().and_then(|dropped| dropped.files()));
    };
    let on_over = move |event: DragEvent| {
        event.prevent_default();
        over.set(true);
    };
    let on_change = move |event| {
        let input: HtmlInputElement = event_target(&event);
        take(input.files());
        // The same file may be chosen again after it was changed.
        input.set_value("");
    };
    let take_pasted = move |()| {
        let text = pasted.get_untracked();
        if !text.trim().is_empty() {
            pasted.set(String::new());
            on_file.run(DroppedFile {
                name: words::pasted_text().to_owned(),
                bytes: text.into_bytes(),
            });
        }
    };
    view! {
        <div class="file-drop" class:over=move || over.get() on:drop=on_drop on:dragover=on_over
            on:dragleave=move |_| over.set(false)>
            <input id=input_id.clone() class="unseen" type="file" accept=accept on:change=on_change/>
            <label for=input_id class="action">{label}</label>
            <p class="note">{note}" "{words::or_drop_or_paste()}</p>
            {paste.then(|| view! {
                <details class="paste">
                    <summary>{words::paste_here()}</summary>
                    <label for=text_id.clone() class="unseen">{words::paste_here()}</label>
                    <textarea id=text_id rows="4" spellcheck="false" prop:value=move || pasted.get()
                        on:input=move |event| pasted.set(event_target_value(&event))></textarea>
                    <Action text=words::take_pasted() kind=ActionKind::Plain on_press=take_pasted/>
                </details>
            })}
            <p class="fault-line" role="status">{trouble}</p>
        </div>
    }
}

fn hand_over(file: &File, on_file: Callback<DroppedFile>, trouble: RwSignal<String>) {
    let name = file.name();
    if file.size() > f64::from(MOST_MEGABYTES) * 1e6 {
        trouble.set(words::file_too_large(&name, MOST_MEGABYTES));
        return;
    }
    trouble.set(String::new());
    // The person may have gone on to another station while it was read.
    browser::read_file(file, move |bytes| match bytes {
        Some(bytes) => {
            on_file.try_run(DroppedFile { name, bytes });
        }
        None => {
            trouble.try_set(words::file_unreadable(&name));
        }
    });
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_label_opens_the_files_and_the_text_can_be_pasted() {
        let html = Owner::new().with(|| {
            view! { <FileDrop label="Bring a measurement" accept=".s1p" on_file=|_| {}/> }.to_html()
        });
        let id = html
            .split(" id=\"")
            .nth(1)
            .and_then(|rest| rest.split('"').next())
            .unwrap_or_default();
        assert!(html.contains(&format!("<label for=\"{id}\"")), "{html}");
        assert!(
            html.contains("accept=\".s1p\"") && html.contains("<textarea"),
            "{html}"
        );
    }

    #[test]
    fn a_place_without_pasting_has_no_text_field() {
        let html = Owner::new().with(|| {
            view! { <FileDrop label="Open a file" accept=".json" paste=false on_file=|_| {}/> }
                .to_html()
        });
        assert!(!html.contains("<textarea"), "{html}");
    }
}
