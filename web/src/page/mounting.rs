//! Puts the pictures in their places: beside the entries where there is room
//! for two columns, else each in the part that it belongs to.

use leptos::prelude::*;
use tinwave_core::design::Band;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

use super::browser;
use super::state::Page;
use crate::drawing::{DragEdit, DragPhase};
use crate::history::Change;
use crate::pictures::{MatchChart, ModeLadder, SectionDrawing, SmithChart};

/// Runs now and whenever a signal that it reads changes.
pub(super) fn effect(mut run: Box<dyn FnMut()>) {
    Effect::new(move |_| run());
}

/// Mounts the pictures and keeps them where they belong.
pub(super) fn mount_pictures(page: Page, root: &Element) {
    let cursor = RwSignal::new(None);
    mount(root, "drawing", drawing(page));
    mount(root, "ladder", ladder(page));
    mount(root, "charts", charts(page, cursor));
    let root = root.clone();
    browser::media(
        "(min-width: 900px)",
        Box::new(move |wide| {
            for name in ["ladder", "charts"] {
                let place = if wide {
                    "wide".to_owned()
                } else {
                    [name, "-narrow"].concat()
                };
                if let (Some(picture), Some(place)) = (by_id(&root, name), by_id(&root, &place)) {
                    let _ = place.append_child(&picture);
                }
            }
        }),
    );
}

fn by_id(root: &Element, id: &str) -> Option<Element> {
    browser::part(root, &["#", id].concat())
}

fn mount(root: &Element, id: &str, picture: AnyView) {
    if let Some(place) = by_id(root, id).and_then(|place| place.dyn_into::<HtmlElement>().ok()) {
        mount_to(place, move || picture).forget();
    }
}

/// The work, followed.
fn design(page: Page) -> Signal<tinwave_core::design::Design> {
    Signal::derive(move || {
        page.track_edition();
        page.look(|model| model.work.design.clone())
    })
}

fn band(page: Page) -> Signal<Band> {
    Signal::derive(move || {
        page.track_edition();
        page.look(|model| model.work.design.band)
    })
}

fn stale(page: Page) -> Signal<bool> {
    Signal::derive(move || {
        page.track_edition();
        page.look(|model| model.waits)
    })
}

fn drawing(page: Page) -> AnyView {
    let unit = Signal::derive(move || {
        page.track_edition();
        page.look(|model| model.unit)
    });
    let on_drag = Callback::new(move |edit: DragEdit| {
        let DragEdit { field, um, phase } = edit;
        let mut work = page.look(|model| model.work.clone());
        // A value out of range changes nothing: the drawing follows the work.
        if work.set_field(field, i64::from(um)).is_ok() {
            page.put(&work, Change::ProbeDrag);
        }
        if phase == DragPhase::End {
            page.commit();
        }
    });
    view! { <SectionDrawing design=design(page) unit stale=stale(page) on_drag/> }.into_any()
}

fn ladder(page: Page) -> AnyView {
    let modes = Signal::derive(move || {
        page.track_edition();
        page.look(|model| {
            let analysis = model.analysis.as_ref();
            analysis.map_or_else(Vec::new, |analysis| analysis.modes.clone())
        })
    });
    view! { <ModeLadder modes band=band(page) stale=stale(page)/> }.into_any()
}

fn charts(page: Page, cursor: RwSignal<Option<u32>>) -> AnyView {
    let sweep = Signal::derive(move || {
        page.track_edition();
        page.look(|model| {
            let analysis = model.analysis.as_ref();
            analysis.map_or_else(Vec::new, |analysis| analysis.sweep.clone())
        })
    });
    let ghost = Signal::derive(move || {
        page.track_ghost();
        page.look(|model| model.ghost.clone())
    });
    let summary = Signal::derive(move || {
        page.track_edition();
        page.look(|model| {
            model
                .analysis
                .as_ref()
                .and_then(|analysis| analysis.match_summary)
        })
    });
    let reference_milliohm = Signal::derive(move || {
        page.track_edition();
        page.look(|model| model.work.design.probe.reference_milliohm)
    });
    let theme = Signal::derive(move || {
        page.track_edition();
        page.look(|model| model.theme as u32)
    });
    let name = Signal::derive(|| "best cut".to_owned());
    view! {
        <MatchChart sweep compare=ghost compare_name=name band=band(page) summary cursor
            stale=stale(page) theme/>
        <SmithChart sweep compare=ghost band=band(page) reference_milliohm cursor stale=stale(page)/>
    }
    .into_any()
}
