//! The cut: whether it follows the best or was made, and its two entries.

use leptos::prelude::*;
use tinwave_core::design_error::Field;
use tinwave_words::feed as words;

use super::known::{Feed, said, tip};
use crate::kit::{DesignField, EntryGroup, IconName, StateLine};
use crate::state::Freshness;
use crate::worker::TaskState;

/// The state line, both cuts side by side where they differ, and the entries.
#[component]
pub fn CutEntries() -> impl IntoView {
    let feed = expect_context::<Feed>();
    view! {
        <EntryGroup title=words::the_cut()>
            <StateLine icon=move || icon(feed) title=move || title(feed) text=move || text(feed)
                action=move || action(feed) on_press=move |()| press(feed)/>
            <Show when=move || feed.is_as_cut() && feed.other_best().is_some()>
                <SideBySide/>
            </Show>
            <DesignField field=Field::ProbeLength label=words::wire_inside() help=words::wire_inside_help()/>
            <DesignField field=Field::BackshortDistance label=words::from_back_wall()
                help=words::from_back_wall_help()/>
        </EntryGroup>
    }
}

/// Whether figures wait for the search.
fn searches(feed: Feed) -> bool {
    !feed.is_as_cut() && feed.workshop.answers.freshness.get() == Freshness::Pending
}

fn icon(feed: Feed) -> IconName {
    if feed.is_as_cut() {
        IconName::Cut
    } else {
        IconName::Follows
    }
}

fn title(feed: Feed) -> String {
    if feed.is_as_cut() {
        return words::as_cut(feed.cut(), feed.workshop.unit.get());
    }
    let search = feed.workshop.answers.search_state();
    match search.get() {
        TaskState::Working { done, .. } if searches(feed) => words::searching(done),
        TaskState::Idle | TaskState::Refused if searches(feed) => words::not_searched().to_owned(),
        _ => words::follows().to_owned(),
    }
}

fn text(feed: Feed) -> String {
    if feed.is_as_cut() {
        return words::as_cut_means().to_owned();
    }
    let search = feed.workshop.answers.search_state();
    if searches(feed) && search.with(|state| matches!(state, TaskState::Refused)) {
        return words::search_refused().to_owned();
    }
    words::follows_means().to_owned()
}

fn action(feed: Feed) -> String {
    if feed.is_as_cut() {
        words::follow_again()
    } else if searches(feed)
        && feed
            .workshop
            .answers
            .search_state()
            .with(TaskState::is_working)
    {
        words::stop()
    } else {
        words::i_have_cut_it()
    }
    .to_owned()
}

/// One button, whose text says what it does at the time.
fn press(feed: Feed) {
    let (as_cut, stops) = untrack(|| {
        let working = feed
            .workshop
            .answers
            .search_state()
            .with(TaskState::is_working);
        (feed.is_as_cut(), searches(feed) && working)
    });
    if as_cut {
        feed.follows();
    } else if stops {
        feed.workshop.answers.stop_search();
    } else {
        feed.stays();
    }
}

/// The cut that was made beside the best one.
#[component]
fn SideBySide() -> impl IntoView {
    let feed = expect_context::<Feed>();
    let unit = feed.workshop.unit;
    let own = move || words::pair(feed.cut(), unit.get());
    let own_vswr = move || {
        let worst = feed.summary().map(|summary| summary.worst_vswr_in_band);
        worst.map_or_else(|| words::no_match().to_owned(), words::vswr_named)
    };
    let best = move || {
        let best = feed.other_best();
        best.map_or_else(String::new, |best| {
            words::pair(said(tip(&best)), unit.get())
        })
    };
    let best_vswr = move || {
        let best = feed.other_best();
        best.map_or_else(String::new, |best| words::vswr_named(best.worst_vswr))
    };
    view! {
        <dl class="two-cuts">
            <div class="own"><dt>{words::column_as_cut()}</dt><dd>{own}</dd><dd class="match">{own_vswr}</dd></div>
            <div><dt>{words::column_best()}</dt><dd>{best}</dd><dd class="match">{best_vswr}</dd></div>
        </dl>
    }
}
