//! If the can feeds a dish: how well, and where it stands.

use leptos::prelude::*;
use tinwave_core::constants::SPEED_OF_LIGHT;
use tinwave_core::dish::{DishEfficiency, FOCAL_RATIOS};
use tinwave_core::si::hertz;
use tinwave_drawing::chart::{Axis, ChartSpec, Series, Style};
use tinwave_maker::entry::{LengthUnit, format_decimal, format_length_number, parse_permittivity};
use tinwave_protocol::beam::{BeamOverBandFound, FeedDish};
use tinwave_words::beam as words;

use super::dish_facts::{DishFacts, rows};
use super::funnel::read_length;
use super::shown::Shown;
use crate::kit::{Fault, Fold, NumberField, TableFold, TableText, XyChart};
use crate::reactive::{effect, memo};
use crate::state::Workshop;
use crate::worker::Task;

/// Diameters and depths that are taken.
const DIAMETERS_UM: (u32, u32) = (100_000, 30_000_000);
const DEPTHS_UM: (u32, u32) = (1_000, 10_000_000);
/// What holds at first.
const FIRST_UM: u32 = 600_000;
const FIRST_RATIO: f64 = 0.4;

/// The dish in its fold.
#[component]
pub fn DishFold(
    /// What is known of the beam.
    shown: Memo<Shown>,
    /// The beam over the band, and the can as a feed.
    found: Memo<Option<BeamOverBandFound>>,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let diameter_um = RwSignal::new(FIRST_UM);
    let ratio = RwSignal::new(FIRST_RATIO);
    let task = Task::<Option<DishEfficiency>>::new();
    effect(move || {
        let is_known = found.with(Option::is_some);
        let focal_ratio = ratio.get();
        if is_known {
            let design = workshop.work.with_untracked(|work| work.design.clone());
            task.run(FeedDish {
                design,
                focal_ratio,
            });
        } else {
            task.clear();
        }
    });
    let facts = memo(move || {
        let lit = task
            .state()
            .with(|state| state.answer().copied().flatten())?;
        shown.with(|shown| {
            let beam = shown.beam()?;
            let diameter_um = diameter_um.get();
            Some(workshop.work.with(|work| DishFacts {
                lit,
                diameter_um,
                wavelength_m: SPEED_OF_LIGHT / hertz(work.design.band.centre_khz()),
                lost_db: beam.directivity_dbi - beam.gain_dbi,
                leans_deg: beam.e.peak_deg,
                can_um: work.design.can.inside_diameter_um,
                mouth: work.design.mouth,
            }))
        })
    });
    let summary = move || {
        facts.with(|facts| {
            facts.as_ref().map_or_else(
                || words::being_worked_out().to_owned(),
                |facts| {
                    let lit = &facts.lit;
                    let unit = workshop.unit.get();
                    let gain = facts.gain_dbi();
                    words::dish_summary(gain, facts.diameter_um, lit.focal_ratio, lit.total, unit)
                },
            )
        })
    };
    let table = move || TableText {
        head: words::table_head(),
        rows: facts.with(|facts| {
            facts
                .as_ref()
                .map_or_else(Vec::new, |facts| rows(facts, workshop.unit.get()))
        }),
    };
    let [title, note, ..] = words::dish_chart();
    view! {
        <Fold title=words::dish_title() summary>
            <DishFields diameter_um ratio/>
            <Said facts found/>
            <Show when=move || facts.with(Option::is_some)>
                <TableFold name=words::dish_title() table=Signal::derive(table) open=true/>
                <p class="note">{words::dish_slide()}</p>
            </Show>
            <XyChart title note spec=move || found.with(|found| chart(found.as_ref()))
                empty=words::being_worked_out()/>
        </Fold>
    }
}

/// What the dish gives, which dish would be best, and what makes the figures rough.
#[component]
fn Said(facts: Memo<Option<DishFacts>>, found: Memo<Option<BeamOverBandFound>>) -> impl IntoView {
    let sentences = move || {
        let mut said: Vec<String> = facts.with(|facts| {
            facts.as_ref().map_or_else(Vec::new, |facts| {
                let gives = words::dish_found(facts.gain_dbi(), facts.lit.total);
                let doubts = facts.doubts().into_iter().map(words::dish_doubt);
                std::iter::once(gives).chain(doubts).collect()
            })
        });
        let best = found.with(|found| found.as_ref().map(|found| found.best_dish));
        said.extend(best.map(|best| words::dish_best(best.focal_ratio, best.total)));
        said
    };
    move || {
        sentences()
            .into_iter()
            .map(|said| view! { <p>{said}</p> })
            .collect_view()
    }
}

#[component]
fn DishFields(diameter_um: RwSignal<u32>, ratio: RwSignal<f64>) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let unit = workshop.unit;
    let [dish, focal, depth] = words::dish_labels();
    let in_range = |ratio: f64| (FOCAL_RATIOS.0..=FOCAL_RATIOS.1).contains(&ratio);
    let set_ratio = move |read: f64| {
        if !in_range(read) {
            return Err(Fault::from(words::ratio_range().to_owned()));
        }
        ratio.set(read);
        Ok(())
    };
    let take_diameter = move |text: String| {
        if let Some(um) = read_length(&text, unit.get_untracked(), DIAMETERS_UM)? {
            diameter_um.set(um);
        }
        Ok(())
    };
    let take_ratio =
        move |text: String| set_ratio(f64::from(parse_permittivity(&text)?.value) / 1e3);
    let take_depth = move |text: String| match read_length(&text, unit.get_untracked(), DEPTHS_UM)?
    {
        Some(um) => set_ratio(by_depth(
            f64::from(diameter_um.get_untracked()),
            f64::from(um),
        )),
        None => Ok(()),
    };
    let depth_text = move || {
        let um = by_depth(f64::from(diameter_um.get()), ratio.get()).round() as u32;
        format_length_number(um, unit.get())
    };
    let full_keyboard = move || unit.get() == LengthUnit::Inch;
    view! {
        <NumberField label=dish.0 help=dish.1 take=take_diameter
            value=move || format_length_number(diameter_um.get(), unit.get())
            unit=move || unit.get().symbol() full_keyboard/>
        <NumberField label=focal.0 help=focal.1 take=take_ratio
            value=move || format_decimal(ratio.get(), 2)/>
        <NumberField label=depth.0 help=depth.1 take=take_depth value=depth_text
            unit=move || unit.get().symbol() full_keyboard/>
    }
}

/// Focal ratio of a dish by its depth, or its depth by that: a paraboloid's focal length
/// is the diameter squared over 16 times its depth.
fn by_depth(diameter: f64, other: f64) -> f64 {
    diameter / (16.0 * other)
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

#[cfg(test)]
mod tests {
    use super::by_depth;

    #[test]
    fn depth_and_focal_ratio_say_the_same() {
        // f = D²/(16 depth): 600 mm across and 93.75 mm deep has f/D 0.4.
        assert!((by_depth(600.0, 93.75) - 0.4).abs() < 1e-12);
        assert!((by_depth(600_000.0, 0.4) - 93_750.0).abs() < 1e-9);
    }
}
