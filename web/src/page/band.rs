//! The band: a published one, a channel, or typed edges.

use leptos::prelude::*;
use tinwave_core::design::Band;

use super::entries::Entry;
use super::entry_field::entry_field;
use super::parts::{choice, fields, group_html, option_html, section};
use super::state::{Now, Page};
use crate::bands::{self, BANDS, BandGroup, ChannelSet};
use crate::entry;
use crate::history::Change;

fn edges(band: Band) -> String {
    [
        &entry::format_frequency_exact(band.low_khz),
        " to ",
        &entry::format_frequency_exact(band.high_khz),
        " MHz",
    ]
    .concat()
}

fn summary(now: &Now<'_>) -> String {
    let band = now.work.design.band;
    match bands::named(band) {
        Some(published) => [published.name, ", ", &edges(band)].concat(),
        None => edges(band),
    }
}

fn band_options() -> String {
    let mut list = String::new();
    option_html(&mut list, "", "Typed edges");
    for group in BandGroup::ALL {
        group_html(&mut list, Some(group.name()));
        for band in BANDS.iter().filter(|band| band.group == group) {
            let label = [band.name, " (", &edges(band.band()), ")"].concat();
            option_html(&mut list, band.key, &label);
        }
        group_html(&mut list, None);
    }
    list
}

/// The value of a channel in the list: set and number.
fn channel_value(set: ChannelSet, number: u16) -> String {
    [set.key(), ".", &number.to_string()].concat()
}

fn channel_of_value(value: &str) -> Option<bands::Channel> {
    let (set, number) = value.split_once('.')?;
    bands::channel(ChannelSet::from_key(set)?, number.parse().ok()?)
}

fn channel_options() -> String {
    let mut list = String::new();
    option_html(&mut list, "", "None: the whole band");
    for set in ChannelSet::ALL {
        group_html(&mut list, Some(set.name()));
        for number in set.numbers() {
            if let Some(channel) = bands::channel(set, number) {
                option_html(&mut list, &channel_value(set, number), &channel.label());
            }
        }
        group_html(&mut list, None);
    }
    list
}

/// The channel whose edges are exactly the band's.
fn channel_of(band: Band) -> String {
    ChannelSet::ALL
        .into_iter()
        .flat_map(|set| {
            set.numbers()
                .into_iter()
                .filter_map(move |number| bands::channel(set, number))
        })
        .find(|channel| channel.band() == band)
        .map_or_else(String::new, |channel| {
            channel_value(channel.set, channel.number)
        })
}

fn take(page: Page, band: Option<Band>) {
    if let Some(band) = band {
        let mut work = page.work.get_untracked();
        work.design.band = band;
        page.replace(work, Change::Band);
    }
}

fn about(now: &Now<'_>) -> String {
    let Some(band) = bands::named(now.work.design.band) else {
        return String::new();
    };
    let receive = if band.receive_only {
        "Receive only: transmitting here is not allowed. "
    } else {
        ""
    };
    [
        receive,
        band.note,
        " Source: ",
        band.source,
        " (",
        band.confidence.words(),
        ").",
    ]
    .concat()
}

/// The section.
pub(super) fn band_section(page: Page, ladder: AnyView) -> AnyView {
    let published = choice(
        "band",
        "Published band",
        band_options(),
        page.text(|now| {
            bands::named(now.work.design.band).map_or_else(String::new, |band| band.key.to_owned())
        }),
        Box::new(move |key| take(page, bands::band_by_key(&key).map(|band| band.band()))),
    );
    let band = Memo::new(move |_| page.work.with(|work| work.design.band));
    let channel = choice(
        "channel",
        "Or one channel",
        channel_options(),
        Signal::derive(move || channel_of(band.get())),
        Box::new(move |value| take(page, channel_of_value(&value).map(|channel| channel.band()))),
    );
    section(
        page,
        "band-part",
        "2 Band",
        true,
        summary,
        vec![
            fields(vec![
                published,
                channel,
                entry_field(page, Entry::Band, false),
            ]),
            super::parts::live_paragraph("note", page.text(about)),
            ladder,
        ],
    )
}
