//! What stands above the parts: the verdict that is always in sight, the
//! notice, and the tools for the whole design.

use tinwave_core::ruler::RulerFigures;
use tinwave_core::verdict::Finding;

use super::browser;
use super::live::Named;
use super::markup::{fill, filled, flag};
use super::match_part::{match_of, vswr_text};
use super::model::{Copied, Model};
use super::said::badge;
use crate::entry::{self, LengthUnit};
use crate::words::{self, Said};

/// The most severe finding. How sure the beam is belongs to the beam, not to
/// whether the can will do.
fn verdict(model: &Model) -> Said {
    let findings: Vec<Finding> = model.analysis.as_ref().map_or_else(Vec::new, |analysis| {
        let verdict = analysis.verdict.iter();
        verdict
            .filter(|finding| !matches!(finding, Finding::BeamOfEndlessPipe { .. }))
            .cloned()
            .collect()
    });
    words::verdict_line(&findings, model.unit)
}

/// The verdict as it is spoken.
pub(super) fn spoken(model: &Model) -> String {
    let said = verdict(model);
    [words::severity_word(said.severity), ": ", &said.headline].concat()
}

/// Where to drill, how long to cut, what match: the whole job in a line.
fn figures(model: &Model) -> String {
    if model.waits {
        return "An entry can't be used yet: last good design".to_owned();
    }
    let ruler = RulerFigures::new(&model.work.design);
    let length = |um| entry::format_length(um, model.unit);
    let mut line = [
        "Hole ",
        &length(ruler.hole_from_closed_rim_um),
        ", wire ",
        &length(ruler.wire_from_inner_wall_um),
    ]
    .concat();
    if let Some(found) = match_of(model) {
        line.push_str(", VSWR ");
        line.push_str(&vswr_text(found.worst_vswr_in_band));
    }
    line
}

fn verdict_line(model: &Model) -> String {
    let said = verdict(model);
    let mut html = String::new();
    badge(&mut html, said.severity);
    fill(
        &mut html,
        "<strong id=\"verdict-headline\">~</strong>",
        &[&said.headline],
    );
    html
}

/// The message above everything.
fn notice(model: &Model) -> String {
    let Some(notice) = &model.notice else {
        return String::new();
    };
    let mut html = filled("<p>~</p>", &[&notice.sentence]);
    if let Some(keep) = &notice.keep {
        fill(
            &mut html,
            "<label class=\"by-hand\"><span>Its text, to be copied</span>\
             <input id=\"notice-text\" type=\"text\" readonly value=\"~\"></label>",
            &[keep],
        );
    }
    html.push_str("<button type=\"button\" data-do=\"close-notice\">Close</button>");
    html
}

fn link_by_hand(model: &Model) -> String {
    match &model.copied {
        Copied::ByHand(link) => filled(
            "<label><span>Copy this link</span>\
             <input id=\"link-by-hand\" type=\"text\" readonly value=\"~\"></label>",
            &[link],
        ),
        _ => String::new(),
    }
}

/// What the places above the parts show.
pub(super) const NAMES: &[Named] = &[
    ("verdict", verdict_line),
    ("verdict-figures", figures),
    ("notice", notice),
    ("cannot-undo", |model| flag(!model.history.can_undo())),
    ("cannot-redo", |model| flag(!model.history.can_redo())),
    ("copy-link", |model| {
        if model.copied == Copied::Yes {
            "Link copied"
        } else {
            "Copy link"
        }
        .to_owned()
    }),
    ("cannot-share", |_| flag(!browser::can_share())),
    ("unit-mm", |model| {
        flag(model.unit == LengthUnit::Millimetre)
    }),
    ("unit-in", |model| flag(model.unit == LengthUnit::Inch)),
    ("theme", |model| model.theme.key().to_owned()),
    ("link-by-hand", link_by_hand),
];
