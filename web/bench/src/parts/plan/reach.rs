//! How far the link reaches: margin over distance, and where it runs out.

use tinwave_core::radio_link::{End, LinkError};

use super::link::Plan;
use super::words::{axis_unit, distance, whole_db};
use crate::chart::{Axis, Chart, LineKind, axis_around};
use crate::reply::Reply;

/// Points of a line.
const POINTS: u32 = 60;

pub(super) fn show(plan: &Plan, reply: &mut Reply) -> Result<(), LinkError> {
    let fade_db = plan.entries.fade_db;
    let out = plan.link.reach_both_ways_m(0.0)?;
    let safe = plan.link.reach_both_ways_m(fade_db)?;
    let (Some(out_m), Some(safe_m)) = (out, safe) else {
        reply.place("reach-chart", String::new());
        reply.text("reach-says", "");
        return Ok(());
    };
    let says = [
        "With ",
        &whole_db(fade_db),
        " kept against fading it reaches ",
        &distance(safe_m, plan.unit),
        "; the margin is used up at ",
        &distance(out_m, plan.unit),
        ". Only the loss of free space grows with distance here: hills, the Earth’s curve and more trees come on top.",
    ]
    .concat();
    reply.text("reach-says", &says);
    reply.place("reach-chart", chart(plan, out_m, safe_m, &says)?);
    Ok(())
}

fn chart(plan: &Plan, out_m: f64, safe_m: f64, says: &str) -> Result<String, LinkError> {
    let here_m = plan.entries.distance_m;
    // Both the present distance and where it runs out, unless they lie far apart.
    let far_m = (1.25 * here_m).max((1.15 * out_m).min(8.0 * here_m));
    let (symbol, unit_m) = axis_unit(far_m, plan.unit);
    let near_m = 0.02 * far_m;
    let mut lines = Vec::new();
    let mut all = vec![0.0];
    for budget in plan.link.budgets()? {
        let points: Vec<(f64, f64)> = (0..=POINTS)
            .map(|n| near_m + (far_m - near_m) * f64::from(n) / f64::from(POINTS))
            .map(|at| (at / unit_m, budget.margin_db - 20.0 * (at / here_m).log10()))
            .collect();
        all.extend(points.iter().map(|point| point.1));
        let kind = match budget.from {
            End::A => LineKind::Main,
            End::B => LineKind::Other,
        };
        lines.push((kind, points));
    }
    let far = far_m / unit_m;
    for level in [0.0, plan.entries.fade_db] {
        lines.push((LineKind::Limit, vec![(0.0, level), (far, level)]));
    }
    let y = axis_around(all.into_iter(), 10.0, "Margin, dB".to_owned());
    lines.push((
        LineKind::Limit,
        vec![(here_m / unit_m, y.low), (here_m / unit_m, y.high)],
    ));
    Ok(Chart {
        id: "plan-reach",
        title: "Margin over distance".to_owned(),
        description: says.to_owned(),
        x: Axis {
            low: 0.0,
            high: far,
            title: ["Distance, ", symbol].concat(),
        },
        y,
        lines,
        shaded: Some((0.0, (safe_m / unit_m).min(far))),
        choices: Vec::new(),
    }
    .to_svg())
}
