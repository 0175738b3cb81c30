//! The beam's pattern, all the way round and level over angle.

use leptos::prelude::*;

use super::figure::{Picture, figure, follow};
use super::followed::Followed;
use super::live_scene::LiveScene;
use crate::drawing::pattern_scene::PatternPlot;

const MARKUP: &str = concat!(
    "<div class=\"pic-toolbar\"><span class=\"pic-key pic-key-line\">along the wire (E plane)</span>",
    "<span class=\"pic-key pic-key-dashed\">across it (H plane)</span></div>",
    "<div class=\"pic-stage pic-pair\"><div class=\"pic-polar\"></div><div class=\"pic-levels\"></div>",
    "<p class=\"pic-stale-note\">Last good values</p></div>",
);

/// The pattern of a beam.
#[component]
pub fn BeamPattern(
    /// What is drawn.
    plot: Followed<PatternPlot>,
    /// Whether this is the last good picture.
    stale: Followed<bool>,
) -> impl IntoView {
    let ready = move |picture: Picture| {
        let (Some(polar), Some(levels)) = (picture.part(".pic-polar"), picture.part(".pic-levels"))
        else {
            return;
        };
        let mut polar = LiveScene::new(polar.into());
        let mut levels = LiveScene::new(levels.into());
        follow(Box::new(move || {
            let plot = plot.get();
            polar.show(plot.polar());
            levels.show(plot.chart());
        }));
    };
    figure("picture beam-pattern", MARKUP, stale, Box::new(ready))
}
