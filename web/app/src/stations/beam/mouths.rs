//! What stands at the mouth: four choices as pictures with their gain, and the sizes of
//! the one that stands there.

use std::mem::discriminant;

use leptos::prelude::*;
use tinwave_core::design::{Band, Design, Mouth};
use tinwave_core::design_error::Field;
use tinwave_maker::history::Change;
use tinwave_protocol::beam::{MouthChoice as Choice, MouthChoices, MouthGoal};
use tinwave_words::beam as words;

use crate::kit::{DesignField, EntryGroup, TableFold, TableText};
use crate::reactive::{effect, memo};
use crate::state::Workshop;
use crate::worker::{Task, TaskState};

/// The goals that the four pictures stand for.
const PICTURES: [MouthGoal; 4] = [
    MouthGoal::Bare,
    MouthGoal::Funnel,
    MouthGoal::RingForGain,
    MouthGoal::CupForGain,
];

/// All that the choices depend on.
type CanKey = (u32, u32, Band);

fn key_of(design: &Design) -> CanKey {
    let can = design.can;
    (can.inside_diameter_um, can.open_length_um, design.band)
}

/// What could stand at the mouth of the can: asked for once a can and band, whatever
/// stands there; nothing of another can, and nothing while this one will not do.
pub fn choices(workshop: Workshop) -> Memo<Vec<Choice>> {
    let task = Task::<Vec<Choice>>::new();
    let answers = workshop.answers;
    let key = memo(move || workshop.work.with(|work| key_of(&work.design)));
    // The can's own outside comes first.
    let may_ask = memo(move || answers.outside.with(Option::is_some) && answers.has_cut());
    let asked = RwSignal::new(None::<CanKey>);
    effect(move || {
        let key = key.get();
        if asked.get_untracked().is_some_and(|asked| asked != key) {
            task.clear();
            asked.set(None);
        }
        if may_ask.get() && asked.get_untracked().is_none() {
            asked.set(Some(key));
            let design = workshop.work.with_untracked(|work| work.design.clone());
            task.run(MouthChoices { design });
        }
    });
    memo(move || {
        if asked.get() != Some(key.get()) || !answers.has_cut() {
            return Vec::new();
        }
        task.state().with(|state| match state {
            TaskState::Working { so_far, .. } => so_far.clone().unwrap_or_default(),
            state => state.answer().cloned().unwrap_or_default(),
        })
    })
}

/// Whether two mouths are of one kind, whatever their sizes.
fn same_kind(one: Mouth, other: Mouth) -> bool {
    let kind = |mouth| match mouth {
        Mouth::Absorbing => discriminant(&Mouth::Open),
        mouth => discriminant(&mouth),
    };
    kind(one) == kind(other)
}

/// The four pictures.
#[component]
pub fn MouthChoice(
    /// What could stand there.
    found: Memo<Vec<Choice>>,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let present = memo(move || workshop.work.with(|work| work.design.mouth));
    let picture = move |goal: MouthGoal| {
        let choice = memo(move || {
            found.with(|found| found.iter().find(|choice| choice.goal == goal).copied())
        });
        let kind = kind_of(goal);
        let is_chosen = move || same_kind(present.get(), kind);
        let gain = move || {
            choice.get().map_or_else(
                || words::choice_waits(workshop.answers.has_cut()).to_owned(),
                |choice| words::choice_gain(choice.radiated.gain_dbi),
            )
        };
        let take = move |_| {
            let mouth = choice.get_untracked().map(|choice| choice.mouth);
            let mouth = if goal == MouthGoal::Bare {
                Some(Mouth::Open)
            } else {
                mouth
            };
            if let Some(mouth) = mouth {
                workshop.edit(Change::Mouth, |work| work.design.mouth = mouth);
            }
        };
        let is_out = move || goal != MouthGoal::Bare && choice.with(Option::is_none);
        view! {
            <button type="button" class="mouth-choice" aria-pressed=move || is_chosen().to_string()
                disabled=is_out on:click=take>
                <MouthPicture kind/>
                <span>{words::mouth_name(kind)}</span>
                <b>{gain}</b>
            </button>
        }
    };
    let table = move || TableText {
        head: words::choice_head(),
        rows: found.with(|found| found.iter().map(|choice| row(choice, workshop)).collect()),
    };
    view! {
        <EntryGroup title=words::at_the_mouth()>
            <div class="mouth-choices">{PICTURES.map(picture).collect_view()}</div>
            <p class="note">{words::choices_note()}</p>
            <Show when=move || found.with(|found| !found.is_empty())>
                <TableFold name=words::at_the_mouth() table=Signal::derive(table)/>
            </Show>
        </EntryGroup>
    }
}

/// A mouth of the kind that a goal is of; its sizes mean nothing.
const fn kind_of(goal: MouthGoal) -> Mouth {
    match goal {
        MouthGoal::Bare => Mouth::Open,
        MouthGoal::Funnel => Mouth::Funnel {
            mouth_diameter_um: 0,
            half_angle_millideg: 0,
        },
        MouthGoal::RingForGain => Mouth::Flange {
            outside_diameter_um: 0,
        },
        MouthGoal::CupForGain | MouthGoal::CupForRear => Mouth::Choke {
            outside_diameter_um: 0,
            depth_um: 0,
        },
    }
}

fn row(choice: &Choice, workshop: Workshop) -> Vec<String> {
    let decimal = tinwave_maker::entry::format_decimal;
    vec![
        words::goal(choice.goal).to_owned(),
        words::mouth_size(choice.mouth, workshop.unit.get()),
        decimal(choice.radiated.gain_dbi, 1),
        decimal(choice.radiated.front_to_rear_db, 0),
    ]
}

/// A can with something at its mouth, in section.
#[component]
fn MouthPicture(kind: Mouth) -> impl IntoView {
    let at_mouth = match kind {
        Mouth::Open | Mouth::Absorbing => "",
        Mouth::Funnel { .. } => "M34 12L56 3M34 28L56 37",
        Mouth::Flange { .. } => "M34 12L34 2M34 28L34 38",
        Mouth::Choke { .. } => "M24 12L24 4L36 4M24 28L24 36L36 36",
    };
    view! {
        <svg viewBox="0 0 60 40" aria-hidden="true">
            <path d="M34 12L6 12L6 28L34 28"/>
            <path class="at-mouth" d=at_mouth/>
            <path class="wire" d="M16 28L16 21"/>
        </svg>
    }
}

/// The sizes of what stands at the mouth.
#[component]
pub fn MouthSizes() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let kind = memo(move || {
        let mouth = workshop.work.with(|work| work.design.mouth);
        words::mouth_name(mouth)
    });
    move || {
        kind.track();
        let mouth = workshop.work.with_untracked(|work| work.design.mouth);
        let fields: &[Field] = match mouth {
            Mouth::Open | Mouth::Absorbing => &[],
            Mouth::Funnel { .. } => &[Field::MouthDiameter, Field::MouthAngle],
            Mouth::Flange { .. } => &[Field::MouthDiameter],
            Mouth::Choke { .. } => &[Field::MouthDiameter, Field::ChokeDepth],
        };
        let [diameter, angle, depth] = words::size_labels(mouth);
        fields
            .iter()
            .map(|field| {
                let (label, help) = match field {
                    Field::MouthAngle => angle,
                    Field::ChokeDepth => depth,
                    _ => diameter,
                };
                view! { <DesignField field=*field label help/> }
            })
            .collect_view()
    }
}
