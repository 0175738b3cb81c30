//! The can in section, to scale, with its dimensions and a probe to take hold of.

use leptos::html::Div;
use leptos::prelude::*;
use tinwave_core::design::Design;
use tinwave_core::design_error::Field;

use super::measured_width::measured_width;
use super::probe_handle::ProbeHandle;
use crate::drawing::DragEdit;
use crate::drawing::dimension_line::Anchor;
use crate::drawing::fixed_point::push_tenths;
use crate::drawing::section_scale::FIRST_WIDTH;
use crate::drawing::section_sheet::{MOST_LABELS, SectionSheet};
use crate::entry::LengthUnit;

/// The section drawing of a design.
#[component]
pub fn SectionDrawing(
    /// The last good design.
    #[prop(into)]
    design: Signal<Design>,
    /// Unit of the figures.
    #[prop(into)]
    unit: Signal<LengthUnit>,
    /// Whether an entry is bad, so that this is the last good picture.
    #[prop(into)]
    stale: Signal<bool>,
    /// Called for every step of a drag or a key.
    #[prop(into)]
    on_drag: Callback<DragEdit>,
) -> impl IntoView {
    let stage = NodeRef::<Div>::new();
    let width = measured_width(stage, FIRST_WIDTH);
    let sheet = Memo::new(move |_| {
        design.with(|design| SectionSheet::new(design, unit.get(), width.get()))
    });
    let handle = |field| ProbeHandle::new(field, design, unit, sheet, on_drag).view();
    view! {
        <figure class="picture section-drawing" class:pic-stale=stale>
            <div class="pic-stage pic-section-stage" node_ref=stage>
                {sheet_view(sheet)}
                {handle(Field::BackshortDistance)}
                {handle(Field::ProbeLength)}
            </div>
        </figure>
    }
}

/// A path of the sheet that follows it.
fn line(
    sheet: Memo<SectionSheet>,
    class: &'static str,
    data: fn(&SectionSheet) -> &str,
) -> AnyView {
    view! { <path class=class d=move || sheet.with(|sheet| data(sheet).to_owned())/> }.into_any()
}

fn sheet_view(sheet: Memo<SectionSheet>) -> AnyView {
    let view_box = move || {
        sheet.with(|sheet| {
            let mut text = String::from("0 0 ");
            push_tenths(&mut text, sheet.scale.width);
            text.push(' ');
            push_tenths(&mut text, sheet.scale.height);
            text
        })
    };
    let labels: Vec<AnyView> = (0..MOST_LABELS).map(|slot| label(sheet, slot)).collect();
    view! {
        <svg class="pic-sheet" viewBox=view_box role="img"
            aria-labelledby="pic-section-title" aria-describedby="pic-section-desc">
            <title id="pic-section-title">"The can in section"</title>
            <desc id="pic-section-desc">
                {move || sheet.with(|sheet| sheet.description.clone())}
            </desc>
            <defs>
                <pattern id="pic-hatch" width="5" height="5"
                    patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                    <path class="pic-hatch" d="M0 0V5"/>
                </pattern>
            </defs>
            {line(sheet, "pic-edge", |sheet| sheet.outline.edges.as_str())}
            <path class="pic-cut" fill="url(#pic-hatch)"
                d=move || sheet.with(|sheet| sheet.outline.cut.as_str().to_owned())/>
            {line(sheet, "pic-sleeve", |sheet| sheet.outline.sleeve.as_str())}
            {line(sheet, "pic-screw", |sheet| sheet.outline.screws.as_str())}
            {line(sheet, "pic-wire", |sheet| sheet.outline.wire.as_str())}
            {line(sheet, "pic-centre", |sheet| sheet.outline.centre.as_str())}
            {line(sheet, "pic-thin", |sheet| sheet.drafting.thin.as_str())}
            {line(sheet, "pic-arrow", |sheet| sheet.drafting.arrows.as_str())}
            <path class="pic-grip" d=move || sheet.with(|sheet| sheet.probe.grips())/>
            {labels}
        </svg>
    }
    .into_any()
}

/// One text of the sheet; empty where the sheet has fewer.
fn label(sheet: Memo<SectionSheet>, slot: usize) -> AnyView {
    let pick = move |pick: fn(&crate::drawing::dimension_line::Label) -> String| {
        sheet.with(|sheet| sheet.drafting.labels.get(slot).map(pick))
    };
    let anchor = move || {
        sheet.with(|sheet| {
            let label = sheet.drafting.labels.get(slot);
            label
                .map_or(Anchor::Start, |label| label.anchor)
                .attribute()
        })
    };
    let class = move || {
        sheet.with(|sheet| {
            let label = sheet.drafting.labels.get(slot);
            label.map_or("pic-words", |label| label.class())
        })
    };
    view! {
        <text class=class text-anchor=anchor transform=move || pick(|label| label.transform())>
            {move || pick(|label| label.text.clone())}
        </text>
    }
    .into_any()
}
