//! The Beam station: gain and widths, what stands at the mouth, patterns, the dish.

pub mod band_gain;
pub mod dish;
pub mod figures;
pub mod funnel;
pub mod funnel_trade;
pub mod mouths;
pub mod round;
pub mod shown;
pub mod side;

use leptos::prelude::*;
use tinwave_maker::station::Station;
use tinwave_words::beam as words;

use crate::kit::{StationPage, Waits};
use crate::state::Workshop;
use band_gain::BandGain;
use dish::DishFold;
use figures::BeamFigures;
use funnel::FunnelFold;
use mouths::{MouthChoice, MouthSizes};
use round::RoundPart;
use shown::Shown;
use side::SidePart;

/// The Beam station.
#[component]
pub fn BeamStation() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let shown = Memo::new(move |_| Shown::of(workshop));
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
    let has_beam = Memo::new(move |_| shown.with(|shown| !matches!(shown, Shown::None)));
    view! {
        <StationPage station=Station::Beam answer reason
            picture=move || view! { <Show when=move || has_beam.get() fallback=NoBeam><SidePart shown/></Show> }
            figures=move || view! { <Show when=move || has_beam.get()><BeamFigures shown/></Show> }
            entries=move || view! { <MouthChoice/> <MouthSizes/> }
            more=move || view! {
                <Show when=move || has_beam.get()>
                    <RoundPart shown/>
                    <BandGain/>
                    <div class="folds"><FunnelFold/><DishFold/></div>
                </Show>
            }/>
    }
}

/// What the station waits for.
#[component]
fn NoBeam() -> impl IntoView {
    let (title, text) = words::unknown();
    view! {
        <Waits station=Station::Beam title text action=tinwave_words::frame::station(Station::Can) to=Station::Can/>
    }
}
