//! What can be received without sending anything.

use leptos::prelude::*;
use tinwave_words::link_plan::{self as words, PartTitle};

use super::aim::PlainTable;
use crate::kit::Fold;
use crate::state::Workshop;

/// The bands that are only received.
#[component]
pub fn ReceivePart() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let (title, note) = words::part_titles(PartTitle::Receive);
    let rows = Memo::new(move |_| workshop.work.with(|work| words::receive_rows(&work.design)));
    view! {
        <Fold title=title summary=note>
            {move || {
                let (head, rows) = rows.get();
                view! { <PlainTable name=title head rows/> }
            }}
        </Fold>
    }
}
