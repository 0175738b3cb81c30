//! The door for the browser's worker: one message in, and one step at a time, so that
//! the next message is heard between two steps.

use std::cell::RefCell;
use std::collections::VecDeque;

use tinwave_protocol::{Ask, Tell, from_bytes, to_bytes};
use wasm_bindgen::prelude::wasm_bindgen;

use crate::{Running, work};

/// Gives memory out: a third of the size of the usual one.
#[global_allocator]
static MEMORY: talc::wasm::WasmDynamicTalc = talc::wasm::new_wasm_dynamic_allocator();

thread_local! {
    /// Jobs in the order in which they are worked on: the first takes the next step.
    static JOBS: RefCell<VecDeque<(u32, Running)>> = const { RefCell::new(VecDeque::new()) };
}

/// Hears a message of the page ([`Ask`]).
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn hear(message: &[u8]) {
    match from_bytes::<Ask>(message) {
        Some(Ask::Begin { id, job }) => {
            let running = work::begin(*job);
            // The newest first: it is what the person looks at.
            JOBS.with_borrow_mut(|jobs| jobs.push_front((id, running)));
        }
        Some(Ask::Stop { id }) => {
            JOBS.with_borrow_mut(|jobs| jobs.retain(|(known, _)| *known != id));
        }
        None => {}
    }
}

/// Takes a step of the job in hand; what is to be told of it ([`Tell`]), nothing
/// when there is no job.
#[wasm_bindgen(skip_jsdoc)]
#[allow(unreachable_pub, reason = "the browser reaches it")]
pub fn step() -> Option<Vec<u8>> {
    // Out of the list while it works: a step may take its time.
    let (id, mut running) = JOBS.with_borrow_mut(VecDeque::pop_front)?;
    let told = running.step()?;
    if matches!(told, tinwave_protocol::Told::Working { .. }) {
        JOBS.with_borrow_mut(|jobs| jobs.push_front((id, running)));
    }
    Some(to_bytes(&Tell { id, told }))
}
