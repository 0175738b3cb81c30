//! The page: state, inputs, results.
//!
//! The page's markup stands in `index.html` as a pattern; every place in it
//! that follows the model names what it shows and is kept in line by one
//! effect, and everything the maker does is heard in one place. The pictures
//! are components of their own.

mod actions;
mod band;
mod beam_part;
mod bench_worker;
mod browser;
mod can;
mod cut_part;
mod entries;
mod feed;
mod head;
mod live;
mod markup;
mod match_part;
mod model;
mod mounting;
mod mouth_part;
mod opening;
mod outside_job;
mod said;
mod search;
mod slots;
mod state;
mod whys;
mod workbench;

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

use actions::Actions;
use bench_worker::BenchWorker;
use browser::{Timer, part};
use live::{LivePlaces, Named};
use model::Model;
use outside_job::OutsideJob;
use search::Search;
use slots::Slots;
use state::Page;

use crate::pictures::follow;
use crate::store::Theme;

/// A verdict is spoken when it has rested this long, not at each key.
const QUIET_MS: u32 = 1_200;

/// Starts the page: takes the place of the static example in `#app`.
pub fn start() {
    let Some(place) = document().get_element_by_id("app") else {
        return;
    };
    let root: HtmlElement = place.unchecked_into();
    let element: Element = root.clone().into();
    mount_to(root, move || run(element)).forget();
}

/// What the places of the page show, part by part.
const NAMES: [&[Named]; 9] = [
    head::NAMES,
    can::NAMES,
    band::NAMES,
    feed::NAMES,
    match_part::NAMES,
    mouth_part::NAMES,
    beam_part::NAMES,
    cut_part::NAMES,
];

/// Runs a task after what the browser has to do first.
fn later(task: Box<dyn FnOnce()>) {
    Timer::new().set(0, task);
}

/// Writes the page and sets it going, in short tasks so that none holds up the
/// browser for long. The page is made ready out of the document and takes the
/// example's place in one go, so that it is laid out only once.
fn run(root: Element) {
    let owner = Owner::current().unwrap_or_default();
    let start = Start {
        root,
        page: None,
        shown: None,
    };
    step(Box::new(start), owner, 0);
}

/// The page on its way.
struct Start {
    /// Where the page goes.
    root: Element,
    page: Option<Page>,
    shown: Option<Shown>,
}

/// The tasks of the start; one that finds nothing to work on ends it.
const TASKS: [fn(&mut Start) -> Option<()>; 7] = [
    |start| {
        let page = opening::open();
        show_theme(page.look(|model| model.theme));
        start.page = Some(page);
        Some(())
    },
    |start| {
        start.page?.change(&Model::compute);
        Some(())
    },
    |start| {
        start.shown = Shown::write();
        start.shown.as_ref().map(|_| ())
    },
    |start| {
        let shown = start.shown.as_mut()?;
        shown.slots.write(&shown.sheet);
        Some(())
    },
    |start| {
        let (page, shown) = (start.page?, start.shown.as_mut()?);
        whys::write(&shown.sheet);
        shown.places = page.look(|model| LivePlaces::find(&shown.sheet, &NAMES, model));
        Some(())
    },
    |start| {
        start.shown.as_mut()?.follow(start.page?);
        Some(())
    },
    |start| {
        go(&start.root, start.page?, start.shown.take()?);
        Some(())
    },
];

/// Does one task, and the next in another.
fn step(mut start: Box<Start>, owner: Owner, index: usize) {
    let Some(task) = TASKS.get(index) else {
        return;
    };
    later(Box::new(move || {
        if owner.with(|| task(&mut start)).is_some() {
            step(start, owner, index + 1);
        }
    }));
}

/// Puts the page into the document and sets it going.
fn go(root: &Element, page: Page, mut shown: Shown) {
    root.replace_children_with_node_1(&shown.sheet);
    let (sheet, slots) = (shown.sheet.clone(), shown.slots);
    let mut first = true;
    follow(Box::new(move || {
        page.track();
        // The first state stands already.
        if !std::mem::take(&mut first) {
            shown.follow(page);
        }
    }));
    let worker = BenchWorker::new();
    let search = Search::new(page, worker);
    let outside = OutsideJob::new(page, worker, search);
    Actions::new(page, slots, outside).listen(&sheet);
    opening::follow(page);
    workbench::listen(page);
    page.look(|model| browser::stand(&model.fragment(), model.unit));
    mounting::mount_pictures(page, &sheet);
}

/// Everything in the page that follows the model.
struct Shown {
    sheet: Element,
    slots: Slots,
    places: LivePlaces,
    announcer: Announcer,
    work: Option<Element>,
}

impl Shown {
    /// The page's markup, not yet in the document.
    fn write() -> Option<Self> {
        let sheet = document().create_element("div").ok()?;
        browser::stamp(&sheet, "page");
        Some(Self {
            slots: Slots::new(),
            places: LivePlaces::default(),
            announcer: Announcer::new(&sheet),
            work: part(&sheet, ".work"),
            sheet,
        })
    }

    fn follow(&mut self, page: Page) {
        page.look(|model| {
            self.slots.follow(model);
            self.places.follow(model);
            self.announcer.hear(head::spoken(model));
            if let Some(work) = &self.work {
                work.set_class_name(if model.waits { "work stale" } else { "work" });
            }
        });
        let waits = self.slots.wait();
        page.change(&|model| model.waits = waits);
    }
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
