//! Keep and share: name, designs kept on the device, and the design as a file.

use leptos::prelude::*;
use tinwave_core::json::{design_from_json, design_to_json};

use super::browser;
use super::entries::Entry;
use super::entry_field::entry_field;
use super::parts::{button, fields, heading, paragraph, section};
use super::state::{Notice, Page};
use crate::history::Change;
use crate::link;
use crate::store::SavedDesign;
use crate::words;

/// The section.
pub(super) fn keeping_section(page: Page) -> AnyView {
    let keep = button(
        "primary",
        "Keep on this device",
        Box::new(move || {
            page.commit();
            let name = page.work.with_untracked(|work| work.design.name.clone());
            let name = if name.is_empty() {
                "Unnamed".to_owned()
            } else {
                name
            };
            let fragment = page.fragment();
            page.kept.update(|kept| kept.save(&name, &fragment));
            page.keep();
        }),
    );
    section(
        page,
        "keeping",
        "9 Keep and share",
        page.wide.get_untracked(),
        |now| {
            if now.work.design.name.is_empty() {
                "no name yet".to_owned()
            } else {
                now.work.design.name.clone()
            }
        },
        vec![
            fields(vec![entry_field(page, Entry::Name, false)]),
            view! { <div class="buttons">{keep}{files(page)}</div> }.into_any(),
            paragraph(
                "note",
                "Nothing is sent anywhere. Browsers may clear what a page has kept; a file or the link is safer.",
            ),
            heading("Kept on this device"),
            saved_list(page),
        ],
    )
}

fn files(page: Page) -> AnyView {
    let export = button(
        "",
        "Save as a file",
        Box::new(move || {
            let text = page
                .work
                .with_untracked(|work| design_to_json(&work.design));
            browser::download("tinwave-design.json", "application/json", &text);
        }),
    );
    let open = move |event| {
        let input = event_target::<web_sys::HtmlInputElement>(&event);
        browser::chosen_file(&input, Box::new(move |text| open_text(page, text)));
    };
    view! {
        {export}
        <label class="button">
            <input id="open-file" class="unseen" type="file" accept=".json,application/json" on:change=open/>
            <span>"Open a file"</span>
        </label>
    }
    .into_any()
}

fn open_text(page: Page, text: Option<String>) {
    let read = text.as_deref().map(design_from_json);
    let sentence = match read {
        Some(Ok(design)) => {
            let mut work = page.work.get_untracked();
            work.design = design;
            page.notice.set(None);
            page.replace(work, Change::Opened);
            return;
        }
        Some(Err(error)) => error.to_string(),
        None => "It could not be read, or is far too big for a design.".to_owned(),
    };
    page.notice.set(Some(Notice {
        sentence: [
            "That file is not a design that can be opened. ",
            &sentence,
            " Nothing was changed.",
        ]
        .concat(),
        keep: None,
    }));
}

fn saved_list(page: Page) -> AnyView {
    let saved = Memo::new(move |_| page.kept.with(|kept| kept.saved.clone()));
    (move || {
        let list = saved.get();
        if list.is_empty() {
            return paragraph("note", "None yet.");
        }
        let rows: Vec<AnyView> = list
            .into_iter()
            .map(|design| saved_row(page, design))
            .collect();
        view! { <ul class="saved">{rows}</ul> }.into_any()
    })
    .into_any()
}

fn saved_row(page: Page, saved: SavedDesign) -> AnyView {
    let SavedDesign {
        name,
        link: fragment,
    } = saved;
    let open_label = ["Open ", &name].concat();
    let remove_label = ["Remove ", &name].concat();
    let removed = name.clone();
    let open = move |_| match link::decode(&fragment) {
        Ok(opened) => page.replace(opened.work, Change::Opened),
        Err(error) => page.notice.set(Some(Notice {
            sentence: words::link_error(&error, page.unit.get_untracked()),
            keep: Some(fragment.clone()),
        })),
    };
    let remove = move |_| {
        page.kept.update(|kept| {
            kept.remove(&removed);
        });
        page.keep();
    };
    view! {
        <li>
            <span>{name}</span>
            <button type="button" aria-label=open_label on:click=open>"Open"</button>
            <button type="button" aria-label=remove_label on:click=remove>"Remove"</button>
        </li>
    }
    .into_any()
}
