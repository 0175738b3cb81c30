//! Words for people, by where they stand.

mod figures;
mod parts;
mod steps;
mod template;

pub(crate) use figures::*;
pub(crate) use parts::*;
pub(crate) use steps::*;
pub(crate) use template::*;

use crate::figure::Figures;
use crate::fill::fill;
use tinwave_protocol::print::PrintJob;

pub(crate) const PROGRAM: &str = "Tinwave";
pub(crate) const DRILL_TEMPLATE: &str = "drill template";
pub(crate) const CUT_GAUGE: &str = "cut gauge";
pub(crate) const FUNNEL: &str = "funnel pattern";
pub(crate) const RING: &str = "ring pattern";
pub(crate) const CHOKE: &str = "choke cup pattern";
pub(crate) const CAP: &str = "cap pattern";
pub(crate) const BUILD_SHEET: &str = "build sheet";

pub(crate) const PRINT_AT_100: &str =
    "Print at 100 % (actual size), without fitting to the page. Measure the rulers before you cut.";
pub(crate) const METRIC_RULER: &str = "100 mm";
pub(crate) const INCH_RULER: &str = "4 in";
pub(crate) const JOIN: &str = "sheet ";

pub(crate) const TAPE_SHEETS: &str =
    " Trim one sheet at the crosses, lay it on the other so that the crosses meet, tape.";

/// "Sheet 2 of 5".
pub(crate) fn sheet_of(number: usize, all: usize) -> String {
    fill("Sheet {} of {}", &[&count(number), &count(all)])
}

/// A count as digits.
pub(crate) fn count(number: usize) -> String {
    crate::figure::whole(i64::try_from(number).unwrap_or(i64::MAX))
}

/// "Ø 4.10 mm".
pub(crate) fn diameter(job: &PrintJob, um: u32) -> String {
    fill("Ø {}", &[&job.unit.fine_length(i64::from(um))])
}

/// "56.2 mm".
pub(crate) fn length(job: &PrintJob, um: u32) -> String {
    job.unit.length(i64::from(um))
}
