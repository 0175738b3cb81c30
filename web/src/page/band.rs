//! The band: a published one, a channel, or typed edges.

use tinwave_core::design::Band;

use super::live::Named;
use super::markup::{group, option};
use super::model::Model;
use super::said;
use crate::bands::{self, BANDS, BandGroup, Channel, ChannelSet};
use crate::entry;
use crate::words::Occasion;

fn edges(band: Band) -> String {
    [
        &entry::format_frequency_exact(band.low_khz),
        " to ",
        &entry::format_frequency_exact(band.high_khz),
        " MHz",
    ]
    .concat()
}

fn summary(model: &Model) -> String {
    let band = model.work.design.band;
    match bands::named(band) {
        Some(published) => [published.name, ", ", &edges(band)].concat(),
        None => edges(band),
    }
}

fn band_options() -> String {
    let mut list = String::new();
    option(&mut list, "", "Typed edges");
    for of in BandGroup::ALL {
        let mut options = String::new();
        for band in BANDS.iter().filter(|band| band.group == of) {
            let label = [band.name, " (", &edges(band.band()), ")"].concat();
            option(&mut options, band.key, &label);
        }
        group(&mut list, of.name(), &options);
    }
    list
}

/// The value of a channel in the list: set and number.
fn channel_value(channel: Channel) -> String {
    [channel.set.key(), ".", &channel.number.to_string()].concat()
}

/// The band of a value of the list of channels.
pub(super) fn channel_band(value: &str) -> Option<Band> {
    let (set, number) = value.split_once('.')?;
    let channel = bands::channel(ChannelSet::from_key(set)?, number.parse().ok()?)?;
    Some(channel.band())
}

fn channels(set: ChannelSet) -> Vec<Channel> {
    let numbers = set.numbers();
    numbers
        .into_iter()
        .filter_map(|number| bands::channel(set, number))
        .collect()
}

fn channel_options() -> String {
    let mut list = String::new();
    option(&mut list, "", "None: the whole band");
    for set in ChannelSet::ALL {
        let mut options = String::new();
        for channel in channels(set) {
            option(&mut options, &channel_value(channel), &channel.label());
        }
        group(&mut list, set.name(), &options);
    }
    list
}

/// The channel whose edges are exactly the band's.
fn channel_of(model: &Model) -> String {
    let band = model.work.design.band;
    ChannelSet::ALL
        .into_iter()
        .find_map(|set| {
            channels(set)
                .into_iter()
                .find(|channel| channel.band() == band)
        })
        .map_or_else(String::new, channel_value)
}

fn about(model: &Model) -> String {
    let Some(band) = bands::named(model.work.design.band) else {
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

/// What the places of this part show.
pub(super) const NAMES: &[Named] = &[
    ("band", summary),
    ("bands", |_| band_options()),
    ("band-key", |model| {
        bands::named(model.work.design.band).map_or_else(String::new, |band| band.key.to_owned())
    }),
    ("channels", |_| channel_options()),
    ("channel", channel_of),
    ("about-band", about),
    ("power-cautions", |model| {
        said::cautions(model, &[Occasion::Power])
    }),
];
