//! The page: state, inputs, results.
//!
//! The page's markup stands in `index.html` as a pattern; every place in it
//! that follows the model names what it shows and is kept in line by one
//! effect, and everything the maker does is heard in one place. The pictures
//! are components of their own.

mod actions;
mod band;
mod beam_part;
mod browser;
mod can;
mod cut_part;
mod entries;
mod feed;
mod fit;
mod head;
mod keep_part;
mod live;
mod markup;
mod match_part;
mod model;
mod mounting;
mod opening;
mod said;
mod search;
mod slots;
mod state;
mod whys;

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

use actions::Actions;
use browser::{Timer, part};
use live::{LivePlaces, Named};
use search::Search;
use slots::Slots;

use crate::store::Theme;

/// A verdict is spoken when it has rested this long, not at each key.
const QUIET_MS: u32 = 1_200;

/// Starts the page: takes the place of the static example in `#app`.
pub fn start() {
    std::panic::set_hook(Box::new(|info| browser::report_panic(&info.to_string())));
    let Some(place) = document().get_element_by_id("app") else {
        return;
    };
    let root: HtmlElement = place.unchecked_into();
    let element: Element = root.clone().into();
    mount_to(root, move || run(&element)).forget();
}

/// What the places of the page show, part by part.
const NAMES: [&[Named]; 9] = [
    head::NAMES,
    can::NAMES,
    band::NAMES,
    feed::NAMES,
    match_part::NAMES,
    beam_part::NAMES,
    fit::NAMES,
    cut_part::NAMES,
    keep_part::NAMES,
];

/// Writes the page and sets it going.
fn run(root: &Element) {
    let page = opening::open();
    browser::stamp(root, "page");
    if browser::is_wide()
        && let Some(fit) = part(root, "#fit > details")
    {
        let _ = fit.set_attribute("open", "");
    }
    let slots = Slots::write(root);
    whys::write(root);
    let mut places = page.look(|model| LivePlaces::find(root, &NAMES, model));
    let mut announcer = Announcer::new(root);
    let work = part(root, ".work");
    mounting::effect(Box::new(move || {
        page.track();
        page.look(|model| {
            slots.follow(model);
            places.follow(model);
            announcer.hear(head::spoken(model));
            if let Some(work) = &work {
                work.set_class_name(if model.waits { "work stale" } else { "work" });
            }
        });
        let waits = slots.wait();
        page.change(&|model| model.waits = waits);
    }));
    show_theme(page.look(|model| model.theme));
    let search = Search::new(page);
    mounting::mount_pictures(page, root);
    Actions::new(page, slots, search).listen(root);
    opening::follow(page);
}

/// Shows a theme in the whole page.
fn show_theme(theme: Theme) {
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("data-theme", theme.key());
    }
}

/// Speaks the verdict to screen readers once it has rested.
struct Announcer {
    place: Option<Element>,
    heard: Option<String>,
    pause: Timer,
}

impl Announcer {
    fn new(root: &Element) -> Self {
        Self {
            place: part(root, "#announcer"),
            heard: None,
            pause: Timer::new(),
        }
    }

    fn hear(&mut self, text: String) {
        if self.heard.as_ref() == Some(&text) {
            return;
        }
        // The first verdict is read with the page.
        if let (Some(_), Some(place)) = (&self.heard, self.place.clone()) {
            let say = text.clone();
            self.pause.set(
                QUIET_MS,
                Box::new(move || place.set_text_content(Some(&say))),
            );
        }
        self.heard = Some(text);
    }
}
