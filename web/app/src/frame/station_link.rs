//! A station's place in rail and strip.

use leptos::ev::MouseEvent;
use leptos::prelude::*;
use tinwave_maker::station::Station;
use tinwave_words::frame as words;

use super::{Lines, SidePages};
use crate::kit::{Icon, station_icon};
use crate::reactive::live;
use crate::state::Workshop;

/// A link to a station: an address of its own, opened in place.
#[component]
pub(super) fn StationLink(
    /// Which.
    station: Station,
    /// Whether its live line stands below its name.
    #[prop(optional)]
    with_line: bool,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let pages = expect_context::<SidePages>();
    let lines = expect_context::<Lines>();
    let href = move || format!("#{}", workshop.fragment_at(station));
    let current = move || (workshop.station.get() == station).then_some("page");
    let open = move |event: MouseEvent| {
        // With a key held the browser opens it elsewhere.
        if !(event.ctrl_key() || event.meta_key() || event.shift_key()) {
            event.prevent_default();
            pages.close();
            workshop.go_to(station);
        }
    };
    view! {
        <a class="station-link" href=href aria-current=current on:click=open>
            <Icon name=station_icon(station)/>
            <span>
                <span class="station-name">{words::station(station)}</span>
                {with_line.then(|| view! {
                    <span class="unseen">": "</span>
                    <span class="station-line">{live(move || lines.of(station))}</span>
                })}
            </span>
        </a>
    }
}
