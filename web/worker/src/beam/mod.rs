//! Beams over the band, and what may stand at a can's mouth.

mod can;
mod estimate;
mod funnel_search;
mod funnel_size;
mod mouth_choices;
mod over_band;
mod rim_search;

pub use funnel_search::FunnelWork;
pub use mouth_choices::MouthWork;
pub use over_band::{DishWork, OverBandWork};
