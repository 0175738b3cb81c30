//! Findings, severities and cautions as markup.

use tinwave_core::verdict::{Finding, Severity};

use super::markup::fill;
use super::model::Model;
use super::outside_job::Solving;
use crate::words::{self, CautionText, Occasion};

/// The shape of a severity, so that colour never speaks alone: a tick in a
/// ring, a letter i in a ring, a triangle, an octagon.
const fn shape(severity: Severity) -> &'static str {
    match severity {
        Severity::Good => "M10 1a9 9 0 1 0 0 18a9 9 0 1 0 0-18zM5.5 10.5l3 3l6-7",
        Severity::Note => "M10 1a9 9 0 1 0 0 18a9 9 0 1 0 0-18zM10 9v6M10 5v1.5",
        Severity::Caution => "M10 1.5L19 18.5H1zM10 7v6M10 15v1.5",
        Severity::Stop => "M6.3 1h7.4L19 6.3v7.4L13.7 19H6.3L1 13.7V6.3zM6.5 6.5l7 7M13.5 6.5l-7 7",
    }
}

/// A severity as shape and word.
pub(super) fn badge(html: &mut String, severity: Severity) {
    fill(
        html,
        "<span class=\"badge is-~\"><svg viewBox=\"0 0 20 20\" width=\"18\" height=\"18\" \
         aria-hidden=\"true\"><path d=\"~\"/></svg>~</span>",
        &[
            words::severity_key(severity),
            shape(severity),
            words::severity_word(severity),
        ],
    );
}

/// Which part of the page a finding belongs to.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Place {
    Can,
    Feed,
    Match,
    Beam,
}

fn place_of(finding: &Finding) -> Place {
    match finding {
        Finding::NoMode { .. }
        | Finding::NearCutoff { .. }
        | Finding::OneMode { .. }
        | Finding::SeveralModes { .. }
        | Finding::TooShort { .. } => Place::Can,
        Finding::ProbeTooDeep { .. }
        | Finding::ProbeNearBack { .. }
        | Finding::ProbeNearMouth { .. }
        | Finding::WireTooThickForHole { .. }
        | Finding::SleeveThinnerThanWire { .. }
        | Finding::HoleLineImpedance { .. }
        | Finding::ScrewImpossible { .. } => Place::Feed,
        Finding::BeamOfOneModeOnly | Finding::BeamOfEndlessPipe { .. } | Finding::NoBeam => {
            Place::Beam
        }
        _ => Place::Match,
    }
}

/// The findings that belong to one part, as sentences.
pub(super) fn findings(model: &Model, place: Place) -> String {
    let mut html = String::new();
    let all = model
        .analysis
        .as_ref()
        .map_or(&[][..], |analysis| &analysis.verdict);
    // What is about to be replaced is said once, beside the progress.
    let passing = |finding: &Finding| {
        matches!(finding, Finding::BeamOfEndlessPipe { .. })
            && matches!(model.solving, Solving::Working { .. } | Solving::Untouched)
    };
    let here = |finding: &&Finding| place_of(finding) == place && !passing(finding);
    for finding in all.iter().filter(here) {
        let said = words::finding(finding, model.unit);
        fill(&mut html, "<li data-code=\"~\">", &[said.code]);
        badge(&mut html, said.severity);
        fill(
            &mut html,
            "<div><strong>~</strong><p>~</p></div></li>",
            &[&said.headline, &said.sentence],
        );
    }
    html
}

/// One caution.
pub(super) fn caution(html: &mut String, text: &CautionText) {
    fill(
        html,
        "<li><strong>~</strong><p>~ <small>~</small></p></li>",
        &[text.headline, text.text, text.source],
    );
}

/// The cautions of some occasions for the chosen metal.
pub(super) fn cautions(model: &Model, occasions: &[Occasion]) -> String {
    let mut html = String::new();
    for occasion in occasions {
        for text in words::cautions(*occasion, model.work.design.can.metal) {
            caution(&mut html, &text);
        }
    }
    html
}
