//! Match: impedance, VSWR, the best cuts and the rule of thumb beside them.

use tinwave_core::best_cut::{BestCut, Slack};
use tinwave_core::complex::Complex;
use tinwave_core::match_band::{FrequencyRange, MatchSummary, SweepPoint};
use tinwave_core::reflection::PointMatch;

use super::browser;
use super::live::Named;
use super::markup::{fill, flag};
use super::model::Model;
use super::said::{self, Place};
use super::search::{Found, RuleMatch};
use crate::entry::{self, LengthUnit};

const NOT_COMPUTED: &str = "not computed";

/// A VSWR as people read it: two decimals, or 'over 10'.
pub(super) fn vswr_text(vswr: f64) -> String {
    if vswr > 10.0 {
        "over 10".to_owned()
    } else {
        entry::format_decimal(vswr, 2)
    }
}

fn impedance_text(ohm: Complex) -> String {
    let sign = if ohm.im < 0.0 { " \u{2212} j" } else { " + j" };
    [
        &entry::format_decimal(ohm.re, 1),
        sign,
        &entry::format_decimal(ohm.im.abs(), 1),
        " \u{3a9}",
    ]
    .concat()
}

/// The computed point nearest to a frequency.
fn nearest(sweep: &[SweepPoint], khz: u32) -> Option<PointMatch> {
    sweep
        .iter()
        .min_by_key(|point| point.frequency_khz.abs_diff(khz))?
        .at
}

fn at_centre(model: &Model) -> Option<PointMatch> {
    let sweep = &model.analysis.as_ref()?.sweep;
    nearest(sweep, model.work.design.band.centre_khz())
}

/// The match over the band.
pub(super) fn match_of(model: &Model) -> Option<MatchSummary> {
    model.analysis.as_ref()?.match_summary
}

fn or_not(text: Option<String>) -> String {
    text.unwrap_or_else(|| NOT_COMPUTED.to_owned())
}

fn range_text(range: Option<Option<FrequencyRange>>) -> String {
    match range {
        None => NOT_COMPUTED.to_owned(),
        Some(None) => "nowhere near the band".to_owned(),
        Some(Some((low, high))) => [
            &entry::format_frequency(low),
            " to ",
            &entry::format_frequency(high),
        ]
        .concat(),
    }
}

fn summary(model: &Model) -> String {
    let Some(found) = match_of(model) else {
        return NOT_COMPUTED.to_owned();
    };
    let worst = ["VSWR ", &vswr_text(found.worst_vswr_in_band), " at worst"].concat();
    match found.vswr_1_5_khz {
        Some(_) => [
            &worst,
            ", under 1.5 ",
            &range_text(Some(found.vswr_1_5_khz)),
        ]
        .concat(),
        None => worst,
    }
}

/// What the places of this part show.
pub(super) const NAMES: &[Named] = &[
    ("match", summary),
    ("impedance", |model| {
        or_not(at_centre(model).map(|point| impedance_text(point.impedance_ohm)))
    }),
    ("vswr-centre", |model| {
        or_not(at_centre(model).map(|point| vswr_text(point.vswr)))
    }),
    ("vswr-worst", |model| {
        or_not(match_of(model).map(|found| {
            [
                &vswr_text(found.worst_vswr_in_band),
                " at ",
                &entry::format_frequency(found.worst_khz),
            ]
            .concat()
        }))
    }),
    ("under-1.5", |model| {
        range_text(match_of(model).map(|found| found.vswr_1_5_khz))
    }),
    ("under-2", |model| {
        range_text(match_of(model).map(|found| found.vswr_2_khz))
    }),
    ("match-findings", |model| {
        said::findings(model, Place::Match)
    }),
    ("length-cuts", |model| cuts(model, &model.cuts.length, 'l')),
    ("length-progress", |model| {
        model.cuts.length.percent.to_string()
    }),
    ("length-done", |model| {
        flag(!searches(model, &model.cuts.length))
    }),
    ("pair-cuts", |model| cuts(model, &model.cuts.pair, 'p')),
    ("pair-progress", |model| model.cuts.pair.percent.to_string()),
    ("pair-done", |model| {
        flag(!searches(model, &model.cuts.pair))
    }),
    ("rule-wire", |model| {
        let wire = model
            .analysis
            .as_ref()
            .map(|a| a.guide.quarter_wave_length_m);
        or_not(wire.map(|m| entry::format_metres(m, model.unit)))
    }),
    ("rule-distance", |model| {
        let distance = model
            .analysis
            .as_ref()
            .and_then(|a| a.guide.quarter_wave_distance_m);
        or_not(distance.map(|m| entry::format_metres(m, model.unit)))
    }),
    ("rule-vswr", |model| match model.rule {
        RuleMatch::Waiting => "\u{2026}".to_owned(),
        RuleMatch::Impossible => NOT_COMPUTED.to_owned(),
        RuleMatch::Worst(vswr) => vswr_text(vswr),
    }),
];

/// How far a dimension may be off, as a sentence; empty where it may not at all.
pub(super) fn slack_sentence(what: &str, slack: Slack, unit: LengthUnit) -> String {
    let (allowance, limit) = match (slack.to_vswr_1_5, slack.to_vswr_2) {
        (Some(allowance), _) => (allowance, "1.5"),
        (None, Some(allowance)) => (allowance, "2"),
        (None, None) => return String::new(),
    };
    let (minus, plus) = allowance;
    [
        "The ",
        what,
        " may be off by ",
        &entry::format_length_signed(-i64::from(minus), unit),
        " or ",
        &entry::format_length_signed(i64::from(plus), unit),
        " before VSWR passes ",
        limit,
        ".",
    ]
    .concat()
}

/// Whether a search runs, or waits for the outside to be solved.
fn searches(model: &Model, found: &Found) -> bool {
    found.percent < 100 && !model.cuts.refused && browser::worker_script().is_some()
}

/// What there is to say beside the cuts.
fn said_of(model: &Model, found: &Found) -> &'static str {
    if found.percent < 100 && model.cuts.refused {
        "The search could not be fetched or has stopped. Once the page is back on the network, any change tries again."
    } else if !found.cuts.is_empty() {
        ""
    } else if found.percent == 100 {
        "None can be computed: see the verdict."
    } else if searches(model, found) {
        "Searching."
    } else {
        "Searched for at the first touch of the page."
    }
}

/// What a search has found, each with its button.
fn cuts(model: &Model, found: &Found, kind: char) -> String {
    let said = said_of(model, found);
    let mut html = String::new();
    if !said.is_empty() {
        fill(&mut html, "<p class=\"note\">~</p>", &[said]);
    }
    for (index, cut) in found.cuts.iter().enumerate() {
        card(&mut html, model, cut, kind, &index.to_string());
    }
    html
}

/// Whether a cut is the design's own.
pub(super) fn in_use(model: &Model, cut: &BestCut) -> bool {
    let probe = &model.work.design.probe;
    probe.length_um == cut.length_um && probe.backshort_distance_um == cut.backshort_distance_um
}

fn card(html: &mut String, model: &Model, cut: &BestCut, kind: char, index: &str) {
    let unit = model.unit;
    let length = entry::format_length(cut.length_um, unit);
    let mut head = ["Wire ", &length, " inside"].concat();
    let mut slack = slack_sentence("length", cut.length_slack, unit);
    if kind == 'p' {
        head.push_str(", ");
        head.push_str(&entry::format_length(cut.backshort_distance_um, unit));
        head.push_str(" from the back wall");
        slack.push(' ');
        slack.push_str(&slack_sentence("distance", cut.distance_slack, unit));
    }
    let vswr = vswr_text(cut.worst_vswr);
    fill(
        html,
        "<div class=\"cut\"><p class=\"cut-head\"><span class=\"value\">~</span>\
         <span class=\"value\">VSWR ~ at worst</span></p><p class=\"note\">~</p>",
        &[&head, &vswr, &slack],
    );
    let argument = [&kind.to_string(), index].concat();
    let (state, label) = if in_use(model, cut) {
        (" aria-disabled=\"true\"", "In use")
    } else {
        ("", "Use this cut")
    };
    fill(
        html,
        "<button type=\"button\" class=\"primary\" data-do=\"cut\" data-arg=\"~\"",
        &[&argument],
    );
    html.push_str(state);
    fill(html, ">~</button></div>", &[label]);
}

/// The cut of a button's argument.
pub(super) fn cut_of(model: &Model, argument: &str) -> Option<BestCut> {
    let found = if argument.starts_with('p') {
        &model.cuts.pair
    } else {
        &model.cuts.length
    };
    let index: usize = argument.get(1..)?.parse().ok()?;
    found.cuts.get(index).copied()
}
