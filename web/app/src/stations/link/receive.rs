//! What can be received without sending anything.

use leptos::prelude::*;
use tinwave_words::link_plan::{self as words, PartTitle};

use crate::kit::{Part, TableFold, TableText};
use crate::state::Workshop;

/// The bands that are only received.
#[component]
pub fn ReceivePart() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, note) = words::part_titles(PartTitle::Receive);
    let table = move || {
        let (head, rows) = workshop.work.with(|work| words::receive_rows(&work.design));
        TableText { head, rows }
    };
    view! {
        <Part title note><TableFold name=title table/></Part>
    }
}
