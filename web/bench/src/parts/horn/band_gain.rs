//! Gain straight ahead over the band.

use tinwave_core::match_band::band_frequencies;
use tinwave_core::radiation::CanBeam;
use tinwave_core::si::hertz;
use tinwave_web::entry::{format_decimal, format_frequency};

use crate::chart::{Axis, Chart, LineKind, axis_around};
use crate::outsides::outside_of;
use crate::reply::Reply;
use crate::request::Request;
use crate::whole::whole_can;

/// Frequencies of the chart.
const POINTS: u32 = 25;

/// Gain and directivity at one frequency.
struct Point {
    khz: u32,
    gain_dbi: f64,
    directivity_dbi: f64,
}

fn points(request: &Request) -> Option<Vec<Point>> {
    let design = request.design();
    let outside = outside_of(design)?;
    let can = whole_can(design, Some(&outside));
    let at = |khz: u32| {
        let beam = CanBeam::new(&outside, can.as_ref(), hertz(khz))?;
        Some(Point {
            khz,
            gain_dbi: beam.realised_gain_dbi.unwrap_or(f64::NAN),
            directivity_dbi: beam.figures.directivity_dbi,
        })
    };
    Some(
        band_frequencies(design.band, POINTS)
            .into_iter()
            .filter_map(at)
            .collect(),
    )
}

/// Shows the chart, or says why there is none.
pub(super) fn show(request: &Request, reply: &mut Reply) {
    let points = points(request).unwrap_or_default();
    let (Some(first), Some(last)) = (points.first(), points.last()) else {
        reply.place("gain-chart", String::new());
        reply.text(
            "gain-says",
            "This can is beyond the full computation, so its gain over the band is not known.",
        );
        return;
    };
    let least = points
        .iter()
        .min_by(|a, b| a.gain_dbi.total_cmp(&b.gain_dbi))
        .unwrap_or(first);
    let says = [
        "Least gain in the band, match and wall loss included: ",
        &format_decimal(least.gain_dbi, 1),
        " dBi at ",
        &format_frequency(least.khz),
        ".",
    ]
    .concat();
    let gains = points
        .iter()
        .map(|p| (f64::from(p.khz) / 1e3, p.gain_dbi))
        .collect::<Vec<_>>();
    let ideal = points
        .iter()
        .map(|p| (f64::from(p.khz) / 1e3, p.directivity_dbi))
        .collect::<Vec<_>>();
    let levels = gains.iter().chain(&ideal).map(|point| point.1);
    let chart = Chart {
        id: "gain-over-band",
        title: "Gain straight ahead over the band".to_owned(),
        description: says.clone(),
        x: Axis {
            low: f64::from(first.khz) / 1e3,
            high: f64::from(last.khz) / 1e3,
            title: "MHz".to_owned(),
        },
        y: axis_around(
            levels,
            2.0,
            "dBi: full line gain, dashed directivity".to_owned(),
        ),
        lines: vec![(LineKind::Other, ideal), (LineKind::Main, gains)],
        shaded: None,
        choices: Vec::new(),
    };
    reply.place("gain-chart", chart.to_svg());
    reply.text("gain-says", &says);
}
