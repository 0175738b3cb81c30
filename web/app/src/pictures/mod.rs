//! Drawings: what is not a chart over two axes.

pub mod bare_section;
pub mod section;
mod section_knob;

pub use bare_section::BareSectionPicture;
pub use section::SectionPicture;
