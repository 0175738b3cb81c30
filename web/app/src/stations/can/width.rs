//! The can's width, by whichever measure the maker can take; and its wall, which
//! stands between the outside and the inside.

use leptos::prelude::*;
use tinwave_core::design_error::Field;
use tinwave_maker::entry::{
    LengthUnit, PAPER_UM, field_text, format_length, format_length_exact, inside_from_outside,
    outside_from_circumference, parse_length, quantity, strip_round, unit_symbol,
};
use tinwave_maker::history::Change;
use tinwave_maker::workpiece::Workpiece;
use tinwave_words::can as words;
use tinwave_words::{design_error, label};

use crate::kit::{DesignField, Fault, Meant, NumberField, field_id};
use crate::state::Workshop;
use words::WidthBy;

/// What was typed, and what it made: shown as typed while it still holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Typed {
    by: WidthBy,
    measured_um: u32,
    inside_um: u32,
    wall_um: u32,
}

/// The width.
#[component]
pub fn WidthEntry(
    /// How it is measured.
    by: RwSignal<WidthBy>,
) -> impl IntoView {
    move || match by.get() {
        WidthBy::Inside => view! { <InsideEntry/> }.into_any(),
        by => view! { <MeasuredEntry by/> }.into_any(),
    }
}

#[component]
fn InsideEntry() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let by = WidthBy::Inside;
    let sub = move || {
        let unit = workshop.unit.get();
        workshop
            .work
            .with(|work| words::strip_round_it(strip_round(outside_of(work)), unit))
    };
    view! { <DesignField field=Field::InsideDiameter label=by.label() help=by.help() sub=sub/> }
        .into_any()
}

/// The outside, or a strip round it.
#[component]
fn MeasuredEntry(by: WidthBy) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let unit = workshop.unit;
    let typed = RwSignal::new(None::<Typed>);
    let value = move || {
        workshop
            .work
            .with(|work| format_length_exact(shown_um(by, typed.get(), work), unit.get()))
    };
    let take = move |text: String| {
        let work = workshop.work.get_untracked();
        let read = read(by, &text, unit.get_untracked(), &work)?;
        typed.set(Some(read));
        put_inside(workshop, read.inside_um);
        Ok(())
    };
    let step = move |steps: i32| {
        let work = workshop.work.get_untracked();
        let before = i64::from(shown_um(by, typed.get_untracked(), &work));
        let measured = before + i64::from(steps) * step_um(by, unit.get_untracked());
        if let Ok(measured_um) = u32::try_from(measured)
            && let Some(read) = made(by, measured_um, &work)
            && Field::InsideDiameter
                .check(i64::from(read.inside_um))
                .is_ok()
        {
            typed.set(Some(read));
            put_inside(workshop, read.inside_um);
            workshop.commit_soon();
        }
    };
    let sub = move || {
        workshop
            .work
            .with(|work| words::makes_inside(work.design.can.inside_diameter_um, unit.get()))
    };
    view! {
        <NumberField label=by.label() help=by.help() sub=sub value=value take=take on_step=step
            unit=move || unit.get().symbol().to_owned()
            full_keyboard=move || unit.get() == LengthUnit::Inch
            on_commit=move |()| workshop.commit() id=format!("field-{}", by.key())/>
    }
    .into_any()
}

/// The wall. What was measured outside stays when it changes.
#[component]
pub fn WallEntry(
    /// How the width is measured.
    by: RwSignal<WidthBy>,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let unit = workshop.unit;
    let value = move || {
        let wall = workshop.work.with(|work| work.design.can.wall_um);
        field_text(Field::Wall, i64::from(wall), unit.get())
    };
    let set = move |wall_um: i64| {
        let mut work = workshop.work.get_untracked();
        set_wall(&mut work, wall_um, by.get_untracked())
            .map_err(|error| Fault::from(design_error(&error, unit.get_untracked())))?;
        workshop.put(Change::Field(Field::Wall), move |present| *present = work);
        Ok(())
    };
    let take = move |text: String| {
        let read = tinwave_maker::entry::parse_field(Field::Wall, &text, unit.get_untracked())?;
        set(read.value)
    };
    let step = move |steps: i32| {
        let grid = match unit.get_untracked() {
            LengthUnit::Millimetre => 50,
            LengthUnit::Inch => 51,
        };
        let wall = workshop.work.with_untracked(|work| work.design.can.wall_um);
        if set(i64::from(wall) + grid * i64::from(steps)).is_ok() {
            workshop.commit_soon();
        }
    };
    view! {
        <NumberField label=label(Field::Wall).plain help=label(Field::Wall).help value=value take=take
            on_step=step unit=move || unit_symbol(quantity(Field::Wall, unit.get())).to_owned()
            full_keyboard=move || unit.get() == LengthUnit::Inch
            on_commit=move |()| workshop.commit() id=field_id(Field::Wall)/>
    }
    .into_any()
}

fn set_wall(
    work: &mut Workpiece,
    wall_um: i64,
    by: WidthBy,
) -> Result<(), tinwave_core::design_error::DesignError> {
    let outside = i64::from(outside_of(work));
    let mut next = work.clone();
    next.set_field(Field::Wall, wall_um)?;
    if by != WidthBy::Inside {
        next.set_field(Field::InsideDiameter, outside - 2 * wall_um)?;
    }
    *work = next;
    Ok(())
}

fn put_inside(workshop: Workshop, inside_um: u32) {
    workshop.put(Change::Diameter, |work| {
        work.design.can.inside_diameter_um = inside_um;
    });
}

fn outside_of(work: &Workpiece) -> u32 {
    let can = &work.design.can;
    can.inside_diameter_um
        .saturating_add(can.wall_um.saturating_mul(2))
}

/// What stands in the cell: what was typed while it holds, else what it would be.
fn shown_um(by: WidthBy, typed: Option<Typed>, work: &Workpiece) -> u32 {
    let can = &work.design.can;
    let holds = |typed: &Typed| {
        typed.by == by && typed.inside_um == can.inside_diameter_um && typed.wall_um == can.wall_um
    };
    match (typed.filter(holds), by) {
        (Some(typed), _) => typed.measured_um,
        (None, WidthBy::Inside) => can.inside_diameter_um,
        (None, WidthBy::Outside) => outside_of(work),
        (None, WidthBy::PaperStrip) => strip_round(outside_of(work)),
    }
}

/// What a measure makes; `None` where the walls leave nothing.
fn made(by: WidthBy, measured_um: u32, work: &Workpiece) -> Option<Typed> {
    let wall_um = work.design.can.wall_um;
    let outside = match by {
        WidthBy::Inside => return None,
        WidthBy::Outside => measured_um,
        WidthBy::PaperStrip => outside_from_circumference(measured_um, PAPER_UM),
    };
    Some(Typed {
        by,
        measured_um,
        inside_um: inside_from_outside(outside, wall_um)?,
        wall_um,
    })
}

/// Reads a measure; where it makes no possible can, the likeliest other unit is
/// offered.
fn read(by: WidthBy, text: &str, unit: LengthUnit, work: &Workpiece) -> Result<Typed, Fault> {
    let measured_um = parse_length(text, unit)?.value;
    let possible = |um: u32| {
        let read = made(by, um, work)?;
        let check = Field::InsideDiameter.check(i64::from(read.inside_um));
        check.is_ok().then_some(read)
    };
    if let Some(read) = possible(measured_um) {
        return Ok(read);
    }
    let (low, high) = Field::InsideDiameter.range();
    let sentence = match (
        made(by, measured_um, work),
        u32::try_from(low),
        u32::try_from(high),
    ) {
        (Some(read), Ok(low), Ok(high)) => {
            words::width_out_of_range(read.inside_um, low, high, unit)
        }
        _ => words::no_inside_left().to_owned(),
    };
    let other = match unit {
        LengthUnit::Millimetre => LengthUnit::Inch,
        LengthUnit::Inch => LengthUnit::Millimetre,
    };
    let meant = parse_length(text, other)
        .ok()
        .filter(|read| read.value != measured_um && possible(read.value).is_some())
        .map(|read| {
            let meant = format!("{} {}", text.trim(), other.symbol());
            Meant {
                offer: tinwave_words::frame::take_it_as(&meant, &format_length(read.value, unit)),
                text: meant,
            }
        });
    Err(Fault { sentence, meant })
}

/// One step of − and +: half a millimetre across, a millimetre round.
const fn step_um(by: WidthBy, unit: LengthUnit) -> i64 {
    match (by, unit) {
        (WidthBy::PaperStrip, LengthUnit::Millimetre) => 1_000,
        (WidthBy::PaperStrip, LengthUnit::Inch) => 1_270,
        (_, LengthUnit::Millimetre) => 500,
        (_, LengthUnit::Inch) => 254,
    }
}

#[cfg(test)]
#[allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]
mod tests {
    use super::*;
    use tinwave_maker::example::example;

    const MM: LengthUnit = LengthUnit::Millimetre;

    #[test]
    fn a_strip_makes_the_inside_and_stays_as_it_was_typed() {
        let mut work = example();
        let strip = read(WidthBy::PaperStrip, "277", MM, &work);
        let Ok(strip) = strip else {
            panic!("{strip:?}");
        };
        // 277 / pi = 88.172 mm, less 0.1 of paper and 0.4 of wall.
        assert_eq!(strip.inside_um, 87_672);
        work.design.can.inside_diameter_um = strip.inside_um;
        assert_eq!(shown_um(WidthBy::PaperStrip, Some(strip), &work), 277_000);
        // From another way of measuring it is worked out.
        assert_eq!(shown_um(WidthBy::Outside, Some(strip), &work), 88_072);
        work.design.can.inside_diameter_um = 99_000;
        assert_ne!(shown_um(WidthBy::PaperStrip, Some(strip), &work), 277_000);
    }

    #[test]
    fn a_new_wall_keeps_what_was_measured() {
        for (by, inside) in [
            (WidthBy::Inside, 87_000),
            (WidthBy::Outside, 86_400),
            (WidthBy::PaperStrip, 86_400),
        ] {
            let mut work = example();
            assert_eq!(set_wall(&mut work, 500, by), Ok(()));
            assert_eq!(work.design.can.inside_diameter_um, inside, "{by:?}");
        }
    }

    #[test]
    fn a_measure_that_makes_no_can_is_told_of_with_the_other_unit() {
        let work = example();
        let fault = read(WidthBy::PaperStrip, "10 3/4", MM, &work).err();
        let meant = fault.and_then(|fault| fault.meant);
        assert_eq!(meant.map(|meant| meant.text), Some("10 3/4 in".to_owned()));
        let nothing = read(WidthBy::Outside, "0.3", MM, &work).err();
        assert!(nothing.is_some_and(|fault| fault.sentence == words::no_inside_left()));
    }
}
