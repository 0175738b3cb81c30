//! Funnel and dish: the gain over the band, any cut through the beam, the best
//! funnel, ring or cup for the can, and the can as a dish's feed.

mod any_cut;
mod band_gain;
mod beams;
mod can_key;
mod coverage;
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
use beams::{Beams, BeamsJob, Known};
use can_key::CanKey;
use found::Work;
use funnel_job::FunnelJob;
use funnel_size::Limits;
use rims::RimJob;

fn summary(beams: &Beams) -> String {
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

/// What the design's own field tells; while that is being solved for, the pictures
/// stay as they are.
fn show_beams(request: &Request, known: &Known, reply: &mut Reply) {
    let beams = match known {
        Known::Yes(beams) => Some(beams.as_ref()),
        Known::Never => None,
        Known::NotYet => {
            let sentence =
                "Being computed for this can. Until then what stands here is of the one before.";
            for place in ["gain-says", "cut-says", "cover-says", "dish-says"] {
                reply.text(place, sentence);
            }
            reply.text("sum", "being computed");
            return;
        }
    };
    let sum = beams.map_or_else(|| "not computed for this can".to_owned(), summary);
    reply.text("sum", &sum);
    band_gain::show(beams, reply);
    any_cut::show(request, beams, reply);
    coverage::show(request, beams, reply);
    dish::show(request, beams, reply);
}

/// Shows everything; the funnel's limits if they can be read.
fn show(request: &Request, known: &Known, reply: &mut Reply) -> Option<Limits> {
    show_beams(request, known, reply);
    let asked = funnel::show_found(request, reply);
    let limits = asked.map(|(_, limits)| limits);
    let seam_m = limits.map_or(metres(10_000), |limits| limits.seam_m());
    funnel::show_present(request, reply, seam_m);
    rims::show(request, reply);
    limits
}

/// The search that is to run now: the one that was pressed, or the one that ran and
/// is still about what stands here.
fn wanted_search(request: &Request, limits: Option<Limits>) -> Option<&'static str> {
    let can = CanKey::of(request.design());
    let pressed = match request.act() {
        "funnel" if limits.is_some() => Some("funnel"),
        "rims" if can.is_covered() => Some("rims"),
        _ => None,
    };
    let running = || match found::work()? {
        Work::Funnel(key) => limits
            .is_some_and(|limits| key == (can, limits))
            .then_some("funnel"),
        Work::Rims(key) => (key == can).then_some("rims"),
        Work::Beams(_) => found::take_next(),
    };
    match request.act() {
        "stop" => None,
        _ => pressed.or_else(running),
    }
}

/// Begins what is pressed or needed, and stops what is no longer about what stands
/// here. The design's own field comes before any search.
fn see_to_work(request: &Request, known: &Known, limits: Option<Limits>, reply: &mut Reply) {
    let search = wanted_search(request, limits);
    let now = found::work();
    if matches!(known, Known::NotYet) {
        found::set_next(search);
        let beams = Work::Beams(request.design().clone());
        if now.as_ref() != Some(&beams) {
            found::set_work(Some(beams));
            begin_work(reply, "beams");
        }
        return;
    }
    let pressed = found::SEARCHES.contains(&request.act());
    match search {
        Some(job) if pressed || matches!(now, Some(Work::Beams(_))) => begin_work(reply, job),
        None if now.is_some() || request.act() == "stop" => {
            found::set_work(None);
            reply.stop();
        }
        _ => {}
    }
}

/// Only the progress of the job in hand is shown.
fn begin_work(reply: &mut Reply, job: &str) {
    for search in found::SEARCHES {
        reply.show(&[search, "-work"].concat(), search == job);
    }
    reply.begin(job);
}

/// What the part shows.
#[must_use]
pub fn answer(request: &Request) -> Reply {
    let mut reply = Reply::new();
    found::set_latest(request);
    entries::follow_unit(request, &mut reply);
    let known = beams::beams_of(request.design());
    let limits = show(request, &known, &mut reply);
    take::take(request, &mut reply);
    see_to_work(request, &known, limits, &mut reply);
    reply
}

/// What there is to say when the field of a design has been solved for.
fn after_beams(of: &Request) -> Reply {
    let mut reply = Reply::new();
    let latest = found::latest();
    let request = latest.as_ref().unwrap_or(of);
    let known = beams::beams_of(request.design());
    show(request, &known, &mut reply);
    // Another design may have come up meanwhile, and begun its own.
    if !matches!(known, Known::NotYet) {
        found::set_work(None);
        if let Some(search) = found::take_next() {
            begin_work(&mut reply, search);
        }
    }
    reply
}

/// The searches for a funnel and for rings and cups, and the field of the design
/// itself.
#[must_use]
pub fn begin(request: &Request) -> Option<Box<dyn Job>> {
    let can = CanKey::of(request.design());
    if request.get("job") == "beams" {
        found::set_work(Some(Work::Beams(request.design().clone())));
        return Some(Box::new(BeamsJob::new(request)));
    }
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
