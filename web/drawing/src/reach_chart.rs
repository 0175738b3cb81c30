//! Margin over distance, in free space alone, as a chart.

use tinwave_core::radio_link::Budget;
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::link_plan::LinkAnswer;
use tinwave_words::figures::axis_unit;
use tinwave_words::link_plan as words;

use crate::chart::{Axis, ChartSpec, Mark, Series, Style};

/// Points of a curve.
const POINTS: u32 = 80;

/// The chart: a curve for each direction, the margin kept, the distance entered and where
/// the margin kept runs out.
#[must_use]
pub fn reach_chart(link: &LinkAnswer, unit: LengthUnit) -> ChartSpec {
    let here_m = link.link.distance_m;
    let fade_db = link.link.required_fade_margin_db;
    // Both the present distance and where it runs out, unless they lie far apart.
    let far_m = (1.25 * here_m).max((1.15 * link.reach.out_m).min(8.0 * here_m));
    let near_m = 0.02 * far_m;
    let (symbol, worth) = axis_unit(far_m, unit);
    let curve = |budget: &Budget| -> Vec<(f64, f64)> {
        (0..=POINTS)
            .map(|n| near_m + (far_m - near_m) * f64::from(n) / f64::from(POINTS))
            .map(|at_m| {
                let margin_db = link.margin_at_db(budget.from, at_m);
                (at_m / worth, margin_db.unwrap_or(f64::NAN))
            })
            .collect()
    };
    let mut series: Vec<Series> = Vec::new();
    let directions = if link.is_alike() { 1 } else { 2 };
    for budget in link.budgets.iter().take(directions) {
        let name = if directions == 1 {
            ""
        } else {
            words::direction(budget.from)
        };
        let style = if series.is_empty() {
            Style::This
        } else {
            Style::Compared
        };
        series.push(Series::new(name, style, curve(budget)));
    }
    let (distance, margin) = words::reach_axes();
    let values = series
        .iter()
        .flat_map(|one| &one.points)
        .map(|point| point.1);
    let y = Axis::holding(margin, "dB", values.chain([0.0, fade_db])).with_decimals(1);
    let decimals = if far_m / worth < 20.0 { 2 } else { 0 };
    let x = Axis::new(distance, symbol, 0.0, far_m / worth).with_decimals(decimals);
    let mut spec = ChartSpec::new(x, y);
    spec.series = series;
    spec.limits = vec![fade_db];
    spec.rest = Some(here_m / worth);
    spec.marks.push(Mark {
        at: (here_m / worth, link.weaker.margin_db),
        name: words::reach_mark(here_m, link.weaker.margin_db, unit),
    });
    let kept_m = link.reach.kept_m;
    if (near_m..far_m).contains(&kept_m) && (kept_m / here_m - 1.0).abs() > 0.2 {
        spec.marks.push(Mark {
            at: (kept_m / worth, fade_db),
            name: words::kept_mark(kept_m, fade_db, unit),
        });
    }
    spec
}
