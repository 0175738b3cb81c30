//! The funnel of sheet metal: limits, the best within them, its flat sheet.

use leptos::prelude::*;
use tinwave_core::design::Mouth;
use tinwave_core::funnel::FlatPattern;
use tinwave_core::si::{metres, micrometres};
use tinwave_maker::entry::{
    LengthUnit, format_length_exact, format_length_number, format_metres, parse_length,
};
use tinwave_maker::history::Change;
use tinwave_protocol::beam::{
    FunnelFound, FunnelLimits, FunnelPoint, MouthChoice as Choice, MouthGoal, SearchFunnel,
};
use tinwave_words::beam as words;
use tinwave_words::figures::degrees;
use tinwave_words::{Caution, caution};

use super::funnel_trade::{Along, TradeChart, TradePoints};
use crate::kit::{
    Action, ActionKind, CautionBlock, Fault, FindingBlock, FindingTone, Fold, NumberField,
    ProgressBar, TableFold, TableText,
};
use crate::reactive::{effect, live, memo};
use crate::state::Workshop;
use crate::worker::{Task, TaskState};

/// Sizes that are taken.
const SIZES_UM: (u32, u32) = (10_000, 5_000_000);
const SEAMS_UM: (u32, u32) = (0, 100_000);
/// What holds at first: the sheet of a large food can, rolled out.
const FIRST: FunnelLimits = FunnelLimits {
    mouth_um: None,
    length_um: Some(200_000),
    sheet_um: None,
    seam_um: 10_000,
};

/// The designer in its fold.
#[component]
pub fn FunnelFold(
    /// What could stand at the mouth: its funnel is told while none was searched for.
    choices: Memo<Vec<Choice>>,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let limits = RwSignal::new(FIRST);
    let sides = RwSignal::new(Sides::default());
    let task = Task::<Option<FunnelFound>>::new();
    let found = memo(move || {
        task.state().with(|state| match state {
            TaskState::Working { so_far, .. } => so_far.clone().flatten(),
            state => state.answer().cloned().flatten(),
        })
    });
    let best = memo(move || found.with(|found| found.as_ref()?.best?));
    // What was found belongs to one can and one set of limits.
    let key = memo(move || {
        let can = workshop.work.with(|work| {
            let can = work.design.can;
            (can.inside_diameter_um, can.open_length_um, work.design.band)
        });
        (can, limits.get())
    });
    effect(move || {
        key.track();
        task.clear();
    });
    let search = move |()| {
        let design = workshop.work.with_untracked(|work| work.design.clone());
        let limits = limits.get_untracked();
        task.run(SearchFunnel { design, limits });
    };
    let summary = move || {
        let searched = best.get().map(|best| (best.gain_dbi, best.length_m));
        let best = searched.or_else(|| choices.with(|choices| moderate(choices, workshop)));
        words::funnel_summary(best, workshop.unit.get())
    };
    let [find, solving, _] = words::funnel_search();
    let are_none = move || limits.with(FunnelLimits::are_none);
    view! {
        <Fold title=words::funnel_title() summary>
            <LimitFields limits sides/>
            <Show when=are_none>
                <FindingBlock tone=FindingTone::Caution headline=words::no_funnel(true)/>
            </Show>
            <Show when=move || task.state().with(TaskState::is_working)
                fallback=move || view! { <Action text=find on_press=search disabled=are_none/> }>
                <ProgressBar done=move || task.state().with(share) text=solving
                    on_stop=move |()| task.stop()/>
            </Show>
            <Found found best/>
            <CautionBlock caution=caution(Caution::DrillEdges)/>
            <FlatSheet seam=move || limits.with(|limits| limits.seam_um)/>
        </Fold>
    }
}

/// Gain and length of the funnel of moderate size.
fn moderate(choices: &[Choice], workshop: Workshop) -> Option<(f64, f64)> {
    let funnel = choices
        .iter()
        .find(|choice| choice.goal == MouthGoal::Funnel)?;
    let can_um = workshop
        .work
        .with(|work| work.design.can.inside_diameter_um);
    let length_m = funnel_length_m(funnel.mouth, can_um)?;
    Some((funnel.radiated.gain_dbi, length_m))
}

/// Along the axis; `None` where no funnel stands at the mouth.
pub fn funnel_length_m(mouth: Mouth, can_um: u32) -> Option<f64> {
    let Mouth::Funnel {
        mouth_diameter_um,
        half_angle_millideg,
    } = mouth
    else {
        return None;
    };
    let half_angle = (f64::from(half_angle_millideg) / 1e3).to_radians();
    Some(0.5 * (metres(mouth_diameter_um) - metres(can_um)) / half_angle.tan())
}

fn share(state: &TaskState<Option<FunnelFound>>) -> f32 {
    match state {
        TaskState::Working { done, .. } => *done,
        _ => 1.0,
    }
}

/// The sides of a sheet; one may be typed before the other.
type Sides = (Option<u32>, Option<u32>);

#[component]
fn LimitFields(limits: RwSignal<FunnelLimits>, sides: RwSignal<Sides>) -> impl IntoView {
    let [mouth, length, one, other, seam] = words::limit_labels();
    let set_sides = move |set: fn(&mut Sides, Option<u32>), value| {
        sides.update(|sides| set(sides, value));
        let (one, other) = sides.get_untracked();
        limits.update(|limits| limits.sheet_um = one.zip(other));
    };
    let set_seam = move |value: Option<u32>| {
        limits.update(|limits| limits.seam_um = value.unwrap_or(0));
    };
    view! {
        <LimitField label=length range=SIZES_UM value=move || limits.with(|limits| limits.length_um)
            put=move |value| limits.update(|limits| limits.length_um = value)/>
        <LimitField label=mouth range=SIZES_UM value=move || limits.with(|limits| limits.mouth_um)
            put=move |value| limits.update(|limits| limits.mouth_um = value)/>
        <LimitField label=one range=SIZES_UM value=move || sides.get().0
            put=move |value| set_sides(|sides, value| sides.0 = value, value)/>
        <LimitField label=other range=SIZES_UM value=move || sides.get().1
            put=move |value| set_sides(|sides, value| sides.1 = value, value)/>
        <LimitField label=seam range=SEAMS_UM value=move || limits.with(|limits| Some(limits.seam_um))
            put=set_seam/>
    }
}

/// A length that may be left out.
#[component]
fn LimitField(
    label: (&'static str, &'static str),
    range: (u32, u32),
    #[prop(into)] value: Signal<Option<u32>>,
    #[prop(into)] put: Callback<Option<u32>>,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let unit = workshop.unit;
    let text = move || {
        let unit = unit.get();
        value
            .get()
            .map_or_else(String::new, |um| format_length_number(um, unit))
    };
    let take = move |text: String| {
        put.run(read_length(&text, unit.get_untracked(), range)?);
        Ok(())
    };
    view! {
        <NumberField label=label.0 help=label.1 value=text take unit=move || unit.get().symbol()
            full_keyboard=move || unit.get() == LengthUnit::Inch/>
    }
}

/// A length in its range; nothing for an empty text.
pub fn read_length(
    text: &str,
    unit: LengthUnit,
    (low, high): (u32, u32),
) -> Result<Option<u32>, Fault> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let um = parse_length(text, unit)?.value;
    if (low..=high).contains(&um) {
        return Ok(Some(um));
    }
    let end = |um| format_length_exact(um, unit);
    let symbol = unit.symbol();
    Err(words::must_be_within(&end(low), &end(high), symbol).into())
}

/// What was found, and the trades.
#[component]
fn Found(found: Memo<Option<FunnelFound>>, best: Memo<Option<FunnelPoint>>) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let [_, _, take] = words::funnel_search();
    let said = move || {
        let unit = workshop.unit.get();
        found.with(|found| {
            let found = found.as_ref()?;
            Some(match found.best? {
                None => words::no_funnel(false).to_owned(),
                Some(best) => words::funnel_found(
                    best.gain_dbi,
                    found.bare_dbi.map(|bare| best.gain_dbi - bare),
                    best.mouth_um,
                    best.length_m,
                    f64::from(best.half_angle_millideg) / 1e3,
                    unit,
                ),
            })
        })
    };
    let press = move |()| {
        if let Some(best) = best.get_untracked() {
            workshop.edit(Change::Mouth, |work| work.design.mouth = best.mouth());
        }
    };
    view! {
        {live(move || said().map(|said| view! { <p>{said}</p> }))}
        <Show when=move || best.with(Option::is_some)>
            <Action text=take kind=ActionKind::Main on_press=press/>
        </Show>
        <Show when=move || found.with(Option::is_some)>
            <TradeChart found along=Along::Length/>
            <TradePoints found along=Along::Length/>
            <TradeChart found along=Along::Mouth/>
            <TradePoints found along=Along::Mouth/>
        </Show>
    }
}

/// The flat sheet of the funnel that stands at the mouth.
#[component]
fn FlatSheet(#[prop(into)] seam: Signal<u32>) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let sheet = memo(move || {
        let seam_m = metres(seam.get());
        workshop.work.with(|work| {
            let Mouth::Funnel {
                mouth_diameter_um,
                half_angle_millideg,
            } = work.design.mouth
            else {
                return None;
            };
            let half_angle = (f64::from(half_angle_millideg) / 1e3).to_radians();
            let throat = 0.5 * metres(work.design.can.inside_diameter_um);
            FlatPattern::new(throat, 0.5 * metres(mouth_diameter_um), half_angle, seam_m)
        })
    });
    let table = move || {
        let unit = workshop.unit.get();
        let rows = sheet
            .get()
            .map_or_else(Vec::new, |sheet| rows(&sheet, unit));
        TableText {
            head: words::table_head(),
            rows,
        }
    };
    view! {
        <Show when=move || sheet.with(Option::is_some)>
            <p>{words::sheet_title()}</p>
            <TableFold name=words::sheet_title() table open=true/>
        </Show>
    }
}

fn rows(sheet: &FlatPattern, unit: LengthUnit) -> Vec<Vec<String>> {
    let length = |metres: f64| format_metres(metres, unit);
    let (width, height) = sheet.rectangle_m();
    let needed = [length(width), length(height)].join(" × ");
    let values = [
        length(sheet.inner_radius_m),
        length(sheet.outer_radius_m),
        degrees(sheet.angle_rad.to_degrees()),
        length(sheet.chord_m()),
        length(sheet.slant_m()),
        length(f64::from(micrometres(sheet.seam_m)) / 1e6),
        needed,
    ];
    words::sheet_names()
        .into_iter()
        .zip(values)
        .map(|(name, value)| vec![name.to_owned(), value])
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_flat_sheet_is_that_of_the_cone() {
        // A cone of half angle 30 degrees unrolls into half a disc; radii over its sine.
        let sheet = FlatPattern::new(0.045, 0.09, 30.0_f64.to_radians(), 0.01);
        let rows = sheet.map_or_else(Vec::new, |sheet| rows(&sheet, LengthUnit::Millimetre));
        let value = |row: usize| rows.get(row).and_then(|row| row.get(1)).map(String::as_str);
        assert_eq!(value(0), Some("90.0 mm"));
        assert_eq!(value(1), Some("180.0 mm"));
        assert_eq!(value(2), Some("180°"));
        assert_eq!(value(3), Some("360.0 mm"));
    }

    #[test]
    fn a_funnel_has_a_length() {
        let funnel = Mouth::Funnel {
            mouth_diameter_um: 180_000,
            half_angle_millideg: 30_000,
        };
        // 45 mm over the tangent of 30 degrees is 77.94 mm.
        let length = funnel_length_m(funnel, 90_000);
        assert!(length.is_some_and(|length| (length - 0.077_942).abs() < 1e-6));
        assert_eq!(funnel_length_m(Mouth::Open, 90_000), None);
    }

    #[test]
    fn an_empty_limit_is_none_and_a_wrong_one_is_told() {
        let mm = LengthUnit::Millimetre;
        assert_eq!(read_length(" ", mm, SIZES_UM), Ok(None));
        assert_eq!(read_length("200", mm, SIZES_UM), Ok(Some(200_000)));
        assert!(read_length("2", mm, SIZES_UM).is_err());
    }
}
