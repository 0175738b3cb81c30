//! The first visit: the way from a can to an antenna in three pictures.

use leptos::prelude::*;
use tinwave_words::frame as words;

use crate::kit::new_id;
use crate::reactive::memo;
use crate::state::Workshop;

/// Three pictures of the way; they go with the first edit.
///
/// ```ignore
/// view! { <FirstTime/> }
/// ```
#[component]
pub fn FirstTime() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let is_example = memo(move || workshop.is_example());
    view! { <Show when=move || is_example.get()><Way/></Show> }
}

/// Three pictures: the can and its width, hole and wire, the beam.
#[component]
fn Way() -> impl IntoView {
    let [measure, cut, point] = words::three_steps();
    let id = new_id("way");
    let named = id.clone();
    view! {
        <section class="first-time" aria-labelledby=named>
            <h2 id=id class="unseen">{words::the_way()}</h2>
            <ol>
                <li>
                    <svg viewBox="0 0 96 48" aria-hidden="true">
                        <path d="M20 8h56v32H20z"/><path class="blue" d="M84 8v32m-3-28l3-4 3 4m-6 24l3 4 3-4"/>
                    </svg>
                    {measure}
                </li>
                <li>
                    <svg viewBox="0 0 96 48" aria-hidden="true">
                        <path d="M76 8H20v32h16M46 40h30"/><path class="copper" d="M41 20v24"/>
                        <path class="blue" d="M20 46h21"/>
                    </svg>
                    {cut}
                </li>
                <li>
                    <svg viewBox="0 0 96 48" aria-hidden="true">
                        <path d="M34 14H8v20h26"/><path class="copper" d="M18 24v11"/>
                        <path class="blue" d="M38 24c10-14 44-16 50 0-6 16-40 14-50 0z"/>
                    </svg>
                    {point}
                </li>
            </ol>
        </section>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_core::design_error::Field;
    use tinwave_maker::history::Change;

    #[test]
    fn it_stands_for_the_example_alone() {
        Owner::new().with(|| {
            let workshop = Workshop::open();
            provide_context(workshop);
            let html = || view! { <FirstTime/> }.to_html();
            assert!(html().contains(words::three_steps()[0]));
            workshop.edit(Change::Field(Field::InsideDiameter), |work| {
                work.design.can.inside_diameter_um = 99_000;
            });
            assert!(!html().contains(words::three_steps()[0]));
        });
    }
}
