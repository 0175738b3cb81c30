//! Measure and correct: a measured can beside its drawing, why they differ, and
//! what to do about it.

mod advice_job;
mod advice_words;
mod by_name;
mod compare;
mod entered;
mod export;
mod find;
mod find_words;
mod known;
mod log;
mod touchstone_words;

use tinwave_core::design_error::Field;

use crate::job::Job;
use crate::reply::Reply;
use crate::request::Request;
use entered::Entered;

/// Answers a change or a press.
#[must_use]
pub fn answer(request: &Request) -> Reply {
    let mut reply = Reply::new();
    show_source(request, &mut reply);
    match request.act() {
        "export" => export::save(request, &mut reply),
        "did-cut" => return did_cut(request, reply),
        "as-built" => advice_job::take_as_built(request, &mut reply),
        act if act.starts_with("remedy ") => advice_job::take_remedy(request, &mut reply),
        "drop-last" => log::drop_last(request, &mut reply),
        "forget" => log::forget(request, &mut reply),
        _ => {}
    }
    let entered = entered::entered(request, &mut reply);
    if request.act() == "note" {
        log::note(request, entered.as_ref(), &mut reply);
    }
    log::show(request, &mut reply);
    show_measurement(request, entered, &mut reply);
    reply
}

/// The ways to enter a measurement: the chosen one is there.
fn show_source(request: &Request, reply: &mut Reply) {
    let source = request.get("source");
    for (way, place) in [
        ("file", "by-file"),
        ("table", "by-table"),
        ("best", "by-best"),
    ] {
        reply.show(place, source == way || (source.is_empty() && way == "file"));
    }
    reply.text("cut-unit", request.unit.symbol());
}

fn show_measurement(request: &Request, entered: Option<Entered>, reply: &mut Reply) {
    let Some(entered) = entered else {
        reply.show("found", false);
        if log::ends_with_cut(request) && reply.get("#measured-notes") == Some("") {
            reply.text("measured-notes", AFTER_CUT);
        }
        reply.text("sum", "measured against predicted, and what to do about it");
        reply.measured(&[]);
        return;
    };
    reply.show("found", true);
    let found = find::find(request, &entered);
    let port_m = match &found {
        Ok(found) => found.port_length_m.map(|(length, _)| length),
        Err(_) => None,
    };
    let taken_out = port_m.filter(|_| request.is_on("take-out"));
    compare::show(request, &entered, taken_out, reply);
    find_words::show(request, &found, reply);
    if let Ok(found) = found {
        advice_job::want(request, found, reply);
    } else {
        reply.place("advice", String::new());
    }
}

/// What comes after a cut.
const AFTER_CUT: &str =
    "Measure again and bring the new file: the estimate sharpens with each cut.";

/// The wire was cut: the drawing follows, what is known is kept, and another
/// measurement is due.
fn did_cut(request: &Request, mut reply: Reply) -> Reply {
    let cut = match tinwave_web::entry::parse_length(request.get("cut"), request.unit) {
        Ok(cut) => cut.value,
        Err(error) => {
            reply.wrong("cut", &error.to_string());
            return reply;
        }
    };
    let mut work = request.work.clone();
    let length = i64::from(work.design.probe.length_um) - i64::from(cut);
    if cut == 0 || work.set_field(Field::ProbeLength, length).is_err() {
        reply.wrong(
            "cut",
            "That would leave no usable wire: the cut must be shorter than the wire.",
        );
        return reply;
    }
    reply.wrong("cut", "");
    let entered = entered::entered(request, &mut reply);
    log::cut(request, entered.as_ref(), cut, &mut reply);
    reply.take(&work);
    // What was measured belongs to the longer wire.
    for field in ["file", "file-name", "table", "best", "vswr", "cut"] {
        reply.field(field, "");
    }
    reply.show("found", false);
    reply.measured(&[]);
    reply.text("measured-notes", AFTER_CUT);
    reply
}

/// The part's long job: what to do.
#[must_use]
pub fn begin(request: &Request) -> Option<Box<dyn Job>> {
    advice_job::begin(request)
}
