//! Match: impedance, VSWR, the best cuts and the rule of thumb beside them.

use leptos::prelude::*;
use tinwave_core::best_cut::BestCut;
use tinwave_core::complex::Complex;
use tinwave_core::match_band::{FrequencyRange, SweepPoint};
use tinwave_core::reflection::PointMatch;

use super::parts::{Place, fields, figure, findings, heading, paragraph, results, row, section};
use super::search::{Found, RuleMatch, Search};
use super::state::{Now, Page};
use crate::entry::{self, LengthUnit};
use crate::history::Change;
use crate::words::Shown;

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

fn at_centre(now: &Now<'_>) -> Option<PointMatch> {
    nearest(&now.analysis?.sweep, now.work.design.band.centre_khz())
}

fn or_dash(text: Option<String>) -> String {
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

fn summary(now: &Now<'_>) -> String {
    let Some(summary) = now.analysis.and_then(|analysis| analysis.match_summary) else {
        return NOT_COMPUTED.to_owned();
    };
    let worst = ["VSWR ", &vswr_text(summary.worst_vswr_in_band), " at worst"].concat();
    match summary.vswr_1_5_khz {
        Some(_) => [
            &worst,
            ", under 1.5 ",
            &range_text(Some(summary.vswr_1_5_khz)),
        ]
        .concat(),
        None => worst,
    }
}

/// The section.
pub(super) fn match_section(page: Page, search: Search, charts: AnyView) -> AnyView {
    let figures = results(vec![
        row(
            page,
            "Impedance, band centre",
            |now| or_dash(at_centre(now).map(|point| impedance_text(point.impedance_ohm))),
            Shown::ProbeImpedance,
        ),
        row(
            page,
            "VSWR, band centre",
            |now| or_dash(at_centre(now).map(|point| vswr_text(point.vswr))),
            Shown::Vswr,
        ),
        row(
            page,
            "VSWR, worst in the band",
            |now| {
                let found = now.analysis.and_then(|analysis| analysis.match_summary);
                or_dash(found.map(|found| {
                    [
                        &vswr_text(found.worst_vswr_in_band),
                        " at ",
                        &entry::format_frequency(found.worst_khz),
                    ]
                    .concat()
                }))
            },
            Shown::Vswr,
        ),
        row(
            page,
            "VSWR under 1.5",
            |now| {
                range_text(
                    now.analysis
                        .and_then(|a| a.match_summary)
                        .map(|found| found.vswr_1_5_khz),
                )
            },
            Shown::VswrBand,
        ),
        row(
            page,
            "VSWR under 2",
            |now| {
                range_text(
                    now.analysis
                        .and_then(|a| a.match_summary)
                        .map(|found| found.vswr_2_khz),
                )
            },
            Shown::VswrBand,
        ),
    ]);
    section(
        page,
        "match",
        "4 Match",
        true,
        summary,
        vec![
            figures,
            findings(page, Place::Match),
            charts,
            heading("Best length here"),
            paragraph("note", "The distance from the back wall is kept."),
            cuts(page, search.length, false),
            heading("Best length and distance"),
            cuts(page, search.pair, true),
            heading("The quarter-wave rule, beside it"),
            rule(page, search),
        ],
    )
}

fn slack_text(allowance: Option<(u32, u32)>, unit: LengthUnit) -> String {
    allowance.map_or_else(String::new, |(minus, plus)| {
        [
            &entry::format_length_signed(-i64::from(minus), unit),
            " or ",
            &entry::format_length_signed(i64::from(plus), unit),
        ]
        .concat()
    })
}

/// How far a dimension may be off, as a sentence.
pub(super) fn slack_sentence(
    what: &str,
    slack: tinwave_core::best_cut::Slack,
    unit: LengthUnit,
) -> String {
    let limit = |allowance, limit: &str| {
        [
            "The ",
            what,
            " may be off by ",
            &slack_text(allowance, unit),
            " before VSWR passes ",
            limit,
            ".",
        ]
        .concat()
    };
    match (slack.to_vswr_1_5, slack.to_vswr_2) {
        (Some(allowance), _) => limit(Some(allowance), "1.5"),
        (None, Some(allowance)) => limit(Some(allowance), "2"),
        (None, None) => String::new(),
    }
}

/// What a search has found, each with its button.
fn cuts(page: Page, found: RwSignal<Found>, pair: bool) -> AnyView {
    let list = move || {
        let unit = page.unit.get();
        found.with(|found| {
            if found.cuts.is_empty() {
                let text = if found.percent == 100 {
                    "None can be computed: see the verdict."
                } else {
                    "Searching."
                };
                return vec![paragraph("note", text)];
            }
            found
                .cuts
                .iter()
                .map(|cut| cut_card(page, *cut, pair, unit))
                .collect::<Vec<AnyView>>()
        })
    };
    view! {
        <div class="cuts" aria-busy=move || if found.with(|f| f.percent < 100) { "true" } else { "false" }>
            {list}
            <progress
                max="100"
                aria-label="Search for the best cut"
                class:unseen=move || found.with(|found| found.percent == 100)
                prop:value=move || found.with(|found| f64::from(found.percent))
            ></progress>
        </div>
    }
    .into_any()
}

fn cut_card(page: Page, cut: BestCut, pair: bool, unit: LengthUnit) -> AnyView {
    let length = entry::format_length(cut.length_um, unit);
    let mut head = ["Wire ", &length, " inside"].concat();
    let mut slack = slack_sentence("length", cut.length_slack, unit);
    if pair {
        head.push_str(", ");
        head.push_str(&entry::format_length(cut.backshort_distance_um, unit));
        head.push_str(" from the back wall");
        slack.push(' ');
        slack.push_str(&slack_sentence("distance", cut.distance_slack, unit));
    }
    let is_now = move || {
        page.work.with(|work| {
            work.design.probe.length_um == cut.length_um
                && work.design.probe.backshort_distance_um == cut.backshort_distance_um
        })
    };
    let take = move |_| {
        let mut work = page.work.get_untracked();
        work.design.probe.length_um = cut.length_um;
        work.design.probe.backshort_distance_um = cut.backshort_distance_um;
        page.replace(work, Change::BestCut);
    };
    view! {
        <div class="cut">
            <p class="cut-head">
                <span class="value">{head}</span>
                <span class="value">{["VSWR ", &vswr_text(cut.worst_vswr), " at worst"].concat()}</span>
            </p>
            <p class="note">{slack}</p>
            <button type="button" class="primary" disabled=is_now on:click=take>
                {move || if is_now() { "In use" } else { "Use this cut" }}
            </button>
        </div>
    }
    .into_any()
}

fn rule(page: Page, search: Search) -> AnyView {
    let rule_vswr = Signal::derive(move || match search.rule.get() {
        RuleMatch::Waiting => "\u{2026}".to_owned(),
        RuleMatch::Impossible => NOT_COMPUTED.to_owned(),
        RuleMatch::Worst(vswr) => vswr_text(vswr),
    });
    fields(vec![
        paragraph(
            "note",
            "The rule of thumb cuts the wire to a quarter of the free-space wavelength and drills a quarter of the guide wavelength from the back wall. It knows nothing of the wire's thickness, the hole or the wall's curve; it is shown for comparison only.",
        ),
        results(vec![
            row(
                page,
                "Rule: wire",
                |now| {
                    or_dash(
                        now.analysis
                            .map(|a| entry::format_metres(a.guide.quarter_wave_length_m, now.unit)),
                    )
                },
                Shown::QuarterWaveRule,
            ),
            row(
                page,
                "Rule: distance from back wall",
                |now| {
                    or_dash(
                        now.analysis
                            .and_then(|a| a.guide.quarter_wave_distance_m)
                            .map(|m| entry::format_metres(m, now.unit)),
                    )
                },
                Shown::QuarterWaveRule,
            ),
            figure("VSWR it would give, worst", rule_vswr, Shown::Vswr),
        ]),
    ])
}
