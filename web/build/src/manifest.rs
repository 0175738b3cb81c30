//! Every file of the built page in one table: what it is made of, how it is named, and
//! when a browser fetches it. Nothing else knows a file's name.

use crate::program::Program;
use Name::{ByContent, Fixed};
use Source::{Asset, Bindings, LaterWasm, Page, Styles, Text, Wasm};
use When::{AtOnce, ByItself, ForWork, InUse};

/// What a file is made of. Names are of files in `web/assets`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Source {
    /// The joint of a program and the browser.
    Bindings(Program),
    /// A program, or what of it comes first.
    Wasm(Program),
    /// What is cut off a program, unless it was left whole.
    LaterWasm(Program),
    /// The style sheets that a text lists, in its order.
    Styles(&'static str),
    /// A hand-written script, in which the files above it are named.
    Text(&'static str),
    /// `index.html` of the workspace, in which the files above it are named.
    Page,
    /// A file as it is.
    Asset(&'static str),
}

/// How a file is named.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Name {
    /// By its content, so that any host may let browsers keep it for good: a stem, to
    /// which a fingerprint is added, and an ending. Other files name it by a key.
    ByContent {
        key: &'static str,
        stem: &'static str,
        ending: &'static str,
    },
    /// As it stands, because others than our files refer to it.
    Fixed(&'static str),
}

/// When a browser fetches a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum When {
    /// On the first visit, before all else.
    AtOnce,
    /// Once somebody uses the page: what the first paint does without.
    InUse,
    /// When it is first wanted: long work and printing.
    ForWork,
    /// As the browser's own affair; the page keeps no copy.
    ByItself,
}

/// One file of the built page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct File {
    pub(crate) source: Source,
    pub(crate) name: Name,
    pub(crate) when: When,
}

const fn row(source: Source, name: Name, when: When) -> File {
    File { source, name, when }
}

const fn by_content(key: &'static str, stem: &'static str, ending: &'static str) -> Name {
    ByContent { key, stem, ending }
}

/// All of them; each names only those above it.
#[rustfmt::skip]
pub(crate) const FILES: [File; 14] = [
    row(LaterWasm(Program::App),       by_content(STATIONS, "stations", "wasm"),                    InUse),
    row(Bindings(Program::App),        by_content("app", "app", "js"),                              AtOnce),
    row(Wasm(Program::App),            by_content("wasm", "app", "wasm"),                           AtOnce),
    row(Bindings(Program::Worker),     by_content("worker_program", "worker-program", "js"),        ForWork),
    row(Wasm(Program::Worker),         by_content("worker_wasm", "worker-program", "wasm"),         ForWork),
    row(Text("worker.js"),             by_content("worker", "worker", "js"),                        ForWork),
    row(Styles(FIRST_STYLES),          by_content("style", "style", "css"),                         AtOnce),
    row(Styles("styles-in-use.txt"),   by_content("style_in_use", "stations", "css"),               InUse),
    row(Text("start.js"),              by_content("start", "start", "js"),                          AtOnce),
    row(Asset("icon.svg"),             Fixed("icon.svg"),                                           AtOnce),
    row(Asset("icon-512.png"),         Fixed("icon-512.png"),                                       AtOnce),
    row(Asset("manifest.webmanifest"), Fixed("manifest.webmanifest"),                               AtOnce),
    row(Page,                          Fixed("index.html"),                                         AtOnce),
    row(Text("sw.js"),                 Fixed("sw.js"),                                              ByItself),
];

/// Lists the style sheets of the first paint, and of all stations.
pub(crate) const FIRST_STYLES: &str = "styles.txt";

/// The key of what is cut off the page's program.
pub(crate) const STATIONS: &str = "stations";

impl When {
    /// Whether the service worker fetches it after all else.
    pub(crate) const fn is_later(self) -> bool {
        matches!(self, InUse | ForWork)
    }
}

impl Name {
    /// The kind of text, as the optimiser knows it.
    pub(crate) fn ending(&self) -> &'static str {
        match self {
            ByContent { ending, .. } => ending,
            Fixed(name) => name.rsplit_once('.').map_or("", |(_, ending)| ending),
        }
    }
}
