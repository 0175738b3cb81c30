//! Worst VSWR against depth in quarter turns.

use super::screw_found::ScrewsFound;
use super::screw_part::slack;
use super::words;
use crate::chart::{Axis, Chart, LineKind};

/// Above this VSWR the chart is cut off.
const HIGHEST: f64 = 5.0;
/// Limits that are drawn.
const LIMITS: [f64; 2] = [1.5, 2.0];

/// The chart; `None` without a curve.
pub(super) fn chart(found: &ScrewsFound) -> Option<String> {
    let points = || found.curves.iter().flatten();
    let last = points().map(|point| point.quarter_turns).max()?;
    let highest = points()
        .filter_map(|point| point.worst_vswr)
        .fold(LIMITS[0], f64::max)
        .min(HIGHEST);
    let limits = LIMITS.iter().filter(|limit| **limit <= highest);
    let width = f64::from(last.max(1));
    let limits = limits.map(|limit| (LineKind::Limit, vec![(0.0, *limit), (width, *limit)]));
    let kinds = [LineKind::Main, LineKind::Other].into_iter();
    let curves = kinds.zip(&found.curves).map(|(kind, curve)| {
        let points = curve.iter().map(|point| {
            let vswr = point.worst_vswr.filter(|vswr| *vswr <= HIGHEST);
            (f64::from(point.quarter_turns), vswr.unwrap_or(f64::NAN))
        });
        (kind, points.collect())
    });
    let first = found.screws().first()?;
    let best = found.choice.thread.quarter_turns(first.depth_um);
    let shaded = found.curves.first().and_then(|curve| slack(curve, best));
    let chart = Chart {
        id: "spread-depth",
        title: "Worst VSWR against the depth of the screw".to_owned(),
        description: description(found),
        x: Axis {
            low: 0.0,
            high: width,
            title: "Quarter turns in from flush".to_owned(),
        },
        y: Axis {
            low: 1.0,
            high: highest,
            title: "Worst VSWR over the band".to_owned(),
        },
        lines: limits.chain(curves).collect(),
        shaded: shaded.map(|(low, high)| (f64::from(low), f64::from(high))),
        choices: Vec::new(),
    };
    Some(chart.to_svg())
}

fn description(found: &ScrewsFound) -> String {
    let screws = found.screws().iter().zip(&found.curves).zip(1_u32..);
    let each = screws.map(|((screw, curve), number)| {
        let quarters = found.choice.thread.quarter_turns(screw.depth_um);
        let flush = curve.first().and_then(|point| point.worst_vswr);
        [
            "Screw ",
            &number.to_string(),
            ": best at ",
            &quarters.to_string(),
            " quarter turns; flush with the wall VSWR ",
            &flush.map_or_else(|| "not known".to_owned(), words::vswr),
            ".",
        ]
        .concat()
    });
    each.collect::<Vec<_>>().join(" ")
}
