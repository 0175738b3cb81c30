//! Bands and channels: published lists, rules, and typed ones.

mod channels;
mod published;

pub use channels::{Channel, ChannelSet, channel};
pub use published::{BANDS, BandGroup, PublishedBand, band_by_key, named};

use tinwave_core::design::Band;

use crate::entry::{EntryError, parse_count, parse_frequency};

/// Half the width that is taken round a single frequency: a 20 MHz channel's.
const HALF_CHANNEL_KHZ: u32 = 10_000;

/// Reads a band: two edges (`2401-2483.5`, `2.4 to 2.4835 GHz`), a channel
/// (`ch 6`, `5 GHz ch 36`) or one frequency, taken as the centre of a 20 MHz
/// channel.
///
/// # Errors
/// [`EntryError`], whose text says what would be right.
pub fn parse_band(text: &str) -> Result<Band, EntryError> {
    if text.chars().nth(64).is_some() {
        return Err(EntryError::TooLong);
    }
    let lower = text.trim().to_ascii_lowercase();
    if let Some(at) = lower.find("ch") {
        let (before, rest) = lower.split_at(at);
        let number = rest.trim_start_matches(|character: char| {
            character.is_ascii_alphabetic() || character == '.'
        });
        return parse_channel(before.trim(), number);
    }
    let plain = lower.replace(['–', '−', '—', '…'], "-").replace("..", "-");
    let edges = plain
        .split_once(" to ")
        .or_else(|| plain.split_once('-'))
        .filter(|(low, _)| !low.trim().is_empty());
    let Some((low, high)) = edges else {
        let centre = parse_frequency(&plain)?.value;
        return Ok(Band {
            low_khz: centre.saturating_sub(HALF_CHANNEL_KHZ),
            high_khz: centre.saturating_add(HALF_CHANNEL_KHZ),
        });
    };
    let high_khz = parse_frequency(high)?.value;
    // "2.4 to 2.4835 GHz": the unit at the end holds for both.
    let low_khz = match parse_frequency(low) {
        Err(EntryError::PerhapsGigahertz { .. }) if high.contains('g') => {
            let mut with_unit = low.trim().to_owned();
            with_unit.push_str(" ghz");
            parse_frequency(&with_unit)?.value
        }
        other => other?.value,
    };
    if low_khz >= high_khz {
        return Err(EntryError::BandReversed);
    }
    Ok(Band { low_khz, high_khz })
}

fn parse_channel(before: &str, number: &str) -> Result<Band, EntryError> {
    let set = match before.trim_end_matches(',').trim() {
        "" | "2.4 ghz" | "2.4ghz" | "2,4 ghz" | "2.4" => ChannelSet::Lan2g4,
        "5 ghz" | "5ghz" | "5" => ChannelSet::Lan5g,
        "6 ghz" | "6ghz" | "6" => ChannelSet::Lan6g,
        "802.15.4" => ChannelSet::Personal2g4,
        _ => return Err(EntryError::NotABand),
    };
    let number = parse_count(number)?;
    u16::try_from(number)
        .ok()
        .and_then(|number| channel(set, number))
        .map(Channel::band)
        .ok_or(EntryError::UnknownChannel { number })
}
