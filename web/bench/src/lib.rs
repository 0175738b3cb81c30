//! The workbench: the parts of the page that are fetched when they are wanted, and
//! the long computations, in a worker.
//!
//! Pure logic without a browser. A [`Request`] says which part of the page asks,
//! the design as its link, and what the maker has entered; the [`Reply`] says
//! what the part's places show. Both travel as form data. What takes longer than
//! a frame or two is a [`job::Job`]: steps between which the worker listens.

pub mod chart;
pub mod cut_search;
pub mod form_data;
pub mod html;
pub mod job;
pub mod outsides;
pub mod parts;
pub mod reply;
pub mod request;
pub mod sheet;
#[cfg(target_arch = "wasm32")]
mod wasm;
pub mod whole;

pub use reply::Reply;
pub use request::Request;
