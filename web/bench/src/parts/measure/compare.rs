//! Measured and predicted side by side.

use tinwave_core::complex::Complex;
use tinwave_core::design::Band;
use tinwave_core::diagnosis::{Measurement, remove_port_length};
use tinwave_core::match_band::sweep_frequencies;
use tinwave_core::reflection::vswr;
use tinwave_core::si::hertz;
use tinwave_web::entry::{format_decimal, format_hertz};

use super::compare_chart;
use super::entered::{Entered, for_charts};
use crate::html::row;
use crate::outsides::outside_of;
use crate::reply::Reply;
use crate::request::Request;
use crate::whole::whole_can;

/// Frequency in Hz and VSWR.
pub(super) type Curve = Vec<(f64, f64)>;

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

/// What was measured within the sweep; a lone point counts wherever it is.
pub(super) fn measured(request: &Request, entered: &Entered) -> Curve {
    let sweep = request.design().effective_sweep();
    let range = hertz(sweep.low_khz)..=hertz(sweep.high_khz);
    let points = entered.magnitudes();
    let is_lone = points.len() == 1;
    points
        .into_iter()
        .filter(|(hz, magnitude)| (is_lone || range.contains(hz)) && magnitude.is_finite())
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
    reply.measured(&for_charts(&shown, request.design().effective_sweep()));
    let predicted = predicted(request).into_iter();
    let predicted: Curve = predicted.map(|(hz, at)| (hz, vswr(at.abs()))).collect();
    let measured = measured(request, entered);
    let band = request.design().band;
    let sum = summary(band, &measured, &predicted);
    reply.place(
        "compare-chart",
        compare_chart::chart(request, &sum, &measured, &predicted),
    );
    reply.place("compare-rows", rows(band, &measured, &predicted));
    reply.text("compare-says", compare_chart::says(request));
    reply.text("sum", &sum);
}

/// The best point in or near the band: within half its width beside it, unless the
/// match only gets better towards the end there.
pub(super) fn best(band: Band, curve: &Curve) -> Option<(f64, f64)> {
    let (low, high) = (hertz(band.low_khz), hertz(band.high_khz));
    let within = |more: f64| -> Vec<(f64, f64)> {
        let range = low - more..=high + more;
        let points = curve.iter().filter(|point| range.contains(&point.0));
        points.copied().collect()
    };
    let least = |points: &[(f64, f64)]| points.iter().copied().min_by(|a, b| a.1.total_cmp(&b.1));
    let near = within(0.5 * (high - low));
    let found = least(&near);
    let at_end =
        found.is_some() && (found == near.first().copied() || found == near.last().copied());
    let inside = at_end.then(|| least(&within(0.0))).flatten();
    inside.or(found).or_else(|| least(curve))
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

/// Frequencies below VSWR 2 around the best one; none for a single point.
fn under_two(band: Band, curve: &Curve) -> Option<String> {
    let (at, there) = best(band, curve).filter(|_| curve.len() > 1)?;
    if there > 2.0 {
        return Some("nowhere".to_owned());
    }
    let place = curve.iter().position(|point| point.0 == at)?;
    let (before, after) = curve.split_at(place);
    let last_good = |points: &mut dyn Iterator<Item = &(f64, f64)>| {
        let good = points.take_while(|point| point.1 <= 2.0);
        good.last().map(|point| point.0)
    };
    let low = last_good(&mut before.iter().rev()).unwrap_or(at);
    let high = last_good(&mut after.iter()).unwrap_or(at);
    Some([&format_hertz(low), " to ", &format_hertz(high)].concat())
}

/// What stands where there is no figure.
const NOT_MEASURED: &str = "not measured";
const NOT_COMPUTED: &str = "not computed";

fn rows(band: Band, measured: &Curve, predicted: &Curve) -> String {
    let both = |what: &str, value: &dyn Fn(&Curve) -> Option<String>| {
        let cell = |curve: &Curve, none: &str| value(curve).unwrap_or_else(|| none.to_owned());
        let cells = [cell(measured, NOT_MEASURED), cell(predicted, NOT_COMPUTED)];
        row(&[what, &cells[0], &cells[1]])
    };
    [
        both("Best in or near the band, at", &|curve| {
            best(band, curve).map(|best| format_hertz(best.0))
        }),
        both("VSWR there", &|curve| {
            best(band, curve).map(|best| format_decimal(best.1, 2))
        }),
        both("VSWR, worst in the band", &|curve| {
            worst_in(band, curve).map(|worst| format_decimal(worst, 2))
        }),
        both("VSWR under 2", &|curve| under_two(band, curve)),
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
    match (best(band, measured), best(band, predicted)) {
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
