//! Puts the pictures in their places: beside the entries where there is room
//! for two columns, else each in the part that it belongs to.

use leptos::prelude::*;
use tinwave_core::design::Band;
use tinwave_core::match_band::SweepPoint;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

use super::beam_part::pattern_plot;
use super::browser;
use super::later;
use super::state::Page;
use crate::drawing::{DragEdit, DragPhase};
use crate::history::Change;
use crate::pictures::{
    BeamPattern, Followed, MatchChart, ModeLadder, SectionDrawing, SmithChart, Watched,
};

/// Mounts the pictures and keeps them where they belong: each in a
/// task of its own, so that none holds up the page.
pub(super) fn mount_pictures(page: Page, root: &Element) {
    let narrow_or_wide = root.clone();
    browser::media(
        "(min-width: 900px)",
        Box::new(move |wide| arrange(&narrow_or_wide, wide)),
    );
    let cursor = Watched::new(None);
    let root = root.clone();
    later(Box::new(move || {
        mount(&root, "drawing", Box::new(move || drawing(page)));
        later(Box::new(move || {
            mount(&root, "charts", Box::new(move || match_chart(page, cursor)));
            later(Box::new(move || {
                mount(&root, "charts", Box::new(move || smith_chart(page, cursor)));
                mount(&root, "ladder", Box::new(move || ladder(page)));
                mount(&root, "pattern", Box::new(move || pattern(page)));
            }));
        }));
    }));
}

/// Beside the entries where there is room, else each in its part.
fn arrange(root: &Element, wide: bool) {
    for name in ["charts", "ladder"] {
        let place = if wide {
            "wide".to_owned()
        } else {
            [name, "-narrow"].concat()
        };
        if let (Some(picture), Some(place)) = (by_id(root, name), by_id(root, &place)) {
            let _ = place.append_child(&picture);
        }
    }
}

fn by_id(root: &Element, id: &str) -> Option<Element> {
    browser::part(root, &["#", id].concat())
}

fn mount(root: &Element, id: &str, picture: Box<dyn FnOnce() -> AnyView>) {
    if let Some(place) = by_id(root, id).and_then(|place| place.dyn_into::<HtmlElement>().ok()) {
        mount_to(place, picture).forget();
    }
}

/// The work, followed.
fn design(page: Page) -> Followed<tinwave_core::design::Design> {
    Followed::new(move || {
        page.track_edition();
        page.look(|model| model.work.design.clone())
    })
}

fn band(page: Page) -> Followed<Band> {
    Followed::new(move || {
        page.track_edition();
        page.look(|model| model.work.design.band)
    })
}

fn stale(page: Page) -> Followed<bool> {
    Followed::new(move || {
        page.track_edition();
        page.look(|model| model.waits)
    })
}

fn drawing(page: Page) -> AnyView {
    let unit = Followed::new(move || {
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

fn pattern(page: Page) -> AnyView {
    let plot = Followed::new(move || {
        page.track_edition();
        page.look(pattern_plot)
    });
    view! { <BeamPattern plot stale=stale(page)/> }.into_any()
}

fn ladder(page: Page) -> AnyView {
    let modes = Followed::new(move || {
        page.track_edition();
        page.look(|model| {
            let analysis = model.analysis.as_ref();
            analysis.map_or_else(Vec::new, |analysis| analysis.modes.clone())
        })
    });
    view! { <ModeLadder modes band=band(page) stale=stale(page)/> }.into_any()
}

/// The sweep, followed.
fn sweep(page: Page) -> Followed<Vec<SweepPoint>> {
    Followed::new(move || {
        page.track_edition();
        page.look(|model| {
            let analysis = model.analysis.as_ref();
            analysis.map_or_else(Vec::new, |analysis| analysis.sweep.clone())
        })
    })
}

/// What stands beside the sweep: a measurement, or else the best cut.
fn beside(page: Page, needs_phase: bool) -> Followed<Vec<SweepPoint>> {
    Followed::new(move || {
        page.track_ghost();
        page.look(|model| match &model.measured {
            Some(measured) if measured.has_phase || !needs_phase => measured.points.clone(),
            Some(_) => Vec::new(),
            None => model.ghost.clone(),
        })
    })
}

fn match_chart(page: Page, cursor: Watched<Option<u32>>) -> AnyView {
    let summary = Followed::new(move || {
        page.track_edition();
        page.look(|model| {
            let analysis = model.analysis.as_ref();
            analysis.and_then(|analysis| analysis.match_summary)
        })
    });
    let theme = Followed::new(move || {
        page.track_edition();
        page.look(|model| model.theme as u32)
    });
    let name = Followed::new(move || {
        page.track_ghost();
        let measured = page.look(|model| model.measured.is_some());
        if measured { "measured" } else { "best cut" }.to_owned()
    });
    view! {
        <MatchChart sweep=sweep(page) compare=beside(page, false) compare_name=name band=band(page)
            summary cursor stale=stale(page) theme/>
    }
    .into_any()
}

fn smith_chart(page: Page, cursor: Watched<Option<u32>>) -> AnyView {
    let reference_milliohm = Followed::new(move || {
        page.track_edition();
        page.look(|model| model.work.design.probe.reference_milliohm)
    });
    view! {
        <SmithChart sweep=sweep(page) compare=beside(page, true) band=band(page) reference_milliohm
            cursor stale=stale(page)/>
    }
    .into_any()
}
