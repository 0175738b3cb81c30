//! Gain straight ahead over the band.

use leptos::prelude::*;
use tinwave_drawing::chart::{Axis, ChartSpec, Series, Style};
use tinwave_protocol::beam::{BeamOverBand, BeamOverBandFound, BeamPoint};
use tinwave_words::beam as words;

use crate::kit::XyChart;
use crate::reactive::{effect, live};
use crate::state::Workshop;
use crate::worker::Task;

/// What is known of the beam over the band: asked for when the outside is known, so that
/// it costs a moment only.
pub fn beam_over_band(workshop: Workshop) -> Memo<Option<BeamOverBandFound>> {
    let task = Task::<Option<BeamOverBandFound>>::new();
    effect(move || {
        let answers = workshop.answers;
        let is_known = answers.outside.with(Option::is_some) && answers.has_cut();
        let design = workshop.work.with(|work| work.design.clone());
        if is_known {
            task.run(BeamOverBand { design });
        } else {
            task.clear();
        }
    });
    Memo::new(move |before: Option<&Option<BeamOverBandFound>>| {
        task.state().with(|state| match state.answer() {
            Some(found) => found.clone(),
            // What was found stands until the new is there.
            None if state.is_working() => before.cloned().flatten(),
            None => None,
        })
    })
}

/// The chart.
#[component]
pub fn BandGain(
    /// The beam over the band.
    found: Memo<Option<BeamOverBandFound>>,
) -> impl IntoView {
    let (title, note) = words::pictures()[2];
    let spec = move || found.with(|found| chart(found.as_ref()));
    let workshop = expect_context::<Workshop>();
    let least = move || {
        let band = workshop.work.with(|work| work.design.band);
        found.with(|found| {
            let points = found.as_ref()?.points.iter();
            let with_gain = points.filter_map(|point| Some((point.realised_gain_dbi?, point.khz)));
            with_gain
                .min_by(|a, b| a.0.total_cmp(&b.0))
                .map(|(gain, khz)| words::least_gain(gain, khz, band))
        })
    };
    view! {
        <XyChart title note spec empty=words::being_worked_out()/>
        {live(move || least().map(|said| view! { <p class="note">{said}</p> }))}
    }
}

fn chart(found: Option<&BeamOverBandFound>) -> ChartSpec {
    let [frequency, gain, matched] = words::band_names();
    let points = found.map_or(&[][..], |found| &found.points);
    let line = |of: fn(&BeamPoint) -> f64| -> Vec<(f64, f64)> {
        points
            .iter()
            .map(|point| (f64::from(point.khz) / 1e3, of(point)))
            .collect()
    };
    let gains = line(|point| point.realised_gain_dbi.unwrap_or(f64::NAN));
    let ideal = line(|point| point.directivity_dbi + 10.0 * point.radiated_share.log10());
    let levels = gains.iter().chain(&ideal).map(|point| point.1);
    let y = Axis::holding(gain, "dBi", levels).with_decimals(1);
    let (low, high) = match (gains.first(), gains.last()) {
        (Some(first), Some(last)) => (first.0, last.0),
        _ => (0.0, 1.0),
    };
    let mut x = Axis::frequency_mhz(low, high);
    x.name = frequency.to_owned();
    let mut spec = ChartSpec::new(x, y);
    spec.series = vec![
        Series::new(gain, Style::This, gains),
        Series::new(matched, Style::Compared, ideal),
    ];
    spec
}
