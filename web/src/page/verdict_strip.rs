//! The verdict, always in sight, and its announcement to screen readers.

use leptos::prelude::*;
use tinwave_core::ruler::RulerFigures;

use super::browser::Timer;
use super::parts::badge;
use super::state::{Now, Page};
use crate::entry;
use crate::words;

/// A verdict is announced when it has rested this long, not at each key.
const QUIET_MS: u32 = 1_200;

fn headline(now: &Now<'_>) -> words::Said {
    let findings = now.analysis.map_or(&[][..], |analysis| &analysis.verdict);
    words::verdict_line(findings, now.unit)
}

/// Where to drill, how long to cut, what match: the whole job in a line.
fn figures(now: &Now<'_>) -> String {
    let ruler = RulerFigures::new(&now.work.design);
    let length = |um| entry::format_length(um, now.unit);
    let mut line = [
        "Hole ",
        &length(ruler.hole_from_closed_rim_um),
        ", wire ",
        &length(ruler.wire_from_inner_wall_um),
    ]
    .concat();
    if let Some(summary) = now.analysis.and_then(|analysis| analysis.match_summary) {
        line.push_str(", VSWR ");
        line.push_str(&super::matching::vswr_text(summary.worst_vswr_in_band));
    }
    line
}

/// The strip.
pub(super) fn verdict_strip(page: Page) -> AnyView {
    let mark = move || {
        let unit = page.unit.get();
        let said = page.analysis.with(|analysis| {
            let findings = analysis
                .as_ref()
                .map_or(&[][..], |analysis| &analysis.verdict);
            words::verdict_line(findings, unit)
        });
        view! {
            {badge(said.severity)}
            <strong id="verdict-headline">{said.headline}</strong>
        }
        .into_any()
    };
    let waits = page.stale();
    view! {
        <div id="verdict" class="verdict" role="region" aria-label="Verdict">
            <p class="verdict-line">{mark}</p>
            <p class="verdict-figures">
                {move || if waits.get() {
                    "An entry below can't be used yet: this is the last good design.".to_owned()
                } else {
                    page.text(figures).get()
                }}
            </p>
        </div>
    }
    .into_any()
}

/// A quiet region that speaks the verdict after a pause.
pub(super) fn announcer(page: Page) -> AnyView {
    let spoken = RwSignal::new(String::new());
    let pause = Timer::new();
    let line = page.text(|now| {
        let said = headline(now);
        [words::severity_word(said.severity), ": ", &said.headline].concat()
    });
    Effect::new(move |before: Option<String>| {
        let text = line.get();
        if before.as_ref().is_some_and(|before| *before != text) {
            let say = text.clone();
            pause.set(QUIET_MS, Box::new(move || spoken.set(say)));
        }
        text
    });
    view! { <p class="unseen" role="status" id="announcer">{move || spoken.get()}</p> }.into_any()
}
