//! The can: its size as the maker can measure it, and its metal.

use tinwave_core::design::Band;
use tinwave_core::metal::Metal;
use tinwave_core::one_mode_diameter::one_mode_margins;

use super::live::Named;
use super::markup::{flag, option};
use super::model::{DiameterBy, Model};
use super::said::{self, Place};
use crate::entry;
use crate::words::{self, Occasion};

/// How far the band stays from the cutoffs below and above.
fn margins(model: &Model) -> (f64, f64) {
    let Band { low_khz, high_khz } = model.work.design.band;
    let diameter_m = f64::from(model.work.design.can.inside_diameter_um) / 1e6;
    let margins = one_mode_margins(
        diameter_m,
        f64::from(low_khz) * 1e3,
        f64::from(high_khz) * 1e3,
    );
    (margins.lower, margins.upper)
}

fn summary(model: &Model) -> String {
    let can = &model.work.design.can;
    let modes = match margins(model) {
        (lower, _) if lower <= 0.0 => "not even one mode in the whole band",
        (_, upper) if upper <= 0.0 => "several modes pass",
        _ => "one mode passes",
    };
    [
        &entry::format_length(can.inside_diameter_um, model.unit),
        " inside, ",
        &entry::format_length(can.open_length_um, model.unit),
        " long: ",
        modes,
    ]
    .concat()
}

/// The inside diameter, where another was measured.
fn inside_line(model: &Model) -> String {
    if model.diameter_by == DiameterBy::Inside {
        return String::new();
    }
    let inside = entry::format_length(model.work.design.can.inside_diameter_um, model.unit);
    ["That makes the inside diameter ", &inside, "."].concat()
}

fn percent(share: f64) -> String {
    [&entry::format_decimal(share * 100.0, 1), " %"].concat()
}

/// What the places of this part show.
pub(super) const NAMES: &[Named] = &[
    ("can", summary),
    ("by-inside", |model| {
        flag(model.diameter_by == DiameterBy::Inside)
    }),
    ("by-outside", |model| {
        flag(model.diameter_by == DiameterBy::Outside)
    }),
    ("by-circumference", |model| {
        flag(model.diameter_by == DiameterBy::Circumference)
    }),
    ("metals", |_| metals()),
    ("metal", |model| {
        model.work.design.can.metal.key().to_owned()
    }),
    ("inside-line", inside_line),
    ("can-findings", |model| said::findings(model, Place::Can)),
    ("one-mode", one_mode_text),
    ("room-below", |model| percent(margins(model).0)),
    ("room-above", |model| percent(margins(model).1)),
    ("guide-wavelength", |model| {
        let wave = model
            .analysis
            .as_ref()
            .and_then(|a| a.guide.guide_wavelength_m);
        wave.map_or_else(
            || "cut off".to_owned(),
            |m| entry::format_metres(m, model.unit),
        )
    }),
    ("wall-loss", |model| {
        let loss = model
            .analysis
            .as_ref()
            .and_then(|a| a.guide.attenuation_db_per_m);
        loss.map_or_else(
            || "cut off".to_owned(),
            |db| [&entry::format_decimal(db, 2), " dB/m"].concat(),
        )
    }),
    ("metal-cautions", metal_cautions),
];

fn metals() -> String {
    let mut list = String::new();
    for metal in Metal::ALL {
        option(&mut list, metal.key(), words::metal(metal));
    }
    list
}

fn one_mode_text(model: &Model) -> String {
    let range = model.analysis.as_ref().and_then(|a| a.one_mode_diameters);
    range.map_or_else(
        || "no size: the band is too wide".to_owned(),
        |range| {
            [
                &entry::format_metres(range.low_m, model.unit),
                " and ",
                &entry::format_metres(range.high_m, model.unit),
                " inside",
            ]
            .concat()
        },
    )
}

/// What the chosen metal asks for: only said where it does.
fn metal_cautions(model: &Model) -> String {
    let mut html = String::new();
    for text in words::cautions(Occasion::Solder, model.work.design.can.metal) {
        if matches!(
            text.caution,
            words::Caution::PlatedFumes | words::Caution::Coatings
        ) {
            said::caution(&mut html, &text);
        }
    }
    html
}
