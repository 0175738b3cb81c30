//! The parts of the page that the workbench answers for: each has its markup, an
//! answer to every change, and its long jobs.

pub mod measure;
pub mod spread;
pub mod whys;

use crate::job::Job;
use crate::reply::Reply;
use crate::request::Request;

/// One part.
struct Part {
    name: &'static str,
    markup: &'static str,
    answer: fn(&Request) -> Reply,
    begin: fn(&Request) -> Option<Box<dyn Job>>,
}

const PARTS: &[Part] = &[
    Part {
        name: "measure",
        markup: include_str!("../../parts/measure.html"),
        answer: measure::answer,
        begin: measure::begin,
    },
    Part {
        name: "spread",
        markup: include_str!("../../parts/spread.html"),
        answer: spread::answer,
        begin: spread::begin,
    },
    Part {
        name: "whys",
        markup: "",
        answer: whys::answer,
        begin: |_| None,
    },
];

fn part(name: &str) -> Option<&'static Part> {
    PARTS.iter().find(|part| part.name == name)
}

/// The markup of a part; empty for an unknown one.
#[must_use]
pub fn markup(name: &str) -> &'static str {
    part(name).map_or("", |part| part.markup)
}

/// Answers a request: what the part's places show now.
#[must_use]
pub fn answer(request: &Request) -> Reply {
    part(request.part()).map_or_else(Reply::new, |part| (part.answer)(request))
}

/// Begins the job that the request names (`job`).
#[must_use]
pub fn begin(request: &Request) -> Option<Box<dyn Job>> {
    part(request.part()).and_then(|part| (part.begin)(request))
}
