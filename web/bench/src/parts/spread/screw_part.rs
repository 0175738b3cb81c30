//! Screws that were found: where, how deep, and what they do.

use tinwave_core::design::Screw;
use tinwave_core::ruler::RulerFigures;
use tinwave_core::screw_search::{DepthPoint, TunedScrews};
use tinwave_web::entry::format_length;

use super::screw_chart;
use super::screw_found::{ScrewsFound, Standing, for_request};
use super::threads::turns;
use super::words;
use crate::html::{escaped, result};
use crate::reply::Reply;
use crate::request::Request;

/// A depth may be off until the worst VSWR is this much more than its best.
const SLACK: f64 = 0.05;

/// Words of a design's own screws.
fn present(count: usize) -> String {
    match count {
        0 => "There is no screw in the design.".to_owned(),
        1 => "There is one screw in the design; the search adds to it.".to_owned(),
        _ => [
            "There are ",
            &count.to_string(),
            " screws in the design; the search adds to them.",
        ]
        .concat(),
    }
}

fn says(found: &ScrewsFound, tuned: &TunedScrews, standing: Standing) -> String {
    let without = words::vswr(tuned.worst_vswr_without);
    if tuned.screws.is_empty() {
        return [
            "No screw ",
            found.choice.side.1,
            " betters the match: the worst VSWR is ",
            &without,
            " without. Try another side, or move and cut the wire.",
        ]
        .concat();
    }
    let what = match (tuned.screws.len(), found.choice.count) {
        (1, 2) => "One screw (a second one adds nothing)",
        (1, _) => "One screw",
        _ => "Two screws",
    };
    let standing = match standing {
        Standing::Offered => "",
        Standing::Taken => " These screws are in the design.",
    };
    [
        what,
        " ",
        found.choice.side.1,
        " would bring the worst VSWR over the band from ",
        &without,
        " to ",
        &words::vswr(tuned.worst_vswr),
        ". Computed, not measured.",
        standing,
    ]
    .concat()
}

/// Quarter turns round the best depth within which the VSWR stays near its best.
pub(super) fn slack(curve: &[DepthPoint], at: u32) -> Option<(u32, u32)> {
    let point = |quarters: u32| {
        let found = curve.iter().find(|point| point.quarter_turns == quarters);
        found.and_then(|point| point.worst_vswr)
    };
    let most = point(at)? + SLACK;
    let is_near = |quarters: u32| point(quarters).is_some_and(|vswr| vswr <= most);
    let mut low = at;
    while low > 0 && is_near(low - 1) {
        low -= 1;
    }
    let mut high = at;
    while is_near(high + 1) {
        high += 1;
    }
    Some((low, high))
}

fn figures(found: &ScrewsFound, index: usize, screw: &Screw, request: &Request) -> String {
    // A ruler finds a screw as it finds the probe's hole.
    let mut design = found.design.clone();
    design.probe.backshort_distance_um = screw.axial_um;
    let ruler = RulerFigures::new(&design);
    let length = |um: u32| format_length(um, request.unit);
    let thread = found.choice.thread;
    let quarters = thread.quarter_turns(screw.depth_um);
    let open = ruler.hole_from_open_rim_um;
    let open = open.map_or_else(|| "beyond the rim".to_owned(), length);
    let turned = [&quarters.to_string(), " (", &turns(quarters), " turns)"].concat();
    let slack = found
        .curves
        .get(index)
        .and_then(|curve| slack(curve, quarters));
    let slack = slack.map_or_else(
        || "not known".to_owned(),
        |(low, high)| [&low.to_string(), " to ", &high.to_string()].concat(),
    );
    [
        [
            "<h4>Screw ",
            &(index + 1).to_string(),
            ", ",
            &escaped(thread.name),
            ", ",
            &escaped(found.choice.side.1),
            "</h4><dl class=\"results\">",
        ]
        .concat(),
        result(
            "Hole centre, from the closed end\u{2019}s outer rim",
            &length(ruler.hole_from_closed_rim_um),
        ),
        result(
            "Hole centre, from the inside of the back wall",
            &length(screw.axial_um),
        ),
        result("Hole centre, from the open rim", &open),
        result("Depth inside the wall", &length(screw.depth_um)),
        result("Quarter turns in from flush with the wall", &turned),
        result("Quarter turns that keep the VSWR within 0.05", &slack),
        "</dl>".to_owned(),
    ]
    .concat()
}

fn details(found: &ScrewsFound, tuned: &TunedScrews, request: &Request) -> String {
    let screws = tuned.screws.iter().enumerate();
    let each: String = screws
        .map(|(index, screw)| figures(found, index, screw, request))
        .collect();
    [
        "<dl class=\"results\">",
        &result("Worst VSWR without", &words::vswr(tuned.worst_vswr_without)),
        &result("Worst VSWR with", &words::vswr(tuned.worst_vswr)),
        "</dl>",
        &each,
    ]
    .concat()
}

/// What was found in a few words.
pub(super) fn summary(request: &Request) -> Option<String> {
    let (found, standing) = for_request(request)?;
    let tuned = found.tuned.filter(|tuned| !tuned.screws.is_empty())?;
    let vswr = words::vswr(tuned.worst_vswr);
    Some(match standing {
        Standing::Offered => ["screws would bring VSWR ", &vswr].concat(),
        Standing::Taken => ["with its screws VSWR ", &vswr].concat(),
    })
}

/// Shows what was found for the present can, or nothing.
pub(super) fn show(request: &Request, reply: &mut Reply) {
    let count = request.design().screws.len();
    reply.text("screws-present", &present(count));
    reply.show("screws-remove", count > 0);
    let found = for_request(request);
    let said = match &found {
        None => String::new(),
        Some((found, standing)) => found.tuned.as_ref().map_or_else(
            || "This can isn\u{2019}t computed as it stands: see the verdict.".to_owned(),
            |tuned| says(found, tuned, *standing),
        ),
    };
    reply.text("screws-says", &said);
    let offered = matches!(&found, Some((found, Standing::Offered)) if !found.screws().is_empty());
    reply.show("screws-take", offered);
    let good = found.as_ref().and_then(|(found, _)| {
        let tuned = found.tuned.as_ref()?;
        (!tuned.screws.is_empty()).then_some((found, tuned))
    });
    let markup = good.map_or_else(String::new, |(found, tuned)| details(found, tuned, request));
    reply.place("screws-results", markup);
    let chart = good.and_then(|(found, _)| screw_chart::chart(found));
    reply.place("screws-chart", chart.unwrap_or_default());
    let dashed = good.is_some_and(|(found, _)| found.curves.len() > 1);
    reply.text("screws-chart-says", chart_says(good.is_some(), dashed));
}

const fn chart_says(is_there: bool, has_two: bool) -> &'static str {
    match (is_there, has_two) {
        (false, _) => "",
        (true, false) => {
            "Full line: worst VSWR over the band against the screw\u{2019}s depth, a point for every quarter turn. Shaded: within 0.05 of the best. Dotted: VSWR 1.5 and 2."
        }
        (true, true) => {
            "Full line: worst VSWR over the band against the depth of screw 1; dashed: of screw 2; the other one stays at its depth. Shaded: where screw 1 is within 0.05 of the best. Dotted: VSWR 1.5 and 2."
        }
    }
}
