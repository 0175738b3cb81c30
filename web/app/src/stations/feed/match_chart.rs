//! The match over the band: as a curve, and on a Smith chart.

use leptos::prelude::*;
use tinwave_core::complex::Complex;
use tinwave_core::design::Design;
use tinwave_core::match_band::SweepPoint;
use tinwave_core::reflection::{PointMatch, vswr};
use tinwave_drawing::chart::{Axis, ChartSpec, Series, Style};
use tinwave_drawing::smith::{Locus, SmithSpec};
use tinwave_drawing::sweep::{interpolate, nearest};
use tinwave_words::chart::your_band;
use tinwave_words::feed as words;

use super::known::{Compared, Feed};
use crate::kit::XyChart;
use crate::pictures::SmithPicture;
use crate::state::Measured;

/// A curve that is only compared with does not stretch the axis beyond this.
const MOST_FOR_COMPARED: f64 = 2.8;

/// VSWR over frequency.
#[component]
pub fn MatchChart() -> impl IntoView {
    let feed = expect_context::<Feed>();
    let spec = move || {
        let curve = feed.workshop.measuring().curve.get();
        let (this, other) = (feed.this(), feed.compared());
        feed.workshop
            .work
            .with(|work| chart(&work.design, this.as_ref(), other.as_ref(), &curve))
    };
    let note = move || {
        let sweep = feed
            .workshop
            .work
            .with(|work| work.design.effective_sweep());
        words::match_note(feed.summary().as_ref(), (sweep.low_khz, sweep.high_khz))
    };
    let also = move |mhz: f64| {
        let analysis = feed.workshop.answers.analysis.get();
        let point = analysis.and_then(|analysis| at(&analysis.sweep, mhz));
        point.map_or_else(String::new, |point| words::point(&point))
    };
    view! {
        <XyChart title=words::match_title() note spec=Signal::derive(spec) empty=words::no_match()
            reading=feed.reading also=also/>
    }
}

/// The sweep at a frequency, MHz.
fn at(sweep: &[SweepPoint], mhz: f64) -> Option<SweepPoint> {
    let khz = (mhz * 1e3).round() as u32;
    let between = interpolate(sweep, khz).map(|at| SweepPoint {
        frequency_khz: khz,
        at: Some(at),
    });
    between.or_else(|| nearest(sweep, khz).copied())
}

/// This cut, the one it is compared with, and what was measured (Hz, VSWR).
fn chart(
    design: &Design,
    this: Option<&Compared>,
    other: Option<&Compared>,
    measured: &[(f64, f64)],
) -> ChartSpec {
    let mhz = |khz: u32| f64::from(khz) / 1e3;
    let worst = |of: Option<&Compared>| {
        let summary = of.and_then(|of| of.analysis.match_summary);
        summary.map_or(1.0, |summary| summary.worst_vswr_in_band)
    };
    let sweep = design.effective_sweep();
    let highest = worst(this)
        .max(worst(other).min(MOST_FOR_COMPARED))
        .max(1.5);
    let mut spec = ChartSpec::new(
        Axis::frequency_mhz(mhz(sweep.low_khz), mhz(sweep.high_khz)),
        Axis::vswr(highest),
    );
    spec.band = Some((mhz(design.band.low_khz), mhz(design.band.high_khz)));
    spec.band_name = your_band().to_owned();
    spec.limits = vec![1.5];
    let points = |of: &Compared| {
        let point = |point: &SweepPoint| {
            (
                mhz(point.frequency_khz),
                point.at.map_or(f64::NAN, |at| at.vswr),
            )
        };
        of.analysis.sweep.iter().map(point).collect()
    };
    let curves = [(this, Style::This), (other, Style::Compared)];
    spec.series = curves
        .into_iter()
        .filter_map(|(of, style)| Some(Series::new(of?.name.clone(), style, points(of?))))
        .collect();
    if !measured.is_empty() {
        let points = measured.iter().map(|(hz, vswr)| (hz / 1e6, *vswr));
        let name = words::curve_measured();
        spec.series
            .push(Series::new(name, Style::Measured, points.collect()));
    }
    spec
}

/// What was measured, on the Smith chart: only its reflection is drawn.
fn measured_locus(measured: Measured) -> Locus {
    let point = |(hz, reflection): (f64, Complex)| SweepPoint {
        // A chart's frequencies lie far within the range.
        frequency_khz: (hz / 1e3).round() as u32,
        at: Some(PointMatch {
            impedance_ohm: Complex::ZERO,
            reflection,
            vswr: vswr(reflection.abs()),
        }),
    };
    Locus {
        name: words::curve_measured().to_owned(),
        style: Style::Measured,
        sweep: measured.points.into_iter().map(point).collect(),
    }
}

/// The same on a Smith chart.
#[component]
pub fn MatchSmith() -> impl IntoView {
    let feed = expect_context::<Feed>();
    let spec = move || {
        let locus = |(of, style): (Option<Compared>, Style)| {
            let of = of?;
            Some(Locus {
                name: of.name,
                style,
                sweep: of.analysis.sweep.clone(),
            })
        };
        let curves = [
            (feed.this(), Style::This),
            (feed.compared(), Style::Compared),
        ];
        let measured = feed.workshop.measuring().measured.get();
        let measured = measured.filter(|measured| measured.has_phase);
        let loci = curves.into_iter().filter_map(locus);
        let loci = loci.chain(measured.map(measured_locus)).collect();
        feed.workshop.work.with(|work| SmithSpec {
            loci,
            band: work.design.band,
            reference_milliohm: work.design.probe.reference_milliohm,
        })
    };
    let said = move || {
        let band = feed.workshop.work.with(|work| work.design.band);
        let analysis = feed.workshop.answers.analysis.get();
        let edge = |khz: u32| {
            let at = interpolate(&analysis.as_ref()?.sweep, khz)?;
            Some((khz, at.impedance_ohm))
        };
        words::locus([
            edge(band.low_khz),
            edge(band.centre_khz()),
            edge(band.high_khz),
        ])
    };
    view! { <SmithPicture spec=Signal::derive(spec) said reading=feed.reading/> }
}
