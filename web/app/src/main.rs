//! In the browser: the page. On the host: the markup of its first paint, on standard
//! output, for the build.
#![recursion_limit = "512"]

#[cfg(target_arch = "wasm32")]
#[global_allocator]
static MEMORY: talc::wasm::WasmDynamicTalc = talc::wasm::new_wasm_dynamic_allocator();

#[cfg(target_arch = "wasm32")]
fn main() {
    tinwave_app::start();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() -> std::io::Result<()> {
    use std::io::Write;
    writeln!(std::io::stdout(), "{}", tinwave_app::first_paint())
}
