//! The picture of the open step, drawn at the width that there is.

use leptos::html::Div;
use leptos::prelude::*;
use tinwave_drawing::bench::{BenchLine, BenchScene, BenchText, BenchView, bench_scene};
use tinwave_words::make as words;

use super::bench::{Bench, Readiness};
use crate::browser;
use crate::reactive::{effect, live, memo};

/// Until the page knows better: a phone.
const USUAL_WIDTH: f64 = 328.0;
/// Wider than this a picture is no clearer.
const WIDEST: f64 = 720.0;

/// The drawing of the open step only.
#[component]
pub fn StepPicture(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let place = NodeRef::<Div>::new();
    let width = RwSignal::new(USUAL_WIDTH);
    effect(move || {
        if let Some(place) = place.get() {
            browser::watch_size(&place, move |now, _| width.set(now.min(WIDEST)));
        }
    });
    let scene = memo(move || {
        if bench.readiness() == Readiness::Searching {
            return None;
        }
        bench.workshop.work.with(|work| {
            let view = BenchView {
                work,
                unit: bench.workshop.unit.get(),
                width: width.get(),
            };
            bench_scene(bench.step.get(), &view)
        })
    });
    let shows = move || {
        let step = bench.step.get();
        let said = bench.words(step);
        words::shows(step, &said.line, &said.from)
    };
    view! {
        <div class="bench-picture" node_ref=place>
            {live(move || scene.get().map(|scene| drawn(scene, shows())))}
        </div>
    }
}

/// A picture as SVG, for those who see it and those who don't.
pub(super) fn drawn(scene: BenchScene, shows: String) -> impl IntoView {
    let view_box = format!("0 0 {} {}", scene.width, scene.height);
    let paths = scene.paths.into_iter();
    let texts = scene.texts.into_iter();
    view! {
        <svg class="bench-drawing" role="img" aria-label=shows viewBox=view_box
            width=scene.width.to_string() height=scene.height.to_string()>
            {paths.map(|path| view! { <path class=class_of(path.line) d=path.data/> }).collect_view()}
            {texts.map(text).collect_view()}
        </svg>
    }
}

fn text(text: BenchText) -> impl IntoView {
    let class = match (text.is_figure, text.is_mark) {
        (true, true) => "figure-text mark-text",
        (true, false) => "figure-text",
        (false, _) => "words-text",
    };
    view! {
        <text class=class x=text.x.to_string() y=text.y.to_string()
            text-anchor=text.anchor.attribute()>{text.text}</text>
    }
}

const fn class_of(line: BenchLine) -> &'static str {
    match line {
        BenchLine::Tint => "tint",
        BenchLine::Cut => "cut",
        BenchLine::Outline => "outline",
        BenchLine::Thin => "thin",
        BenchLine::Hidden => "hidden-edge",
        BenchLine::Centre => "centre",
        BenchLine::Arrow => "arrow",
        BenchLine::Wire => "wire",
        BenchLine::Mark => "mark-line",
        BenchLine::MarkThin => "mark-thin",
        BenchLine::MarkArrow => "mark-arrow",
    }
}
