//! The beam.

use tinwave_core::beam::{Beam, endless_pipe_uncertainty};
use tinwave_core::si::SiDesign;

use super::live::Named;
use super::model::Model;
use super::said::{self, Place};
use crate::entry;

fn beam(model: &Model) -> Option<Beam> {
    model.analysis.as_ref()?.beam
}

fn or_not(text: Option<String>) -> String {
    text.unwrap_or_else(|| "not computed".to_owned())
}

/// The spread of gain (dB) and widths (degrees) of a finite can.
fn spread(model: &Model) -> (f64, f64) {
    let si = SiDesign::new(&model.work.design);
    endless_pipe_uncertainty(&si, si.centre_hz())
}

fn gain_text(model: &Model, gain: Option<f64>) -> String {
    or_not(gain.map(|gain| {
        [
            &entry::format_decimal(gain, 1),
            " \u{b1} ",
            &entry::format_decimal(spread(model).0, 1),
            " dBi",
        ]
        .concat()
    }))
}

fn width_text(model: &Model, width: Option<f64>) -> String {
    or_not(width.map(|width| {
        [
            &entry::format_decimal(width, 0),
            "\u{b0} \u{b1} ",
            &entry::format_decimal(spread(model).1, 0),
            "\u{b0}",
        ]
        .concat()
    }))
}

fn summary(model: &Model) -> String {
    or_not(beam(model).map(|beam| {
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

/// What the open mouth sends back, as a share of the power.
fn mouth(model: &Model) -> String {
    or_not(beam(model).map(|beam| {
        let share = beam.mouth_reflection.norm_sqr();
        [&entry::format_decimal(share * 100.0, 1), " % of the power"].concat()
    }))
}

/// What the places of this part show.
pub(super) const NAMES: &[Named] = &[
    ("beam", summary),
    ("directivity", |model| {
        gain_text(model, beam(model).map(|beam| beam.directivity_dbi))
    }),
    ("gain", |model| {
        gain_text(model, beam(model).and_then(|beam| beam.realised_gain_dbi))
    }),
    ("width-e", |model| {
        width_text(model, beam(model).map(|beam| beam.beamwidth_e_deg))
    }),
    ("width-h", |model| {
        width_text(model, beam(model).map(|beam| beam.beamwidth_h_deg))
    }),
    ("front-to-back", |model| {
        or_not(
            beam(model)
                .map(|beam| [&entry::format_decimal(beam.front_to_back_db, 0), " dB"].concat()),
        )
    }),
    ("mouth", mouth),
    ("beam-findings", |model| said::findings(model, Place::Beam)),
];
