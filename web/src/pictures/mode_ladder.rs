//! Which modes pass where, against the band.

use leptos::prelude::*;
use tinwave_core::design::Band;
use tinwave_core::verdict::ModeEntry;

use super::figure::{Picture, figure, follow};
use super::followed::Followed;
use super::live_scene::LiveScene;
use crate::drawing::mode_rungs::Ladder;

const MARKUP: &str = concat!(
    "<div class=\"pic-stage pic-ladder-stage\"><div class=\"pic-picture\"></div>",
    "<p class=\"pic-stale-note\">Last good values</p></div>",
    "<figcaption class=\"pic-note\"></figcaption>",
);

/// The mode ladder: one rung per mode, the band as an upright stripe.
#[component]
pub fn ModeLadder(
    /// Modes, ascending by cutoff.
    modes: Followed<Vec<ModeEntry>>,
    /// The band to serve.
    band: Followed<Band>,
    /// Whether this is the last good picture.
    stale: Followed<bool>,
) -> impl IntoView {
    let ready = move |picture: Picture| draw(&picture, modes, band);
    figure("picture mode-ladder", MARKUP, stale, Box::new(ready))
}

fn draw(picture: &Picture, modes: Followed<Vec<ModeEntry>>, band: Followed<Band>) {
    let (Some(stage), Some(note)) = (picture.part(".pic-picture"), picture.part(".pic-note"))
    else {
        return;
    };
    let mut scene = LiveScene::new(stage.into());
    let width = picture.width;
    follow(Box::new(move || {
        let ladder = Ladder::new(&modes.get(), band.get(), width.get());
        note.set_text_content(Some(&ladder.more));
        scene.show(ladder.scene());
    }));
}
