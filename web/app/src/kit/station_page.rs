//! The frame of a station: answer, picture, figures, entries, more.

use leptos::html::Div;
use leptos::prelude::*;

use crate::reactive::live;
use tinwave_core::grade::Grade;
use tinwave_maker::station::Station;
use tinwave_words::frame as words;

use super::{VerdictGlyph, side_heights};

/// A station's page. The order of the parts is the order of reading on a phone:
/// answer, picture, figures, entries, more; with `entries_first` the entries come
/// before the answer and the figures right after it. A desk has figures and entries in
/// the right column.
///
/// ```ignore
/// view! {
///     <StationPage station=Station::Can answer=move || answer() reason=move || reason() grade=move || Some(grade())
///         picture=|| view! { <Section/> } figures=|| view! { <CanFigures/> }
///         entries=|| view! { <CanEntries/> } more=|| view! { <Part …/> }/>
/// }
/// ```
#[component]
pub fn StationPage(
    /// Which station.
    station: Station,
    /// Stands in place of the station's name above the answer.
    #[prop(optional, into)]
    whereabouts: Option<ViewFn>,
    /// What it answers: the page's heading.
    #[prop(into)]
    answer: Signal<String>,
    /// One sentence of reason.
    #[prop(optional, into)]
    reason: Signal<String>,
    /// The verdict, where the answer is one: its glyph stands beside it.
    #[prop(optional, into)]
    grade: Signal<Option<Grade>>,
    /// What to do: buttons below the reason.
    #[prop(optional, into)]
    todo: Option<ViewFn>,
    /// The picture that proves the answer.
    #[prop(optional, into)]
    picture: Option<ViewFn>,
    /// Its figures: a [`super::Figures`].
    #[prop(optional, into)]
    figures: Option<ViewFn>,
    /// What can be changed: [`super::EntryGroup`]s, and findings.
    #[prop(optional, into)]
    entries: Option<ViewFn>,
    /// Further pictures: [`super::Part`]s.
    #[prop(optional, into)]
    more: Option<ViewFn>,
    /// Whether a phone has the entries before the answer.
    #[prop(optional)]
    entries_first: bool,
    /// Whether the picture stays in sight on a phone while an entry is typed in.
    #[prop(optional)]
    picture_stays: bool,
) -> impl IntoView {
    let places = [NodeRef::<Div>::new(), NodeRef::new(), NodeRef::new()];
    let [page, figures_place, entries_place] = places;
    side_heights::watch(page, figures_place, entries_place);
    let mut class = format!("station {}", station.key());
    for (is, name) in [
        (entries_first, " entries-first"),
        (picture_stays, " picture-stays"),
        (figures.is_none(), " no-figures"),
        (entries.is_none(), " no-entries"),
        (figures.is_none() && entries.is_none(), " no-side"),
    ] {
        if is {
            class.push_str(name);
        }
    }
    let answer = view! {
        <div class="place-answer" class:graded=move || grade.with(Option::is_some)>
            {match whereabouts {
                Some(whereabouts) => whereabouts.run().into_any(),
                None => view! { <p class="where">{words::station(station)}</p> }.into_any(),
            }}
            {live(move || grade.get().map(|grade| view! { <VerdictGlyph grade/> }))}
            <h1 id="answer" tabindex="-1">{answer}</h1>
            <Show when=move || !reason.with(String::is_empty)><p class="reason">{reason}</p></Show>
            {todo.map(|todo| view! { <div class="todo">{todo.run()}</div> })}
        </div>
    };
    let picture = picture.map(|picture| view! { <div class="place-picture">{picture.run()}</div> });
    let figures = figures.map(
        |figures| view! { <div class="place-figures" node_ref=figures_place>{figures.run()}</div> },
    );
    let entries = entries.map(
        |entries| view! { <div class="place-entries" node_ref=entries_place>{entries.run()}</div> },
    );
    let more = more.map(|more| view! { <div class="place-more">{more.run()}</div> });
    let parts = if entries_first {
        view! { {entries}{answer}{figures}{picture}{more} }.into_any()
    } else {
        view! { {answer}{picture}{figures}{entries}{more} }.into_any()
    };
    view! { <div class=class node_ref=page>{parts}</div> }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page(entries_first: bool) -> String {
        Owner::new().with(|| {
            view! {
                <StationPage station=Station::Can answer="Will do" reason="One mode passes." grade=Some(Grade::WillDo)
                    entries_first picture=|| "PICTURE" figures=|| "FIGURES" entries=|| "ENTRIES" more=|| "MORE"/>
            }
            .to_html()
        })
    }

    fn order(html: &str) -> Vec<&'static str> {
        let mut found: Vec<_> = ["<h1", "PICTURE", "FIGURES", "ENTRIES", "MORE"]
            .into_iter()
            .map(|part| (html.find(part), part))
            .collect();
        found.sort_unstable();
        found.into_iter().map(|(_, part)| part).collect()
    }

    #[test]
    fn the_order_of_reading_is_the_phones() {
        assert_eq!(
            order(&page(false)),
            ["<h1", "PICTURE", "FIGURES", "ENTRIES", "MORE"]
        );
        assert_eq!(
            order(&page(true)),
            ["ENTRIES", "<h1", "FIGURES", "PICTURE", "MORE"]
        );
    }

    #[test]
    fn the_answer_is_the_one_heading_and_can_take_the_focus() {
        let html = page(false);
        assert_eq!(html.matches("<h1").count(), 1);
        assert!(html.contains("<h1 id=\"answer\" tabindex=\"-1\""), "{html}");
        assert!(html.contains("verdict-glyph go"), "{html}");
    }
}
