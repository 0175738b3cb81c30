//! All figures from faces that a ruler touches, with their plus and minus.

use leptos::prelude::*;
use tinwave_core::best_cut::Allowance;
use tinwave_core::ruler::RulerFigures;
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::workpiece::Workpiece;
use tinwave_words::chart::table_of;
use tinwave_words::make::{self as words, Row};

use super::bench::{Bench, Readiness};
use crate::kit::Part;
use crate::reactive::{live, memo};

/// A row: what, how much, plus and minus, from where.
pub type FigureRow = [String; 4];

/// How far length and distance of the cut may be off before the VSWR passes a limit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Leeway {
    /// Whether the limit is 2: the cut is not within 1.5 as drawn.
    pub to_two: bool,
    /// The wire's length.
    pub length: Option<Allowance>,
    /// The hole's distance.
    pub distance: Option<Allowance>,
}

/// All figures of a work.
#[must_use]
pub fn figure_rows(work: &Workpiece, leeway: Leeway, unit: LengthUnit) -> Vec<FigureRow> {
    let figures = RulerFigures::new(&work.design);
    let (can, probe) = (&work.design.can, &work.design.probe);
    // The allowance is (shorter by, longer by).
    let written = |allowance: Option<Allowance>| {
        allowance.map(|(shorter, longer)| words::plus_and_minus(longer, shorter, unit))
    };
    // From the mouth a longer distance is a shorter one.
    let turned = leeway.distance.map(|(shorter, longer)| (longer, shorter));
    let rows = [
        (
            Row::HoleFromClosedEnd,
            Some(figures.hole_from_closed_rim_um),
            leeway.distance,
        ),
        (Row::HoleFromMouth, figures.hole_from_open_rim_um, turned),
        (Row::Drill, work.connector.drill_um(), None),
        (
            Row::WireFromFace,
            Some(figures.wire_from_connector_face_um),
            leeway.length,
        ),
        (
            Row::WireFromWall,
            Some(figures.wire_from_inner_wall_um),
            leeway.length,
        ),
        (Row::WireThickness, Some(probe.wire_diameter_um), None),
        (Row::WholeCan, Some(figures.overall_length_um), None),
        (Row::InsideLength, Some(can.open_length_um), None),
        (Row::InsideWidth, Some(can.inside_diameter_um), None),
    ];
    rows.into_iter()
        .filter_map(|(row, um, allowance)| {
            Some([
                words::row_name(row).to_owned(),
                words::cell(row, um?, unit),
                written(allowance).unwrap_or_default(),
                words::row_from(row, work.connector).to_owned(),
            ])
        })
        .collect()
}

/// The leeway of the present cut: known where it is one of the best cuts; else that of
/// the length alone, once it is worked out.
#[must_use]
pub fn leeway(bench: Bench) -> Leeway {
    let work = bench.workshop.work.get();
    let probe = &work.design.probe;
    let best = bench.workshop.answers.best.get().filter(|best| {
        best.length_um == probe.length_um
            && best.backshort_distance_um == probe.backshort_distance_um
    });
    if let Some(best) = best {
        let slacks = [best.length_slack, best.distance_slack];
        let to_two = slacks.iter().any(|slack| slack.to_vswr_1_5.is_none());
        let [length, distance] = slacks.map(|slack| {
            if to_two {
                slack.to_vswr_2
            } else {
                slack.to_vswr_1_5
            }
        });
        return Leeway {
            to_two,
            length,
            distance,
        };
    }
    let found = bench.fittings();
    let narrow = found.as_ref().and_then(|found| found.within_1_5);
    let to_two = narrow.is_none();
    let limits = narrow.or_else(|| found?.within_2);
    let length = limits.and_then(|limits| {
        let shorter = probe.length_um.checked_sub(limits.shortest_um)?;
        Some((shorter, limits.longest_um.checked_sub(probe.length_um)?))
    });
    Leeway {
        to_two,
        length,
        distance: None,
    }
}

/// The table in the page.
#[component]
pub fn FiguresTable(
    /// The bench.
    bench: Bench,
) -> impl IntoView {
    let rows = memo(move || {
        let unit = bench.workshop.unit.get();
        let leeway = leeway(bench);
        bench
            .workshop
            .work
            .with(|work| figure_rows(work, leeway, unit))
    });
    let is_ready = move || bench.readiness() != Readiness::Searching;
    view! {
        <Part title=words::all_figures() note=move || words::plus_and_minus_note(leeway(bench).to_two)>
            <Show when=is_ready fallback=|| view! { <p class="note">{words::waits_for_cut()}</p> }>
                <div class="wide-table" role="region" tabindex="0" aria-label=table_of(words::all_figures())>
                    {live(move || table(rows.get(), bench.workshop.unit.get()))}
                </div>
            </Show>
        </Part>
    }
}

/// Rows as a table.
pub fn table(rows: Vec<FigureRow>, unit: LengthUnit) -> impl IntoView {
    let heads = words::heads(unit);
    let row = |[name, figure, leeway, from]: FigureRow| {
        view! {
            <tr>
                <th scope="row">{name}</th>
                <td><strong>{figure}</strong></td>
                <td>{leeway}</td>
                <td>{from}</td>
            </tr>
        }
    };
    view! {
        <table class="figures-table">
            <thead><tr>{heads.into_iter().map(|head| view! { <th scope="col">{head}</th> }).collect_view()}</tr></thead>
            <tbody>{rows.into_iter().map(row).collect_view()}</tbody>
        </table>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tinwave_maker::example::example;

    #[test]
    fn the_hole_from_either_end_adds_up_to_the_whole_can() {
        let work = example();
        let rows = figure_rows(&work, Leeway::default(), LengthUnit::Millimetre);
        let figure = |at: usize| rows[at][1].parse::<f64>().unwrap_or(f64::NAN);
        assert!((figure(0) + figure(1) - figure(6)).abs() < 0.11, "{rows:?}");
    }

    #[test]
    fn plus_and_minus_change_places_at_the_mouth() {
        let leeway = Leeway {
            to_two: false,
            length: Some((700, 700)),
            distance: Some((1_000, 2_500)),
        };
        let rows = figure_rows(&example(), leeway, LengthUnit::Millimetre);
        assert_eq!(rows[0][2], "+2.5 −1.0");
        assert_eq!(rows[1][2], "+1.0 −2.5");
        assert_eq!(rows[3][2], "±0.7");
        assert_eq!(rows[2][2], "");
    }
}
