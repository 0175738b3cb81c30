//! What stands above the parts: the verdict that is always in sight, the
//! notice, and the tools for the whole design.

use tinwave_core::ruler::RulerFigures;
use tinwave_core::verdict::Finding;

use super::browser;
use super::markup::{Markup, What, fill, filled, flag, option};
use super::match_part::{match_of, vswr_text};
use super::model::{Copied, Model};
use super::said::badge;
use crate::entry::{self, LengthUnit};
use crate::store::Theme;
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

/// The verdict.
pub(super) fn verdict_strip(page: &mut Markup) {
    page.raw("<div id=\"verdict\" class=\"verdict\" role=\"region\" aria-label=\"Verdict\">");
    page.live("<p class=\"verdict-line\"", What::Html, |model| {
        let said = verdict(model);
        let mut html = String::new();
        badge(&mut html, said.severity);
        fill(&mut html, "<strong id=\"verdict-headline\">{}</strong>", &[&said.headline]);
        html
    }, "</p>");
    page.live("<p id=\"verdict-figures\" class=\"verdict-figures\"", What::Text, figures, "</p></div>");
    page.raw("<p class=\"unseen\" role=\"status\" id=\"announcer\"></p>");
}

/// The message above everything.
pub(super) fn notice(page: &mut Markup) {
    page.live("<div id=\"notice\" role=\"alert\"", What::Html, |model| {
        let Some(notice) = &model.notice else {
            return String::new();
        };
        let mut html = filled("<p>{}</p>", &[&notice.sentence]);
        if let Some(keep) = &notice.keep {
            fill(
                &mut html,
                "<label class=\"by-hand\"><span>Its text, to be copied</span>\
                 <input id=\"notice-text\" type=\"text\" readonly value=\"{}\"></label>",
                &[keep],
            );
        }
        html.push_str("<button type=\"button\" data-do=\"close-notice\">Close</button>");
        html
    }, "</div>");
}

/// The tools.
pub(super) fn toolbar(page: &mut Markup) {
    page.raw("<div class=\"toolbar\" role=\"group\" aria-label=\"Whole design\">");
    page.live(
        "<button type=\"button\" id=\"undo\" data-do=\"undo\" aria-keyshortcuts=\"Control+Z\"",
        What::Flag("disabled"),
        |model| flag(!model.history.can_undo()),
        "Undo</button>",
    );
    page.live(
        "<button type=\"button\" id=\"redo\" data-do=\"redo\" aria-keyshortcuts=\"Control+Shift+Z\"",
        What::Flag("disabled"),
        |model| flag(!model.history.can_redo()),
        "Redo</button>",
    );
    page.live(
        "<button type=\"button\" id=\"copy-link\" data-do=\"copy-link\"",
        What::Text,
        |model| {
            if model.copied == Copied::Yes { "Link copied" } else { "Copy link" }.to_owned()
        },
        "</button>",
    );
    if browser::can_share() {
        page.raw("<button type=\"button\" data-do=\"share\">Share</button>");
    }
    page.radios("unit", "Lengths in", &[
        ("mm", "mm", |model| flag(model.unit == LengthUnit::Millimetre)),
        ("in", "inch", |model| flag(model.unit == LengthUnit::Inch)),
    ]);
    let mut themes = String::new();
    option(&mut themes, Theme::System.key(), "as the device");
    option(&mut themes, Theme::Light.key(), "light");
    option(&mut themes, Theme::Dark.key(), "dark");
    page.choice("theme", "Colours", &themes, |model| model.theme.key().to_owned());
    page.live("<div class=\"by-hand\"", What::Html, |model| match &model.copied {
        Copied::ByHand(link) => filled(
            "<label><span>Copy this link</span>\
             <input id=\"link-by-hand\" type=\"text\" readonly value=\"{}\"></label>",
            &[link],
        ),
        _ => String::new(),
    }, "</div></div>");
}
