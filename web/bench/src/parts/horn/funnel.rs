//! The funnel designer as it stands on the page.

use std::f64::consts::PI;

use tinwave_core::funnel::FlatPattern;
use tinwave_web::entry::{LengthUnit, format_decimal, format_length, format_metres};

use super::can_key::CanKey;
use super::found::{self, FunnelFound};
use super::funnel_job::trade_by_fit;
use super::funnel_size::{Funnel, Limits};
use super::{estimate, trade};
use crate::html::{escaped, result};
use crate::reply::Reply;
use crate::request::Request;

/// What stands where no wave of the can's own mode arrives, or the field can't be
/// solved for.
pub(super) const NOT_COVERED: &str = "At the band\u{2019}s centre this can does not carry its one mode alone, or it is beyond the computation. Choose the can and the band first.";

/// What is added where only the mouth is limited.
const LONGEST: &str = " With the mouth alone given, a long slim funnel wins by tenths of a decibel: give a length or a sheet as well.";

const PLACES: [&str; 5] = [
    "funnel-take",
    "funnel-results",
    "trade-says",
    "length-chart",
    "mouth-chart",
];

fn degrees(rad: f64) -> String {
    [&format_decimal(rad * (180.0 / PI), 1), "\u{b0}"].concat()
}

/// Mouth, angle and length in one line.
pub(super) fn sizes(funnel: &Funnel, can: &CanKey, unit: LengthUnit) -> String {
    [
        "mouth ",
        &format_length(funnel.mouth_um, unit),
        " wide, ",
        &format_metres(funnel.length_m(can), unit),
        " long, half angle ",
        &degrees(funnel.half_angle_rad()),
    ]
    .concat()
}

fn push_sheet(markup: &mut String, sheet: &FlatPattern, unit: LengthUnit) {
    let length = |metres: f64| format_metres(metres, unit);
    let (width, height) = sheet.rectangle_m();
    let needed = [&length(width), " by ", &length(height)].concat();
    for (what, value) in [
        ("Flat sheet: inner radius", length(sheet.inner_radius_m)),
        ("Flat sheet: outer radius", length(sheet.outer_radius_m)),
        (
            "Flat sheet: angle, without the seam",
            degrees(sheet.angle_rad),
        ),
        (
            "Straight between the corners of the mouth",
            length(sheet.chord_m()),
        ),
        ("Along the wall", length(sheet.slant_m())),
        ("Seam, added along one edge", length(sheet.seam_m)),
        ("Sheet needed, seam included", needed),
    ] {
        markup.push_str(&result(what, &value));
    }
}

/// A funnel and its flat sheet as results.
fn results(funnel: &Funnel, can: &CanKey, seam_m: f64, unit: LengthUnit) -> String {
    let mut markup = String::new();
    for (what, value) in [
        ("Mouth, inside", format_length(funnel.mouth_um, unit)),
        ("Half angle", degrees(funnel.half_angle_rad())),
        (
            "Length along the axis",
            format_metres(funnel.length_m(can), unit),
        ),
    ] {
        markup.push_str(&result(what, &value));
    }
    if let Some(sheet) = funnel.sheet(can, seam_m) {
        push_sheet(&mut markup, &sheet, unit);
    }
    markup
}

fn says(best: &Funnel, found: &FunnelFound, can: &CanKey, unit: LengthUnit) -> String {
    let gain = [&format_decimal(best.gain_dbi, 1), " dBi"].concat();
    if !best.is_solved {
        return [
            "By a quick fit, not yet computed: about ",
            &gain,
            ", give or take 0.4 dB, more beyond mouths of 2.4 wavelengths: ",
            &sizes(best, can, unit),
            ".",
        ]
        .concat();
    }
    let more = found.bare_dbi.map_or(f64::NAN, |bare| best.gain_dbi - bare);
    let more = if more.is_finite() {
        [", ", &format_decimal(more, 1), " dB more than the bare can"].concat()
    } else {
        String::new()
    };
    [
        "Computed: ",
        &gain,
        &more,
        ": ",
        &sizes(best, can, unit),
        ". This is directivity; find the best cut of the wire anew with the funnel on.",
    ]
    .concat()
}

fn button(act: &str, words: &str) -> String {
    [
        "<button type=\"button\" data-act=\"",
        &escaped(act),
        "\">",
        &escaped(words),
        "</button>",
    ]
    .concat()
}

/// Nothing but a sentence.
fn only_say(reply: &mut Reply, sentence: &str) {
    for place in PLACES {
        reply.place(place, String::new());
    }
    reply.text("funnel-says", sentence);
}

/// Shows the best funnel and the trade: what was found, else the fit.
pub(super) fn show_found(request: &Request, reply: &mut Reply) -> Option<(CanKey, Limits)> {
    let can = CanKey::of(request.design());
    let limits = Limits::read(request, reply);
    if !can.is_covered() {
        only_say(reply, NOT_COVERED);
        return None;
    }
    let Some(limits) = limits else {
        only_say(reply, "Correct the fields above.");
        return None;
    };
    if limits.are_none() {
        only_say(
            reply,
            "Give at least one limit: the mouth, the length or the sheet.",
        );
        return None;
    }
    let mut found = found::funnels(&(can, limits)).unwrap_or_default();
    let best = match found.best {
        Some(best) => best,
        None => estimate::best(&can, &limits),
    };
    if found.best.is_none() {
        let trade = trade_by_fit(&can, &limits, best.as_ref());
        (found.by_length, found.by_mouth) = trade;
    }
    let unit = request.unit;
    match &best {
        Some(best) => {
            let mut sentence = says(best, &found, &can, unit);
            if limits.length_um.is_none() && limits.sheet_um.is_none() {
                sentence.push_str(LONGEST);
            }
            reply.text("funnel-says", &sentence);
            let markup = results(best, &can, limits.seam_m(), unit);
            reply.place("funnel-results", markup);
            let words = "Put this funnel into the design";
            reply.place("funnel-take", button(&best.act(), words));
        }
        None => only_say(
            reply,
            "No funnel fits: the mouth must be wider than the can, and a very long funnel is beyond the computation. Change the limits.",
        ),
    }
    trade::show(request, reply, &can, &limits, best.as_ref(), &found);
    Some((can, limits))
}

/// Shows the funnel that stands in the design, if one does.
pub(super) fn show_present(request: &Request, reply: &mut Reply, seam_m: f64) {
    let can = CanKey::of(request.design());
    let funnel = Funnel::of(request.design().mouth);
    let funnel = funnel.filter(|funnel| funnel.mouth_um > can.inside_diameter_um());
    reply.show("present-title", funnel.is_some());
    let says = funnel.map_or_else(String::new, |funnel| {
        let sizes = sizes(&funnel, &can, request.unit);
        ["In the design now: ", &sizes, ". Undo takes it back."].concat()
    });
    reply.text("present-says", &says);
    let markup = funnel.map(|funnel| results(&funnel, &can, seam_m, request.unit));
    reply.place("present-results", markup.unwrap_or_default());
}
