//! The page's pictures: the can in section, the mode ladder, the match over
//! the band, the Smith chart. Their geometry is in `drawing`.
//!
//! Each is a component with signals for inputs, but its inside is markup that is
//! written once, and elements that are kept up to date directly: a reactive view
//! per attribute would cost several times the code and the time.

pub mod beam_pattern;
mod canvas_plot;
mod figure;
mod followed;
mod live_scene;
pub mod match_chart;
mod match_cursor;
mod match_plot;
mod match_table;
mod palette;
mod probe_handle;
pub mod section_drawing;
pub mod smith_chart;

pub use beam_pattern::BeamPattern;
pub use figure::follow;
pub use followed::{Followed, Watched};
pub use match_chart::MatchChart;
pub use section_drawing::SectionDrawing;
pub use smith_chart::SmithChart;
