//! The four figures: drill, cut, VSWR, gain.

use leptos::prelude::*;
use tinwave_core::analysis::Analysis;
use tinwave_core::ruler::RulerFigures;
use tinwave_core::verdict::Finding;
use tinwave_maker::entry::{format_decimal, format_length_number};
use tinwave_maker::workpiece::{Cut, Workpiece};
use tinwave_words::can as words;
use tinwave_words::{Shown, why};

use crate::kit::{Figure, FigureState, FigureText, FigureTone, Figures, WhyText};
use crate::state::{Freshness, Workshop};
use crate::worker::TaskState;

/// The wire's length from the face that the connector rests on.
pub(super) fn wire_from_face_um(work: &Workpiece) -> u32 {
    let face = work
        .connector
        .face_from_inner_wall_um(work.design.can.wall_um);
    work.design.probe.length_um.saturating_add(face)
}

/// The figures; none for a can that will not do.
#[component]
pub fn CanFigures() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let answers = workshop.answers;
    let of = |shown| WhyText::from(&why(shown));
    view! {
        <Show when=move || answers.has_cut()>
            <Figures>
                <Figure label=words::drill_at() text=move || drill(workshop)
                    why=of(Shown::HolePosition)/>
                <Figure label=words::cut_the_wire() text=move || wire(workshop)
                    why=of(Shown::WireLength) tone=FigureTone::Copper/>
                <Figure label=words::vswr_at_worst() text=move || vswr(workshop)
                    why=of(Shown::Vswr)/>
                <Figure label=words::gain() text=move || gain(workshop) why=of(Shown::Gain)/>
            </Figures>
        </Show>
    }
    .into_any()
}

/// What a figure waits for, where it waits.
fn waits(workshop: Workshop) -> Option<FigureText> {
    let answers = workshop.answers;
    if answers.freshness.get() != Freshness::Pending {
        return None;
    }
    let refused = answers
        .search_state()
        .with(|state| matches!(state, TaskState::Refused));
    Some(FigureText::waiting(if refused {
        words::not_known()
    } else {
        words::being_worked_out()
    }))
}

/// How sure a cut is: the example's is known for good, and a cut of the maker's own is
/// what it is.
fn cut_state(workshop: Workshop) -> FigureState {
    let follows = workshop.work.with(|work| work.cut == Cut::FollowsBest);
    let estimate = workshop.answers.freshness.get() == Freshness::Estimate;
    if follows && estimate && !workshop.is_example() {
        FigureState::Estimate
    } else {
        FigureState::Plain
    }
}

fn drill(workshop: Workshop) -> FigureText {
    if let Some(waiting) = waits(workshop) {
        return waiting;
    }
    let um = workshop
        .work
        .with(|work| RulerFigures::new(&work.design).hole_from_closed_rim_um);
    length(workshop, um, words::from_closed_rim())
}

fn wire(workshop: Workshop) -> FigureText {
    if let Some(waiting) = waits(workshop) {
        return waiting;
    }
    let um = workshop.work.with(wire_from_face_um);
    length(workshop, um, words::from_connectors_face())
}

fn length(workshop: Workshop, um: u32, note: &str) -> FigureText {
    let unit = workshop.unit.get();
    FigureText {
        state: cut_state(workshop),
        ..FigureText::plain(format_length_number(um, unit), unit.symbol(), note)
    }
}

fn vswr(workshop: Workshop) -> FigureText {
    if let Some(waiting) = waits(workshop) {
        return waiting;
    }
    let answers = workshop.answers;
    let worst = |analysis: &Analysis| {
        analysis
            .match_summary
            .map(|summary| summary.worst_vswr_in_band)
    };
    let Some(own) = answers.analysis.with(|known| worst(known.as_ref()?)) else {
        return FigureText::waiting(words::not_known());
    };
    let is_estimate = answers.freshness.get() == Freshness::Estimate;
    let note = if is_estimate {
        words::estimated()
    } else {
        words::in_the_band()
    };
    FigureText {
        state: state(is_estimate),
        ..FigureText::plain(words::vswr(Some(own)), "", note)
    }
}

const fn state(is_estimate: bool) -> FigureState {
    if is_estimate {
        FigureState::Estimate
    } else {
        FigureState::Plain
    }
}

fn gain(workshop: Workshop) -> FigureText {
    if let Some(waiting) = waits(workshop) {
        return waiting;
    }
    let known = workshop.answers.analysis.get();
    let Some((gain, note, is_estimate)) = known.and_then(|analysis| gain_of(&analysis)) else {
        return FigureText::waiting(words::not_known());
    };
    FigureText {
        state: state(is_estimate),
        ..FigureText::plain(format_decimal(gain, 1), "dBi", note)
    }
}

/// Gain with what stands below it, and whether it is an estimate.
fn gain_of(analysis: &Analysis) -> Option<(f64, String, bool)> {
    if let Some(beam) = &analysis.true_beam {
        let figures = &beam.figures;
        let widths = figures.beamwidth_e_deg.zip(figures.beamwidth_h_deg);
        let note = widths.map_or_else(String::new, |(e, h)| words::beam_widths(e, h));
        return Some((beam.realised_gain_dbi?, note, false));
    }
    let gain = analysis.beam.as_ref()?.realised_gain_dbi?;
    let error = analysis.verdict.iter().find_map(|finding| match finding {
        Finding::BeamOfEndlessPipe { gain_db, .. } => Some(*gain_db),
        _ => None,
    });
    let note = error.map_or_else(
        || words::estimated().to_owned(),
        |error| words::give_or_take(&format_decimal(error, 1), "dB"),
    );
    Some((gain, note, true))
}
