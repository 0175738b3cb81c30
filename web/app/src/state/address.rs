//! The address bar follows the work and the station, and the work follows it.
//!
//! A new edit and a new station are new entries of the browser's history; undo and
//! redo, and a best cut that was found, change the present entry.

use leptos::prelude::*;
use tinwave_maker::link;
use tinwave_maker::station::Station;

use super::Workshop;
use super::opening::Notice;
use crate::browser::{self, Timer};
use crate::reactive::effect;

/// The browser's history may be written this often (WebKit: 100 times in 30 s).
const WRITE_EVERY_MS: u32 = 400;

/// What the address bar holds.
#[derive(Clone, Debug, Default, PartialEq)]
struct Standing {
    fragment: String,
    position: usize,
    station: Station,
}

/// The address. A handle, copied freely.
#[derive(Clone, Copy)]
pub(super) struct Address {
    standing: StoredValue<Standing>,
    /// Parts of the opened link that this page does not know; they go out again.
    unknown: StoredValue<Vec<(String, String)>>,
    rest: Timer,
}

impl Address {
    pub(super) fn new(unknown: Vec<(String, String)>) -> Self {
        Self {
            standing: StoredValue::new(Standing::default()),
            unknown: StoredValue::new(unknown),
            rest: Timer::new(),
        }
    }

    pub(super) fn unknown(self) -> Vec<(String, String)> {
        self.unknown.get_value()
    }

    /// Follows the work, and the browser's back and forward.
    pub(super) fn follow(self, workshop: Workshop) {
        if !browser::is_here() {
            return;
        }
        // The opened link stands, whatever its spelling, until the first edit.
        self.standing.set_value(of(workshop));
        if browser::fragment().is_empty() {
            self.stands_for(workshop);
        }
        effect(move || {
            workshop.work.track();
            workshop.station.track();
            if !self.rest.waits() {
                self.rest.set(WRITE_EVERY_MS, move || self.write(workshop));
            }
        });
        for name in ["popstate", "hashchange"] {
            browser::on_window(name, move |_| self.read(workshop));
        }
        // The last chance to write before the page goes to the background.
        browser::on_window("pagehide", move |_| workshop.commit());
    }

    /// Writes the address if it is behind.
    pub(super) fn write(self, workshop: Workshop) {
        self.rest.clear();
        let now = of(workshop);
        let before = self.standing.get_value();
        if !browser::is_here() || now == before {
            return;
        }
        let new_entry = now.position != before.position || now.station != before.station;
        browser::write_fragment(&now.fragment, now.position, new_entry);
        self.standing.set_value(now);
    }

    /// The present entry of the browser's history is that of the present work.
    pub(super) fn stands_for(self, workshop: Workshop) {
        if !browser::is_here() {
            return;
        }
        self.rest.clear();
        let now = of(workshop);
        browser::write_fragment(&now.fragment, now.position, false);
        self.standing.set_value(now);
    }

    /// The address changed from outside: back, forward, or a link put in by hand.
    fn read(self, workshop: Workshop) {
        let fragment = browser::fragment();
        if fragment.is_empty() || fragment == untrack(|| workshop.fragment()) {
            return;
        }
        match link::decode(&fragment) {
            Ok(opened) => {
                self.rest.clear();
                self.unknown.set_value(opened.unknown);
                workshop.follow_browser(&opened.work, browser::history_position());
                workshop.station.set(opened.station.unwrap_or_default());
                workshop.notice.set(opened.newer.map(Notice::newer_link));
                self.standing.set_value(of(workshop));
            }
            Err(error) => workshop.notice.set(Some(Notice::refused_link(
                &error,
                workshop.unit.get_untracked(),
                fragment,
            ))),
        }
    }
}

fn of(workshop: Workshop) -> Standing {
    untrack(|| Standing {
        fragment: workshop.fragment(),
        position: workshop.position(),
        station: workshop.station.get(),
    })
}
