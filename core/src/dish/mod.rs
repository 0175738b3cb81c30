//! The can as the feed of a parabolic dish.

mod efficiency;
mod feed_pattern;

pub use efficiency::{DishEfficiency, FOCAL_RATIOS, dish_gain_dbi, edge_angle_rad};
pub use feed_pattern::FeedPattern;
