//! All cautions, by the work where they arise.

use leptos::prelude::*;
use tinwave_words::{Caution, Occasion, caution, frame as words, occasion};

use crate::kit::CautionBlock;

/// Every caution, whatever the can.
#[component]
pub fn CautionsPage() -> impl IntoView {
    let part = |of: Occasion| {
        let cautions = Caution::ALL
            .into_iter()
            .map(caution)
            .filter(move |text| text.occasion == of)
            .map(|caution| view! { <CautionBlock caution/> })
            .collect_view();
        view! { <section><h2>{occasion(of)}</h2>{cautions}</section> }
    };
    view! {
        <h1 id="answer" tabindex="-1">{words::all_cautions()}</h1>
        <p>{words::about_cautions()}</p>
        {Occasion::ALL.map(part).collect_view()}
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_caution_stands_there_once() {
        let html = Owner::new().with(|| view! { <CautionsPage/> }.to_html());
        assert_eq!(
            html.matches("class=\"finding\"").count(),
            Caution::ALL.len()
        );
    }
}
