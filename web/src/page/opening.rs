//! Opening: the link in the address, what the device has kept, or the example;
//! and following the browser's history from then on.

use leptos::prelude::*;

use super::browser;
use super::model::{Model, Notice};
use super::state::Page;
use crate::example::example;
use crate::link;
use crate::store;
use crate::words;

/// The page with the design it should show first.
pub(super) fn open() -> Page {
    let read = store::read(browser::stored(store::KEY).as_deref());
    let mut keep = None;
    let mut sentences = Vec::new();
    if let Some(broken) = read.broken {
        browser::store(store::BROKEN_KEY, &broken);
        sentences.push(words::broken_store().to_owned());
        keep = Some(broken);
    }
    let unit = read.kept.unit;
    let fragment = browser::fragment();
    let linked = match link::decode(&fragment) {
        Ok(opened) => Some(opened),
        Err(_) if fragment.is_empty() => None,
        Err(error) => {
            sentences.push(words::link_error(&error, unit));
            keep = Some(fragment.clone());
            None
        }
    };
    let kept_link = read.kept.link.clone();
    let from_link = linked.is_some();
    let (work, unknown) = match linked {
        Some(opened) => {
            sentences.extend(opened.newer.map(words::newer_link));
            (opened.work, opened.unknown)
        }
        None => {
            let kept = kept_link
                .as_deref()
                .and_then(|link| link::decode(link).ok());
            (kept.map_or_else(example, |opened| opened.work), Vec::new())
        }
    };
    let mut model = Model::new(work, read.kept);
    model.unknown = unknown;
    if from_link {
        let now = model.fragment();
        model.covered = kept_link.filter(|kept| *kept != now);
    }
    model.notice = (!sentences.is_empty()).then(|| Notice {
        sentence: sentences.join(" "),
        keep,
    });
    if fragment.is_empty() {
        browser::write_fragment(&model.fragment(), 0, false);
    }
    Page::new(model)
}

/// Follows the address, and the page's going away.
pub(super) fn follow(page: Page) {
    for name in ["popstate", "hashchange"] {
        browser::on_event(&window(), name, Box::new(move |_| read_address(page)));
    }
    // Another tab has written: its kept designs are ours too.
    browser::on_event(
        &window(),
        "storage",
        Box::new(move |_| {
            let read = store::read(browser::stored(store::KEY).as_deref());
            if read.broken.is_none() {
                page.set(&|model| model.kept.saved.clone_from(&read.kept.saved));
            }
        }),
    );
    // The last chance to write before the page goes to the background.
    browser::on_event(&window(), "pagehide", Box::new(move |_| page.commit()));
}

/// The address changed from outside: back, forward, or a link put in by hand.
fn read_address(page: Page) {
    let fragment = browser::fragment();
    if fragment.is_empty() || fragment == page.look(Model::fragment) {
        return;
    }
    match link::decode(&fragment) {
        Ok(opened) => {
            page.follow_browser(&opened.work, &opened.unknown);
            page.set(&|model| {
                model.notice = opened.newer.map(|version| Notice {
                    sentence: words::newer_link(version),
                    keep: None,
                });
            });
        }
        Err(error) => page.set(&|model| {
            model.notice = Some(Notice {
                sentence: words::link_error(&error, model.unit),
                keep: Some(fragment.clone()),
            });
        }),
    }
}
