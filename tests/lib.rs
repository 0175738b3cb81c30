//! What the browser tests stand on: a Chromium, the packages that drive it,
//! two builds of the page, and a way to run one scenario file.
//!
//! The scenarios themselves are the `*.test.mjs` files in `tests/browser`, run
//! by Node's own test runner; `tests/browser.rs` has one test for each.

mod chromium;
mod engines;
mod poppler;
mod questions;
mod stage;

pub use stage::{Sharing, Stage, scenario_names};
