//! A message about a link or about what was kept, with the text that could not be used.

use leptos::prelude::*;
use tinwave_words::frame as words;

use crate::kit::{Action, new_id};
use crate::state::Workshop;

/// The message, until it is put away. Nothing where there is none.
#[component]
pub fn Said() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let notice = workshop.notice;
    move || {
        notice.get().map(|said| {
            let id = new_id("kept");
            view! {
                <div class="said" role="alert">
                    <p>{said.sentence}</p>
                    {said.keep.map(|text| view! {
                        <label for=id.clone() class="note">{words::the_text()}</label>
                        <textarea id=id.clone() rows="2" readonly prop:value=text></textarea>
                    })}
                    <p class="actions">
                        <Action text=words::put_away() on_press=move |()| notice.set(None)/>
                    </p>
                </div>
            }
        })
    }
}
