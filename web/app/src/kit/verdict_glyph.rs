//! The glyph of a verdict: its shape tells the grade without its colour.

use leptos::prelude::*;
use tinwave_core::grade::Grade;

/// A full disc with a tick, a ring whose lower half is filled, or a ring with a cross.
///
/// ```ignore
/// view! { <VerdictGlyph grade=Grade::WithCare/> }
/// ```
#[component]
pub fn VerdictGlyph(
    /// The grade.
    grade: Grade,
) -> impl IntoView {
    let (class, shape) = match grade {
        Grade::WillDo => (
            "verdict-glyph go",
            view! {
                <circle class="full" cx="12" cy="12" r="11"/>
                <path class="in-it" d="M6.8 12.4l3.6 3.6 6.9-7.6"/>
            }
            .into_any(),
        ),
        Grade::WithCare => (
            "verdict-glyph care",
            view! {
                <circle cx="12" cy="12" r="10"/>
                <path class="full" d="M2 12a10 10 0 0 0 20 0z"/>
                <path d="M12 6v3"/>
            }
            .into_any(),
        ),
        Grade::WillNotDo => (
            "verdict-glyph no",
            view! {
                <circle cx="12" cy="12" r="10"/>
                <path d="M8 8l8 8M16 8l-8 8"/>
            }
            .into_any(),
        ),
    };
    view! { <svg class=class viewBox="0 0 24 24" aria-hidden="true">{shape}</svg> }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_grade_has_a_shape_of_its_own() {
        let shapes = [Grade::WillDo, Grade::WithCare, Grade::WillNotDo]
            .map(|grade| view! { <VerdictGlyph grade/> }.to_html());
        for (index, shape) in shapes.iter().enumerate() {
            assert!(shape.contains("aria-hidden=\"true\""));
            assert!(!shapes[index + 1..].contains(shape));
        }
    }
}
