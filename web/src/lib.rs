//! The Tinwave page: the views, which exist only in the browser.

pub use tinwave_drawing as drawing;
pub use tinwave_maker::{
    bands, confidence, connectors, entry, example, history, link, store, trade_sizes, wire_gauges,
    workpiece,
};
pub use tinwave_words as words;

#[cfg(all(target_arch = "wasm32", feature = "views"))]
pub mod page;
#[cfg(all(target_arch = "wasm32", feature = "views"))]
pub mod pictures;
