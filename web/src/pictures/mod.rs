//! The page's pictures: the can in section, the mode ladder, the match over
//! the band, the Smith chart. Their geometry is in `drawing`.

mod canvas_plot;
pub mod match_chart;
mod match_table;
mod measured_width;
pub mod mode_ladder;
mod palette;
mod probe_handle;
pub mod section_drawing;
pub mod smith_chart;

pub use match_chart::MatchChart;
pub use mode_ladder::ModeLadder;
pub use section_drawing::SectionDrawing;
pub use smith_chart::SmithChart;
