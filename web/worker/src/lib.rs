//! All long work of the page, in steps between which the worker hears what else is
//! wanted. Pure logic but for the door (`wasm`), so that any machine can test it.

pub mod beam;
pub mod cuts;
pub mod fits;
mod fits_kept;
pub mod fittings;
pub mod matters;
pub mod measure;
pub mod outside;
mod outside_first;
pub mod outsides;
pub mod print;
pub mod running;
pub mod screws;
pub mod tolerance;
#[cfg(target_arch = "wasm32")]
mod wasm;
pub mod work;

pub use running::Running;
pub use work::Work;
