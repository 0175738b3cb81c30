//! What fits: trade sizes that carry one mode over the band.

use leptos::prelude::*;

use super::matching::vswr_text;
use super::parts::{paragraph, section_with, why};
use super::search::{Search, SizeFit};
use super::state::Page;
use crate::entry::{self, LengthUnit};
use crate::history::Change;
use crate::words::Shown;

/// The section. The sizes are matched only while it is open.
pub(super) fn fit_section(page: Page, search: Search) -> AnyView {
    let sum = Signal::derive(move || {
        search.sizes.with(|sizes| {
            let Some(best) = sizes.first() else {
                return "no trade size carries one mode over this band".to_owned();
            };
            [
                &sizes.len().to_string(),
                " trade sizes carry one mode; first: ",
                best.size.name,
            ]
            .concat()
        })
    });
    let list = move || {
        let unit = page.unit.get();
        search.sizes.with(|sizes| {
            sizes
                .iter()
                .map(|fit| size_row(page, fit, unit))
                .collect::<Vec<AnyView>>()
        })
    };
    let waiting = move || {
        search
            .sizes
            .with(|sizes| sizes.iter().filter(|fit| fit.cut.is_none()).count())
    };
    let known = move || search.sizes.with(|sizes| sizes.len()) - waiting();
    let body = vec![
        paragraph(
            "note",
            "Sizes that carry exactly one mode over the whole band, the roomiest first. Room: how far the band stays from the cutoffs below and above. Match: with the best wire length and hole position for your wire.",
        ),
        why("what fits", Shown::TradeSizes),
        view! {
            <p class="searching" class:unseen=move || waiting() == 0>
                <progress aria-label="Sizes matched" prop:max=move || (known() + waiting()) as f64 prop:value=move || known() as f64></progress>
                <button type="button" on:click=move |_| search.stop()>"Stop"</button>
            </p>
            <div class="table-wrap" tabindex="0" role="region" aria-label="Trade sizes">
                <table class="sizes">
                    <thead><tr>
                        <th scope="col">"Size"</th>
                        <th scope="col">"Inside"</th>
                        <th scope="col">"Room below, above"</th>
                        <th scope="col">"Best VSWR"</th>
                        <th scope="col"><span class="unseen">"Use"</span></th>
                    </tr></thead>
                    <tbody>{list}</tbody>
                </table>
            </div>
        }
        .into_any(),
    ];
    section_with(
        "fit",
        "6 What fits",
        page.wide.get_untracked(),
        sum,
        Box::new(move |open| search.sizes_wanted.set(open)),
        body,
    )
}

fn size_row(page: Page, fit: &SizeFit, unit: LengthUnit) -> AnyView {
    let percent = |share: f64| [&entry::format_decimal(share * 100.0, 0), " %"].concat();
    let vswr = match &fit.cut {
        None => "\u{2026}".to_owned(),
        Some(None) => "no match".to_owned(),
        Some(Some(cut)) => vswr_text(cut.worst_vswr),
    };
    let design = fit.design.clone();
    let cut = fit.cut.flatten();
    let use_it = move |_| {
        let mut work = page.work.get_untracked();
        let now = &mut work.design;
        now.can.inside_diameter_um = design.can.inside_diameter_um;
        now.can.wall_um = design.can.wall_um;
        now.can.metal = design.can.metal;
        now.can.open_length_um = design.can.open_length_um;
        if let Some(cut) = cut {
            now.probe.length_um = cut.length_um;
            now.probe.backshort_distance_um = cut.backshort_distance_um;
        }
        page.replace(work, Change::Diameter);
    };
    let label = ["Use this size: ", fit.size.name].concat();
    view! {
        <tr>
            <th scope="row">{fit.size.name}<small>{fit.size.group.name()}{fit.size.estimated().then_some(", estimated")}</small></th>
            <td>{entry::format_length_number(fit.size.inside_um, unit)}</td>
            <td>{percent(fit.margins.0)}", "{percent(fit.margins.1)}</td>
            <td>{vswr}</td>
            <td><button type="button" aria-label=label on:click=use_it>"Use"</button></td>
        </tr>
    }
    .into_any()
}
