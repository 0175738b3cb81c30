//! The beam.

use leptos::prelude::*;
use tinwave_core::beam::{Beam, endless_pipe_uncertainty};
use tinwave_core::si::SiDesign;

use super::parts::{Place, findings, results, row, section};
use super::state::{Now, Page};
use crate::entry;
use crate::words::Shown;

fn beam<'a>(now: &Now<'a>) -> Option<&'a Beam> {
    now.analysis?.beam.as_ref()
}

fn or_none(text: Option<String>) -> String {
    text.unwrap_or_else(|| "not computed".to_owned())
}

/// The spread of gain (dB) and widths (degrees) of a finite can.
fn spread(now: &Now<'_>) -> (f64, f64) {
    let si = SiDesign::new(&now.work.design);
    endless_pipe_uncertainty(&si, si.centre_hz())
}

fn give_or_take(value: f64, spread: f64, unit: &str) -> String {
    [
        &entry::format_decimal(value, 1),
        " \u{b1} ",
        &entry::format_decimal(spread, 1),
        unit,
    ]
    .concat()
}

fn degrees(value: f64, spread: f64) -> String {
    [
        &entry::format_decimal(value, 0),
        "\u{b0} \u{b1} ",
        &entry::format_decimal(spread, 0),
        "\u{b0}",
    ]
    .concat()
}

fn summary(now: &Now<'_>) -> String {
    or_none(beam(now).map(|beam| {
        [
            &entry::format_decimal(beam.directivity_dbi, 1),
            " dBi, ",
            &entry::format_decimal(beam.beamwidth_e_deg, 0),
            "\u{b0} by ",
            &entry::format_decimal(beam.beamwidth_h_deg, 0),
            "\u{b0} wide",
        ]
        .concat()
    }))
}

/// The section.
pub(super) fn beam_section(page: Page) -> AnyView {
    section(
        page,
        "beam",
        "5 Beam",
        true,
        summary,
        vec![
            results(vec![
                row(
                    page,
                    "Directivity on the axis",
                    |now| {
                        or_none(
                            beam(now).map(|beam| {
                                give_or_take(beam.directivity_dbi, spread(now).0, " dBi")
                            }),
                        )
                    },
                    Shown::Gain,
                ),
                row(
                    page,
                    "Gain with mismatch and wall loss",
                    |now| {
                        or_none(
                            beam(now)
                                .and_then(|beam| beam.realised_gain_dbi)
                                .map(|gain| give_or_take(gain, spread(now).0, " dBi")),
                        )
                    },
                    Shown::Gain,
                ),
                row(
                    page,
                    "Half-power width, along the wire (E plane)",
                    |now| {
                        or_none(beam(now).map(|beam| degrees(beam.beamwidth_e_deg, spread(now).1)))
                    },
                    Shown::Beamwidth,
                ),
                row(
                    page,
                    "Half-power width, across the wire (H plane)",
                    |now| {
                        or_none(beam(now).map(|beam| degrees(beam.beamwidth_h_deg, spread(now).1)))
                    },
                    Shown::Beamwidth,
                ),
                row(
                    page,
                    "Front over back",
                    |now| {
                        or_none(beam(now).map(|beam| {
                            [&entry::format_decimal(beam.front_to_back_db, 0), " dB"].concat()
                        }))
                    },
                    Shown::FrontToBack,
                ),
            ]),
            findings(page, Place::Beam),
        ],
    )
}
