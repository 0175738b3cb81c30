//! The top line: whose design this is, its verdict, undo, redo, share, more.

use leptos::prelude::*;
use tinwave_core::grade::Grade;
use tinwave_maker::station::Station;
use tinwave_words::{change, frame as words};

use super::brief::{Brief, Briefs};
use super::more_list::{MoreList, share};
use crate::browser;
use crate::kit::{Action, ActionKind, Icon, IconName, VerdictGlyph};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// Stays in sight. Short notices speak in the name's place.
#[component]
pub fn TopLine() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let briefs = expect_context::<Briefs>();
    let title = move || match briefs.standing() {
        Some(brief) => view! { <BriefLine brief/> }.into_any(),
        None => view! { <Title/> }.into_any(),
    };
    let undo = move || words::undo(workshop.undo_change().map(change).as_deref());
    let redo = move || words::redo(workshop.redo_change().map(change).as_deref());
    view! {
        <header class="top-line">
            <span class="mark">{words::tinwave()}</span>
            {title}
            <Chip/>
            <button type="button" class="tool" aria-label=undo title=undo disabled=move || !workshop.can_undo()
                on:click=move |_| workshop.undo()>
                <Icon name=IconName::Undo/>
            </button>
            <button type="button" class="tool desk-only" aria-label=redo title=redo
                disabled=move || !workshop.can_redo() on:click=move |_| workshop.redo()>
                <Icon name=IconName::Redo/>
            </button>
            <button type="button" class="tool desk-only" on:click=move |_| share(workshop, briefs)>
                <Icon name=IconName::Share/>{words::share()}
            </button>
            <More/>
        </header>
    }
}

/// The design's name; a desk has size and band below. It leads to where it is changed.
#[component]
fn Title() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let is_example = memo(move || workshop.is_example());
    let name = move || {
        let named = workshop.work.with(|work| work.design.name.clone());
        match (named.is_empty(), is_example.get()) {
            (false, _) => named,
            (true, true) => words::example().to_owned(),
            (true, false) => workshop
                .work
                .with(|work| words::size(&work.design, workshop.unit.get())),
        }
    };
    // What stands above is not said again.
    let below = move || {
        let is_named = is_example.get() || workshop.work.with(|work| !work.design.name.is_empty());
        workshop.work.with(|work| {
            if is_named {
                words::size_and_band(&work.design, workshop.unit.get())
            } else {
                tinwave_words::can::band_edges(work.design.band)
            }
        })
    };
    let href = move || format!("#{}", workshop.fragment_at(Station::Shelf));
    let open = move |event: leptos::ev::MouseEvent| {
        event.prevent_default();
        workshop.go_to(Station::Shelf);
    };
    view! {
        <a class="title" href=href on:click=open>
            <span class="title-name">{name}</span>
            <span class="title-more">{below}</span>
        </a>
    }
}

/// The verdict, on every station; it leads to the can.
#[component]
fn Chip() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let grade = memo(move || workshop.answers.graded.with(|graded| graded.grade));
    let class = move || match grade.get() {
        Grade::WillDo => "verdict-chip go",
        Grade::WithCare => "verdict-chip care",
        Grade::WillNotDo => "verdict-chip no",
    };
    view! {
        <button type="button" class=class aria-label=move || words::chip(grade.get())
            on:click=move |_| workshop.go_to(Station::Can)>
            {live(move || view! { <VerdictGlyph grade=grade.get()/> })}
            <span>{live(move || words::grade_short(grade.get()))}</span>
        </button>
    }
}

/// A short notice in the name's place.
#[component]
fn BriefLine(brief: Brief) -> impl IntoView {
    let briefs = expect_context::<Briefs>();
    let actions = brief.actions.into_iter().map(move |(text, press)| {
        let on_press = move |()| {
            briefs.put_away();
            press();
        };
        view! { <Action text kind=ActionKind::Words on_press=on_press/> }
    });
    view! {
        <div class="notice" role="status" on:mouseenter=move |_| briefs.hold() on:focusin=move |_| briefs.hold()
            on:mouseleave=move |_| briefs.release() on:focusout=move |_| briefs.release()>
            <span>{brief.text}</span>
            {actions.collect_view()}
        </div>
    }
}

/// The button of the list of everything else, and the list.
#[component]
fn More() -> impl IntoView {
    let open = RwSignal::new(false);
    let place = NodeRef::<leptos::html::Div>::new();
    let expanded = move || if open.get() { "true" } else { "false" };
    browser::on_window_while_here("pointerdown", move |event| {
        let inside = place
            .get_untracked()
            .is_some_and(|place| browser::is_inside(&place, &event));
        if open.get_untracked() && !inside {
            open.set(false);
        }
    });
    let on_key = move |event: leptos::ev::KeyboardEvent| {
        if event.key() == "Escape" && open.get_untracked() {
            event.stop_propagation();
            open.set(false);
            browser::focus("more");
        }
    };
    view! {
        <div class="more" node_ref=place on:keydown=on_key>
            <button id="more" type="button" class="tool" aria-label=words::more_list() aria-expanded=expanded
                aria-controls="more-list" on:click=move |_| open.update(|open| *open = !*open)>
                <Icon name=IconName::More/>
            </button>
            <Show when=move || open.get()><MoreList open/></Show>
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn top_line(prepare: impl FnOnce(Workshop)) -> String {
        Owner::new().with(|| {
            let workshop = Workshop::open();
            provide_context(workshop);
            crate::frame::begin(workshop);
            prepare(workshop);
            view! { <TopLine/> }.to_html()
        })
    }

    #[test]
    fn the_example_is_called_so_and_a_can_without_a_name_by_its_size() {
        assert!(top_line(|_| {}).contains(">Example<"));
        let own = top_line(|workshop| {
            workshop.edit(tinwave_maker::history::Change::Diameter, |work| {
                work.design.can.inside_diameter_um = 99_000;
            });
        });
        assert!(
            own.contains("⌀ 99.0 × 190.0 mm") && !own.contains(">Example<"),
            "{own}"
        );
    }

    #[test]
    fn undo_says_what_it_takes_back_and_is_off_where_there_is_nothing() {
        assert!(top_line(|_| {}).contains("aria-label=\"Undo\""));
        let html = top_line(|workshop| {
            workshop.edit(tinwave_maker::history::Change::Name, |work| {
                work.design.name = "North".into()
            });
        });
        assert!(html.contains("aria-label=\"Undo: Name\""), "{html}");
    }
}
