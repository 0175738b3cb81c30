//! Builds the Tinwave page into a folder of static files, and serves it.
//!
//! The order of a build is the order of the modules below: find or make a
//! compiler for WebAssembly ([`Toolchain`]), compile the page, generate its
//! JavaScript bindings, shrink it, put the static files together, weigh them.
//! Not in this crate: the page itself (package `tinwave-web`) and any physics
//! (package `tinwave-core`).

pub mod apt;
mod assemble;
mod bindings;
mod build;
mod cli;
mod compile;
mod debian;
mod failure;
mod fingerprint;
mod folders;
mod media_type;
pub mod node;
mod optimise;
mod paths;
mod policy;
mod process;
mod server;
mod steps;
mod sysroot;
mod target;
mod template;
mod toolchain;
mod weight;

pub use build::{BuildOptions, build};
pub use cli::run;
pub use failure::{Failure, Result};
pub use folders::{cache_folder, workspace_folder};
pub use policy::CONTENT_POLICY;
pub use server::{Server, ServerOptions};
pub use steps::Steps;
pub use target::Target;
pub use toolchain::{Library, Toolchain};
pub use weight::{TOTAL_BAR_BYTES, WASM_BAR_BYTES, Weight};
