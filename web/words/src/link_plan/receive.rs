//! What a station that only listens is worth, and what there is to be received.

use tinwave_core::design::Design;
use tinwave_core::si::{SiDesign, hertz};
use tinwave_core::waveguide_mode::Mode;
use tinwave_maker::bands::{BANDS, PublishedBand};
use tinwave_maker::confidence::Confidence;
use tinwave_maker::entry::{format_decimal, format_frequency_exact};
use tinwave_maker::link_plan::ReceiverAnswer;

use crate::figures::{db, trimmed};

/// Hottest that a station is told to be, K.
const HOTTEST_K: f64 = 1e6;

/// Figures of an end that only listens, a row each.
#[must_use]
pub fn receiver_rows(receiver: &ReceiverAnswer) -> Vec<[String; 2]> {
    let mut rows = vec![[
        "Figure of merit, G/T".to_owned(),
        format!("{} dB/K", format_decimal(receiver.g_over_t_db, 1)),
    ]];
    // Behind a cable that lets nothing through no temperature means anything.
    if receiver.system_k < HOTTEST_K {
        rows.push([
            "System noise temperature".to_owned(),
            format!("{} K", format_decimal(receiver.system_k, 0)),
        ]);
    }
    if let Some(ratio_db) = receiver.carrier_to_noise_db {
        rows.push([
            format!(
                "Signal over noise in {} MHz",
                trimmed(receiver.bandwidth_hz / 1e6, 3)
            ),
            db(ratio_db),
        ]);
    }
    rows
}

/// A band that is only received, in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Received {
    /// What is received.
    pub name: &'static str,
    /// Its frequencies.
    pub band: String,
    /// How this can suits it, and how sure the band is.
    pub suits: String,
    /// What to mind; may be empty.
    pub note: &'static str,
}

/// Bands that are only received, with what this can is to each.
#[must_use]
pub fn received(design: &Design) -> Vec<Received> {
    let bands = BANDS.iter().filter(|band| band.receive_only);
    let one = |band: &PublishedBand| Received {
        name: band.name,
        band: format!(
            "{} to {} MHz",
            format_frequency_exact(band.low_khz),
            format_frequency_exact(band.high_khz)
        ),
        suits: format!(
            "This can: {}. The band is {}.",
            this_can(design, band),
            sure(band.confidence)
        ),
        note: band.note,
    };
    bands.map(one).collect()
}

/// Whether the present can is for that band, or has the width for it.
fn this_can(design: &Design, band: &PublishedBand) -> &'static str {
    let (low, high) = (hertz(band.low_khz), hertz(band.high_khz));
    if design.band.low_khz <= band.low_khz && band.high_khz <= design.band.high_khz {
        return "built for it";
    }
    let radius_m = SiDesign::new(design).radius_m;
    if low <= Mode::TE11.cutoff_frequency_hz(radius_m) {
        "too narrow"
    } else if high >= Mode::TM01.cutoff_frequency_hz(radius_m) {
        "too wide"
    } else {
        "its width would do"
    }
}

const fn sure(confidence: Confidence) -> &'static str {
    match confidence {
        Confidence::Seen => "from a published table",
        Confidence::FromMemory => "uncertain: from memory, check it",
        Confidence::Estimated => "uncertain: estimated",
    }
}
