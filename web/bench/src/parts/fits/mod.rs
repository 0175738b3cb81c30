//! What fits: trade sizes that carry one mode over the band, and how well each could
//! be matched.

mod desk;
mod match_job;
mod size_fit;

use tinwave_core::design::Design;
use tinwave_web::entry::{format_decimal, format_length};
use tinwave_web::trade_sizes::TRADE_SIZES;
use tinwave_web::words::Shown;

use crate::html::escaped;
use crate::job::Job;
use crate::reply::Reply;
use crate::request::Request;
use match_job::MatchJob;
use size_fit::SizeFit;

/// A VSWR beyond this says no more than that it is large.
const LARGEST_VSWR: f64 = 10.0;

fn summary(fits: &[SizeFit]) -> String {
    let Some(best) = fits.first() else {
        return "no trade size carries one mode over this band".to_owned();
    };
    let count = fits.len().to_string();
    let carry = match fits.len() {
        1 => " size carries one mode: ",
        _ => " sizes carry one mode; first: ",
    };
    [&count, carry, best.size().name].concat()
}

fn row(fit: &SizeFit, request: &Request) -> String {
    let percent = |share: f64| format_decimal(share * 100.0, 0);
    let vswr = match &fit.cut {
        None => "\u{2026}".to_owned(),
        Some(None) => "no match".to_owned(),
        Some(Some(cut)) if cut.worst_vswr > LARGEST_VSWR => "over 10".to_owned(),
        Some(Some(cut)) => format_decimal(cut.worst_vswr, 2),
    };
    let size = fit.size();
    let estimated = if size.estimated() { ", estimated" } else { "" };
    let name = escaped(size.name);
    [
        "<tr><th scope=\"row\">",
        &name,
        "<small>",
        size.group.name(),
        estimated,
        "</small></th><td>",
        &format_length(size.inside_um, request.unit),
        "</td><td>",
        &percent(fit.room.0),
        " %, ",
        &percent(fit.room.1),
        " %</td><td>",
        &vswr,
        " <button type=\"button\" data-act=\"use ",
        &fit.index.to_string(),
        "\" aria-label=\"Use this size: ",
        &name,
        "\">Use</button></td></tr>",
    ]
    .concat()
}

/// Shows the list.
fn show(fits: &[SizeFit], request: &Request, reply: &mut Reply) {
    reply.text("sum", &summary(fits));
    let rows: Vec<String> = fits.iter().map(|fit| row(fit, request)).collect();
    reply.place("rows", rows.concat());
}

/// Takes the size whose button was pressed into the work.
fn take(request: &Request, reply: &mut Reply) {
    let pressed = request.act().strip_prefix("use ");
    let size = pressed
        .and_then(|index| index.parse::<usize>().ok())
        .and_then(|index| TRADE_SIZES.get(index));
    if let Some(size) = size {
        reply.take(&size_fit::with_size(&request.work, size));
    }
}

/// Begins to match what is left, unless that is in hand, was stopped, or nobody looks;
/// ends what is about another design.
fn see_to_work(request: &Request, fits: Vec<SizeFit>, reply: &mut Reply) {
    let left = fits.iter().any(|fit| fit.cut.is_none());
    let trials: Vec<Design> = fits.into_iter().map(|fit| fit.design).collect();
    match request.act() {
        "stop" => desk::stop(&trials),
        "again" => desk::forget_stop(),
        _ => {}
    }
    let stopped = left && desk::is_stopped(&trials);
    reply.show("again", stopped);
    reply.show("work", left && !stopped);
    let in_hand = desk::is_in_hand(&trials);
    if in_hand == Some(false) || (stopped && in_hand.is_some()) {
        reply.stop();
    }
    if left && !stopped && in_hand != Some(true) && request.is_on("open") {
        reply.begin("match");
    }
}

/// What the part shows.
#[must_use]
pub fn answer(request: &Request) -> Reply {
    let mut reply = Reply::new();
    desk::set_latest(request);
    reply.place("why", super::whys::markup(Shown::TradeSizes));
    take(request, &mut reply);
    let fits = size_fit::fits(request.design());
    show(&fits, request, &mut reply);
    see_to_work(request, fits, &mut reply);
    reply
}

/// The matching of all sizes that are not yet matched.
#[must_use]
pub fn begin(request: &Request) -> Option<Box<dyn Job>> {
    Some(Box::new(MatchJob::new(request)))
}
