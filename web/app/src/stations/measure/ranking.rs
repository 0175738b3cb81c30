//! What each dimension does within its tolerance: bars on one axis, and a table.

use leptos::prelude::*;
use tinwave_core::dimension::Dimension;
use tinwave_maker::entry::LengthUnit;
use tinwave_protocol::tolerance::Ranking;
use tinwave_words::measure::{dimension_head, vswr};
use tinwave_words::tolerance as words;

use super::careful::Careful;
use crate::kit::{TableFold, TableText};
use crate::reactive::memo;
use crate::state::Workshop;
use crate::worker::TaskState;

/// The dimension that deserves the care, and all of them as bars.
#[component]
pub fn RankingPart(
    /// What is worked out.
    careful: Careful,
) -> impl IntoView {
    let unit = expect_context::<Workshop>().unit;
    let state = careful.ranking.state();
    let ranking = memo(move || state.with(|state| state.answer().cloned().flatten()));
    let nothing = move || state.with(|state| matches!(state, TaskState::Done(None)));
    let said = move || match ranking.get() {
        Some(ranking) => says(&ranking, unit.get()),
        None if nothing() => words::nothing_ranked().to_owned(),
        None => String::new(),
    };
    let bars = move || {
        let unit = unit.get();
        ranking.with(|ranking| {
            let ranking = ranking.as_ref()?;
            let longest = ranking.ranked.iter().map(|one| ranking.rise(one));
            let longest = longest.filter(|rise| rise.is_finite()).fold(1e-9, f64::max);
            let rows = ranking.ranked.iter().map(|one| {
                let share = (ranking.rise(one) / longest).clamp(0.0, 1.0);
                let width = format!("{:.1}%", 100.0 * share);
                view! {
                    <li>
                        <span>{words::row_name(one.dimension, one.change, unit)}</span>
                        <b>{words::row_vswr(Ranking::worst(one))}</b>
                        <span class="bar" aria-hidden="true"><span style:inline-size=width></span></span>
                    </li>
                }
            });
            Some(rows.collect_view())
        })
    };
    let table = move || {
        let unit = unit.get();
        ranking.with(|ranking| {
            ranking
                .as_ref()
                .map_or_else(TableText::default, |r| table(r, unit))
        })
    };
    view! {
        <h3>{words::ranking_title()}</h3>
        <p class="note" role="status">{said}</p>
        <ul class="ranking">{bars}</ul>
        <Show when=move || ranking.with(Option::is_some)>
            <TableFold name=words::ranking_title() table=Signal::derive(table)/>
        </Show>
    }
}

fn says(ranking: &Ranking, unit: LengthUnit) -> String {
    if let Some((dimension, size)) = ranking.impossible.first() {
        return words::impossible(*dimension, *size, unit);
    }
    ranking.first().map_or_else(
        || words::none_deserves(ranking.as_drawn),
        |first| words::deserves_care(first, ranking.as_drawn, Ranking::worst(first), unit),
    )
}

fn table(ranking: &Ranking, unit: LengthUnit) -> TableText {
    let head = |dimension: Dimension| dimension_head(dimension).to_owned();
    let known = ranking.ranked.iter().map(|one| {
        vec![
            head(one.dimension),
            words::tolerance(one.dimension, one.change, unit),
            vswr(one.worst_vswr.0),
            vswr(one.worst_vswr.1),
            words::shift(one, unit),
        ]
    });
    let unknown = ranking.impossible.iter().map(|(dimension, size)| {
        let none = || tinwave_words::chart::no_value().to_owned();
        let size = words::tolerance(*dimension, *size, unit);
        vec![head(*dimension), size, none(), none(), none()]
    });
    TableText {
        head: words::ranking_heads(),
        rows: known.chain(unknown).collect(),
    }
}
