//! Tolerance and screws: what each dimension does within its tolerance, the share of
//! cans that come out well, and where tuning screws help.

mod bars;
mod desk;
mod entries;
mod ranking;
mod screw_chart;
mod screw_entries;
mod screw_found;
mod screw_job;
mod screw_part;
mod threads;
mod words;
mod yield_job;
mod yield_part;

use tinwave_core::dimension::Dimension;
use tinwave_core::tolerance::Yield;
use tinwave_web::entry::format_decimal;

use crate::job::Job;
use crate::reply::Reply;
use crate::request::Request;
use desk::{Work, YieldKey, nameless};
use ranking::Ranking;
use screw_entries::ScrewChoice;
use screw_job::ScrewJob;
use yield_job::YieldJob;

/// The long jobs, each with its own progress.
const JOBS: [&str; 2] = ["yield", "screws"];

fn key(
    request: &Request,
    reply: &mut Reply,
    tolerances: Option<&[(Dimension, f64)]>,
) -> Option<YieldKey> {
    // Read in any case, so that every wrong field is told.
    let settings = entries::yield_settings(request, reply, tolerances.unwrap_or_default());
    tolerances?;
    Some(YieldKey::new(request.design(), settings?))
}

fn summary(request: &Request, ranking: Option<&Ranking>, drawn: Option<&Yield>) -> String {
    let share = drawn.map(|drawn| {
        [
            &words::per_cent(drawn.pass),
            " of cans pass VSWR ",
            &format_decimal(entries::limit(request), 1),
            " (simulated)",
        ]
        .concat()
    });
    let care = ranking
        .and_then(Ranking::first)
        .map(|first| ["the ", words::name(first.dimension), " deserves the care"].concat());
    let screws = screw_part::summary(request);
    let said: Vec<String> = share.into_iter().chain(care).chain(screws).collect();
    if said.is_empty() {
        return "not computed for this can".to_owned();
    }
    said.join("; ")
}

/// Shows everything; the yield's key if the fields can be read.
fn show_all(request: &Request, reply: &mut Reply) -> Option<YieldKey> {
    let tolerances = entries::tolerances(request, reply);
    let ranking = tolerances
        .as_ref()
        .and_then(|tolerances| Ranking::of(request, tolerances));
    ranking::show(request, ranking.as_ref(), reply);
    let key = key(request, reply, tolerances.as_deref());
    entries::batch_size(request, reply);
    let drawn = yield_part::show(request, key.as_ref(), reply);
    reply.text("sum", &summary(request, ranking.as_ref(), drawn.as_ref()));
    screw_part::show(request, reply);
    key
}

/// Whether work is still about what stands here.
fn is_current(work: &Work, request: &Request, key: Option<&YieldKey>) -> bool {
    match work {
        Work::Yield(of) => key == Some(of),
        Work::Screws(design, choice) => {
            *design == nameless(request.design()) && *choice == ScrewChoice::read(request)
        }
    }
}

/// Begins what was pressed; drops what is no longer about what stands here.
fn see_to_work(request: &Request, key: Option<&YieldKey>, reply: &mut Reply) {
    let act = request.act();
    if act == "screws" || (act == "yield" && key.is_some_and(YieldKey::scatters)) {
        begin_work(reply, act);
        return;
    }
    let work = desk::work();
    let goes_on = act != "stop"
        && work
            .as_ref()
            .is_some_and(|work| is_current(work, request, key));
    if goes_on {
        return;
    }
    if work.is_some() {
        desk::end_work();
        reply.stop();
    }
    for job in JOBS {
        reply.show(&[job, "-work"].concat(), false);
    }
}

/// Only the progress of the job in hand is shown.
fn begin_work(reply: &mut Reply, job: &str) {
    for known in JOBS {
        reply.show(&[known, "-work"].concat(), known == job);
    }
    reply.begin(job);
}

/// What the part shows.
#[must_use]
pub fn answer(request: &Request) -> Reply {
    let mut reply = Reply::new();
    desk::set_latest(request);
    entries::follow_unit(request, &mut reply);
    if request.act() == "usual" {
        entries::put_usual(request, &mut reply);
    }
    let key = show_all(request, &mut reply);
    screw_found::take(request, &mut reply);
    see_to_work(request, key.as_ref(), &mut reply);
    reply
}

/// The drawing of many cans, and the search for screws.
#[must_use]
pub fn begin(request: &Request) -> Option<Box<dyn Job>> {
    match request.get("job") {
        "yield" => {
            let mut unread = Reply::new();
            let tolerances = entries::tolerances(request, &mut unread);
            let key = key(request, &mut unread, tolerances.as_deref())?;
            key.scatters().then_some(())?;
            Some(Box::new(YieldJob::new(request, key)?))
        }
        "screws" => Some(Box::new(ScrewJob::new(request)?)),
        _ => None,
    }
}
