//! Drawings: what is not a chart over two axes.

pub mod bare_section;
pub mod section;
mod section_knob;
pub mod smith;

pub use bare_section::BareSectionPicture;
pub use section::SectionPicture;
pub use smith::SmithPicture;
