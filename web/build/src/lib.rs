//! Builds the Tinwave page into a folder of static files, and serves it.
//!
//! The order of a build is the order of the modules below: find or make a
//! compiler for WebAssembly ([`Toolchain`]), compile the page's two programs,
//! cut the later stations off, generate JavaScript bindings, shrink them, render
//! the first paint, put the files together that the manifest lists, weigh them.
//! Not in this crate: the page itself (packages `tinwave-app` and
//! `tinwave-worker`) and any physics (package `tinwave-core`).

pub mod apt;
mod assemble;
mod bindings;
mod bound;
mod build;
mod cli;
mod debian;
mod failure;
mod fingerprint;
mod first_paint;
mod folders;
mod manifest;
mod media_type;
pub mod node;
mod optimise;
mod paths;
mod policy;
mod process;
mod program;
mod server;
mod split;
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
pub use weight::{Group, Weight};
