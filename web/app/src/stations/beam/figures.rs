//! Gain, widths, spot, front to back.

use std::f64::consts::PI;

use leptos::prelude::*;
use tinwave_maker::entry::format_decimal;
use tinwave_words::beam as words;
use tinwave_words::figures::{distance, distance_parts, entered_distance};

use super::shown::{KnownBeam, Shown};
use crate::kit::{Figure, FigureState, FigureText, Figures, WhyText};
use crate::state::Workshop;

/// Widest beam that still has a spot.
const WIDEST_DEG: f64 = 170.0;

/// The four figures.
#[component]
pub fn BeamFigures(
    /// What is known of the beam.
    shown: Memo<Shown>,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let texts: [fn(Workshop, &KnownBeam) -> FigureText; 4] = [gain, widths, spot, back];
    let figures = words::figure_labels()
        .into_iter()
        .zip(words::whys())
        .zip(texts)
        .map(|((label, (how, sure, source)), text)| {
            let why = WhyText {
                how: how.to_owned(),
                sure: sure.to_owned(),
                source: source.to_owned(),
            };
            let text = move || {
                shown.with(|shown| match shown.beam() {
                    Some(beam) => marked(beam, text(workshop, beam)),
                    None => FigureText::waiting(words::being_worked_out()),
                })
            };
            view! { <Figure label text why/> }
        })
        .collect_view();
    view! { <Figures>{figures}</Figures> }
}

fn marked(beam: &KnownBeam, mut text: FigureText) -> FigureText {
    if beam.is_estimate() {
        text.state = FigureState::Estimate;
    }
    text
}

fn gain(_: Workshop, beam: &KnownBeam) -> FigureText {
    let note = words::gain_note(beam.directivity_dbi, beam.is_estimate());
    FigureText::plain(format_decimal(beam.gain_dbi, 1), "dBi", note)
}

fn widths(_: Workshop, beam: &KnownBeam) -> FigureText {
    let value = words::width_figure(beam.e.width_deg, beam.h_deg);
    FigureText::plain(value, "", words::width_note())
}

/// Between the half-power edges at the distance of the link, the wire upright.
fn spot(workshop: Workshop, beam: &KnownBeam) -> FigureText {
    let unit = workshop.unit.get();
    let metres = workshop.plan().entries.with(|plan| plan.distance_m);
    let high = spot_m(metres, beam.e.width_deg).map(|high| distance(high, unit));
    let note = words::spot_note(&entered_distance(metres, unit), high.as_deref());
    match spot_m(metres, beam.h_deg) {
        Some(wide) => {
            let (value, symbol) = distance_parts(wide, unit);
            FigureText::plain(value, symbol, note)
        }
        None => FigureText::plain("–", "", words::no_edge()),
    }
}

fn back(_: Workshop, beam: &KnownBeam) -> FigureText {
    FigureText::plain(
        format_decimal(beam.front_to_back_db, 0),
        "dB",
        words::rough(),
    )
}

/// Between the half-power edges, straight across, at a distance; `None` where the beam
/// has no edges that stand in its way.
pub fn spot_m(metres: f64, width_deg: Option<f64>) -> Option<f64> {
    let width = width_deg.filter(|width| *width <= WIDEST_DEG)?;
    Some(2.0 * metres * (width * PI / 360.0).tan())
}

#[cfg(test)]
mod tests {
    use super::spot_m;

    #[test]
    fn the_spot_is_twice_the_tangent_of_half_the_width() {
        // 2 tan 30 degrees is 1.154 701 (any table of the tangent).
        let spot = spot_m(300.0, Some(60.0));
        assert!(spot.is_some_and(|spot| (spot - 346.410).abs() < 1e-2));
        assert_eq!(spot_m(300.0, Some(175.0)), None);
        assert_eq!(spot_m(300.0, None), None);
    }
}
