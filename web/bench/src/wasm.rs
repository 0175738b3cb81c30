//! The door for the worker.

use std::cell::RefCell;

use tinwave_core::outside::OutsideSteps;
use tinwave_web::link;
use wasm_bindgen::prelude::wasm_bindgen;

use crate::job::Job;
use crate::parts;
use crate::request::Request;

/// Gives memory out: a third of the size of the usual one.
#[global_allocator]
static MEMORY: talc::wasm::WasmDynamicTalc = talc::wasm::new_wasm_dynamic_allocator();

thread_local! {
    static OUTSIDE: RefCell<Option<OutsideSteps>> = const { RefCell::new(None) };
    /// The job in hand of each part that has one.
    static JOBS: RefCell<Vec<(String, Box<dyn Job>)>> = const { RefCell::new(Vec::new()) };
}

/// Begins the field outside the design of a link; how many steps there are, 0 if
/// it can't be solved.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn outside_begin(design: &str) -> u32 {
    let opened = link::decode(design).ok();
    let steps = opened.and_then(|opened| OutsideSteps::of_design(&opened.work.design).ok()?);
    let total = steps.as_ref().map_or(0, OutsideSteps::total);
    OUTSIDE.set(steps);
    u32::try_from(total).unwrap_or(0)
}

/// Takes one step.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn outside_step() {
    OUTSIDE.with_borrow_mut(|steps| {
        if let Some(steps) = steps {
            steps.step();
        }
    });
}

/// The solution's numbers after the last step; none if it can't be solved.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn outside_finish() -> Vec<f64> {
    let solved = OUTSIDE.take().and_then(OutsideSteps::finish);
    solved.map_or_else(Vec::new, |solved| solved.to_numbers())
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
