//! The can in section, to scale, with its dimensions and a probe to take hold of.

use leptos::prelude::*;
use tinwave_core::design::Design;

use super::figure::{Picture, figure, follow};
use super::followed::Followed;
use super::live_scene::LiveScene;
use super::probe_handle::{Place, ProbeHandle};
use crate::drawing::DragEdit;
use crate::drawing::section_sheet::SectionSheet;
use crate::drawing::section_svg::section_scene;
use crate::entry::LengthUnit;

/// The handles come first to the keyboard in the order of the work: where to
/// drill, then how long to cut.
const MARKUP: &str = concat!(
    "<div class=\"pic-stage pic-section-stage\"><div class=\"pic-picture\"></div>",
    "<div class=\"pic-handle pic-handle-body\" role=\"slider\" tabindex=\"0\" ",
    "aria-label=\"Probe distance from the back wall\" aria-orientation=\"horizontal\"></div>",
    "<div class=\"pic-handle pic-handle-tip\" role=\"slider\" tabindex=\"0\" ",
    "aria-label=\"Probe length\" aria-orientation=\"vertical\"></div>",
    "<p class=\"pic-stale-note\">Last good values</p></div>",
);

/// The section drawing of a design.
#[component]
pub fn SectionDrawing(
    /// The last good design.
    design: Followed<Design>,
    /// Unit of the figures.
    unit: Followed<LengthUnit>,
    /// Whether an entry is bad, so that this is the last good picture.
    stale: Followed<bool>,
    /// Called for every step of a drag or a key.
    #[prop(into)]
    on_drag: Callback<DragEdit>,
) -> impl IntoView {
    let ready = move |picture: Picture| draw(&picture, design, unit, on_drag);
    figure("picture section-drawing", MARKUP, stale, Box::new(ready))
}

fn draw(
    picture: &Picture,
    design: Followed<Design>,
    unit: Followed<LengthUnit>,
    on_drag: Callback<DragEdit>,
) {
    let (Some(stage), Some(body), Some(tip)) = (
        picture.part(".pic-picture"),
        picture.part(".pic-handle-body"),
        picture.part(".pic-handle-tip"),
    ) else {
        return;
    };
    let mut body = ProbeHandle::new(body, false, on_drag);
    let mut tip = ProbeHandle::new(tip, true, on_drag);
    let mut scene = LiveScene::new(stage.into());
    let width = picture.width;
    follow(Box::new(move || {
        let design = design.get();
        let unit = unit.get();
        let mut sheet = SectionSheet::new(&design, unit, width.get());
        let size = (sheet.scale.width, sheet.scale.height);
        let (tip_box, body_box) = sheet.probe.touch_boxes(&sheet.scale);
        let px_per_um = sheet.scale.px_per_um;
        scene.show(section_scene(&mut sheet, "pic-section"));
        for (handle, area) in [(&mut body, body_box), (&mut tip, tip_box)] {
            handle.place(
                &design,
                unit,
                Place {
                    area,
                    size,
                    px_per_um,
                },
            );
        }
    }));
}
