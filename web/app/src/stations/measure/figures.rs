//! The station's four figures.

use leptos::prelude::*;
use tinwave_core::diagnosis::{Advice, Remedy};
use tinwave_maker::entry::{LengthUnit, format_decimal, format_hertz, format_length_number};
use tinwave_words::measure as words;

use super::take_off::{after_cut, offered};
use crate::kit::{Figure, FigureText, FigureTone, Figures, WhyText};
use crate::reactive::memo;
use crate::state::Workshop;

/// What is to come off and what that does; where nothing is to come off, what was
/// measured beside what is predicted.
#[component]
pub fn MeasureFigures() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let has_measured = memo(move || workshop.measuring().measured.with(Option::is_some));
    let cuts = memo(move || trim_of(workshop.measuring().advice().as_ref()).is_some());
    move || match (has_measured.get(), cuts.get()) {
        (false, _) => ().into_any(),
        (true, true) => view! { <OfTheCut/> }.into_any(),
        (true, false) => view! { <OfTheMatch/> }.into_any(),
    }
}

/// All that should come off, the safe step, and the VSWR to expect after all.
pub(super) fn trim_of(advice: Option<&Advice>) -> Option<(u32, u32, f64)> {
    let mut remedies = advice?.remedies.iter();
    remedies.find_map(|(remedy, vswr)| match remedy {
        Remedy::Trim { whole_um, safe_um } => Some((*whole_um, *safe_um, *vswr)),
        _ => None,
    })
}

fn why((how, sure, source): (&'static str, &'static str, &'static str)) -> WhyText {
    WhyText {
        how: how.into(),
        sure: sure.into(),
        source: source.into(),
    }
}

fn length(um: u32, unit: LengthUnit, note: &str) -> FigureText {
    FigureText::plain(format_length_number(um, unit), unit.symbol(), note)
}

#[component]
fn OfTheCut() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let unit = workshop.unit;
    let advice = memo(move || workshop.measuring().advice());
    let trim = move || advice.with(|advice| trim_of(advice.as_ref()));
    let step = move || trim().map_or(0, |(_, safe, _)| offered(safe, unit.get()));
    let after_step = memo(move || after_cut(workshop, step()));
    let vswr_step = move || {
        let now = advice.with(|advice| advice.as_ref().and_then(|advice| advice.worst_vswr_now));
        match after_step.get() {
            Some(vswr) => FigureText::plain(words::vswr(vswr), "", words::at_worst_now(now)),
            None => FigureText::waiting(words::not_known()),
        }
    };
    let vswr_all = move || {
        let vswr = trim().map_or(f64::NAN, |(_, _, vswr)| vswr);
        FigureText::plain(words::vswr(vswr), "", words::at_worst_expected())
    };
    let whole = move || {
        length(
            trim().map_or(0, |(whole, ..)| whole),
            unit.get(),
            words::should_come_off(),
        )
    };
    view! {
        <Figures>
            <Figure label=words::file_off_now() tone=FigureTone::Copper
                text=move || length(step(), unit.get(), words::then_measure_again())
                why=why(words::why_cut())/>
            <Figure label=words::in_all() text=whole why=why(words::why_cut())/>
            <Figure label=move || words::vswr_after_step(step(), unit.get()) text=vswr_step
                why=why(words::why_expected())/>
            <Figure label=words::vswr_after_all() text=vswr_all why=why(words::why_expected())/>
        </Figures>
    }
}

#[component]
fn OfTheMatch() -> impl IntoView {
    let measuring = expect_context::<Workshop>().measuring();
    let measured = memo(move || measuring.measured_figures());
    let predicted = memo(move || measuring.predicted_figures());
    // Both at worst in the band, or both where it was measured.
    let at_worst = move || measured.with(|figures| figures.worst_in_band);
    let vswr_measured = move || match (at_worst(), measured.with(|figures| figures.best)) {
        (Some(worst), _) => FigureText::plain(words::vswr(worst), "", words::at_worst_in_band()),
        (None, Some((hz, vswr))) => {
            FigureText::plain(words::vswr(vswr), "", words::where_measured(hz))
        }
        (None, None) => FigureText::waiting(words::not_known()),
    };
    let vswr_predicted = move || {
        let best = measured.with(|figures| figures.best);
        let there = best.and_then(|(hz, _)| {
            let vswr = measuring
                .predicted
                .with(|curve| super::answer::predicted_at(curve, hz))?;
            Some((vswr, words::where_measured(hz)))
        });
        let worst = predicted.with(|figures| figures.worst_in_band);
        match (at_worst(), worst, there) {
            (Some(_), Some(worst), _) => {
                FigureText::plain(words::vswr(worst), "", words::at_worst_in_band())
            }
            (None, _, Some((vswr, note))) => FigureText::plain(words::vswr(vswr), "", note),
            _ => FigureText::waiting(words::not_known()),
        }
    };
    let best = |figures: Option<(f64, f64)>| match figures {
        Some((hz, vswr)) => {
            let text = format_hertz(hz);
            let (value, unit) = text.split_once(' ').unwrap_or((text.as_str(), ""));
            FigureText::plain(value, unit, words::vswr_there(vswr))
        }
        None => FigureText::waiting(words::not_known()),
    };
    view! {
        <Figures>
            <Figure label=words::figure_measured() text=vswr_measured why=why(words::why_measured())/>
            <Figure label=words::figure_predicted() text=vswr_predicted why=why(words::why_predicted())/>
            <Figure label=words::figure_best_measured() text=move || best(measured.with(|f| f.best))
                why=why(words::why_measured())/>
            <Figure label=words::figure_best_predicted() text=move || best(predicted.with(|f| f.best))
                why=why(words::why_predicted())/>
        </Figures>
    }
}

/// A VSWR for the log.
pub(super) fn milli(vswr: f64) -> Option<u32> {
    format_decimal(vswr * 1e3, 0).parse().ok()
}
