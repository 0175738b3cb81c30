//! The levels of the weaker direction, from transmitter to receiver.

use leptos::prelude::*;
use tinwave_drawing::levels_scene::{LevelMark, LevelRow, LevelsScene, MarginBracket};
use tinwave_words::link_plan as words;

use super::of_link;
use crate::kit::Part;
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// What stands in the picture: title, note, scene.
type Drawn = (String, &'static str, LevelsScene);

/// The picture; nothing where there is no link to draw.
#[component]
pub fn Levels() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let drawn = memo(move || {
        let unit = workshop.unit.get();
        of_link(workshop, |answer, link| -> Drawn {
            (
                words::picture_title(link.weaker.from),
                words::directions_note(link),
                LevelsScene::new(answer, &link.weaker, unit),
            )
        })
    });
    let title = move || drawn.with(|drawn| drawn.as_ref().map(|drawn| drawn.0.clone()));
    let note = move || drawn.with(|drawn| drawn.as_ref().map(|drawn| drawn.1.to_owned()));
    let scene = move || drawn.with(|drawn| drawn.as_ref().map(|drawn| drawn.2.clone()));
    view! {
        <Show when=move || drawn.with(Option::is_some)>
            <Part title=move || title().unwrap_or_default() note=move || note().unwrap_or_default() wide=true>
                {live(move || scene().map(|scene| view! { <Rows scene/> }))}
            </Part>
        </Show>
    }
}

#[component]
fn Rows(scene: LevelsScene) -> impl IntoView {
    let is_short = scene.bracket.is_short;
    view! {
        <p class="unseen">{scene.description}</p>
        <ul class="levels" class:short=is_short>
            {scene.rows.into_iter().map(row).collect_view()}
        </ul>
        <Bracket bracket=scene.bracket/>
    }
}

fn row(row: LevelRow) -> impl IntoView {
    let (class, left, width) = match row.mark {
        LevelMark::Level(at) => ("level-mark", at, None),
        LevelMark::Needed(at) => ("level-mark needed", at, None),
        LevelMark::Gain(left, width) => ("level-bar gain", left, Some(width)),
        LevelMark::Loss(left, width) => ("level-bar loss", left, Some(width)),
    };
    view! {
        <li>
            <span class="level-name">{row.name}</span>
            <span class="level-track" aria-hidden="true">
                <span class=class style:left=percent(left) style:width=width.map(percent)></span>
            </span>
            <b>{row.figure}</b>
        </li>
    }
}

/// The margin between what is received and what is needed.
#[component]
fn Bracket(bracket: MarginBracket) -> impl IntoView {
    // The words lean towards their bracket and never leave the picture: what room there is
    // beside them is shared out by the bracket's place.
    let before = (bracket.left + 0.5 * bracket.width) / 100.0;
    let share = |part: f64| format!("{part:.4}");
    view! {
        <div class="margin-bracket" class:short=bracket.is_short>
            <div class="level-track" aria-hidden="true">
                <span class="bracket" style:left=percent(bracket.left) style:width=percent(bracket.width)></span>
            </div>
            <p class="bracket-words">
                <span style:flex-grow=share(before)></span>
                <b>{bracket.words}</b>
                <span style:flex-grow=share(1.0 - before)></span>
            </p>
        </div>
    }
}

/// A length in per cent of the picture.
pub(super) fn percent(value: f64) -> String {
    format!("{value:.2}%")
}
