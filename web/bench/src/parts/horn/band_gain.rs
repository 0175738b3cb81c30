//! Gain straight ahead over the band.

use tinwave_core::radiation::CanBeam;
use tinwave_web::entry::{format_decimal, format_frequency};

use super::beams::Beams;
use crate::chart::{Axis, Chart, LineKind, axis_around};
use crate::html::row;
use crate::reply::Reply;

/// What stands where the can can't be computed.
pub(super) const BEYOND: &str = "This can is beyond the full computation: too wide, too long or far from the band in wavelengths. Nothing can be said here.";

/// What the match and the walls take, dB, both positive.
fn losses(beam: &CanBeam) -> Option<(f64, f64)> {
    beam.realised_gain_dbi?;
    let lost = |share: f64| -10.0 * share.log10();
    let figures = &beam.figures;
    Some((lost(figures.accepted_share), lost(figures.radiated_share)))
}

fn gain(beam: &CanBeam) -> f64 {
    beam.realised_gain_dbi.unwrap_or(f64::NAN)
}

/// The frequency with the least gain; the first where the gain is not known.
pub(super) fn least(beams: &Beams) -> Option<&(u32, CanBeam)> {
    let by_gain = |a: &&(u32, CanBeam), b: &&(u32, CanBeam)| gain(&a.1).total_cmp(&gain(&b.1));
    beams.over_band.iter().min_by(by_gain)
}

fn said(beams: &Beams) -> String {
    let Some((khz, beam)) = least(beams) else {
        return BEYOND.to_owned();
    };
    let Some((of_match, of_walls)) = losses(beam) else {
        return "The probe of this design can\u{2019}t be computed, so only the directivity is known."
            .to_owned();
    };
    [
        "Least gain in the band, match and wall loss included: ",
        &format_decimal(gain(beam), 1),
        " dBi at ",
        &format_frequency(*khz),
        ". There the match takes ",
        &format_decimal(of_match, 2),
        " dB and the walls ",
        &format_decimal(of_walls, 2),
        " dB.",
    ]
    .concat()
}

fn chart(beams: &Beams, description: String) -> Option<String> {
    let line = |of: fn(&CanBeam) -> f64| {
        let points = beams.over_band.iter();
        points
            .map(|(khz, beam)| (f64::from(*khz) / 1e3, of(beam)))
            .collect::<Vec<_>>()
    };
    let gains = line(gain);
    let ideal = line(|beam| beam.figures.directivity_dbi);
    let matched = line(|beam| {
        let walls = losses(beam).map_or(f64::NAN, |(_, walls)| walls);
        beam.figures.directivity_dbi - walls
    });
    let levels = gains.iter().chain(&ideal).map(|point| point.1);
    let (first, last) = (gains.first()?.0, gains.last()?.0);
    let chart = Chart {
        id: "horn-gain",
        title: "Gain straight ahead over the band".to_owned(),
        description,
        x: Axis {
            low: first,
            high: last,
            title: "MHz".to_owned(),
        },
        y: axis_around(
            levels,
            2.0,
            "dBi: full gain, dotted if matched, dashed directivity".to_owned(),
        ),
        lines: vec![
            (LineKind::Other, ideal),
            (LineKind::Limit, matched),
            (LineKind::Main, gains),
        ],
        shaded: None,
        choices: Vec::new(),
    };
    Some(chart.to_svg())
}

/// Edges, centre and the worst frequency.
fn table(beams: &Beams) -> String {
    let all = &beams.over_band;
    let wanted = [all.first(), least(beams), beams.centre(), all.last()];
    let mut rows: Vec<_> = wanted.into_iter().flatten().collect();
    rows.sort_by_key(|(khz, _)| *khz);
    rows.dedup_by_key(|(khz, _)| *khz);
    let mut markup = String::from(
        "<table class=\"sizes\"><thead><tr><th scope=\"col\">Frequency</th><th scope=\"col\">Directivity</th><th scope=\"col\">Lost by match</th><th scope=\"col\">Lost in walls</th><th scope=\"col\">Gain</th></tr></thead><tbody>",
    );
    for (khz, beam) in rows {
        let level =
            |value: f64, digits: u8, unit: &str| [&format_decimal(value, digits), unit].concat();
        let (of_match, of_walls) = losses(beam).unwrap_or((f64::NAN, f64::NAN));
        markup.push_str(&row(&[
            &format_frequency(*khz),
            &level(beam.figures.directivity_dbi, 1, " dBi"),
            &level(of_match, 2, " dB"),
            &level(of_walls, 2, " dB"),
            &level(gain(beam), 1, " dBi"),
        ]));
    }
    markup.push_str("</tbody></table>");
    markup
}

/// Shows the chart, or says why there is none.
pub(super) fn show(beams: Option<&Beams>, reply: &mut Reply) {
    let said = beams.map_or_else(|| BEYOND.to_owned(), said);
    let chart = beams.and_then(|beams| chart(beams, said.clone()));
    reply.place("gain-chart", chart.unwrap_or_default());
    reply.show("gain-table", beams.is_some());
    reply.place("gain-table", beams.map(table).unwrap_or_default());
    reply.text("gain-says", &said);
}
