//! If the can feeds a dish: how well, and where it stands.

use leptos::prelude::*;
use tinwave_core::constants::SPEED_OF_LIGHT;
use tinwave_core::dish::{DishEfficiency, FOCAL_RATIOS, dish_gain_dbi};
use tinwave_core::si::hertz;
use tinwave_drawing::chart::{Axis, ChartSpec, Series, Style};
use tinwave_maker::entry::{LengthUnit, format_decimal, format_length_number, parse_permittivity};
use tinwave_protocol::beam::{BeamOverBandFound, FeedDish};
use tinwave_words::beam as words;
use tinwave_words::figures::{db, degrees, distance, hand_length, percent};

use super::band_gain::beam_over_band;
use super::funnel::read_length;
use crate::kit::{Fault, Fold, NumberField, TableFold, TableText, XyChart};
use crate::state::Workshop;
use crate::worker::Task;

/// Diameters that are taken.
const DIAMETERS_UM: (u32, u32) = (100_000, 30_000_000);
/// What holds at first.
const FIRST_UM: u32 = 600_000;
const FIRST_RATIO: f64 = 0.4;

/// The dish in its fold.
#[component]
pub fn DishFold() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let found = beam_over_band(workshop);
    let diameter_um = RwSignal::new(FIRST_UM);
    let ratio = RwSignal::new(FIRST_RATIO);
    let task = Task::<Option<DishEfficiency>>::new();
    Effect::new(move |_| {
        let is_known = found.with(Option::is_some);
        let focal_ratio = ratio.get();
        if is_known {
            let design = workshop.work.with_untracked(|work| work.design.clone());
            task.run(FeedDish {
                design,
                focal_ratio,
            });
        }
    });
    let lit = Memo::new(move |_| task.state().with(|state| state.answer().copied().flatten()));
    let summary = move || {
        found.with(|found| {
            found.as_ref().map_or_else(
                || words::being_worked_out().to_owned(),
                |found| {
                    let best = &found.best_dish;
                    words::dish_summary(best.total, best.focal_ratio)
                },
            )
        })
    };
    let wavelength_m = move || {
        let khz = workshop.work.with(|work| work.design.band.centre_khz());
        SPEED_OF_LIGHT / hertz(khz)
    };
    let said = move || {
        let lit = lit.get()?;
        let dish_m = f64::from(diameter_um.get()) / 1e6;
        let gain = dish_gain_dbi(dish_m, wavelength_m(), lit.total);
        Some(words::dish_found(gain, lit.total))
    };
    let table = move || TableText {
        head: words::table_head(),
        rows: lit.get().map_or_else(Vec::new, |lit| {
            let dish_m = f64::from(diameter_um.get()) / 1e6;
            rows(&lit, dish_m, wavelength_m(), workshop.unit.get())
        }),
    };
    let [title, note, ..] = words::dish_chart();
    view! {
        <Fold title=words::dish_title() summary>
            <DishFields diameter_um ratio/>
            {move || said().map(|said| view! { <p>{said}</p> })}
            <Show when=move || lit.with(Option::is_some)>
                <TableFold name=words::dish_title() table open=true/>
                <p class="note">{words::dish_slide()}</p>
            </Show>
            <XyChart title note spec=move || found.with(|found| chart(found.as_ref()))
                empty=words::being_worked_out()/>
        </Fold>
    }
}

#[component]
fn DishFields(diameter_um: RwSignal<u32>, ratio: RwSignal<f64>) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let unit = workshop.unit;
    let [dish, focal] = words::dish_labels();
    let take_diameter = move |text: String| {
        if let Some(um) = read_length(&text, unit.get_untracked(), DIAMETERS_UM)? {
            diameter_um.set(um);
        }
        Ok(())
    };
    let take_ratio = move |text: String| {
        let read = f64::from(parse_permittivity(&text)?.value) / 1e3;
        if !(FOCAL_RATIOS.0..=FOCAL_RATIOS.1).contains(&read) {
            return Err(Fault::from(words::ratio_range().to_owned()));
        }
        ratio.set(read);
        Ok(())
    };
    view! {
        <NumberField label=dish.0 help=dish.1 take=take_diameter
            value=move || format_length_number(diameter_um.get(), unit.get())
            unit=move || unit.get().symbol() full_keyboard=move || unit.get() == LengthUnit::Inch/>
        <NumberField label=focal.0 help=focal.1 take=take_ratio
            value=move || format_decimal(ratio.get(), 2)/>
    }
}

fn rows(
    lit: &DishEfficiency,
    dish_m: f64,
    wavelength_m: f64,
    unit: LengthUnit,
) -> Vec<Vec<String>> {
    // 70 degrees times wavelength over diameter: common practice, no source.
    let width = 70.0 * wavelength_m / dish_m;
    let values = [
        percent(lit.spillover),
        percent(lit.illumination),
        percent(lit.phase),
        db(lit.edge_taper_on_dish_db),
        degrees(width),
        // IEEE Std 145: the far-field region.
        distance(2.0 * dish_m * dish_m / wavelength_m, unit),
        hand_length(lit.focal_ratio * dish_m, unit),
        words::focus_place(lit.focus_m, unit),
    ];
    words::dish_names()
        .into_iter()
        .zip(values)
        .map(|(name, value)| vec![name.to_owned(), value])
        .collect()
}

fn chart(found: Option<&BeamOverBandFound>) -> ChartSpec {
    let [_, _, ratio, efficiency] = words::dish_chart();
    let dishes = found.map_or(&[][..], |found| &found.dishes);
    let line: Vec<(f64, f64)> = dishes
        .iter()
        .map(|dish| (dish.focal_ratio, 100.0 * dish.total))
        .collect();
    let x = Axis::new(ratio, "", 0.2, 1.2).with_decimals(2);
    let y = Axis::holding(
        efficiency,
        "%",
        line.iter().map(|point| point.1).chain([0.0]),
    )
    .with_decimals(0);
    let mut spec = ChartSpec::new(x, y);
    spec.series = vec![Series::new("", Style::This, line)];
    spec.rest = found.map(|found| found.best_dish.focal_ratio);
    spec
}
