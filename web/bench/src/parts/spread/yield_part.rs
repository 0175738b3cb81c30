//! The share of cans that pass, in words and tables.

use tinwave_core::tolerance::{Care, Yield, YieldSettings, at_least, batch, yield_of};
use tinwave_web::entry::format_decimal;

use super::desk::{self, YieldKey};
use super::entries;
use super::words;
use crate::html::{result, row};
use crate::outsides::outside_of;
use crate::reply::Reply;
use crate::request::Request;

/// Cans of the first look, which is quick enough for every change.
const FIRST_LOOK: u32 = 400;
/// The chance that the batch's least number is stated with.
const BATCH_CHANCE: f64 = 0.9;

/// The cans drawn so far; a first look where none are.
pub(super) fn so_far(key: &YieldKey) -> Option<Yield> {
    desk::drawn(key).or_else(|| {
        let design = key.design();
        let settings = YieldSettings {
            samples: key.settings.samples.min(FIRST_LOOK),
            ..key.settings.clone()
        };
        let first = yield_of(design, outside_of(design).as_ref(), settings).ok()?;
        desk::keep_drawn(key, first.clone());
        Some(first)
    })
}

/// The dimension that helps most were it exact, if it helps more than chance does.
fn helps(drawn: &Yield) -> Option<&Care> {
    let first = drawn.care.first()?;
    (first.pass_if_exact > drawn.pass_bounds.1).then_some(first)
}

fn says(drawn: &Yield, wanted: u32, limit: f64) -> String {
    let first_look = if drawn.samples < wanted {
        [
            " So far ",
            &drawn.samples.to_string(),
            " of ",
            &wanted.to_string(),
            " cans are drawn: more make the bounds narrower.",
        ]
        .concat()
    } else {
        String::new()
    };
    let no_help = if drawn.pass < 1.0 {
        " No single dimension made exact would help for certain."
    } else {
        ""
    };
    let help = helps(drawn).map_or_else(
        || no_help.to_owned(),
        |care| {
            [
                " Were the ",
                words::name(care.dimension),
                " exact, ",
                &words::per_cent(care.pass_if_exact),
                " would.",
            ]
            .concat()
        },
    );
    [
        "Simulated, not measured: ",
        &words::per_cent(drawn.pass),
        " of cans made to these tolerances come out at VSWR ",
        &format_decimal(limit, 1),
        " or better over the whole band.",
        &help,
        &first_look,
    ]
    .concat()
}

fn results(drawn: &Yield, limit: f64) -> String {
    let (low, high) = drawn.pass_bounds;
    let limit = format_decimal(limit, 1);
    [
        result("Cans simulated", &drawn.samples.to_string()),
        result(
            &["Share that passes VSWR ", &limit].concat(),
            &words::per_cent(drawn.pass),
        ),
        result(
            "Bounds of that share (95 % confidence)",
            &[&words::per_cent(low), " to ", &words::per_cent(high)].concat(),
        ),
        result(
            "Worst VSWR of the middle can (median)",
            &words::vswr(drawn.vswr_half),
        ),
        result(
            "Worst VSWR that 90 % of cans stay within",
            &words::vswr(drawn.vswr_nine_tenths),
        ),
    ]
    .concat()
}

fn care_rows(drawn: &Yield) -> String {
    let rows = drawn.care.iter().map(|care| {
        row(&[
            &words::name_as_head(care.dimension),
            &words::per_cent(care.pass_if_exact),
            &words::vswr(care.mean_vswr_alone),
        ])
    });
    rows.collect()
}

fn batch_results(size: u32, pass: f64) -> String {
    let cans = batch(size, pass);
    let number = size.to_string();
    let least = at_least(size, pass, BATCH_CHANCE).to_string();
    [
        result(
            "Expected to pass",
            &[&format_decimal(cans.expected, 1), " of ", &number].concat(),
        ),
        result(
            "With 90 % chance at least",
            &[&least, " of ", &number].concat(),
        ),
        result("Chance that all pass", &words::per_cent(cans.all)),
    ]
    .concat()
}

fn batch_says(size: u32, drawn: &Yield) -> String {
    let low = drawn.pass_bounds.0;
    [
        "Worked out from the share above, ",
        &words::per_cent(drawn.pass),
        ". Were it at its lower bound, ",
        &words::per_cent(low),
        ", at least ",
        &at_least(size, low, BATCH_CHANCE).to_string(),
        " with 90 % chance.",
    ]
    .concat()
}

fn stand_in(drawn: &Yield) -> String {
    [
        "Each can\u{2019}s reflection comes from a parabola fitted to the field computation round the drawing. Eight cans were also computed fully: the worst reflection (0 to 1) differed by at most ",
        &format_decimal(drawn.surrogate_error, 4),
        ".",
    ]
    .concat()
}

/// What jobs may show while they run: figures, but nothing that is read out.
pub(super) fn show_figures(request: &Request, key: &YieldKey, drawn: &Yield, reply: &mut Reply) {
    reply.place("yield-results", results(drawn, key.settings.vswr_limit));
    reply.show("care-table", true);
    reply.place("care-rows", care_rows(drawn));
    let size = entries::batch_size(request, reply);
    let batch = size.map_or_else(String::new, |size| batch_results(size, drawn.pass));
    reply.place("batch-results", batch);
    let said = size.map_or_else(String::new, |size| batch_says(size, drawn));
    reply.text("batch-says", &said);
    reply.text("yield-error", &stand_in(drawn));
}

/// Shows the yield of a key; without one, why there is none.
pub(super) fn show(request: &Request, key: Option<&YieldKey>, reply: &mut Reply) -> Option<Yield> {
    let scatters = key.is_none_or(YieldKey::scatters);
    let drawn = key.filter(|_| scatters).and_then(so_far);
    if let (Some(key), Some(drawn)) = (key, &drawn) {
        let YieldSettings {
            samples,
            vswr_limit,
            ..
        } = key.settings;
        reply.text("yield-says", &says(drawn, samples, vswr_limit));
        reply.text("yield-count", &samples.to_string());
        show_figures(request, key, drawn, reply);
        return Some(drawn.clone());
    }
    let why = if scatters {
        "Nothing can be drawn: see the fields above and the verdict."
    } else {
        "Every dimension is taken as exact, so that all cans come out as drawn."
    };
    reply.text("yield-says", why);
    for place in [
        "yield-results",
        "care-rows",
        "batch-results",
        "batch-says",
        "yield-error",
    ] {
        reply.place(place, String::new());
    }
    reply.show("care-table", false);
    None
}
