//! Plan the link: the budget both ways, the path, the aim, the law, safe distance, and
//! what can be received.

mod aim;
mod antenna;
mod budget;
mod entries;
mod form;
mod improve;
mod lawful;
mod link;
mod names;
mod obstacles;
mod path;
mod reach;
mod receive;
mod safe;
mod side_view;
mod sum;
mod typed;
mod waterfall;
mod words;

use tinwave_core::radio_link::LinkError;

use crate::job::Job;
use crate::reply::Reply;
use crate::request::Request;
use antenna::{Antenna, centre_hz};
use entries::Entries;
use form::Form;
use link::Plan;

/// The markup of the part's form.
pub(super) const MARKUP: &str = include_str!("../../../parts/plan.html");

/// Where an entry can't be read.
const WAITING: &str = " The results stay as they were until that is put right.";

/// What the part shows.
#[must_use]
pub fn answer(request: &Request) -> Reply {
    let mut reply = Reply::new();
    receive::show(request, &mut reply);
    safe::cautions(request, &mut reply);
    let Some(here) = Antenna::of_can(request.design()) else {
        no_beam(&mut reply);
        return reply;
    };
    let mut form = Form::new(request, &mut reply);
    let entries = Entries::read(&mut form, centre_hz(request.design()));
    let far = entries
        .as_ref()
        .and_then(|entries| link::far_antenna(&mut form, request, entries, &here));
    let Some((entries, far)) = entries.zip(far) else {
        let wrong = form.first_wrong().unwrap_or_default();
        reply.text("unread", &[&wrong, WAITING].concat());
        return reply;
    };
    match Plan::new(request, entries, here, far).and_then(|plan| show(&plan, &mut reply)) {
        Ok(()) => reply.text("unread", ""),
        Err(error) => reply.text("unread", &form::link_error(&error)),
    }
    reply
}

fn show(plan: &Plan, reply: &mut Reply) -> Result<(), LinkError> {
    let weaker = budget::show(plan, reply)?;
    reach::show(plan, reply)?;
    improve::show(plan, reply)?;
    path::show(plan, reply);
    aim::show(plan, reply);
    lawful::show(plan, reply)?;
    safe::show(plan, reply)?;
    sum::show(plan, weaker.as_ref(), reply)
}

/// Without a beam there is nothing to plan with.
fn no_beam(reply: &mut Reply) {
    for place in [
        "says",
        "antennas",
        "waterfall",
        "steps",
        "reach-chart",
        "reach-says",
        "improve",
        "receiver",
        "path-says",
        "path-picture",
        "path-table",
        "aim-table",
        "aim-says",
        "lawful",
        "safe",
        "fall",
    ] {
        reply.place(place, String::new());
    }
    reply.text(
        "unread",
        "This can sends no wave at the middle of its band, so there is no link to plan. Choose a wider can or a higher band.",
    );
    reply.text("sum", "no beam at this band");
}

/// The part has no long job.
#[must_use]
pub fn begin(_request: &Request) -> Option<Box<dyn Job>> {
    None
}
