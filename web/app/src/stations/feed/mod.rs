//! The Feed station: the wire, where it stands, and how well it is matched.

pub mod cut_state;
pub mod entries;
pub mod figures;
pub mod findings;
pub mod hole;
mod known;
pub mod match_chart;
pub mod matters;
pub mod rule;

use leptos::prelude::*;
use tinwave_drawing::section::SectionFor;
use tinwave_maker::station::Station;
use tinwave_words::feed as words;

use crate::kit::{Action, ActionKind, LiveRegion, StationPage};
use crate::pictures::SectionPicture;
use crate::reactive::memo;
use crate::state::Workshop;
use known::Feed;

/// The Feed station.
#[component]
pub fn FeedStation() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let has_cut = memo(move || workshop.answers.has_cut());
    move || {
        if has_cut.get() {
            view! { <CutPage/> }.into_any()
        } else {
            view! { <NoCut/> }.into_any()
        }
    }
}

/// The station of a can that will not do.
#[component]
fn NoCut() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    view! {
        <StationPage station=Station::Feed answer=words::no_cut() reason=words::no_cut_reason()
            todo=move || view! {
                <Action text=tinwave_words::frame::to_the_can() kind=ActionKind::Main
                    on_press=move |()| workshop.go_to(Station::Can)/>
            }/>
    }
}

#[component]
fn CutPage() -> impl IntoView {
    let feed = Feed::new(expect_context::<Workshop>());
    provide_context(feed);
    let told = move || feed.told().unwrap_or_default();
    view! {
        <StationPage station=Station::Feed picture_stays=true
            answer=move || feed.answer() reason=move || feed.reason()
            picture=move || view! {
                <SectionPicture shown_for=SectionFor::Feed with_knob=true other=move || feed.other()/>
            }
            figures=|| view! { <figures::FeedFigures/> }
            entries=|| view! {
                <cut_state::CutEntries/>
                <entries::WireEntries/>
                <findings::FeedFindings/>
                <rule::QuarterWave/>
            }
            more=|| view! {
                <match_chart::MatchChart/>
                <match_chart::MatchSmith/>
                <matters::WhatMattersPart/>
            }/>
        <LiveRegion text=told/>
    }
}

#[cfg(test)]
mod tests;
