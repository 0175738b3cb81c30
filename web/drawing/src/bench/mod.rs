//! The picture of each step at the bench, drawn at the size at which it is shown.

mod can_views;
mod connector_views;
mod sheet;

pub use sheet::{BenchLine, BenchPath, BenchScene, BenchText};

use tinwave_maker::bench::Step;
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::workpiece::Workpiece;

use sheet::Sheet;

/// What a picture is made from.
#[derive(Clone, Copy, Debug)]
pub struct BenchView<'a> {
    /// The work.
    pub work: &'a Workpiece,
    /// The unit of the figures.
    pub unit: LengthUnit,
    /// Width that there is, px.
    pub width: f64,
}

/// The picture of a step; `None` for a step that is words alone.
#[must_use]
pub fn bench_scene(step: Step, view: &BenchView) -> Option<BenchScene> {
    let mut sheet = Sheet::new(view.width);
    match step {
        Step::Mark => can_views::mark(&mut sheet, view),
        Step::Screws => can_views::screws(&mut sheet, view),
        Step::MouthPart => can_views::mouth_part(&mut sheet, view),
        Step::Cap => can_views::cap(&mut sheet, view),
        Step::Drill => connector_views::drill(&mut sheet, view),
        Step::RubOff => connector_views::rub_off(&mut sheet, view),
        Step::CutWire => connector_views::wire(&mut sheet, view, false),
        Step::Sleeve => connector_views::wire(&mut sheet, view, true),
        Step::Solder => connector_views::upright(&mut sheet, view),
        Step::Fix => connector_views::fixed(&mut sheet, view),
        Step::Before => return None,
    }
    Some(sheet.finish())
}

#[cfg(test)]
mod tests;
