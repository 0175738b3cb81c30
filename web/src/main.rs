//! Starts the page.

#[cfg(target_arch = "wasm32")]
#[global_allocator]
static MEMORY: talc::wasm::WasmDynamicTalc = talc::wasm::new_wasm_dynamic_allocator();

#[cfg(target_arch = "wasm32")]
fn main() {
    tinwave_web::page::start();
}

/// The page lives in a browser; elsewhere there is nothing to start.
#[cfg(not(target_arch = "wasm32"))]
fn main() {}
