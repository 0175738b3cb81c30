//! Geometry of the page's pictures: where every line, arrow and figure goes, in
//! px. Pure arithmetic, so that it is tested on any machine; the views that
//! show it are in `pictures`.

pub mod beam_cut;
pub mod beam_scene;
pub mod beam_side_scene;
pub mod bench;
pub mod card_section;
pub mod chart;
pub mod diameter_gauge;
pub mod fixed_point;
pub mod levels_scene;
pub mod mode_field;
pub mod mode_ladder;
pub mod path_scene;
pub mod path_text;
pub mod reach_chart;
pub mod scene;
pub mod section;
pub mod smith;
pub mod sweep;
