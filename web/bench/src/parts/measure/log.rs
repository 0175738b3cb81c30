//! The log of cuts and measurements: one entry a line, kept in the form with the name
//! of the design it belongs to.

use tinwave_web::entry::{format_decimal, format_length};

use super::compare::measured_worst;
use super::entered::{Entered, within_sweep};
use super::{advice_job, by_name};
use crate::html::escaped;
use crate::reply::Reply;
use crate::request::Request;

/// So many lines are kept, of all designs together.
const MOST_LINES: usize = 200;

/// What the design's lines are kept under.
fn name(request: &Request) -> &str {
    &request.design().name
}

/// The lines of this design.
fn lines(request: &Request) -> impl Iterator<Item = &str> {
    by_name::of(request.get("log"), name(request))
}

/// How the measured can stands, for a line of the log.
fn state(request: &Request, entered: Option<&Entered>) -> String {
    let Some(entered) = entered else {
        return "no measurement".to_owned();
    };
    let wire = format_length(request.design().probe.length_um, request.unit);
    let worst = measured_worst(request.design().band, entered);
    let best = within_sweep(entered.magnitudes(), request.design())
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

/// Adds a line to the design's.
fn add(request: &Request, line: &str, reply: &mut Reply) {
    let mut own: Vec<&str> = lines(request).collect();
    own.push(line);
    write(request, &own, reply);
}

fn write(request: &Request, own: &[&str], reply: &mut Reply) {
    let all = by_name::with(request.get("log"), name(request), own, MOST_LINES);
    reply.field("log", &all);
    reply.place("log-lines", items(own.iter().copied()));
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
    add(request, &state(request, Some(entered)), reply);
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
    add(request, &line, reply);
    if let Some(known) = entered.and_then(|_| advice_job::known_after_cut()) {
        set_known(request, &known, reply);
    }
}

/// Takes the last line out.
pub(super) fn drop_last(request: &Request, reply: &mut Reply) {
    let mut kept: Vec<&str> = lines(request).collect();
    kept.pop();
    write(request, &kept, reply);
}

/// Another can: its log is empty and nothing is known of it.
pub(super) fn forget(request: &Request, reply: &mut Reply) {
    write(request, &[], reply);
    let all = by_name::with(request.get("known"), name(request), &[], MOST_LINES);
    reply.field("known", &all);
}

/// What earlier measurements of this design's can have told.
pub(super) fn known(request: &Request) -> &str {
    by_name::of(request.get("known"), name(request))
        .last()
        .unwrap_or("")
}

/// Keeps what is known of this design's can.
pub(super) fn set_known(request: &Request, known: &str, reply: &mut Reply) {
    let all = by_name::with(request.get("known"), name(request), &[known], MOST_LINES);
    reply.field("known", &all);
}
