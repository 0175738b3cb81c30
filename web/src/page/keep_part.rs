//! Keep and share: name, designs kept on the device, and the design as a file.

use tinwave_core::json::design_from_tree;

use super::json_tree;
use super::live::Named;
use super::markup::fill;
use super::model::{Model, Notice};
use super::state::Page;
use crate::history::Change;
use crate::link;
use crate::words;

/// What the places of this part show.
pub(super) const NAMES: &[Named] = &[
    ("keeping", |model| {
        if model.work.design.name.is_empty() {
            "no name yet".to_owned()
        } else {
            model.work.design.name.clone()
        }
    }),
    ("saved", saved),
];

fn saved(model: &Model) -> String {
    let mut html = String::new();
    if model.kept.saved.is_empty() {
        html.push_str("<li>None yet.</li>");
    }
    for (index, design) in model.kept.saved.iter().enumerate() {
        let (name, index) = (design.name.as_str(), index.to_string());
        fill(
            &mut html,
            "<li><span>~</span>\
             <button type=\"button\" data-do=\"open-kept\" data-arg=\"~\" aria-label=\"Open ~\">Open</button>\
             <button type=\"button\" data-do=\"remove-kept\" data-arg=\"~\" aria-label=\"Remove ~\">Remove</button></li>",
            &[name, &index, name, &index, name],
        );
    }
    html
}

/// Keeps the present design under its name.
pub(super) fn keep(page: Page) {
    page.commit();
    page.set(&|model| {
        let name = model.work.design.name.clone();
        let name = if name.is_empty() { "Unnamed" } else { &name };
        let fragment = model.fragment();
        model.kept.save(name, &fragment);
    });
    page.keep();
}

/// Opens a kept design.
pub(super) fn open_kept(page: Page, index: usize) {
    let kept = page.look(|model| {
        model
            .kept
            .saved
            .get(index)
            .map(|design| design.link.clone())
    });
    let Some(fragment) = kept else {
        return;
    };
    match link::decode(&fragment) {
        Ok(opened) => page.replace(&opened.work, Change::Opened),
        Err(error) => page.set(&|model| {
            model.notice = Some(Notice {
                sentence: words::link_error(&error, model.unit),
                keep: Some(fragment.clone()),
            });
        }),
    }
}

/// Forgets a kept design.
pub(super) fn remove_kept(page: Page, index: usize) {
    page.set(&|model| {
        if index < model.kept.saved.len() {
            model.kept.saved.remove(index);
        }
    });
    page.keep();
}

/// Opens a design file; what can't be read changes nothing.
pub(super) fn open_file(page: Page, text: Option<String>) {
    let sentence = match text.as_deref().map(json_tree::parse) {
        Some(Ok(tree)) => match design_from_tree(tree) {
            Ok(design) => {
                page.set(&|model| model.notice = None);
                page.alter(Change::Opened, &|work| work.design = design.clone());
                return;
            }
            Err(error) => error.to_string(),
        },
        Some(Err(place)) => ["It is not valid JSON. ", &place].concat(),
        None => "It can't be read, or is far too big for a design.".to_owned(),
    };
    page.set(&|model| {
        let parts = [
            "That file can't be opened. ",
            &sentence,
            " Nothing was changed.",
        ];
        model.notice = Some(Notice {
            sentence: parts.concat(),
            keep: None,
        });
    });
}
