//! A small section without dimensions, at a given scale.

use leptos::prelude::*;

use crate::reactive::memo;
use tinwave_core::design::Design;
use tinwave_drawing::section::BareSection;

/// A can with its cut and nothing else, at so many CSS px per millimetre: for cards on
/// a shelf, all to one scale.
///
/// ```ignore
/// view! { <BareSectionPicture design=design.clone() px_per_mm=0.6 has_cut=true name="Orchard gate, in section"/> }
/// ```
#[component]
pub fn BareSectionPicture(
    /// The design.
    #[prop(into)]
    design: Signal<Design>,
    /// CSS px per millimetre.
    #[prop(into)]
    px_per_mm: Signal<f64>,
    /// Whether its cut is shown.
    #[prop(into)]
    has_cut: Signal<bool>,
    /// What it is, for those who can't see it.
    #[prop(into)]
    name: Signal<String>,
) -> impl IntoView {
    let drawn = memo(move || {
        design.with(|design| BareSection::new(design, px_per_mm.get(), has_cut.get()))
    });
    let size =
        move |of: fn((f64, f64)) -> f64| format!("{:.0}", drawn.with(|drawn| of(drawn.size)));
    let path = move |of: fn(&BareSection) -> &str| drawn.with(|drawn| of(drawn).to_owned());
    view! {
        <svg class="section-drawing bare" role="img" aria-label=name
            width=move || size(|size| size.0) height=move || size(|size| size.1)
            viewBox=move || format!("0 0 {} {}", size(|size| size.0), size(|size| size.1))>
            <path class="cut solid" d=move || path(|drawn| drawn.outline.cut.as_str())/>
            <path class="edge" d=move || path(|drawn| drawn.outline.edges.as_str())/>
            <path class="screw" d=move || path(|drawn| drawn.outline.screws.as_str())/>
            <path class="wire" d=move || path(|drawn| drawn.outline.wire.as_str())/>
        </svg>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_maker::example::example;

    #[test]
    fn it_is_a_named_picture_of_its_own_size() {
        let design = example().design;
        let html = Owner::new().with(|| {
            view! { <BareSectionPicture design px_per_mm=0.5 has_cut=true name="Example, in section"/> }.to_html()
        });
        assert!(
            html.contains("aria-label=\"Example, in section\"") && html.contains("width="),
            "{html}"
        );
        assert!(html.contains("class=\"wire\""), "{html}");
    }
}
