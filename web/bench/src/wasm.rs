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
    static JOB: RefCell<Option<Box<dyn Job>>> = const { RefCell::new(None) };
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

/// Begins a part's long job in place of the one in hand; its steps, 0 if there is
/// nothing to do.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn job_begin(request: &str) -> u32 {
    let job = Request::read(request).and_then(|request| parts::begin(&request));
    let total = job.as_ref().map_or(0, |job| job.total());
    JOB.set(job);
    total
}

/// Takes a step of the job; what there is to show so far, most often nothing.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn job_step() -> String {
    JOB.with_borrow_mut(|job| {
        let Some(job) = job else {
            return String::new();
        };
        job.step();
        job.so_far().map_or_else(String::new, |reply| reply.write())
    })
}

/// What came out of the job.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn job_finish() -> String {
    JOB.take()
        .map_or_else(String::new, |job| job.finish().write())
}
