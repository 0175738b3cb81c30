//! Templates, gauges and build sheets at true scale, as PDF, SVG and DXF.
//!
//! Pure logic without a browser: a [`PrintJob`] goes in, bytes come out of
//! [`print`]. All lengths are whole micrometres.

pub mod build_sheet;
pub mod cone;
pub mod crossing;
pub mod cut_gauge;
mod cut_text;
mod dimension;
pub mod drawing;
pub mod drill_template;
pub mod dxf;
#[cfg(test)]
mod examples;
mod facts;
pub mod figure;
mod fill;
pub mod furniture;
pub mod geometry;
pub mod hole_marks;
pub mod job;
mod job_ranges;
pub mod job_text;
pub mod layer;
pub mod layout;
pub mod letters;
pub mod mass;
pub mod mount;
pub mod mouth_pattern;
pub mod paper;
pub mod pattern;
pub mod pdf;
mod pdf_content;
mod print;
mod print_error;
pub mod section;
pub mod sheet;
pub mod svg;
pub mod tabs;
pub mod text_image;
pub mod tiling;
pub mod turn;
pub mod typesetting;
#[cfg(target_arch = "wasm32")]
mod wasm;
mod words;
pub mod wrap_strip;

pub use job::PrintJob;
pub use job_text::read_job;
pub use print::{Kind, Output, print};
pub use print_error::PrintError;
