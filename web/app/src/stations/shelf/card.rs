//! A card: a small section to the common scale, name, size, figures, verdict, date.

use leptos::prelude::*;
use tinwave_core::grade::Grade;
use tinwave_drawing::card_section::{CardSection, card_box};
use tinwave_maker::link::{self, encode};
use tinwave_maker::store::SavedDesign;
use tinwave_maker::workpiece::Workpiece;
use tinwave_words::{frame, shelf as words};

use super::keep::Keeping;
use crate::browser;
use crate::frame::Briefs;
use crate::kit::{Action, ActionKind, VerdictGlyph};
use crate::reactive::memo;
use crate::state::Workshop;

/// A kept design, read and ready to be shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    /// As it is kept.
    pub design: SavedDesign,
    /// The work in its link; `None` where that can't be read.
    pub work: Option<Workpiece>,
    /// Its small section.
    pub section: Option<CardSection>,
}

impl Shown {
    pub(super) fn new(design: SavedDesign) -> Self {
        let work = link::decode(&design.link).ok().map(|opened| opened.work);
        let has_cut = has_cut(&design);
        let section = work
            .as_ref()
            .map(|work| tinwave_drawing::card_section::card_section(&work.design, has_cut));
        Self {
            design,
            work,
            section,
        }
    }
}

fn has_cut(design: &SavedDesign) -> bool {
    design.figures.and_then(|figures| figures.grade) != Some(Grade::WillNotDo)
}

/// A kept design as a card; `extent` is the largest of all, which sets the scale.
#[component]
pub(super) fn Card(shown: Shown, extent: Memo<(f64, f64)>, keeping: Keeping) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let briefs = expect_context::<Briefs>();
    let Shown {
        design,
        work,
        section,
    } = shown;
    let name = design.name.clone();
    let (opens, copies, removes) = (name.clone(), design.clone(), name.clone());
    let says = [
        words::open_named(&name),
        words::duplicate_named(&name),
        words::remove_named(&name),
    ];
    let [says_open, says_duplicate, says_remove] = says;
    let open = work.clone().map(|work| {
        let press = move |()| {
            workshop.open_work(work.clone());
            briefs.say_with(words::opened(&opens), words::undo(), move || {
                workshop.undo()
            });
        };
        view! { <Action text=words::open() says=says_open kind=ActionKind::Words on_press=press/> }
    });
    view! {
        <li class="card">
            <div class="card-picture">{section.map(|section| view! { <Picture section extent/> })}</div>
            <div class="card-text">
                <h3>{name}</h3>
                <Facts design work/>
            </div>
            <div class="card-actions">
                {open}
                <Action text=words::duplicate() says=says_duplicate kind=ActionKind::Words
                    on_press=move |()| keeping.duplicate(&copies)/>
                <Action text=words::remove() says=says_remove kind=ActionKind::Words
                    on_press=move |()| keeping.remove(&removes)/>
            </div>
        </li>
    }
}

/// Size, figures, verdict, date, as far as they are known.
#[component]
fn Facts(design: SavedDesign, work: Option<Workpiece>) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let Some(work) = work else {
        return view! { <p>{words::unreadable()}</p> }.into_any();
    };
    let with_cut = has_cut(&design);
    let link = encode(&work);
    let size = move || words::card_size(&work, with_cut, workshop.unit.get());
    let on_screen = memo(move || workshop.work.with(|work| encode(work) == link));
    let figures = design.figures.unwrap_or_default();
    let told = words::card_figures(&figures);
    let date = figures
        .day
        .map(|day| words::date(day, browser::day_number().unwrap_or(day)));
    let facts = move || {
        let on_screen = on_screen.get().then(|| words::on_the_screen().to_owned());
        let facts: Vec<String> = date.clone().into_iter().chain(on_screen).collect();
        facts.join(", ")
    };
    view! {
        <p>{size}</p>
        {(!told.is_empty()).then(|| view! { <p>{told}</p> })}
        <p class="card-verdict">
            {figures.grade.map(|grade| view! {
                <VerdictGlyph grade/>
                <span class=grade_class(grade)>{frame::grade_short(grade)}</span>
            })}
            <span class="note">{facts}</span>
        </p>
    }
    .into_any()
}

const fn grade_class(grade: Grade) -> &'static str {
    match grade {
        Grade::WillDo => "grade go",
        Grade::WithCare => "grade care",
        Grade::WillNotDo => "grade no",
    }
}

#[component]
fn Picture(section: CardSection, extent: Memo<(f64, f64)>) -> impl IntoView {
    let view_box = move || {
        let [left, top, width, height] = card_box(extent.get());
        format!("{left:.1} {top:.1} {width:.1} {height:.1}")
    };
    view! {
        <svg class="card-section" viewBox=view_box aria-hidden="true">
            <path d=section.outline/>
            <path d=section.mouth/>
            <path class="wire" d=section.wire/>
        </svg>
    }
}
