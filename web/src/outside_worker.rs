//! The worker's half of the full-wave solution: what `worker.js` calls.

use std::cell::RefCell;

use tinwave_core::outside::OutsideSteps;
use wasm_bindgen::prelude::wasm_bindgen;

use crate::link;

thread_local! {
    static IN_HAND: RefCell<Option<OutsideSteps>> = const { RefCell::new(None) };
}

/// Begins with the design of a link; how many steps there are, 0 if it can't be solved.
#[wasm_bindgen]
pub fn outside_begin(design: &str) -> u32 {
    let opened = link::decode(design).ok();
    let steps = opened.and_then(|opened| OutsideSteps::of_design(&opened.work.design).ok()?);
    let total = steps.as_ref().map_or(0, OutsideSteps::total);
    IN_HAND.set(steps);
    u32::try_from(total).unwrap_or(0)
}

/// Takes one step.
#[wasm_bindgen]
pub fn outside_step() {
    IN_HAND.with_borrow_mut(|steps| {
        if let Some(steps) = steps {
            steps.step();
        }
    });
}

/// The solution's numbers after the last step; none if it can't be solved.
#[wasm_bindgen]
pub fn outside_finish() -> Vec<f64> {
    let solved = IN_HAND.take().and_then(OutsideSteps::finish);
    solved.map_or_else(Vec::new, |solved| solved.to_numbers())
}
