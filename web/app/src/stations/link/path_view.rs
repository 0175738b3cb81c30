//! The path from the side.

use leptos::prelude::*;
use tinwave_drawing::path_scene::{LabelKind, LabelSide, PathLabel, PathScene, Tick};
use tinwave_words::link_plan::{self as words, PartTitle};

use super::levels::percent;
use super::{answer_of, of_link};
use crate::kit::{Part, TableFold, TableText};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// Is the path clear? Picture, sentence, table.
#[component]
pub fn PathPart() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, note) = words::part_titles(PartTitle::Path);
    let scene = memo(move || {
        let unit = workshop.unit.get();
        let margin = of_link(workshop, |_, link| {
            words::margin_bracket(link.weaker.margin_db)
        });
        let answer = answer_of(workshop)?;
        let path = answer.path.as_ref()?;
        Some(PathScene::new(path, margin.as_deref(), unit))
    });
    let said = move || {
        let unit = workshop.unit.get();
        answer_of(workshop).map(|answer| {
            let path = answer.path.as_ref();
            (words::path_headline(path), words::path_text(path, unit))
        })
    };
    let table = move || {
        let unit = workshop.unit.get();
        let rows = answer_of(workshop)
            .and_then(|answer| Some(words::clearance_rows(answer.path.as_ref()?, unit)));
        let (head, rows) = rows.unwrap_or_default();
        TableText { head, rows }
    };
    view! {
        <Part title note>
            {live(move || scene.get().map(|scene| view! { <PathPicture scene/> }))}
            {live(move || said().map(|(headline, text)| view! {
                <p class="path-said"><b>{headline}</b>" "{text}</p>
            }))}
            <Show when=move || scene.with(Option::is_some)>
                <TableFold name=title table/>
            </Show>
        </Part>
    }
}

/// The lines, stretched over the plot; letters keep their own size.
#[component]
fn PathPicture(scene: PathScene) -> impl IntoView {
    let line_class = if scene.is_blocked {
        "line blocked"
    } else {
        "line"
    };
    let labels = words::path_labels();
    let height = words::axis_name(labels.height, scene.height_unit);
    view! {
        <div class="path-plot" role="img" aria-label=words::part_titles(PartTitle::Path).0>
            <span class="axis-name">{height}</span>
            <div class="path-area">
                <svg viewBox="0 0 1000 1000" preserveAspectRatio="none" aria-hidden="true">
                    <path class="grid" d=scene.grid/>
                    <path class="zone" d=scene.zone/>
                    <path class="ground" d=scene.ground/>
                    <path class="obstacle" d=scene.obstacles/>
                    <path class="mast" d=scene.masts/>
                    <path class=line_class d=scene.line/>
                </svg>
                {scene.labels.into_iter().map(label).collect_view()}
                {scene.heights.into_iter().map(height_tick).collect_view()}
                {distance_ticks(scene.distances, scene.distance_unit)}
            </div>
            <p class="path-ends"><span>{labels.here}</span><span>{labels.far}</span></p>
        </div>
    }
}

fn label(label: PathLabel) -> impl IntoView {
    let class = match (label.kind, label.side) {
        (LabelKind::Line, _) => "path-label margin above",
        (LabelKind::Zone, _) => "path-label below",
        (LabelKind::Obstacle, LabelSide::Above) => "path-label number above",
        (LabelKind::Obstacle, LabelSide::Below) => "path-label number below",
    };
    view! {
        <span class=class style:left=percent(label.left) style:top=percent(label.top)>{label.text}</span>
    }
}

fn height_tick(tick: Tick) -> impl IntoView {
    view! { <span class="tick height" style:top=percent(tick.at)>{tick.text}</span> }
}

/// The last tick has the unit.
fn distance_ticks(ticks: Vec<Tick>, unit: &'static str) -> impl IntoView {
    let last = ticks.len().saturating_sub(1);
    ticks
        .into_iter()
        .enumerate()
        .map(|(n, tick)| {
            let text = if n == last {
                format!("{} {unit}", tick.text)
            } else {
                tick.text
            };
            let is_at_end = tick.at > 92.0;
            view! { <span class="tick distance" class:at-end=is_at_end style:left=percent(tick.at)>{text}</span> }
        })
        .collect_view()
}
