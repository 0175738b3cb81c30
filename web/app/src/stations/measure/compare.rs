//! Measured over predicted, over frequency.

use leptos::prelude::*;
use tinwave_core::complex::Complex;
use tinwave_core::reflection::{magnitude_of_vswr, return_loss_db};
use tinwave_core::touchstone::write_one_port;
use tinwave_drawing::chart::{Axis, ChartSpec, Mark, Series, Style};
use tinwave_maker::file_name::file_name;
use tinwave_words::{chart, measure as words};

use super::facts::OpenTable;
use crate::browser;
use crate::kit::{Action, ActionKind, Choice, Pick, TableText, XyChart};
use crate::reactive::memo;
use crate::state::Workshop;

/// Losses above this are only good; what is better is only better.
const TOP_LOSS_DB: f64 = 40.0;
/// The chart goes no higher than this VSWR.
const TOP_VSWR: f64 = 5.0;

/// The chart, the worst in the band in words, and both as figures.
#[component]
pub fn CompareChart() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let measuring = workshop.measuring();
    let loss = RwSignal::new(false);
    let has_measured = memo(move || measuring.curve.with(|curve| !curve.is_empty()));
    let title = move || {
        let title = if has_measured.get() {
            words::chart_title()
        } else {
            words::chart_title_predicted()
        };
        title.to_owned()
    };
    let table = move || TableText {
        head: words::table_heads(),
        rows: words::table_rows(
            &measuring.measured_figures(),
            &measuring.predicted_figures(),
        ),
    };
    let (label, [vswr, return_loss]) = words::scales();
    let picks = vec![Pick::new("vswr", vswr), Pick::new("loss", return_loss)];
    view! {
        <XyChart title=title note=move || words::chart_note(loss.get()).to_owned()
            spec=move || spec(workshop, loss.get())/>
        <Show when=move || has_measured.get()>
            <OpenTable name=words::table_title() table=Signal::derive(table)/>
        </Show>
        <div class="chart-choices">
            <Choice label picks=picks
                chosen=move || if loss.get() { "loss" } else { "vswr" }.to_owned()
                on_choose=move |key: String| loss.set(key == "loss")/>
            <Action text=words::save_predicted() kind=ActionKind::Words
                on_press=move |()| save_predicted(workshop)/>
        </div>
    }
}

fn spec(workshop: Workshop, loss: bool) -> ChartSpec {
    let measuring = workshop.measuring();
    let (band, sweep) = workshop
        .work
        .with(|work| (work.design.band, work.design.effective_sweep()));
    let mhz = |khz: u32| f64::from(khz) / 1e3;
    let height = |vswr: f64| {
        if loss {
            return_loss_db(magnitude_of_vswr(vswr)).min(TOP_LOSS_DB)
        } else {
            vswr
        }
    };
    let line = |curve: &Vec<(f64, f64)>| -> Vec<(f64, f64)> {
        let points = curve.iter();
        points.map(|(hz, vswr)| (hz / 1e6, height(*vswr))).collect()
    };
    let measured = measuring.drawn.with(line);
    let predicted = measuring.predicted.with(line);
    let both = measured.iter().chain(&predicted).map(|point| point.1);
    let y = if loss {
        Axis::new(words::return_loss(), "dB", 0.0, TOP_LOSS_DB)
    } else {
        Axis::vswr(both.fold(1.5, f64::max).min(TOP_VSWR * 0.9))
    };
    let x = Axis::frequency_mhz(mhz(sweep.low_khz), mhz(sweep.high_khz));
    let mut spec = ChartSpec::new(x, y);
    spec.band = Some((mhz(band.low_khz), mhz(band.high_khz)));
    chart::your_band().clone_into(&mut spec.band_name);
    spec.limits = [1.5, 2.0].map(height).to_vec();
    if let [point] = measured.as_slice() {
        spec.marks.push(Mark {
            at: *point,
            name: words::the_reading().to_owned(),
        });
    }
    if measured.len() > 1 {
        spec.series.push(
            Series::new(words::measured(), Style::Measured, measured)
                .with_gap(words::not_measured()),
        );
    }
    spec.series
        .push(Series::new(words::predicted(), Style::Compared, predicted));
    spec
}

/// Hands the maker the prediction as a file.
fn save_predicted(workshop: Workshop) {
    let work = workshop.work.get_untracked();
    let reference = f64::from(work.design.probe.reference_milliohm) / 1e3;
    let points: Vec<(f64, Complex)> = workshop.answers.analysis.with_untracked(|analysis| {
        let sweep = analysis.iter().flat_map(|analysis| &analysis.sweep);
        let points = sweep
            .filter_map(|point| Some((f64::from(point.frequency_khz) * 1e3, point.at?.reflection)));
        points.collect()
    });
    let text = [
        words::predicted_comment(),
        &write_one_port(&points, reference),
    ]
    .concat();
    let name = file_name(&work.design.name, "s1p");
    browser::save_file(&name, "text/plain", text.as_bytes());
}
