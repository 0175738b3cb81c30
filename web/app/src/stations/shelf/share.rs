//! Passing a design on: its link, its file, its name.

use leptos::prelude::*;
use tinwave_maker::history::Change;
use tinwave_maker::workpiece::clean_name;
use tinwave_words::{frame, shelf as words};

use super::design_file;
use crate::browser;
use crate::frame::Briefs;
use crate::kit::{Action, ActionKind, EntryGroup, TextField, new_id};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// The right column: link, file, name.
#[component]
pub(super) fn ShareEntries() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let briefs = expect_context::<Briefs>();
    let id = new_id("link");
    let link = memo(move || workshop.link());
    let copy = move |()| {
        workshop.commit();
        browser::copy_text(&link.get_untracked(), move |copied| {
            briefs.say(if copied {
                frame::link_copied()
            } else {
                frame::copy_by_hand()
            });
        });
    };
    let save = move |()| {
        if let Some(name) = design_file::save(workshop) {
            briefs.say(words::saved_file(&name));
        }
    };
    let name = move || workshop.work.with(|work| work.design.name.clone());
    let take = move |text: String| {
        workshop.put(Change::Name, |work| work.design.name = clean_name(&text));
        Ok(())
    };
    view! {
        <EntryGroup title=words::name_heading()>
            <TextField label=words::name() help=words::name_help() value=name take=take
                on_commit=move |()| workshop.commit() id="design-name".to_owned()/>
        </EntryGroup>
        <EntryGroup title=words::share()>
            <label for=id.clone() class="unseen">{words::link()}</label>
            <textarea id=id class="link-text" rows="4" readonly spellcheck="false"
                prop:value=move || link.get()>{link.get_untracked()}</textarea>
            <p class="note">{live(move || words::link_length(link.with(|link| link.chars().count())))}</p>
            <div class="actions">
                <Action text=words::copy_link() kind=ActionKind::Main on_press=copy/>
                <Action text=words::save_file() on_press=save/>
            </div>
        </EntryGroup>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_link_and_the_name_have_labels() {
        let html = Owner::new().with(|| {
            let workshop = Workshop::open();
            provide_context(workshop);
            crate::frame::begin(workshop);
            view! { <ShareEntries/> }.to_html()
        });
        for label in html
            .split("for=\"")
            .skip(1)
            .filter_map(|rest| rest.split('"').next())
        {
            assert!(html.contains(&format!("id=\"{label}\"")), "{label}");
        }
        assert!(html.contains("#v=1"), "{html}");
    }
}
