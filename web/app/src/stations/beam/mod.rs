//! The Beam station: gain and widths, what stands at the mouth, patterns, the dish.

pub mod any_cut;
pub mod band_gain;
pub mod dish;
pub mod dish_facts;
pub mod figures;
pub mod funnel;
pub mod funnel_trade;
pub mod mouths;
pub mod round;
pub mod shown;
pub mod side;
#[cfg(test)]
mod tests;

use leptos::prelude::*;
use tinwave_core::grade::Reason;
use tinwave_maker::station::Station;
use tinwave_words::beam as words;
use tinwave_words::{Caution, caution};

use crate::kit::{CautionBlock, StationPage, Waits};
use crate::reactive::memo;
use crate::state::Workshop;
use any_cut::CutFold;
use band_gain::{BandGain, beam_over_band};
use dish::DishFold;
use figures::BeamFigures;
use funnel::FunnelFold;
use mouths::{MouthChoice, MouthSizes, choices};
use round::RoundPart;
use shown::Shown;
use side::SidePart;

/// The Beam station.
#[component]
pub fn BeamStation() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let shown = memo(move || Shown::of(workshop));
    let over_band = beam_over_band(workshop);
    let choices = choices(workshop);
    let answer = move || {
        shown.with(|shown| match shown {
            Shown::Beam(beam) => words::answer(beam.gain_dbi, beam.e.width_deg, beam.h_deg),
            Shown::Pending => words::being_worked_out().to_owned(),
            Shown::None => words::unknown().0.to_owned(),
        })
    };
    let reason = move || {
        shown.with(|shown| match shown {
            Shown::Beam(beam) => words::reason(beam.is_estimate(), beam.e.peak_deg),
            Shown::Pending | Shown::None => String::new(),
        })
    };
    let has_beam = memo(move || shown.with(|shown| !matches!(shown, Shown::None)));
    let answers = workshop.answers;
    // Where no cut is found, what stands at the mouth may be why: then it can be changed.
    let has_mouths = memo(move || {
        let no_cut = |reasons: &[Reason]| reasons.contains(&Reason::NoCut);
        answers.has_cut() || answers.graded.with(|graded| no_cut(&graded.reasons))
    });
    view! {
        <StationPage station=Station::Beam answer reason
            picture=move || view! { <Show when=move || has_beam.get() fallback=NoBeam><SidePart shown/></Show> }
            figures=move || view! { <Show when=move || has_beam.get()><BeamFigures shown/></Show> }
            entries=move || view! {
                <Show when=move || has_mouths.get()>
                    <MouthChoice found=choices/>
                    <MouthSizes/>
                </Show>
                <Show when=move || has_beam.get()>
                    <CautionBlock caution=caution(Caution::PowerNearEyes)/>
                </Show>
            }
            more=move || view! {
                <Show when=move || has_beam.get()>
                    <RoundPart shown/>
                    <BandGain found=over_band/>
                    <div class="folds">
                        <FunnelFold choices/>
                        <DishFold shown found=over_band/>
                        <CutFold shown/>
                    </div>
                </Show>
            }/>
    }
}

/// What the station waits for.
#[component]
fn NoBeam() -> impl IntoView {
    let (title, text) = words::unknown();
    view! {
        <Waits station=Station::Beam title text action=tinwave_words::frame::to_the_can() to=Station::Can/>
    }
}
