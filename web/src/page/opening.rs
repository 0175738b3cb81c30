//! Opening: the link in the address, what the device has kept, or the example;
//! and following the browser's history and keys from then on.

use leptos::ev;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::browser;
use super::parts::button;
use super::state::{Notice, Page};
use crate::entry::LengthUnit;
use crate::example::example;
use crate::link::{self, LinkError, Opened};
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
    let kept_link = read.kept.link.clone();
    let unit = read.kept.unit;
    let kept_work = kept_link
        .as_deref()
        .and_then(|link| link::decode(link).ok())
        .map(|opened| opened.work);
    let fragment = browser::fragment();
    let linked = if fragment.is_empty() {
        None
    } else {
        match link::decode(&fragment) {
            Ok(opened) => Some(opened),
            Err(error) => {
                sentences.push(broken_link(&error, unit));
                keep = Some(fragment.clone());
                None
            }
        }
    };
    let from_link = linked.is_some();
    let newer = linked.as_ref().and_then(|opened| opened.newer);
    sentences.extend(newer.map(words::newer_link));
    let unknown = linked
        .as_ref()
        .map_or_else(Vec::new, |opened| opened.unknown.clone());
    let work = linked
        .map(|opened| opened.work)
        .or(kept_work)
        .unwrap_or_else(example);
    let page = Page::new(work, read.kept);
    page.address_stands(unknown);
    if fragment.is_empty() {
        page.put_in_address();
    }
    if from_link {
        let now = page.fragment();
        page.remember_covered(kept_link.filter(|kept| *kept != now));
    }
    if !sentences.is_empty() {
        page.notice.set(Some(Notice {
            sentence: sentences.join(" "),
            keep,
        }));
    }
    page
}

fn broken_link(error: &LinkError, unit: LengthUnit) -> String {
    [
        &words::link_error(error, unit),
        " What you had before is shown instead; nothing was lost.",
    ]
    .concat()
}

/// Follows the address, the keys and the page's going away.
pub(super) fn follow(page: Page) {
    for name in ["popstate", "hashchange"] {
        browser::on_event(&window(), name, Box::new(move |_| read_address(page)));
    }
    browser::on_event(
        &window(),
        "keydown",
        Box::new(move |event| {
            if let Some(event) = event.dyn_ref::<ev::KeyboardEvent>() {
                walk_by_key(page, event);
            }
        }),
    );
    // The last chance to write before the page goes to the background.
    browser::on_event(&window(), "pagehide", Box::new(move |_| page.commit()));
}

/// The address changed from outside: back, forward, or a link put in by hand.
fn read_address(page: Page) {
    let fragment = browser::fragment();
    if fragment.is_empty() || fragment == page.fragment() {
        return;
    }
    match link::decode(&fragment) {
        Ok(Opened {
            work,
            newer,
            unknown,
            ..
        }) => {
            page.follow_browser(work, browser::history_position());
            page.address_stands(unknown);
            page.notice.set(newer.map(|version| Notice {
                sentence: words::newer_link(version),
                keep: None,
            }));
        }
        Err(error) => page.notice.set(Some(Notice {
            sentence: broken_link(&error, page.unit.get_untracked()),
            keep: Some(fragment),
        })),
    }
}

/// Ctrl or Command with Z undoes; with Shift too, or with Y, redoes. The
/// browser's own undo of a text field would leave the design behind.
fn walk_by_key(page: Page, event: &ev::KeyboardEvent) {
    if !(event.ctrl_key() || event.meta_key()) || event.alt_key() {
        return;
    }
    match (event.key().as_str(), event.shift_key()) {
        ("z", false) => page.undo(),
        ("Z" | "z", true) | ("y", _) => page.redo(),
        _ => return,
    }
    event.prevent_default();
}

/// The message above everything.
pub(super) fn notice(page: Page) -> AnyView {
    let shown = move || {
        page.notice.get().map(|notice| {
            let keep = notice.keep.map(|text| {
                view! {
                    <label class="by-hand">
                        <span>"The text, to be copied"</span>
                        <input type="text" readonly=true prop:value=text/>
                    </label>
                }
                .into_any()
            });
            view! {
                <p>{notice.sentence}</p>
                {keep}
                {button("", "Close", Box::new(move || page.notice.set(None)))}
            }
            .into_any()
        })
    };
    view! {
        <div id="notice" role="alert" class:unseen=move || page.notice.with(Option::is_none)>{shown}</div>
    }
    .into_any()
}
