//! Funnels: the flat sheet that one is rolled from, and the best one for a limit.

mod flat_pattern;
mod gain_fit;
mod search;

pub use flat_pattern::FlatPattern;
pub use gain_fit::{funnel_gain_fit_dbi, handbook_horn_dbi};
pub use search::{FunnelChoice, FunnelLimits, FunnelProgress, FunnelSearch};
