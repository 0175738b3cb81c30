//! Measured and predicted side by side.

use tinwave_core::complex::Complex;
use tinwave_core::design::Band;
use tinwave_core::diagnosis::{Measurement, remove_port_length};
use tinwave_core::match_band::sweep_frequencies;
use tinwave_core::reflection::vswr;
use tinwave_core::si::hertz;
use tinwave_web::entry::{format_decimal, format_hertz};

use super::entered::{Entered, for_charts, within_sweep};
use crate::chart::{Axis, Chart, LineKind};
use crate::html::row;
use crate::outsides::outside_of;
use crate::reply::Reply;
use crate::request::Request;
use crate::whole::whole_can;

/// The chart goes up to this VSWR: what is worse is only worse.
const TOP_VSWR: f64 = 5.0;

/// Frequency in Hz and VSWR.
type Curve = Vec<(f64, f64)>;

/// The drawing's reflection over its sweep.
pub(super) fn predicted(request: &Request) -> Vec<(f64, Complex)> {
    let design = request.design();
    let outside = outside_of(design);
    let Some(can) = whole_can(design, outside.as_ref()) else {
        return Vec::new();
    };
    let frequencies = sweep_frequencies(design.effective_sweep()).into_iter();
    frequencies
        .filter_map(|khz| Some((hertz(khz), can.match_at(hertz(khz)).ok()?.reflection)))
        .collect()
}

fn curve(points: impl Iterator<Item = (f64, f64)>) -> Curve {
    points
        .map(|(hz, magnitude)| (hz, vswr(magnitude)))
        .collect()
}

/// Shows both, here and on the page's charts.
pub(super) fn show(
    request: &Request,
    entered: &Entered,
    taken_out_m: Option<f64>,
    reply: &mut Reply,
) {
    let shown = match (&entered.measurement, taken_out_m) {
        (Measurement::Reflection(points), Some(length)) => {
            Measurement::Reflection(remove_port_length(points, length))
        }
        (measurement, _) => measurement.clone(),
    };
    reply.measured(&for_charts(&shown));
    let predicted = curve(
        predicted(request)
            .into_iter()
            .map(|(hz, at)| (hz, at.abs())),
    );
    let near = within_sweep(entered.magnitudes(), request.design());
    let measured = curve(near.into_iter());
    reply.place("compare-chart", chart(request, &measured, &predicted));
    reply.place(
        "compare-rows",
        rows(request.design().band, &measured, &predicted),
    );
    reply.text(
        "sum",
        &summary(request.design().band, &measured, &predicted),
    );
}

fn chart(request: &Request, measured: &Curve, predicted: &Curve) -> String {
    let sweep = request.design().effective_sweep();
    let (low, high) = (hertz(sweep.low_khz), hertz(sweep.high_khz));
    let within = |points: &Curve| -> Vec<(f64, f64)> {
        let inside = points
            .iter()
            .filter(|point| (low..=high).contains(&point.0));
        inside
            .map(|(hz, vswr)| (hz / 1e6, vswr.min(TOP_VSWR)))
            .collect()
    };
    let limit = |vswr: f64| (LineKind::Limit, vec![(low / 1e6, vswr), (high / 1e6, vswr)]);
    let mut line = within(measured);
    if let [(mhz, vswr)] = line.as_slice() {
        // One point alone is drawn as a short stroke.
        let half = (high - low) / 1e6 * 0.012;
        line = vec![(mhz - half, *vswr), (mhz + half, *vswr)];
    }
    let band = request.design().band;
    Chart {
        id: "measure-compare",
        title: "VSWR over frequency, measured and predicted".to_owned(),
        description: summary(band, measured, predicted),
        x: Axis {
            low: low / 1e6,
            high: high / 1e6,
            title: "MHz".to_owned(),
        },
        y: Axis {
            low: 1.0,
            high: TOP_VSWR,
            title: "VSWR".to_owned(),
        },
        lines: vec![
            limit(1.5),
            limit(2.0),
            (LineKind::Other, within(predicted)),
            (LineKind::Main, line),
        ],
        shaded: Some((hertz(band.low_khz) / 1e6, hertz(band.high_khz) / 1e6)),
        choices: Vec::new(),
    }
    .to_svg()
}

fn best(curve: &Curve) -> Option<(f64, f64)> {
    curve.iter().copied().min_by(|a, b| a.1.total_cmp(&b.1))
}

/// The largest VSWR among the points in the band; none where they don't reach
/// across it.
pub(super) fn worst_in(band: Band, curve: &Curve) -> Option<f64> {
    let (low, high) = (hertz(band.low_khz), hertz(band.high_khz));
    // A step of a sweep may miss the edge.
    let slack = (high - low) * 0.06;
    let first = curve.first()?.0 <= low + slack;
    let last = curve.last()?.0 >= high - slack;
    let inside = curve.iter().filter(|point| (low..=high).contains(&point.0));
    let worst = inside.map(|point| point.1).reduce(f64::max);
    worst.filter(|_| first && last)
}

/// The worst measured VSWR over the band.
pub(super) fn measured_worst(band: Band, entered: &Entered) -> Option<f64> {
    worst_in(band, &curve(entered.magnitudes().into_iter()))
}

/// Frequencies below VSWR 2 around the best one.
fn under_two(curve: &Curve) -> Option<(f64, f64)> {
    let (at, _) = best(curve).filter(|best| best.1 <= 2.0)?;
    let place = curve.iter().position(|point| point.0 == at)?;
    let (before, after) = curve.split_at(place);
    let last_good = |points: &mut dyn Iterator<Item = &(f64, f64)>| {
        points
            .take_while(|point| point.1 <= 2.0)
            .last()
            .map(|point| point.0)
    };
    let low = last_good(&mut before.iter().rev()).unwrap_or(at);
    let high = last_good(&mut after.iter()).unwrap_or(at);
    (curve.len() > 1).then_some((low, high))
}

/// What stands for a figure that is not there, of the measurement and of the
/// prediction.
const MISSING: [&str; 2] = ["not measured", "not computed"];

fn rows(band: Band, measured: &Curve, predicted: &Curve) -> String {
    let both = |what: &str, value: &dyn Fn(&Curve) -> Option<String>| {
        let cell = |curve, missing: &str| value(curve).unwrap_or_else(|| missing.to_owned());
        let [absent, failed] = MISSING;
        row(&[what, &cell(measured, absent), &cell(predicted, failed)])
    };
    [
        both("Best at", &|curve| {
            best(curve).map(|best| format_hertz(best.0))
        }),
        both("VSWR there", &|curve| {
            best(curve).map(|best| format_decimal(best.1, 2))
        }),
        both("VSWR, worst in the band", &|curve| {
            worst_in(band, curve).map(|worst| format_decimal(worst, 2))
        }),
        both("VSWR under 2", &|curve| {
            if best(curve)?.1 > 2.0 {
                return Some("nowhere".to_owned());
            }
            let (low, high) = under_two(curve)?;
            Some([&format_hertz(low), " to ", &format_hertz(high)].concat())
        }),
    ]
    .concat()
}

fn summary(band: Band, measured: &Curve, predicted: &Curve) -> String {
    if let (Some(found), Some(wanted)) = (worst_in(band, measured), worst_in(band, predicted)) {
        return [
            "measured VSWR at worst ",
            &format_decimal(found, 2),
            ", predicted ",
            &format_decimal(wanted, 2),
        ]
        .concat();
    }
    match (best(measured), best(predicted)) {
        (Some(found), Some(wanted)) => [
            "measured best at ",
            &format_hertz(found.0),
            ", predicted ",
            &format_hertz(wanted.0),
        ]
        .concat(),
        _ => "no measurement near the band".to_owned(),
    }
}
