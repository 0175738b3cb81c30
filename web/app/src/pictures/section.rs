//! The can in section, to scale, with its dimensions.

use leptos::ev::KeyboardEvent;
use leptos::html::Div;
use leptos::prelude::*;
use tinwave_core::design_error::Field;
use tinwave_drawing::path_text::PathText;
use tinwave_drawing::section::drafting::{Label, Tone};
use tinwave_drawing::section::knob::Tip;
use tinwave_drawing::section::{SectionFor, SectionOutline, SectionScene, SectionSpec, SheetSize};
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::workpiece::Workpiece;
use tinwave_words::section as words;

use super::section_knob::knob;
use crate::browser;
use crate::kit::new_id;
use crate::reactive::{effect, live, memo};
use crate::state::{Freshness, Workshop};

/// The design in section. It is drawn at the size at which it is shown: its letters do
/// not grow with it. Without a cut (a can that will not do) it shows no hole and no wire.
///
/// ```ignore
/// view! { <SectionPicture shown_for=SectionFor::Feed with_knob=true/> }
/// view! { <SectionPicture shown_for=SectionFor::Can would_do_um=move || would_do.get()
///     on_field=|field| browser::focus(&field_id(field))/> }
/// ```
#[component]
pub fn SectionPicture(
    /// Which station shows it: what is blue, and from where the wire is measured.
    shown_for: SectionFor,
    /// An inside diameter that would do, micrometres, where the can will not.
    #[prop(optional, into)]
    would_do_um: Signal<Option<u32>>,
    /// Another cut to compare with, dashed.
    #[prop(optional, into)]
    other: Signal<Option<Tip>>,
    /// Whether the tip can be taken hold of.
    #[prop(optional)]
    with_knob: bool,
    /// Goes to the entry of a number that is pressed in the drawing.
    #[prop(optional, into)]
    on_field: Option<Callback<Field>>,
    /// Words below the drawing, before its scale ("Best cut for this can.").
    #[prop(optional, into)]
    note: Signal<String>,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let laid = move |sheet: SheetSize| {
        workshop.work.with(|work| {
            let shown = Shown {
                work,
                unit: workshop.unit.get(),
                has_cut: workshop.answers.has_cut(),
                would_do_um: would_do_um.get(),
                other: other.get(),
            };
            shown.scene(shown_for, sheet)
        })
    };
    let place = NodeRef::<Div>::new();
    let sheet = RwSignal::new(SheetSize::PHONE);
    effect(move || {
        let Some(place) = place.get() else { return };
        let watched = place.clone();
        browser::watch_size(&place, move |width, height| {
            sheet.set(SheetSize::measured(
                width,
                height,
                browser::letter_px(&watched),
            ));
        });
    });
    let scene = memo(move || laid(sheet.get()));
    let draw = move |class: &'static str, scene: Memo<SectionScene>| {
        let handle = with_knob.then(|| knob(scene, workshop));
        drawing(class, scene, on_field, handle)
    };
    // The first paint does not know its width: the styles choose.
    let sheets = if browser::is_here() {
        draw("section-drawing", scene).into_any()
    } else {
        let wide = memo(move || laid(SheetSize::WIDE));
        [
            draw("section-drawing on-phone", scene),
            draw("section-drawing on-desk", wide),
        ]
        .collect_view()
        .into_any()
    };
    let waits = move || workshop.answers.freshness.get() == Freshness::Pending;
    view! {
        <figure class="section-picture" class:pending=waits>
            <div class="section-sheet" node_ref=place>{sheets}</div>
            <figcaption class="note">
                {note}" "{live(move || scene.with(|scene| scene.note.clone()))}
            </figcaption>
        </figure>
    }
}

/// All that the drawing is made from.
struct Shown<'a> {
    work: &'a Workpiece,
    unit: LengthUnit,
    has_cut: bool,
    would_do_um: Option<u32>,
    other: Option<Tip>,
}

impl Shown<'_> {
    fn scene(&self, shown_for: SectionFor, sheet: SheetSize) -> SectionScene {
        let design = &self.work.design;
        let face = self
            .work
            .connector
            .face_from_inner_wall_um(design.can.wall_um);
        let spec = SectionSpec {
            has_cut: self.has_cut,
            would_do_um: self.would_do_um,
            other: self.other.filter(|other| *other != Tip::of(design)),
            face_um: Some(design.probe.length_um.saturating_add(face)),
            ..SectionSpec::new(design, self.unit, shown_for)
        };
        SectionScene::new(&spec, sheet)
    }
}

fn drawing(
    class: &'static str,
    scene: Memo<SectionScene>,
    on_field: Option<Callback<Field>>,
    handle: Option<AnyView>,
) -> AnyView {
    let hatch = new_id("hatch");
    let filled = format!("url(#{hatch})");
    let layer = move |class: &'static str, of: fn(&SectionOutline) -> &PathText| {
        view! { <path class=class d=move || scene.with(|scene| of(&scene.outline).as_str().to_owned())/> }
    };
    let dimension = move |tone: Tone| {
        let thin = move || scene.with(|scene| path_of(&scene.drafting.thin, tone));
        let arrows = move || scene.with(|scene| path_of(&scene.drafting.arrows, tone));
        view! { <g class=tone.class()><path class="thin" d=thin/><path class="arrow" d=arrows/></g> }
    };
    let pressed = move |label: &Label| on_field.is_some() && label.field.is_some();
    let plain = move || {
        scene.with(|scene| {
            let labels = scene.drafting.labels.iter();
            labels
                .filter(|label| !pressed(label))
                .map(text)
                .collect_view()
        })
    };
    let links = move || {
        scene.with(|scene| {
            let labels = scene.drafting.labels.iter();
            let link = |label: &Label| link(scene, label, on_field?);
            labels.filter_map(link).collect_view()
        })
    };
    view! {
        <svg class=class preserveAspectRatio="xMinYMin meet"
            viewBox=move || scene.with(|scene| {
                let sheet = scene.scale.sheet;
                format!("0 0 {:.0} {:.0}", sheet.width, sheet.height)
            })>
            <defs>
                <pattern id=hatch width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                    <path class="hatch" d="M0 0V6"/>
                </pattern>
            </defs>
            <g role="img" aria-label=move || scene.with(|scene| scene.description.clone())>
                <path class="cut" fill=filled
                    d=move || scene.with(|scene| scene.outline.cut.as_str().to_owned())/>
                {layer("would-do", |outline| &outline.would_do)}
                {layer("edge", |outline| &outline.edges)}
                {layer("centre", |outline| &outline.centre)}
                {layer("other", |outline| &outline.other)}
                {layer("sleeve", |outline| &outline.sleeve)}
                {layer("screw", |outline| &outline.screws)}
                {layer("wire", |outline| &outline.wire)}
                {Tone::ALL.map(dimension).collect_view()}
                {plain}
            </g>
            {links}
            {handle}
        </svg>
    }
    .into_any()
}

fn path_of(paths: &[PathText], tone: Tone) -> String {
    paths
        .get(tone as usize)
        .map_or_else(String::new, |path| path.as_str().to_owned())
}

/// A figure with its words.
fn text(label: &Label) -> impl IntoView + use<> {
    let turn = if label.turned { " rotate(-90)" } else { "" };
    let place = format!("translate({:.1} {:.1}){turn}", label.x, label.y);
    let figure = (!label.figure.is_empty())
        .then(|| view! { <tspan class="figure-px">{label.figure.clone()}</tspan> });
    let words = (!label.words.is_empty()).then(|| {
        let space = if label.figure.is_empty() { "0" } else { ".3em" };
        view! { <tspan class="words-px" dx=space>{label.words.clone()}</tspan> }
    });
    view! { <text class=label.tone.class() text-anchor=label.anchor.attribute() transform=place>{figure}{words}</text> }
}

/// A figure that leads to its entry; a finger has room on it.
fn link(
    scene: &SectionScene,
    label: &Label,
    on_field: Callback<Field>,
) -> Option<impl IntoView + use<>> {
    const TOUCH: f64 = 44.0;
    let field = label.field?;
    let width = scene.drafting.letter.width(label).max(TOUCH);
    let (wide, high) = if label.turned {
        (TOUCH, width)
    } else {
        (width, TOUCH)
    };
    let (x, y) = (label.x - wide / 2.0, label.y - high / 2.0);
    let tip = if label.turned { 0.0 } else { 5.0 };
    let name = words::to_the_entry(tinwave_words::label(field).plain, &label.figure);
    let press = move || on_field.run(field);
    let on_key = move |event: KeyboardEvent| {
        if matches!(event.key().as_str(), "Enter" | " ") {
            event.prevent_default();
            press();
        }
    };
    Some(view! {
        <g class="section-link" role="button" tabindex="0" aria-label=name
            on:click=move |_| press() on:keydown=on_key>
            <rect x=format!("{x:.1}") y=format!("{:.1}", y - tip) width=format!("{wide:.1}") height=format!("{high:.1}")/>
            {text(label)}
        </g>
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn picture(with_knob: bool) -> String {
        Owner::new().with(|| {
            provide_context(Workshop::open());
            view! { <SectionPicture shown_for=SectionFor::Feed with_knob/> }.to_html()
        })
    }

    #[test]
    fn the_first_paint_is_drawn_for_a_phone_and_for_a_desk() {
        let html = picture(false);
        assert_eq!(html.matches("<svg").count(), 2);
        assert!(
            html.contains("on-phone") && html.contains("on-desk"),
            "{html}"
        );
        assert!(
            html.contains("190.0") && html.contains("long inside"),
            "{html}"
        );
        // The page's policy would refuse it.
        assert!(!html.contains(" style="), "{html}");
    }

    #[test]
    fn what_it_shows_is_said_in_words() {
        let html = picture(false);
        assert!(
            html.contains("role=\"img\"") && html.contains("from the closed end’s rim"),
            "{html}"
        );
        assert!(!html.contains("role=\"slider\""));
    }

    #[test]
    fn the_tip_can_be_taken_hold_of_where_it_is_wanted() {
        assert!(picture(true).contains("role=\"slider\""));
    }
}
