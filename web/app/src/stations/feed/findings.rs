//! What the computation found about feed and match, in sentences.

use leptos::prelude::*;
use tinwave_core::verdict::{Finding, Severity};
use tinwave_words::finding;

use crate::kit::{FindingBlock, FindingTone};
use crate::state::Workshop;

/// Whether a finding belongs here: can and band are told at Can, the beam at Beam, and
/// the match itself is the station's first figure.
const fn belongs(finding: &Finding) -> bool {
    matches!(
        finding,
        Finding::ProbeTooDeep { .. }
            | Finding::ProbeNearBack { .. }
            | Finding::ProbeNearMouth { .. }
            | Finding::WireTooThickForHole { .. }
            | Finding::SleeveThinnerThanWire { .. }
            | Finding::HoleLineImpedance { .. }
            | Finding::ScrewImpossible { .. }
            | Finding::MouthNotComputed
            | Finding::ProbeNotComputed
            | Finding::CupRings { .. }
            | Finding::BeyondRange { .. }
    )
}

/// The findings, the gravest first.
#[component]
pub fn FeedFindings() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    move || {
        let unit = workshop.unit.get();
        let analysis = workshop.answers.analysis.get()?;
        let here = analysis.verdict.iter().filter(|finding| belongs(finding));
        let block = |found: &Finding| {
            let said = finding(found, unit);
            let tone = match said.severity {
                Severity::Good => FindingTone::Good,
                Severity::Note => FindingTone::Note,
                Severity::Caution | Severity::Stop => FindingTone::Caution,
            };
            view! { <FindingBlock tone headline=said.headline text=said.sentence/> }
        };
        Some(here.map(block).collect_view())
    }
}
