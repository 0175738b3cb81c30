//! A number of the design.

use leptos::prelude::*;
use tinwave_core::design_error::{DesignError, Field};
use tinwave_maker::entry::{
    LengthUnit, Quantity, field_text, format_length_number, likely_meaning, parse_field, quantity,
    unit_symbol,
};
use tinwave_maker::history::Change;
use tinwave_maker::workpiece::{Cut, Workpiece};
use tinwave_words::frame as words;

use super::{EntryRow, EntryState, Fault, Meant, Was};
use crate::reactive::memo;
use crate::state::Workshop;

/// The name of a field's cell in the page, for what leads to it.
#[must_use]
pub fn field_id(field: Field) -> String {
    format!("field-{field:?}").to_ascii_lowercase()
}

/// A number of the design. What is typed applies at once when it is good; while it is
/// not, the last good design stays in every picture.
///
/// ```ignore
/// view! { <DesignField field=Field::OpenLength label="Length inside" help="From the back wall …"/> }
/// ```
#[component]
pub fn DesignField(
    /// Which number.
    field: Field,
    /// What it is.
    #[prop(into)]
    label: Signal<String>,
    /// How to measure or choose it, in one sentence.
    #[prop(optional, into)]
    help: Signal<String>,
    /// More about the value, below the label.
    #[prop(optional, into)]
    sub: Signal<String>,
    /// What stands where the design leaves the number to a rule (the hole).
    #[prop(optional, into)]
    by_rule: Signal<Option<i64>>,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let unit = workshop.unit;
    let rounded = RwSignal::new(String::new());
    let number = move || {
        workshop
            .work
            .with(|work| work.field(field))
            .or_else(|| by_rule.get())
    };
    let value = move || {
        number().map_or_else(String::new, |value| {
            shown(field, value, unit.get(), workshop)
        })
    };
    let take = move |text: String| {
        let unit = unit.get_untracked();
        // A key costs two copies of the work: this one, which becomes the history's, and the
        // present work's.
        let (work, said) = read(field, &text, unit, workshop.work.get_untracked())?;
        rounded.set(said);
        workshop.put_work(Change::Field(field), work);
        Ok(())
    };
    let step = move |by: i32| {
        let quantity = quantity(field, unit.get_untracked());
        let before = untrack(number).unwrap_or_default();
        put(workshop, field, stepped(field, quantity, before, by));
        workshop.commit_soon();
    };
    let entry = EntryState::new(
        Signal::derive(value),
        Callback::new(take),
        Callback::new(move |()| workshop.commit()),
    );
    // Another design, or a step back: it is shown, whatever was typed.
    Effect::new(move |before: Option<u32>| {
        let now = workshop.refill.get();
        if before.is_some_and(|before| before != now) {
            rounded.set(String::new());
            entry.settle();
        }
        now
    });
    let before = memo(move || changed_from(workshop, field));
    let was = move || {
        before
            .get()
            .map(|(value, by_link)| was(field, value, by_link, unit.get()))
    };
    let put_back = move |()| {
        if let Some((value, _)) = before.get_untracked() {
            put(workshop, field, value);
            workshop.commit();
        }
    };
    let keyboard = move || match quantity(field, unit.get()) {
        Quantity::Length(LengthUnit::Inch) => "text",
        _ => "decimal",
    };
    let sub = move || {
        let rounded = rounded.get();
        if rounded.is_empty() {
            sub.get()
        } else {
            rounded
        }
    };
    view! {
        <EntryRow entry label sub help unit=move || unit_symbol(quantity(field, unit.get()))
            keyboard was=Signal::derive(was) on_put_back=put_back on_step=step id=field_id(field)/>
    }
}

/// What the number was before undo, redo or a link changed it, and whether a link did.
/// A cut that follows the best is nobody's change.
fn changed_from(workshop: Workshop, field: Field) -> Option<(i64, bool)> {
    let before = workshop.before.get()?;
    workshop.work.with(|work| {
        if is_cut(field) && work.cut == Cut::FollowsBest {
            return None;
        }
        let was = before.work.field(field)?;
        (work.field(field) != Some(was)).then_some((was, before.by_link))
    })
}

fn was(field: Field, value: i64, by_link: bool, unit: LengthUnit) -> Was {
    let value = with_unit(field, value, unit);
    let sentence = if by_link {
        words::from_the_link(&value)
    } else {
        words::from_undo(&value)
    };
    Was { sentence }
}

const fn is_cut(field: Field) -> bool {
    matches!(field, Field::ProbeLength | Field::BackshortDistance)
}

/// The text of a number: exact where it was typed, rounded where it follows the best.
fn shown(field: Field, value: i64, unit: LengthUnit, workshop: Workshop) -> String {
    let follows = is_cut(field) && workshop.work.with(|work| work.cut == Cut::FollowsBest);
    match u32::try_from(value) {
        Ok(um) if follows => format_length_number(um, unit),
        _ => field_text(field, value, unit),
    }
}

/// The work with the number that a text says, and what is said where it was finer than
/// kept.
fn read(
    field: Field,
    text: &str,
    unit: LengthUnit,
    work: Workpiece,
) -> Result<(Workpiece, String), Fault> {
    let sentence = match parse_field(field, text, unit) {
        Err(error) => error.to_string(),
        Ok(entered) => match changed(work, field, entered.value) {
            Err(error) => tinwave_words::design_error(&error, unit),
            Ok(work) => {
                let kept = with_unit(field, entered.value, unit);
                let said = if entered.rounded {
                    words::kept_as(&kept)
                } else {
                    String::new()
                };
                return Ok((work, said));
            }
        },
    };
    let meant = likely_meaning(field, text, unit).map(|meant| Meant {
        offer: offer(field, &meant, unit),
        text: meant,
    });
    Err(Fault { sentence, meant })
}

fn offer(field: Field, meant: &str, unit: LengthUnit) -> String {
    let value = parse_field(field, meant, unit).map_or_else(
        |_| String::new(),
        |read| match (quantity(field, unit), u32::try_from(read.value)) {
            (Quantity::Length(unit), Ok(um)) => {
                format!("{} {}", format_length_number(um, unit), unit.symbol())
            }
            _ => with_unit(field, read.value, unit),
        },
    );
    words::take_it_as(meant, &value)
}

fn with_unit(field: Field, value: i64, unit: LengthUnit) -> String {
    let symbol = unit_symbol(quantity(field, unit));
    format!("{} {symbol}", field_text(field, value, unit))
        .trim_end()
        .to_owned()
}

/// Shows a good number.
fn put(workshop: Workshop, field: Field, value: i64) {
    if let Ok(work) = changed(workshop.work.get_untracked(), field, value) {
        workshop.put_work(Change::Field(field), work);
    }
}

/// The work with another number; a cut that is typed stays as it is.
fn changed(work: Workpiece, field: Field, value: i64) -> Result<Workpiece, DesignError> {
    if work.field(field) == Some(value) {
        return Ok(work);
    }
    let mut work = work.with_field(field, value)?;
    if is_cut(field) {
        work.cut = Cut::AsCut;
    }
    Ok(work)
}

/// The next number up or down on the field's own grid, kept within its range.
fn stepped(field: Field, quantity: Quantity, before: i64, by: i32) -> i64 {
    let grid: i64 = match quantity {
        Quantity::Length(LengthUnit::Millimetre) => 100,
        Quantity::Length(LengthUnit::Inch) => 254,
        Quantity::Frequency | Quantity::Resistance | Quantity::Angle => 1_000,
        Quantity::Permittivity => 50,
        Quantity::Capacitance => 10,
        Quantity::Count => 1,
    };
    let (low, high) = field.range();
    (before + grid * i64::from(by)).clamp(low, high)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn workshop() -> Workshop {
        let workshop = Workshop::open();
        provide_context(workshop);
        workshop
    }

    #[test]
    fn a_field_shows_the_design_and_its_unit() {
        let html = Owner::new().with(|| {
            workshop();
            view! { <DesignField field=Field::OpenLength label="Length inside"/> }.to_html()
        });
        assert!(
            html.contains("value=\"190\"") && html.contains(", mm"),
            "{html}"
        );
        assert!(
            html.contains(&format!("id=\"{}\"", field_id(Field::OpenLength))),
            "{html}"
        );
    }

    #[test]
    fn what_is_out_of_range_is_refused_with_what_is_meant() {
        let work = tinwave_maker::example::example();
        let fault = read(Field::InsideDiameter, "3 7/8", LengthUnit::Millimetre, work);
        let meant = fault.err().and_then(|fault| fault.meant);
        let meant = meant
            .as_ref()
            .map(|meant| (meant.text.as_str(), meant.offer.as_str()));
        assert_eq!(meant, Some(("3 7/8 in", "Take it as 3 7/8 in, 98.4 mm")));
    }

    #[test]
    fn a_cut_that_is_typed_no_longer_follows_the_best() {
        Owner::new().with(|| {
            let workshop = workshop();
            assert_eq!(workshop.work.get_untracked().cut, Cut::FollowsBest);
            put(workshop, Field::ProbeLength, 30_000);
            assert_eq!(workshop.work.get_untracked().cut, Cut::AsCut);
            assert_eq!(workshop.work.get_untracked().design.probe.length_um, 30_000);
        });
    }

    #[test]
    fn what_undo_changed_is_marked_and_can_be_put_back() {
        Owner::new().with(|| {
            let workshop = workshop();
            workshop.edit(Change::Field(Field::OpenLength), |work| {
                work.design.can.open_length_um = 150_000;
            });
            assert_eq!(changed_from(workshop, Field::OpenLength), None);
            workshop.undo();
            assert_eq!(
                changed_from(workshop, Field::OpenLength),
                Some((150_000, false))
            );
            assert_eq!(changed_from(workshop, Field::Wall), None);
            put(workshop, Field::OpenLength, 150_000);
            assert_eq!(changed_from(workshop, Field::OpenLength), None);
        });
    }

    #[test]
    fn steps_stay_on_the_grid_and_in_the_range() {
        let mm = Quantity::Length(LengthUnit::Millimetre);
        assert_eq!(stepped(Field::ProbeLength, mm, 31_300, -1), 31_200);
        assert_eq!(stepped(Field::ProbeLength, mm, 31_300, 10), 32_300);
        assert_eq!(stepped(Field::ProbeLength, mm, 1_000, -1), 1_000);
    }
}
