//! The reflection over the sweep on a Smith chart.

use leptos::prelude::*;
use tinwave_core::design::Band;
use tinwave_core::match_band::SweepPoint;

use super::figure::{Picture, figure, follow};
use super::followed::{Followed, Watched};
use super::live_scene::LiveScene;
use crate::drawing::smith_scene::SmithPlot;

const MARKUP: &str = concat!(
    "<div class=\"pic-stage pic-smith-stage\"><div class=\"pic-picture\"></div>",
    "<p class=\"pic-stale-note\">Last good values</p></div>",
    "<figcaption class=\"pic-note\"></figcaption>",
);

/// The Smith chart of a sweep.
#[component]
pub fn SmithChart(
    /// The design's sweep; empty: not computed.
    sweep: Followed<Vec<SweepPoint>>,
    /// A second line to compare with; empty: none.
    compare: Followed<Vec<SweepPoint>>,
    /// The band to serve: the thick part of the line.
    band: Followed<Band>,
    /// Reference impedance, milliohm.
    reference_milliohm: Followed<u32>,
    /// Frequency that is read off, kHz; shared with the match chart.
    cursor: Watched<Option<u32>>,
    /// Whether this is the last good picture.
    stale: Followed<bool>,
) -> impl IntoView {
    let ready = move |picture: Picture| {
        let (Some(stage), Some(note)) = (picture.part(".pic-picture"), picture.part(".pic-note"))
        else {
            return;
        };
        let mut scene = LiveScene::new(stage.into());
        follow(Box::new(move || {
            let plot = SmithPlot {
                sweep: &sweep.get(),
                compare: &compare.get(),
                band: band.get(),
                reference_milliohm: reference_milliohm.get(),
                cursor_khz: cursor.get(),
            }
            .scene();
            let says = [
                &plot.description,
                " Thick: your band. Dashed circles: VSWR 1.5 and 2.",
            ];
            note.set_text_content(Some(&says.concat()));
            scene.show(plot);
        }));
    };
    figure("picture smith-chart", MARKUP, stale, Box::new(ready))
}
