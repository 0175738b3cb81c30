//! The list of everything else: a list below the top line that pushes nothing.

use leptos::prelude::*;
use tinwave_maker::example::example;
use tinwave_maker::store::Theme;
use tinwave_words::frame as words;

use super::rail::UnitChoice;
use super::{Briefs, SidePage, SidePages};
use crate::browser;
use crate::kit::{Choice, Pick};
use crate::state::Workshop;

/// The list: redo, share, units, colours, all cautions, new design, about. It closes
/// with Escape, by a press elsewhere, and when something in it was done.
#[component]
pub(super) fn MoreList(open: RwSignal<bool>) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let pages = expect_context::<SidePages>();
    let briefs = expect_context::<Briefs>();
    let item = move |text: &'static str, press: fn(Workshop, SidePages, Briefs)| {
        let on_press = move |_| {
            open.set(false);
            press(workshop, pages, briefs);
        };
        view! { <button type="button" class="more-item" on:click=on_press>{text}</button> }
    };
    view! {
        <div id="more-list" class="more-list">
            {item(words::share(), |workshop, _, briefs| share(workshop, briefs))}
            {item(words::new_design(), |workshop, pages, briefs| {
                pages.close();
                begin_anew(workshop, briefs);
            })}
            {item(words::all_cautions(), |_, pages, _| pages.show(SidePage::Cautions))}
            {item(words::about(), |_, pages, _| pages.show(SidePage::About))}
            <UnitChoice/>
            <ThemeChoice/>
        </div>
    }
}

/// As the device, light, or dark.
#[component]
fn ThemeChoice() -> impl IntoView {
    let memory = expect_context::<Workshop>().memory;
    let picks = Theme::ALL
        .map(|theme| Pick::new(theme.key(), words::theme(theme)))
        .to_vec();
    let choose = move |key: String| {
        memory.change(|kept| kept.theme = Theme::from_key(&key).unwrap_or_default())
    };
    view! {
        <Choice label=words::colours() labelled=true picks=picks chosen=move || memory.theme().key().to_owned()
            on_choose=choose/>
    }
}

/// Begins a design of its own, as one edit that can be undone.
pub fn begin_anew(workshop: Workshop, briefs: Briefs) {
    workshop.open_work(example());
    briefs.say_with(words::new_design_begun(), words::undo(None), move || {
        workshop.undo()
    });
}

/// Passes the link on: by the device's own way where it has one, else copied.
pub(crate) fn share(workshop: Workshop, briefs: Briefs) {
    workshop.commit();
    let link = untrack(|| workshop.link());
    browser::share_link(&link, move |copied| match copied {
        Some(true) => briefs.say(words::link_copied()),
        Some(false) => briefs.say(words::copy_by_hand()),
        None => {}
    });
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn beginning_anew_can_be_undone() {
        Owner::new().with(|| {
            let workshop = Workshop::open();
            workshop.edit(tinwave_maker::history::Change::Name, |work| {
                work.design.name = "North can".into()
            });
            begin_anew(workshop, Briefs::new());
            assert!(workshop.is_example());
            workshop.undo();
            assert_eq!(workshop.work.get_untracked().design.name, "North can");
        });
    }
}
