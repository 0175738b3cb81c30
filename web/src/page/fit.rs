//! What fits: trade sizes that carry one mode over the band.

use super::live::Named;
use super::markup::{fill, flag};
use super::match_part::vswr_text;
use super::model::Model;
use super::search::SizeFit;
use crate::entry;
use crate::workpiece::Workpiece;

fn summary(model: &Model) -> String {
    let Some(best) = model.sizes.first() else {
        return "no trade size carries one mode over this band".to_owned();
    };
    let count = model.sizes.len().to_string();
    [
        &count,
        " trade sizes carry one mode; first: ",
        best.size.name,
    ]
    .concat()
}

/// How many sizes have been matched.
fn known(model: &Model) -> usize {
    model.sizes.iter().filter(|fit| fit.cut.is_some()).count()
}

/// What the places of this part show.
pub(super) const NAMES: &[Named] = &[
    ("fit", summary),
    ("sizes-done", |model| {
        flag(known(model) == model.sizes.len())
    }),
    ("sizes", |model| model.sizes.len().max(1).to_string()),
    ("sizes-known", |model| known(model).to_string()),
    ("size-rows", rows),
];

fn rows(model: &Model) -> String {
    let mut html = String::new();
    for (index, fit) in model.sizes.iter().enumerate() {
        row(&mut html, model, fit, &index.to_string());
    }
    html
}

fn row(html: &mut String, model: &Model, fit: &SizeFit, index: &str) {
    let percent = |share: f64| entry::format_decimal(share * 100.0, 0);
    let vswr = match &fit.cut {
        None => "\u{2026}".to_owned(),
        Some(None) => "no match".to_owned(),
        Some(Some(cut)) => vswr_text(cut.worst_vswr),
    };
    let estimated = if fit.size.estimated() {
        ", estimated"
    } else {
        ""
    };
    fill(
        html,
        "<tr><th scope=\"row\">~<small>~~</small></th><td>~</td><td>~ %, ~ %</td><td>~</td>\
         <td><button type=\"button\" data-do=\"size\" data-arg=\"~\" aria-label=\"Use this size: ~\">Use</button></td></tr>",
        &[
            fit.size.name,
            fit.size.group.name(),
            estimated,
            &entry::format_length(fit.size.inside_um, model.unit),
            &percent(fit.margins.0),
            &percent(fit.margins.1),
            &vswr,
            index,
            fit.size.name,
        ],
    );
}

/// Takes a size into the work, with its best cut where that is known.
pub(super) fn take_size(work: &mut Workpiece, fit: &SizeFit) {
    let now = &mut work.design;
    now.can.inside_diameter_um = fit.design.can.inside_diameter_um;
    now.can.wall_um = fit.design.can.wall_um;
    now.can.metal = fit.design.can.metal;
    now.can.open_length_um = fit.design.can.open_length_um;
    if let Some(Some(cut)) = fit.cut {
        now.probe.length_um = cut.length_um;
        now.probe.backshort_distance_um = cut.backshort_distance_um;
    }
}
