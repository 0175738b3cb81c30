//! The match over the band: a chart on a canvas, a cursor, a table.

use leptos::prelude::*;
use tinwave_core::design::Band;
use tinwave_core::match_band::{MatchSummary, SweepPoint};
use wasm_bindgen::JsCast;

use super::figure::{Picture, figure, follow, listen, set_attribute};
use super::followed::{Followed, Watched};
use super::match_cursor::Cursor;
use super::match_plot::{Inputs, keep_plot};
use super::match_table::keep_table;
use crate::drawing::match_words::match_summary_text;

const MARKUP: &str = concat!(
    "<div class=\"pic-toolbar\">",
    "<div class=\"pic-choices\" role=\"group\" aria-label=\"Show the match as\">",
    "<button type=\"button\" class=\"pic-choice pic-choose-vswr\">VSWR</button>",
    "<button type=\"button\" class=\"pic-choice pic-choose-loss\">Return loss, dB</button></div>",
    "<span class=\"pic-key pic-key-line\">this design</span>",
    "<span class=\"pic-key pic-key-ghost\"></span>",
    "<span class=\"pic-key pic-key-band\">band</span></div>",
    "<div class=\"pic-stage pic-chart-stage\">",
    "<canvas class=\"pic-canvas\" role=\"img\" aria-label=\"Match over frequency\" ",
    "aria-describedby=\"pic-match-summary\"></canvas>",
    "<div class=\"pic-cursor-area\" role=\"slider\" tabindex=\"0\" ",
    "aria-label=\"Frequency to read off the chart\">",
    "<div class=\"pic-cursor-line\" hidden></div></div>",
    "<p class=\"pic-stale-note\">Last good values</p></div>",
    "<output class=\"pic-readout\"></output>",
    "<figcaption class=\"pic-note\" id=\"pic-match-summary\"></figcaption>",
    "<details class=\"pic-fold\"><summary>The same as a table</summary>",
    "<div class=\"pic-table-frame\" tabindex=\"0\" role=\"region\" ",
    "aria-label=\"Match over frequency, table\"><table class=\"pic-table\"><thead><tr>",
    "<th scope=\"col\">Frequency<br>MHz</th><th scope=\"col\">VSWR<br>ratio</th>",
    "<th scope=\"col\">Return<br>loss dB</th><th scope=\"col\">Resistance<br>Ω</th>",
    "<th scope=\"col\">Reactance<br>Ω</th></tr></thead><tbody></tbody></table></div></details>",
);

/// VSWR or return loss over frequency.
#[component]
pub fn MatchChart(
    /// The design's sweep; empty: not computed.
    sweep: Followed<Vec<SweepPoint>>,
    /// A second line to compare with; empty: none.
    compare: Followed<Vec<SweepPoint>>,
    /// What the second line is.
    compare_name: Followed<String>,
    /// The band to serve.
    band: Followed<Band>,
    /// The match over the band in figures.
    summary: Followed<Option<MatchSummary>>,
    /// Frequency that is read off, kHz; shared with the Smith chart.
    cursor: Watched<Option<u32>>,
    /// Whether this is the last good picture.
    stale: Followed<bool>,
    /// Anything that changes when the page's colours do.
    theme: Followed<u32>,
) -> impl IntoView {
    let shows_loss = Watched::new(false);
    let ready = move |picture: Picture| {
        let width = picture.width;
        let inputs = Inputs {
            sweep,
            compare,
            band,
            summary,
            shows_loss,
            width,
            theme,
        };
        let canvas = picture.part(".pic-canvas").map(JsCast::unchecked_into);
        if let Some(canvas) = canvas {
            keep_plot(canvas, inputs);
        }
        keep_toolbar(&picture, shows_loss, compare, compare_name);
        keep_summary(&picture, sweep, summary);
        keep_table(&picture, sweep, band);
        let cursor = Cursor {
            sweep,
            band,
            width,
            khz: cursor,
        };
        cursor.keep(&picture);
    };
    figure("picture match-chart", MARKUP, stale, Box::new(ready))
}

fn keep_summary(
    picture: &Picture,
    sweep: Followed<Vec<SweepPoint>>,
    summary: Followed<Option<MatchSummary>>,
) -> Option<()> {
    let note = picture.part(".pic-note")?;
    follow(Box::new(move || {
        let text = match_summary_text(&sweep.get(), summary.get().as_ref());
        note.set_text_content(Some(&text));
    }));
    Some(())
}

fn keep_toolbar(
    picture: &Picture,
    shows_loss: Watched<bool>,
    compare: Followed<Vec<SweepPoint>>,
    compare_name: Followed<String>,
) -> Option<()> {
    let choices = [(".pic-choose-vswr", false), (".pic-choose-loss", true)];
    for (selector, loss) in choices {
        let button = picture.part(selector)?;
        let choose = move |_| {
            shows_loss.set(loss);
        };
        listen(&button, "click", Box::new(choose));
        follow(Box::new(move || {
            let pressed = if shows_loss.get() == loss {
                "true"
            } else {
                "false"
            };
            set_attribute(&button, "aria-pressed", pressed);
        }));
    }
    let key = picture.part(".pic-key-ghost")?;
    follow(Box::new(move || {
        key.set_text_content(Some(&compare_name.get()));
        let absent = if compare.get().is_empty() {
            " pic-absent"
        } else {
            ""
        };
        key.set_class_name(&["pic-key pic-key-ghost", absent].concat());
    }));
    Some(())
}
