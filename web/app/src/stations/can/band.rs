//! The band: a published one or a channel by its name, or typed edges.

use leptos::prelude::*;
use tinwave_core::design::Band;
use tinwave_core::design_error::Field;
use tinwave_maker::bands::{
    BANDS, BandGroup, Channel, ChannelSet, band_by_key, channel, named, parse_band,
};
use tinwave_maker::entry::{LengthUnit, parse_frequency};
use tinwave_maker::history::Change;
use tinwave_words::can as words;

use crate::kit::{Fault, Pick, PickGroup, Picker};
use crate::reactive::memo;
use crate::state::Workshop;

/// Parts the set of a channel from its number.
const PARTED: char = '.';

/// The band by name, searched as one types.
#[component]
pub fn BandEntry() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let band = memo(move || workshop.work.with(|work| work.design.band));
    let choose = move |key: String| {
        if let Some(band) = band_of(&key) {
            take(workshop, band);
        }
    };
    let note = move || match key_of(band.get()) {
        Some(_) => words::band_edges(band.get()),
        None => String::new(),
    };
    let read = move |text: String| {
        let band = read(&text, workshop)?;
        take(workshop, band);
        Ok(())
    };
    view! {
        <Picker label=words::band() note groups=groups() id="field-band"
            chosen=move || key_of(band.get()).unwrap_or_default()
            says=move || words::band_edges(band.get()) on_choose=choose take=read/>
    }
    .into_any()
}

/// A new band, and a chart that follows it.
fn take(workshop: Workshop, band: Band) {
    workshop.edit(Change::Band, |work| {
        if work.design.band != band {
            work.design.band = band;
            work.design.sweep = None;
        }
    });
}

fn groups() -> Vec<PickGroup> {
    let published = BandGroup::ALL.map(|group| PickGroup {
        name: group.name().to_owned(),
        picks: BANDS
            .iter()
            .filter(|band| band.group == group)
            .map(|band| Pick::new(band.key, band.name).with_detail(words::band_edges(band.band())))
            .collect(),
    });
    let numbered = ChannelSet::ALL.map(|set| PickGroup {
        name: words::channels_of(set.name()),
        picks: channels(set)
            .map(|channel| {
                let band = channel.band();
                Pick::new(channel_key(channel), channel.label())
                    .with_detail(words::band_edges(band))
            })
            .collect(),
    });
    published.into_iter().chain(numbered).collect()
}

fn channels(set: ChannelSet) -> impl Iterator<Item = Channel> {
    let numbers = set.numbers().into_iter();
    numbers.filter_map(move |number| channel(set, number))
}

fn channel_key(channel: Channel) -> String {
    format!("{}{PARTED}{}", channel.set.key(), channel.number)
}

/// The band of a line of the list.
fn band_of(key: &str) -> Option<Band> {
    if let Some(band) = band_by_key(key) {
        return Some(band.band());
    }
    let (set, number) = key.split_once(PARTED)?;
    let channel = channel(ChannelSet::from_key(set)?, number.parse().ok()?)?;
    Some(channel.band())
}

/// The line of a band, if it is in the list.
fn key_of(band: Band) -> Option<String> {
    if let Some(published) = named(band) {
        return Some(published.key.to_owned());
    }
    ChannelSet::ALL
        .into_iter()
        .flat_map(channels)
        .find(|channel| channel.band() == band)
        .map(channel_key)
}

/// Reads typed edges, a channel or one frequency.
fn read(text: &str, workshop: Workshop) -> Result<Band, Fault> {
    let band = parse_band(text)?;
    let checked = workshop.work.with_untracked(|work| {
        let mut design = work.design.clone();
        design.band = band;
        design.sweep = None;
        design.check()
    });
    let Err(error) = checked else {
        return Ok(band);
    };
    // One frequency stands for a channel round it: what is said is about what was typed.
    let (low, _) = Field::BandLow.range();
    let (_, high) = Field::BandHigh.range();
    let typed = parse_frequency(text).ok();
    let range = u32::try_from(low).ok().zip(u32::try_from(high).ok());
    let sentence = match (typed, range) {
        (Some(typed), Some((low, high))) => words::band_out_of_range(typed.value, low, high),
        _ => tinwave_words::design_error(&error, LengthUnit::Millimetre),
    };
    Err(sentence.into())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn workshop() -> Workshop {
        Workshop::open()
    }

    #[test]
    fn every_line_of_the_list_leads_to_its_band_and_back() {
        for pick in groups().into_iter().flat_map(|group| group.picks) {
            let band = band_of(&pick.key);
            assert!(band.is_some(), "{}", pick.key);
            // Two lists may name the same band; its line has the same edges.
            let back = band.and_then(key_of).and_then(|key| band_of(&key));
            assert_eq!(back, band, "{}", pick.key);
        }
    }

    #[test]
    fn typed_edges_channels_and_single_frequencies_are_read() {
        Owner::new().with(|| {
            let workshop = workshop();
            let khz = |text: &str| {
                read(text, workshop)
                    .ok()
                    .map(|band| (band.low_khz, band.high_khz))
            };
            assert_eq!(khz("2401-2483.5"), Some((2_401_000, 2_483_500)));
            assert_eq!(khz("ch 6"), Some((2_427_000, 2_447_000)));
            assert_eq!(khz("2442"), Some((2_432_000, 2_452_000)));
        });
    }

    #[test]
    fn a_frequency_beyond_all_is_answered_as_it_was_typed() {
        Owner::new().with(|| {
            let fault = read("99999", workshop()).err();
            let sentence = fault.map(|fault| fault.sentence).unwrap_or_default();
            assert!(sentence.starts_with("99999 MHz"), "{sentence}");
        });
    }
}
