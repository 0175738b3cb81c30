//! The Tinwave page: pure logic (number entry, lists, links, words, history),
//! testable on any machine, and the views, which exist only in the browser.

pub mod bands;
pub mod confidence;
pub mod connectors;
pub mod drawing;
pub mod entry;
pub mod example;
pub mod history;
pub mod link;
pub mod store;
pub mod trade_sizes;
pub mod wire_gauges;
pub mod words;
pub mod workpiece;

#[cfg(target_arch = "wasm32")]
pub mod outside_worker;
#[cfg(target_arch = "wasm32")]
pub mod page;
#[cfg(target_arch = "wasm32")]
pub mod pictures;
