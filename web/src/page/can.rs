//! The can: its size as the maker can measure it, and its metal.

use leptos::prelude::*;
use tinwave_core::design::Band;
use tinwave_core::metal::Metal;
use tinwave_core::one_mode_diameter::one_mode_margins;

use super::cautions;
use super::entries::Entry;
use super::entry_field::entry_field;
use super::parts::{Place, choice, fields, findings, option_html, radios, results, row, section};
use super::state::{DiameterBy, Now, Page};
use crate::entry;
use crate::history::Change;
use crate::words::{self, Occasion, Shown};
use tinwave_core::design_error::Field;

fn margins(now: &Now<'_>) -> (f64, f64) {
    let Band { low_khz, high_khz } = now.work.design.band;
    let diameter_m = f64::from(now.work.design.can.inside_diameter_um) / 1e6;
    let margins = one_mode_margins(
        diameter_m,
        f64::from(low_khz) * 1e3,
        f64::from(high_khz) * 1e3,
    );
    (margins.lower, margins.upper)
}

fn summary(now: &Now<'_>) -> String {
    let can = &now.work.design.can;
    let modes = match margins(now) {
        (lower, _) if lower <= 0.0 => "no mode passes in the whole band",
        (_, upper) if upper <= 0.0 => "several modes pass",
        _ => "one mode passes",
    };
    [
        &entry::format_length(can.inside_diameter_um, now.unit),
        " inside, ",
        &entry::format_length(can.open_length_um, now.unit),
        " long: ",
        modes,
    ]
    .concat()
}

/// Which entry states the diameter.
fn diameter_entry(page: Page) -> AnyView {
    (move || {
        let entry = match page.diameter_by.get() {
            DiameterBy::Inside => Entry::Plain(Field::InsideDiameter),
            DiameterBy::Outside => Entry::OutsideDiameter,
            DiameterBy::Circumference => Entry::Circumference,
        };
        entry_field(page, entry, true)
    })
    .into_any()
}

fn inside_line(now: &Now<'_>) -> String {
    [
        "Inside diameter: ",
        &entry::format_length(now.work.design.can.inside_diameter_um, now.unit),
        ".",
    ]
    .concat()
}

fn percent(share: f64) -> String {
    [&entry::format_decimal(share * 100.0, 1), " %"].concat()
}

/// The section.
pub(super) fn can_section(page: Page) -> AnyView {
    let mut metals = String::new();
    for metal in Metal::ALL {
        option_html(&mut metals, metal.key(), words::metal(metal));
    }
    let metal = choice(
        "metal",
        "Metal",
        metals,
        page.text(|now| now.work.design.can.metal.key().to_owned()),
        Box::new(move |key| {
            if let Some(metal) = Metal::from_key(&key) {
                let mut work = page.work.get_untracked();
                work.design.can.metal = metal;
                page.put(work, Change::Metal);
                page.commit();
            }
        }),
    );
    let measured_elsewhere = move || {
        (page.diameter_by.get() != DiameterBy::Inside)
            .then(|| super::parts::live_paragraph("note", page.text(inside_line)))
    };
    let figures = results(vec![
        row(
            page,
            "Carries one mode between",
            one_mode_text,
            Shown::OneModeDiameters,
        ),
        row(
            page,
            "Room below the band",
            |now| percent(margins(now).0),
            Shown::Cutoff,
        ),
        row(
            page,
            "Room above the band",
            |now| percent(margins(now).1),
            Shown::Cutoff,
        ),
        row(
            page,
            "Guide wavelength, band centre",
            |now| {
                now.analysis
                    .and_then(|analysis| analysis.guide.guide_wavelength_m)
                    .map_or_else(
                        || "cut off".to_owned(),
                        |m| entry::format_metres(m, now.unit),
                    )
            },
            Shown::GuideWavelength,
        ),
        row(
            page,
            "Wall loss",
            |now| {
                now.analysis
                    .and_then(|analysis| analysis.guide.attenuation_db_per_m)
                    .map_or_else(
                        || "cut off".to_owned(),
                        |db| [&entry::format_decimal(db, 2), " dB/m"].concat(),
                    )
            },
            Shown::WallLoss,
        ),
    ]);
    section(
        page,
        "can",
        "1 Can",
        true,
        summary,
        vec![
            radios(
                "diameter-by",
                "How did you measure its width?",
                &[
                    ("Inside", DiameterBy::Inside),
                    ("Outside", DiameterBy::Outside),
                    ("Paper strip round it", DiameterBy::Circumference),
                ],
                page.diameter_by.into(),
                |page, by| page.diameter_by.set(by),
                page,
            ),
            fields(vec![
                diameter_entry(page),
                entry_field(page, Entry::Plain(Field::Wall), true),
                entry_field(page, Entry::Plain(Field::OpenLength), true),
                entry_field(page, Entry::Plain(Field::BaseRecess), true),
                metal,
            ]),
            measured_elsewhere.into_any(),
            findings(page, Place::Can),
            figures,
            metal_cautions(page),
        ],
    )
}

fn one_mode_text(now: &Now<'_>) -> String {
    now.analysis
        .and_then(|analysis| analysis.one_mode_diameters)
        .map_or_else(
            || "no size: the band is too wide".to_owned(),
            |range| {
                [
                    &entry::format_metres(range.low_m, now.unit),
                    " and ",
                    &entry::format_metres(range.high_m, now.unit),
                    " inside",
                ]
                .concat()
            },
        )
}

/// What the chosen metal asks for: only said where it does.
fn metal_cautions(page: Page) -> AnyView {
    let metal = Memo::new(move |_| page.work.with(|work| work.design.can.metal));
    (move || {
        let metal = metal.get();
        let list: Vec<AnyView> = words::cautions(Occasion::Solder, metal)
            .iter()
            .filter(|text| {
                matches!(
                    text.caution,
                    words::Caution::PlatedFumes | words::Caution::Coatings
                )
            })
            .map(cautions::caution)
            .collect();
        (!list.is_empty()).then(|| view! { <ul class="cautions">{list}</ul> }.into_any())
    })
    .into_any()
}
