//! What the Measure station says.

mod actions;
mod advice;
mod brought;
mod causes;
mod comparing;
mod findings;
mod log;

pub use actions::*;
pub use advice::*;
pub use brought::*;
pub use causes::*;
pub use comparing::*;
pub use findings::*;
pub use log::*;
