//! Measure and correct: a measured can beside its drawing, why they differ, and
//! what to do about it.

mod advice_job;
mod advice_words;
mod cans;
mod compare;
mod compare_chart;
mod cut_field;
mod desk;
mod entered;
mod expected;
mod export;
mod find;
mod find_words;
mod known;
mod log;
mod log_line;
mod log_words;
mod measured_line;
mod remedies;
mod touchstone_words;

use crate::job::Job;
use crate::reply::Reply;
use crate::request::Request;
use desk::Found;
use entered::Entered;
use log::Log;

/// What a question is about: the can's log, the measurement in hand, what it told.
struct Case<'a> {
    request: &'a Request,
    log: Log,
    entered: Option<Entered>,
    found: Option<Found>,
}

/// Answers a change or a press.
#[must_use]
pub fn answer(request: &Request) -> Reply {
    let mut reply = Reply::new();
    show_source(request, &mut reply);
    cut_field::follow_unit(request, &mut reply);
    let mut case = Case::of(request, &mut reply);
    case.log.show(request, &mut reply);
    if case.change(&mut reply) {
        case.put_away(&mut reply);
        return reply;
    }
    case.press(&mut reply);
    case.show(&mut reply);
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
}

impl<'a> Case<'a> {
    fn of(request: &'a Request, reply: &mut Reply) -> Self {
        let mut log = Log::of(request, reply);
        // First, so that what is taken out of the log no longer counts.
        log.edit(request, reply);
        let entered = entered::entered(request, reply);
        let found = entered
            .as_ref()
            .map(|entered| desk::found(request, entered, &log));
        Self {
            request,
            log,
            entered,
            found,
        }
    }

    /// Does what was pressed, where the can stays as it is.
    fn press(&mut self, reply: &mut Reply) {
        match self.request.act() {
            "export" => export::save(self.request, reply),
            "save-log" => self.log.save(self.request, reply),
            "as-built" => self.redraw(reply),
            "note" => {
                if self.note_measurement() {
                    reply.field("log-was", "");
                    self.log.keep(self.request, reply);
                } else if self.found.is_some() {
                    reply.text("log-says", "This measurement is in the log already.");
                } else {
                    reply.text("log-says", "There is no measurement to note yet.");
                }
            }
            _ => {}
        }
        if self.request.act() != "as-built" {
            reply.text("redrawn", "");
        }
        if self.request.act() != "note" {
            reply.text("log-says", "");
        }
    }

    fn show(&self, reply: &mut Reply) {
        let (Some(entered), Some(found)) = (&self.entered, &self.found) else {
            self.show_nothing(reply);
            return;
        };
        reply.show("found", true);
        let diagnosis = found.diagnosis.as_ref().ok();
        let port_m = diagnosis.and_then(|d| d.port_length_m.map(|(length, _)| length));
        let taken_out = port_m.filter(|_| self.request.is_on("take-out"));
        compare::show(self.request, entered, taken_out, reply);
        find_words::show(self, found, reply);
        cut_field::show_present(self.request, reply);
        advice_job::want(self.request, found, reply);
    }

    fn show_nothing(&self, reply: &mut Reply) {
        reply.show("found", false);
        let due = self.log.lines.last().is_some_and(log_line::Line::is_work);
        if due && reply.get("#measured-notes") == Some("") {
            reply.text("measured-notes", AFTER_CHANGE);
        }
        reply.text("sum", "measured against predicted, and what to do about it");
        reply.measured(&[]);
    }

    /// What was measured belongs to the can before the change.
    fn put_away(&self, reply: &mut Reply) {
        for field in [
            "file",
            "file-name",
            "table",
            "best",
            "vswr",
            "cut",
            "cut-offered",
        ] {
            reply.field(field, "");
        }
        reply.text("log-says", "");
        reply.text("measured-notes", "");
        self.show_nothing(reply);
        reply.stop();
        desk::drop_job();
    }
}

/// What comes after a cut.
const AFTER_CHANGE: &str =
    "Measure again and bring the new file: the estimate sharpens with each measurement.";

/// The part's long job: what to do.
#[must_use]
pub fn begin(request: &Request) -> Option<Box<dyn Job>> {
    (request.get("job") == "advice").then_some(())?;
    advice_job::begin(request)
}
