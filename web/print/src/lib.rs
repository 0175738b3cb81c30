//! Templates, gauges and build sheets at true scale, as PDF, SVG and DXF.
//!
//! Pure logic without a browser: a [`PrintJob`] goes in, sheets come out of
//! [`draw_sheets`], files of [`write_file`]. All lengths are whole micrometres.

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
pub mod figure;
mod fill;
pub mod furniture;
pub mod geometry;
pub mod hole_marks;
pub mod job_check;
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
pub mod section;
pub mod sheet;
pub mod svg;
pub mod tabs;
pub mod text_image;
pub mod tiling;
pub mod turn;
pub mod typesetting;
mod words;
pub mod wrap_strip;

pub use print::{draw_sheets, write_file};
pub use tinwave_protocol::print::{PrintError, PrintJob};
