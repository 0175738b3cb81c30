//! The door for the worker.

use std::cell::RefCell;

use tinwave_core::design::Design;
use tinwave_core::outside::OutsideSteps;
use tinwave_web::link;
use wasm_bindgen::prelude::wasm_bindgen;

use crate::cut_search::BothCuts;
use crate::job::Job;
use crate::outsides::{keep_outside, kept_outside};
use crate::parts;
use crate::request::Request;

/// Gives memory out: a third of the size of the usual one.
#[global_allocator]
static MEMORY: talc::wasm::WasmDynamicTalc = talc::wasm::new_wasm_dynamic_allocator();

thread_local! {
    /// The design whose outside is being solved, and how far that is.
    static OUTSIDE: RefCell<Option<(Design, OutsideSteps)>> = const { RefCell::new(None) };
    static CUTS: RefCell<Option<BothCuts>> = const { RefCell::new(None) };
    /// The job in hand of each part that has one.
    static JOBS: RefCell<Vec<(String, Box<dyn Job>)>> = const { RefCell::new(Vec::new()) };
}

fn design_of(link: &str) -> Option<Design> {
    link::decode(link).ok().map(|opened| opened.work.design)
}

/// Begins the field outside the design of a link; how many steps there are, 0 if
/// it can't be solved.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn field_begin(link: &str) -> u32 {
    let begun = design_of(link).and_then(|design| {
        let steps = OutsideSteps::of_design(&design).ok()??;
        Some((design, steps))
    });
    let total = begun.as_ref().map_or(0, |(_, steps)| steps.total());
    OUTSIDE.set(begun);
    u32::try_from(total).unwrap_or(0)
}

/// Takes one step.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn field_step() {
    OUTSIDE.with_borrow_mut(|begun| {
        if let Some((_, steps)) = begun {
            steps.step();
        }
    });
}

/// The solution's numbers after the last step; none if it can't be solved. It is kept
/// for the search for the best cut.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn field_finish() -> Vec<f64> {
    let solved = OUTSIDE.take().and_then(|(design, steps)| {
        let solved = steps.finish()?;
        Some(keep_outside(&design, solved).to_numbers())
    });
    solved.unwrap_or_default()
}

/// Begins the search for the best cuts of the design of a link, with its outside if
/// that was solved before; how many steps there are.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn cuts_begin(link: &str) -> u32 {
    let search =
        design_of(link).map(|design| BothCuts::new(&design, kept_outside(&design).as_ref()));
    let total = search.as_ref().map_or(0, BothCuts::total);
    CUTS.set(search);
    total
}

/// Takes one step.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn cuts_step() {
    CUTS.with_borrow_mut(|search| {
        if let Some(search) = search {
            search.step();
        }
    });
}

/// The numbers of what was found ([`BothCuts::to_numbers`]).
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn cuts_finish() -> Vec<f64> {
    CUTS.take()
        .map_or_else(Vec::new, |search| search.to_numbers())
}

/// The markup of a part of the page.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn part_markup(part: &str) -> String {
    parts::markup(part).to_owned()
}

/// Answers a request (form data in and out, see [`Request`] and
/// [`crate::reply::Reply`]).
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn part_answer(request: &str) -> String {
    Request::read(request).map_or_else(String::new, |request| parts::answer(&request).write())
}

/// The job of a part, taken away.
fn taken(part: &str) -> Option<Box<dyn Job>> {
    JOBS.with_borrow_mut(|jobs| {
        let place = jobs.iter().position(|(known, _)| known == part)?;
        Some(jobs.swap_remove(place).1)
    })
}

/// Begins a part's long job in place of the one it has in hand; its steps, 0 if
/// there is nothing to do.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn job_begin(request: &str) -> u32 {
    let Some(request) = Request::read(request) else {
        return 0;
    };
    job_drop(request.part());
    let Some(job) = parts::begin(&request) else {
        return 0;
    };
    let total = job.total();
    let part = request.part().to_owned();
    JOBS.with_borrow_mut(|jobs| jobs.push((part, job)));
    total
}

/// Drops a part's job.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn job_drop(part: &str) {
    // Out of the list before it goes: what ends it may look at the list.
    drop(taken(part));
}

/// Takes a step of a part's job; what there is to show so far, most often nothing.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn job_step(part: &str) -> String {
    let Some(mut job) = taken(part) else {
        return String::new();
    };
    job.step();
    let shown = job.so_far();
    JOBS.with_borrow_mut(|jobs| jobs.push((part.to_owned(), job)));
    shown.map_or_else(String::new, |reply| reply.write())
}

/// What came out of a part's job.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn job_finish(part: &str) -> String {
    taken(part).map_or_else(String::new, |job| job.finish().write())
}
