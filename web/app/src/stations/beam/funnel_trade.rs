//! The trade of a funnel: gain against length and against mouth.

use leptos::prelude::*;
use tinwave_drawing::chart::{Axis, ChartSpec, Mark, Series, Style};
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::history::Change;
use tinwave_protocol::beam::{FunnelFound, FunnelPoint};
use tinwave_words::beam as words;

use crate::kit::{Action, ActionKind, XyChart};
use crate::reactive::live;
use crate::state::Workshop;

/// What a trade is against.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Along {
    /// The funnel's length.
    Length,
    /// Its mouth.
    Mouth,
}

impl Along {
    fn points(self, found: &FunnelFound) -> &[FunnelPoint] {
        match self {
            Self::Length => &found.by_length,
            Self::Mouth => &found.by_mouth,
        }
    }

    fn place(self, point: &FunnelPoint, unit: LengthUnit) -> f64 {
        let metres = match self {
            Self::Length => point.length_m,
            Self::Mouth => f64::from(point.mouth_um) / 1e6,
        };
        match unit {
            LengthUnit::Millimetre => metres * 1e3,
            LengthUnit::Inch => metres / 0.025_4,
        }
    }
}

/// One trade as a chart, the best marked.
#[component]
pub fn TradeChart(
    /// What the search has found.
    found: Memo<Option<FunnelFound>>,
    /// What the trade is against.
    along: Along,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let [by_length, by_mouth, ..] = words::trade_names();
    let title = match along {
        Along::Length => by_length,
        Along::Mouth => by_mouth,
    };
    let spec = move || {
        let unit = workshop.unit.get();
        found.with(|found| chart(found.as_ref(), along, unit))
    };
    let note = move || {
        let all = found.with(|found| {
            let points = found.as_ref().map_or(&[][..], |found| along.points(found));
            points.iter().all(|point| point.is_solved)
        });
        words::trade_note(all).to_owned()
    };
    view! { <XyChart title note spec/> }
}

fn chart(found: Option<&FunnelFound>, along: Along, unit: LengthUnit) -> ChartSpec {
    let [_, _, length, mouth, gain] = words::trade_names();
    let points = found.map_or(&[][..], |found| along.points(found));
    let line: Vec<(f64, f64)> = points
        .iter()
        .map(|point| (along.place(point, unit), point.gain_dbi))
        .collect();
    let best = found.and_then(|found| found.best?);
    let best = best.map(|best| (along.place(&best, unit), best.gain_dbi));
    let all = line.iter().chain(best.iter());
    let name = match along {
        Along::Length => length,
        Along::Mouth => mouth,
    };
    let x = Axis::holding(name, unit.symbol(), all.clone().map(|point| point.0)).with_decimals(0);
    let y = Axis::holding(gain, "dBi", all.map(|point| point.1)).with_decimals(1);
    let mut spec = ChartSpec::new(x, y);
    let style = if points.iter().all(|point| point.is_solved) {
        Style::This
    } else {
        Style::Compared
    };
    spec.series = vec![Series::new("", style, line)];
    if let Some(at) = best {
        spec.rest = Some(at.0);
        spec.marks.push(Mark {
            at,
            name: words::choice_gain(at.1),
        });
    }
    spec
}

/// Every point of a trade as a button that takes it.
#[component]
pub fn TradePoints(
    /// What the search has found.
    found: Memo<Option<FunnelFound>>,
    /// What the trade is against.
    along: Along,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let points = move || {
        found.with(|found| {
            let found = found.as_ref();
            found.map_or_else(Vec::new, |found| along.points(found).to_vec())
        })
    };
    let row = move |point: FunnelPoint| {
        let text = move || {
            let unit = workshop.unit.get();
            words::trade_point(
                point.gain_dbi,
                point.is_solved,
                point.mouth_um,
                point.length_m,
                unit,
            )
        };
        let take = move |()| {
            workshop.edit(Change::Mouth, |work| work.design.mouth = point.mouth());
        };
        view! { <li><Action kind=ActionKind::Words text on_press=take/></li> }
    };
    view! { <ul class="funnel-points">{live(move || points().into_iter().map(row).collect_view())}</ul> }
}
