//! The Tinwave page: pure logic (number entry, lists, links, words, history),
//! testable on any machine, and the views, which exist only in the browser.

pub mod bands;
pub mod confidence;
pub mod connectors;
pub mod drawing;
pub mod entry;
pub mod example;
pub mod history;
pub mod job_lines;
pub mod link;
pub mod store;
pub mod trade_sizes;
pub mod wire_gauges;
pub mod words;
pub mod workpiece;

#[cfg(all(target_arch = "wasm32", feature = "views"))]
pub mod page;
#[cfg(all(target_arch = "wasm32", feature = "views"))]
pub mod pictures;
