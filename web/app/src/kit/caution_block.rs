//! A caution at the work where it arises.

use leptos::prelude::*;
use tinwave_words::CautionText;

use super::{FindingBlock, FindingTone};

/// A caution: headline, what happens and what to do, source.
///
/// ```ignore
/// view! { <CautionBlock caution=caution(Caution::DrillEdges)/> }
/// ```
#[component]
pub fn CautionBlock(
    /// Its words.
    caution: CautionText,
) -> impl IntoView {
    view! {
        <FindingBlock tone=FindingTone::Caution headline=caution.headline text=caution.text
            source=caution.source/>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_words::{Caution, caution};

    #[test]
    fn a_caution_names_what_to_do_and_its_source() {
        let text = caution(Caution::PowerLines);
        let html = Owner::new().with(|| view! { <CautionBlock caution=text/> }.to_html());
        assert!(
            html.contains(text.headline) && html.contains("class=\"source\""),
            "{html}"
        );
    }
}
