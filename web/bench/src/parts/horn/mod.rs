//! Funnel and dish: the gain over the band, any cut through the beam, the best
//! funnel, ring or cup for the can, and the can as a dish's feed.

mod any_cut;
mod band_gain;
mod beams;
mod can_key;
mod dish;
mod entries;
mod estimate;
mod found;
mod funnel;
mod funnel_job;
mod funnel_size;
mod rim_search;
mod rims;
mod take;
mod trade;

use tinwave_core::si::metres;
use tinwave_web::entry::format_decimal;

use crate::job::Job;
use crate::reply::Reply;
use crate::request::Request;
use beams::Beams;
use can_key::CanKey;
use found::Work;
use funnel_job::FunnelJob;
use funnel_size::Limits;
use rims::RimJob;

fn summary(beams: Option<&Beams>) -> String {
    let Some(beams) = beams else {
        return "not computed for this can".to_owned();
    };
    let least = band_gain::least(beams).and_then(|(_, beam)| beam.realised_gain_dbi);
    let best = &beams.best_dish;
    let dish = [
        "lights a dish to ",
        &format_decimal(100.0 * best.total, 0),
        " % at f/D ",
        &format_decimal(best.focal_ratio, 2),
    ]
    .concat();
    least.map_or_else(
        || dish.clone(),
        |gain| ["at least ", &format_decimal(gain, 1), " dBi; ", &dish].concat(),
    )
}

/// A search that is no longer about what stands here is stopped; buttons begin and
/// stop them.
fn see_to_work(request: &Request, limits: Option<Limits>, reply: &mut Reply) {
    let can = CanKey::of(request.design());
    let now = found::work();
    let is_stale = match now {
        Some(Work::Funnel(key)) => limits.is_none_or(|limits| key != (can, limits)),
        Some(Work::Rims(key)) => key != can,
        None => false,
    };
    if is_stale || request.act() == "stop" {
        found::set_work(None);
        reply.stop();
    }
    match request.act() {
        "funnel" if limits.is_some() => begin_work(reply, "funnel"),
        "rims" if can.is_covered() => begin_work(reply, "rims"),
        _ => {}
    }
}

/// Only the progress of the job in hand is shown.
fn begin_work(reply: &mut Reply, job: &str) {
    reply.show("funnel-work", job == "funnel");
    reply.show("rims-work", job == "rims");
    reply.begin(job);
}

/// What the part shows.
#[must_use]
pub fn answer(request: &Request) -> Reply {
    let mut reply = Reply::new();
    found::set_latest(request);
    entries::follow_unit(request, &mut reply);
    let beams = beams::beams_of(request.design());
    let beams = beams.as_deref();
    reply.text("sum", &summary(beams));
    band_gain::show(beams, &mut reply);
    any_cut::show(request, beams, &mut reply);
    let asked = funnel::show_found(request, &mut reply);
    let limits = asked.map(|(_, limits)| limits);
    let seam_m = limits.map_or(metres(10_000), |limits| limits.seam_m());
    funnel::show_present(request, &mut reply, seam_m);
    rims::show(request, &mut reply);
    dish::show(request, beams, &mut reply);
    take::take(request, &mut reply);
    see_to_work(request, limits, &mut reply);
    reply
}

/// The searches for a funnel and for rings and cups.
#[must_use]
pub fn begin(request: &Request) -> Option<Box<dyn Job>> {
    let can = CanKey::of(request.design());
    if !can.is_covered() {
        return None;
    }
    match request.get("job") {
        "rims" => {
            found::set_work(Some(Work::Rims(can)));
            Some(Box::new(RimJob::new(request, can)))
        }
        "funnel" => {
            let limits = Limits::read(request, &mut Reply::new())?;
            if limits.are_none() {
                return None;
            }
            found::set_work(Some(Work::Funnel((can, limits))));
            Some(Box::new(FunnelJob::new(request, can, limits)))
        }
        _ => None,
    }
}
