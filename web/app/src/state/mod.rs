//! The work, what follows from it, and where it is kept.
//!
//! A keystroke goes from its field through `tinwave_maker::entry` into
//! [`Workshop::put`]; memos ([`Answers`]) follow the work; text and scenes follow
//! those. Long work is asked of the worker ([`crate::worker`]) and comes back into
//! signals.

mod address;
mod answers;
mod measured;
mod memory;
mod opening;
mod plan;
mod search;
mod workshop;

pub use answers::{Answers, Freshness};
pub use measured::{Brought, Measured, Measuring, NotTaken, Source, Trust};
pub use memory::Memory;
pub use opening::Notice;
pub use plan::Plan;
pub use search::BestCutState;
pub use workshop::{Before, Workshop};
