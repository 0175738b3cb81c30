//! The log of this can.

use leptos::prelude::*;
use tinwave_maker::file_name::file_name;
use tinwave_words::measure as words;

use crate::browser;
use crate::kit::{Action, ActionKind, Fold};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// The log, a line for each measurement and each thing done.
#[component]
pub fn LogFold() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let measuring = workshop.measuring();
    let log = memo(move || measuring.logs.with(|logs| logs.present().clone()));
    let can_bring_back = memo(move || measuring.logs.with(|logs| logs.can_bring_back()));
    let name = memo(move || workshop.work.with(|work| work.design.name.clone()));
    let can_note = memo(move || measuring.measured.with(Option::is_some) && !measuring.is_noted());
    let note = move |()| {
        let design = workshop.work.get_untracked().design;
        if let Some(told) = measuring.told() {
            measuring.logs.update(|logs| {
                logs.change(|log| {
                    log.note(&told, &design, browser::today());
                });
            });
        }
    };
    let save = move |()| {
        let name = name.get_untracked();
        let text =
            log.with_untracked(|log| words::log_text(&name, log, workshop.unit.get_untracked()));
        browser::save_file(&file_name(&name, "txt"), "text/plain", text.as_bytes());
    };
    let take_out = move |place: Option<usize>| measuring.logs.update(|logs| logs.take_out(place));
    let lines = move || {
        let unit = workshop.unit.get();
        log.with(|log| {
            let lines = (0..log.lines.len()).filter_map(|place| {
                let (on, text) = words::log_line(log, place, unit)?;
                Some(view! {
                    <li>
                        <span>{(!on.is_empty()).then(|| view! { <b>{on}</b> " " })}{text}</span>
                        <Action text=words::take_line_out() says=words::take_this_line_out(place + 1)
                            kind=ActionKind::Words on_press=move |()| take_out(Some(place))/>
                    </li>
                })
            });
            lines.collect_view()
        })
    };
    let has_lines = move || log.with(|log| !log.lines.is_empty());
    view! {
        <Fold title=words::log_title() summary=move || log.with(words::log_summary)>
            <p class="note">{live(move || words::log_of(&name.get()))}</p>
            <ol class="can-log">{lines}</ol>
            <Show when=has_lines><p class="note">{words::log_counts()}</p></Show>
            <div class="actions">
                <Show when=move || can_note.get()><Action text=words::note_this() on_press=note/></Show>
                <Show when=has_lines>
                    <Action text=words::save_log() on_press=save/>
                    <Action text=words::new_log() on_press=move |()| take_out(None)/>
                </Show>
                <Show when=move || can_bring_back.get()>
                    <Action text=words::bring_back()
                        on_press=move |()| measuring.logs.update(tinwave_maker::can_log::CanLogs::bring_back)/>
                </Show>
            </div>
        </Fold>
    }
}
