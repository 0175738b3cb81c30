//! Starts the page.

#[cfg(all(target_arch = "wasm32", feature = "views"))]
#[global_allocator]
static MEMORY: talc::wasm::WasmDynamicTalc = talc::wasm::new_wasm_dynamic_allocator();

#[cfg(all(target_arch = "wasm32", feature = "views"))]
fn main() {
    tinwave_web::page::start();
}

/// The page lives in a browser; elsewhere there is nothing to start.
#[cfg(not(all(target_arch = "wasm32", feature = "views")))]
fn main() {}
