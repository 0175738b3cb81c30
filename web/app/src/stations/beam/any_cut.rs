//! Any cut of the pattern, with its crossed polarisation.

use leptos::prelude::*;
use tinwave_drawing::beam_cut::BeamCut;
use tinwave_drawing::chart::{Axis, ChartSpec, Series, Style};
use tinwave_maker::entry::{format_trimmed, parse_degrees};
use tinwave_words::beam as words;

use super::shown::Shown;
use crate::kit::{Fold, NumberField, XyChart};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// Between the two planes, where crossed polarisation is highest as a rule.
const FIRST_MILLIDEG: i32 = 45_000;
/// What the chart shows below its top, dB.
const DEPTH_DB: f64 = 40.0;

/// The cut in its fold; worked out while it is open.
#[component]
pub fn CutFold(
    /// What is known of the beam.
    shown: Memo<Shown>,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let azimuth = RwSignal::new(FIRST_MILLIDEG);
    let is_open = RwSignal::new(false);
    let azimuth_deg = move || f64::from(azimuth.get()) / 1e3;
    let cut = memo(move || {
        let is_known = shown.with(|shown| shown.beam().is_some());
        if !is_known || !is_open.get() {
            return None;
        }
        workshop.answers.analysis.with(|analysis| {
            let beam = analysis.as_ref()?.true_beam.as_ref()?;
            Some(BeamCut::new(&beam.pattern, azimuth_deg()))
        })
    });
    let (title, (label, help)) = words::cut_entry();
    let take = move |text: String| {
        azimuth.set(parse_degrees(&text)?.value);
        Ok(())
    };
    let said = move || {
        cut.with(|cut| {
            let cut = cut.as_ref()?;
            let crossed = cut.most_crossed.map(|most| (most.below_db, most.at_deg));
            let peak = (cut.peak_dbi, cut.peak_deg);
            Some(words::cut_found(
                azimuth_deg(),
                peak,
                cut.width_deg,
                crossed,
            ))
        })
    };
    let [chart_title, note, ..] = words::cut_chart();
    view! {
        <Fold title summary=move || words::cut_summary(azimuth_deg())
            on_toggle=move |open| is_open.set(open)>
            <NumberField label help take unit="°"
                value=move || format_trimmed(i64::from(azimuth.get()), 3)/>
            {live(move || said().map(|said| view! { <p>{said}</p> }))}
            <XyChart title=chart_title note spec=move || cut.with(|cut| chart(cut.as_ref()))
                empty=words::being_worked_out()/>
        </Fold>
    }
}

fn chart(cut: Option<&BeamCut>) -> ChartSpec {
    let [_, _, angle, level, wanted, crossed] = words::cut_chart();
    let top = cut.map_or(10.0, |cut| (cut.peak_dbi / 5.0).ceil() * 5.0);
    let x = Axis::new(angle, "°", -180.0, 180.0)
        .with_decimals(0)
        .with_step(2.0)
        .with_ticks(vec![-180.0, -90.0, 0.0, 90.0, 180.0]);
    let y = Axis::new(level, "dBi", top - DEPTH_DB, top).with_decimals(1);
    let mut spec = ChartSpec::new(x, y);
    spec.rest = Some(0.0);
    if let Some(cut) = cut {
        // A level is always known: where it is not drawn it is merely too low.
        let too_low = words::below_the_chart(spec.y.low);
        spec.series = vec![
            Series::new(wanted, Style::This, shown_of(&cut.wanted, &spec.y)).with_gap(&too_low),
        ];
        let others = shown_of(&cut.crossed, &spec.y);
        if others.iter().any(|point| point.1.is_finite()) {
            spec.series
                .push(Series::new(crossed, Style::Compared, others).with_gap(&too_low));
        }
    }
    spec
}

/// Levels below the plot are left out.
fn shown_of(points: &[(f64, f64)], y: &Axis) -> Vec<(f64, f64)> {
    let kept = |level: f64| if level >= y.low { level } else { f64::NAN };
    points.iter().map(|(x, level)| (*x, kept(*level))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plane_without_crossed_polarisation_has_one_curve() {
        let mut cut = BeamCut {
            wanted: vec![(-180.0, -10.0), (0.0, 7.9), (180.0, -10.0)],
            crossed: vec![(-180.0, -110.0), (0.0, -110.0), (180.0, -110.0)],
            peak_dbi: 7.9,
            peak_deg: 0.0,
            width_deg: Some(71.0),
            most_crossed: None,
        };
        let spec = chart(Some(&cut));
        assert_eq!((spec.series.len(), spec.y.high), (1, 10.0));
        cut.crossed = vec![(-180.0, -20.0), (0.0, -110.0), (180.0, -20.0)];
        let both = chart(Some(&cut));
        assert_eq!(both.series.len(), 2);
        assert_eq!(both.read(0.0).values[1].text, "below −30 dBi");
        assert!(chart(None).is_empty());
    }
}
