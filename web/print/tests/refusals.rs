//! What is refused, and as what.

mod common;

use common::jobs::orchard_gate;
use tinwave_print::{PrintError, PrintJob, draw_sheets, write_file};
use tinwave_protocol::print::{CutLimits, FileKind, JobNumber, Mouth, TextImage};

/// The refusal of a job in which something was changed.
fn refusal(change: impl FnOnce(&mut PrintJob)) -> Option<PrintError> {
    let mut job = orchard_gate();
    change(&mut job);
    let refused = write_file(&job, FileKind::Pdf).err();
    assert_eq!(draw_sheets(&job).err(), refused, "sheets and files agree");
    refused
}

fn out_of_range(number: JobNumber, value: u32, low: u32, high: u32) -> Option<PrintError> {
    Some(PrintError::OutOfRange {
        number,
        value,
        low,
        high,
    })
}

#[test]
fn a_number_out_of_range_is_named_with_its_range() {
    assert_eq!(refusal(|_| {}), None);
    assert_eq!(
        refusal(|job| job.can.wall_um = 41_000),
        out_of_range(JobNumber::Wall, 41_000, 0, 40_700)
    );
    assert_eq!(
        refusal(|job| job.rulers.across_um = 80_000),
        out_of_range(JobNumber::RulerAcross, 80_000, 90_000, 110_000)
    );
    assert_eq!(
        refusal(|job| {
            job.probe.within_1_5 = Some(CutLimits {
                shortest_um: 29_700,
                longest_um: 29_100,
            });
        }),
        out_of_range(JobNumber::CutLimits, 29_700, 0, 29_100)
    );
    assert_eq!(
        refusal(|job| job.can.outside_diameter_um = 0),
        out_of_range(JobNumber::OutsideDiameter, 0, 10_000, 540_000)
    );
}

#[test]
fn a_hole_beyond_the_rim_is_refused() {
    assert_eq!(
        refusal(|job| job.probe.backshort_um = 140_000),
        out_of_range(JobNumber::Backshort, 140_000, 0, 139_999)
    );
}

#[test]
fn words_without_end_and_unsound_images_are_refused() {
    assert_eq!(
        refusal(|job| job.notes = vec!["W".repeat(2_001)]),
        Some(PrintError::WordsTooLong { most: 2_000 })
    );
    assert_eq!(
        refusal(|job| {
            job.images = vec![TextImage {
                words: "日本".into(),
                em_px: 16,
                baseline_px: 14,
                width_px: 32,
                height_px: 18,
                bits: vec![0xff; 3],
            }];
        }),
        Some(PrintError::UnsoundImage)
    );
}

#[test]
fn control_signs_in_a_name_are_not_printed() -> Result<(), String> {
    let mut job = orchard_gate();
    job.name = "Orchard\u{7}\u{1b} gate\r".into();
    assert_eq!(
        common::svg_sheets(&job)?,
        common::svg_sheets(&orchard_gate())?
    );
    for kind in [FileKind::Pdf, FileKind::Svg, FileKind::Dxf] {
        assert_eq!(write_file(&job, kind), write_file(&orchard_gate(), kind));
    }
    Ok(())
}

#[test]
fn an_absurd_funnel_is_refused_by_its_number_of_sheets() {
    let refused = refusal(|job| {
        job.mouth = Mouth::Funnel {
            mouth_diameter_um: 5_000_000,
            half_angle_millideg: 1_000,
            sheet_um: 500,
        };
    });
    assert!(
        matches!(refused, Some(PrintError::TooManySheets { sheets, most }) if sheets > most),
        "{refused:?}"
    );
}
