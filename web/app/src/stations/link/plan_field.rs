//! A number of the plan.

use leptos::prelude::*;
use tinwave_core::radio_link::End;
use tinwave_maker::entry::{EntryError, LengthUnit};
use tinwave_maker::link_plan::{PlanNumber, PlanQuantity, PlanRefusal};
use tinwave_words::frame::take_it_as;
use tinwave_words::link_plan as words;

use crate::kit::{Fault, Meant, NumberField};
use crate::state::Workshop;

/// A number of the plan to type. What is good applies at once; while it is not, the last
/// good plan stays in every picture.
#[component]
pub fn PlanField(
    /// Which number.
    number: PlanNumber,
    /// More about the value, below the label.
    #[prop(optional, into)]
    sub: Signal<String>,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (plan, unit) = (workshop.plan(), workshop.unit);
    let quantity = number.quantity();
    let value = move || {
        let unit = unit.get();
        let value = plan.entries.with(|plan| number.value(plan));
        value.map_or_else(String::new, |value| quantity.text(value, unit))
    };
    let take = move |text: String| {
        let unit = unit.get_untracked();
        // The cell's own text is what it stands for, however it was rounded to be shown.
        if text == untrack(value) {
            return Ok(());
        }
        match number.read(&text, unit) {
            Ok(Some(value)) => plan.change(|plan| number.set(plan, value)),
            Ok(None) => plan.change(|plan| number.clear(plan)),
            Err(refusal) => {
                return Err(Fault {
                    sentence: words::refusal(number, &refusal, unit),
                    meant: meant(number, &refusal, unit),
                });
            }
        }
        Ok(())
    };
    let step = move |by: i32| {
        let unit = unit.get_untracked();
        let before = plan.entries.with_untracked(|plan| number.value(plan));
        let next = stepped(number, before.unwrap_or_default(), by, unit);
        plan.change(|plan| number.set(plan, next));
    };
    // Fractions, a minus and other units are typed with the full keyboard.
    let full_keyboard = move || {
        unit.get() == LengthUnit::Inch
            || matches!(
                quantity,
                PlanQuantity::Power | PlanQuantity::Level | PlanQuantity::Gain
            )
            || matches!(
                number,
                PlanNumber::Distance
                    | PlanNumber::Turn
                    | PlanNumber::Snr
                    | PlanNumber::ObstacleHeight(_)
            )
    };
    view! {
        <NumberField label=words::label(number) help=words::help(number) sub value take
            unit=move || quantity.symbol(unit.get()) on_step=step full_keyboard id=field_id(number)/>
    }
}

/// The number without groups of digits, where that is one.
fn meant(number: PlanNumber, refusal: &PlanRefusal, unit: LengthUnit) -> Option<Meant> {
    let PlanRefusal::Entry(
        EntryError::GroupedDigits { suggestion, .. }
        | EntryError::TwoDecimalSigns { suggestion, .. },
    ) = refusal
    else {
        return None;
    };
    number.read(suggestion, unit).ok()?;
    Some(Meant {
        offer: take_it_as(suggestion, ""),
        text: suggestion.clone(),
    })
}

/// The name of a field's cell in the page, for what leads to it.
fn field_id(number: PlanNumber) -> String {
    let raw = format!("plan-{number:?}").to_ascii_lowercase();
    let named = raw.replace(['(', ')'], "-");
    named.trim_end_matches('-').to_owned()
}

/// The next number up or down on a round grid of its size, kept within its range.
fn stepped(number: PlanNumber, before: f64, by: i32, unit: LengthUnit) -> f64 {
    let worth = number.quantity().worth(unit);
    let shown = before / worth;
    let grid = match number {
        PlanNumber::Distance | PlanNumber::ObstacleDistance(_) | PlanNumber::Foliage => {
            let decade = 10_f64.powf(shown.abs().max(1.0).log10().floor());
            (decade / 10.0).max(1.0)
        }
        PlanNumber::WallThickness(_) if unit == LengthUnit::Inch => 0.25,
        PlanNumber::WallThickness(_) => 5.0,
        PlanNumber::Height(_)
        | PlanNumber::ObstacleHeight(_)
        | PlanNumber::Cable(_)
        | PlanNumber::Gain(_) => 0.5,
        PlanNumber::Arm => 0.1,
        PlanNumber::AntennaNoise | PlanNumber::Turn => 5.0,
        PlanNumber::Power(End::A | End::B)
        | PlanNumber::Fade
        | PlanNumber::Width(_)
        | PlanNumber::Pairs(_)
        | PlanNumber::Pointing(_)
        | PlanNumber::Stated(_)
        | PlanNumber::Bandwidth
        | PlanNumber::NoiseFigure
        | PlanNumber::Snr
        | PlanNumber::Other => 1.0,
    };
    let [low, high] = number.range();
    let next = ((shown / grid).round() + f64::from(by)) * grid;
    (next * worth).clamp(low, high)
}

#[cfg(test)]
mod tests {
    use super::{field_id, stepped};
    use tinwave_core::radio_link::End;
    use tinwave_maker::entry::LengthUnit::{Inch, Millimetre};
    use tinwave_maker::link_plan::PlanNumber;

    #[test]
    fn steps_are_round_and_stay_in_the_range() {
        let distance = PlanNumber::Distance;
        assert_eq!(stepped(distance, 300.0, 1, Millimetre), 310.0);
        assert_eq!(stepped(distance, 1.0, -1, Millimetre), 1.0);
        let feet = stepped(distance, 304.8, 1, Inch) / 0.3048;
        assert!((feet - 1_100.0).abs() < 1e-6, "{feet}");
        assert_eq!(stepped(PlanNumber::Pairs(End::A), 0.0, -1, Millimetre), 0.0);
    }

    #[test]
    fn every_number_has_a_name_of_its_own() {
        let names: std::collections::BTreeSet<String> =
            PlanNumber::SINGLE.into_iter().map(field_id).collect();
        assert_eq!(names.len(), PlanNumber::SINGLE.len());
        assert_eq!(field_id(PlanNumber::Power(End::B)), "plan-power-b");
    }
}
