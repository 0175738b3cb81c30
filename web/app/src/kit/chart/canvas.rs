//! When a chart's canvas is drawn: once a frame at most, whenever its data, its size or
//! the page's colours change.

use leptos::html::Canvas;
use leptos::prelude::*;
use tinwave_drawing::chart::{ChartLayout, ChartSpec};

use crate::browser;
use crate::reactive::effect;

/// Keeps a canvas as its chart is.
pub(super) fn keep_drawn(paper: NodeRef<Canvas>, spec: Memo<ChartSpec>, layout: Memo<ChartLayout>) {
    let look = RwSignal::new(0_u32);
    effect(move || {
        browser::on_look(move || {
            look.try_update(|count| *count = count.wrapping_add(1));
        })
    });
    let is_due = StoredValue::new(false);
    effect(move || {
        let (Some(_), _) = (paper.get(), look.get()) else {
            return;
        };
        spec.track();
        layout.track();
        if is_due.try_update_value(|due| std::mem::replace(due, true)) == Some(false) {
            browser::on_next_frame(move || {
                is_due.try_set_value(false);
                draw(paper, spec, layout);
            });
        }
    });
}

#[cfg(target_arch = "wasm32")]
fn draw(paper: NodeRef<Canvas>, spec: Memo<ChartSpec>, layout: Memo<ChartLayout>) {
    let drawn = || {
        let paper = paper.try_get_untracked()??;
        spec.try_with_untracked(|spec| {
            layout.try_with_untracked(|layout| super::plot::draw(paper, spec, layout))
        })??
    };
    // Nothing to show it on where there is no canvas to draw on, or no longer.
    let _: Option<()> = drawn();
}

/// There is no canvas on the host.
#[cfg(not(target_arch = "wasm32"))]
const fn draw(_: NodeRef<Canvas>, _: Memo<ChartSpec>, _: Memo<ChartLayout>) {}
