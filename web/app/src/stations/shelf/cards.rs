//! The cards of what is kept, and what can be done with the present design.

use leptos::prelude::*;
use tinwave_drawing::card_section::common_extent;
use tinwave_words::{frame, shelf as words};

use super::card::{Card, Shown};
use super::design_file;
use super::keep::{InUse, Keeping};
use crate::frame::{Briefs, begin_anew};
use crate::kit::{
    Action, ActionKind, DroppedFile, Empty, FileDrop, FindingBlock, FindingTone, IconName,
};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// All cards, to one scale; or what would stand here.
#[component]
pub(super) fn Cards() -> impl IntoView {
    let memory = expect_context::<Workshop>().memory;
    let keeping = Keeping::new();
    let shown = memo(move || {
        let saved = memory.kept.with(|kept| kept.saved.clone());
        saved.into_iter().map(Shown::new).collect::<Vec<_>>()
    });
    let extent = memo(move || {
        shown.with(|shown| common_extent(shown.iter().filter_map(|card| card.section.as_ref())))
    });
    view! {
        <Show when=move || shown.with(|shown| !shown.is_empty())
            fallback=|| view! { <Empty icon=IconName::Shelf title=words::empty() text=words::empty_text()/> }>
            <h2 class="unseen">{words::kept_designs()}</h2>
            <ul class="cards">
                <For each=move || shown.get() key=|card| (card.design.name.clone(), card.design.link.clone(), card.design.figures) let:shown>
                    <Card shown extent keeping/>
                </For>
            </ul>
        </Show>
    }
}

/// Keep this design, new design, open a file.
#[component]
pub(super) fn ShelfActions() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let briefs = expect_context::<Briefs>();
    let keeping = Keeping::new();
    let does = memo(move || workshop.answers.has_cut());
    let trouble = RwSignal::new(String::new());
    let open_file = move |file: DroppedFile| match design_file::read(&file) {
        Ok(design) => {
            trouble.set(String::new());
            design_file::open(workshop, design);
            briefs.say_with(words::opened(&file.name), words::undo(), move || {
                workshop.undo()
            });
        }
        Err(sentence) => trouble.set(sentence),
    };
    view! {
        <div class="shelf-actions">
            {live(move || keeping.asked.get().map(|in_use| view! { <Asked in_use keeping/> }))}
            <Show when=move || !does.get()>
                <FindingBlock tone=FindingTone::Caution headline=words::no_cut_to_keep()/>
            </Show>
            <div class="actions">
                <Action text=words::keep() kind=ActionKind::Main disabled=move || !does.get()
                    on_press=move |()| keeping.keep()/>
                <Action text=frame::new_design() on_press=move |()| begin_anew(workshop, briefs)/>
            </div>
            <FileDrop label=words::open_file() note=words::open_file_note() accept=".json,application/json"
                on_file=open_file/>
            <p class="fault-line" role="status">{trouble}</p>
        </div>
    }
}

/// A name in use: replace it, keep both, or leave it.
#[component]
fn Asked(in_use: InUse, keeping: Keeping) -> impl IntoView {
    let (replaces, keeps) = (in_use.clone(), in_use.clone());
    view! {
        <div role="alert">
            <FindingBlock tone=FindingTone::Caution headline=words::name_in_use(&in_use.name)
                text=words::name_in_use_text(&in_use.free)>
                <div class="actions">
                    <Action text=words::keep_both() kind=ActionKind::Main
                        on_press=move |()| keeping.keep_both(&keeps)/>
                    <Action text=words::replace() on_press=move |()| keeping.replace(&replaces)/>
                    <Action text=words::leave_it() on_press=move |()| keeping.asked.set(None)/>
                </div>
            </FindingBlock>
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_maker::example::example;
    use tinwave_maker::link::encode;

    fn cards(prepare: impl FnOnce(Workshop)) -> String {
        Owner::new().with(|| {
            let workshop = Workshop::open();
            provide_context(workshop);
            crate::frame::begin(workshop);
            prepare(workshop);
            view! { <Cards/> }.to_html()
        })
    }

    #[test]
    fn an_empty_shelf_says_what_would_stand_there() {
        let html = cards(|_| {});
        assert!(
            html.contains(words::empty()) && !html.contains("<li"),
            "{html}"
        );
    }

    #[test]
    fn a_card_has_its_section_its_name_and_named_buttons() {
        let html = cards(|workshop| {
            workshop
                .memory
                .change(|kept| kept.save("North can", &encode(&example())));
        });
        assert!(
            html.contains("card-section") && html.contains("<h3>North can"),
            "{html}"
        );
        assert!(
            html.contains("aria-label=\"Open North can\"")
                && html.contains("aria-label=\"Remove North can\"")
        );
        assert!(html.contains(words::on_the_screen()), "{html}");
    }

    #[test]
    fn what_cannot_be_read_says_so_and_can_not_be_opened() {
        let html = cards(|workshop| workshop.memory.change(|kept| kept.save("Odd", "nonsense")));
        assert!(
            html.contains(words::unreadable()) && !html.contains("Open Odd"),
            "{html}"
        );
    }
}
