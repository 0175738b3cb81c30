//! The log of cuts and measurements: one entry a line, kept in the form.

use tinwave_web::entry::{format_decimal, format_length};

use super::advice_job;
use super::compare::measured_worst;
use super::entered::Entered;
use crate::html::escaped;
use crate::reply::Reply;
use crate::request::Request;

/// So many lines are kept.
const MOST_LINES: usize = 60;

fn lines(request: &Request) -> impl Iterator<Item = &str> {
    request
        .get("log")
        .lines()
        .filter(|line| !line.trim().is_empty())
}

/// How the measured can stands, for a line of the log.
fn state(request: &Request, entered: Option<&Entered>) -> String {
    let Some(entered) = entered else {
        return "no measurement".to_owned();
    };
    let wire = format_length(request.design().probe.length_um, request.unit);
    let worst = measured_worst(request.design().band, entered);
    let best = entered
        .magnitudes()
        .into_iter()
        .min_by(|a, b| a.1.total_cmp(&b.1));
    let match_text = match (worst, best) {
        (Some(worst), _) => ["VSWR at worst ", &format_decimal(worst, 2)].concat(),
        (None, Some((hz, magnitude))) => [
            "best at ",
            &tinwave_web::entry::format_hertz(hz),
            ", VSWR ",
            &format_decimal(tinwave_core::reflection::vswr(magnitude), 2),
        ]
        .concat(),
        (None, None) => "no points".to_owned(),
    };
    ["measured: ", &match_text, " (wire drawn ", &wire, ")"].concat()
}

fn with_line(request: &Request, line: &str) -> String {
    let mut kept: Vec<&str> = lines(request).collect();
    kept.push(line);
    let from = kept.len().saturating_sub(MOST_LINES);
    kept.get(from..).unwrap_or_default().join("\n")
}

fn write(text: &str, reply: &mut Reply) {
    reply.field("log", text);
    reply.place("log-lines", items(text.lines()));
}

fn items<'a>(lines: impl Iterator<Item = &'a str>) -> String {
    lines
        .map(|line| ["<li>", &escaped(line), "</li>"].concat())
        .collect()
}

/// Shows the log as it stands.
pub(super) fn show(request: &Request, reply: &mut Reply) {
    // What was just written stands in the reply already.
    if reply.get("=log").is_none() {
        reply.place("log-lines", items(lines(request)));
    }
}

/// Notes the measurement in hand, and what it has told.
pub(super) fn note(request: &Request, entered: Option<&Entered>, reply: &mut Reply) {
    let Some(entered) = entered else {
        reply.text("measured-notes", "There is no measurement to note yet.");
        return;
    };
    write(&with_line(request, &state(request, Some(entered))), reply);
}

/// Whether the last line is of a cut, so that another measurement is due.
pub(super) fn ends_with_cut(request: &Request) -> bool {
    lines(request)
        .last()
        .is_some_and(|line| line.ends_with(" off"))
}

/// Notes a cut and the measurement before it; what is known of the can goes on.
pub(super) fn cut(request: &Request, entered: Option<&Entered>, cut_um: u32, reply: &mut Reply) {
    let (state, cut) = (state(request, entered), format_length(cut_um, request.unit));
    let line = [&state, "; then cut ", &cut, " off"].concat();
    write(&with_line(request, &line), reply);
    if let Some(known) = entered.and_then(|_| advice_job::known_after_cut()) {
        reply.field("known", &known);
    }
}

/// Takes the last line out.
pub(super) fn drop_last(request: &Request, reply: &mut Reply) {
    let mut kept: Vec<&str> = lines(request).collect();
    kept.pop();
    write(&kept.join("\n"), reply);
}

/// Another can: its log is empty and nothing is known of it.
pub(super) fn forget(reply: &mut Reply) {
    write("", reply);
    reply.field("known", "");
}
