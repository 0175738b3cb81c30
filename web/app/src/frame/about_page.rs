//! What the page says of itself.

use leptos::prelude::*;
use tinwave_words::{frame as words, terms};

/// What it does, what it keeps to itself, and the trade's terms.
#[component]
pub fn AboutPage() -> impl IntoView {
    let terms = terms::Term::ALL.map(|of| {
        let text = terms::term(of);
        view! { <dt class="headline">{text.name}</dt><dd class="term-text">{text.text}</dd> }
    });
    view! {
        <h1 id="answer" tabindex="-1">{words::about()}</h1>
        {words::about_text().map(|text| view! { <p>{text}</p> }).collect_view()}
        <section>
            <h2>{words::terms_explained()}</h2>
            <dl>{terms.collect_view()}</dl>
        </section>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_explains_every_term() {
        let html = Owner::new().with(|| view! { <AboutPage/> }.to_html());
        assert_eq!(html.matches("<dt").count(), terms::Term::ALL.len());
    }
}
