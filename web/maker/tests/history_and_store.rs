//! Undo, redo, the workpiece's numbers, and what is kept between visits.
#![allow(clippy::unwrap_used, reason = "a test may panic")]

mod common;

use common::any_workpiece;
use proptest::prelude::*;
use tinwave_core::design_error::Field;
use tinwave_maker::entry::LengthUnit;
use tinwave_maker::example::example;
use tinwave_maker::history::{Change, History};
use tinwave_maker::link;
use tinwave_maker::store::{Kept, Theme, read, write};
use tinwave_maker::workpiece::{LONGEST_NAME, Workpiece, clean_name};

fn with_diameter(um: u32) -> Workpiece {
    let mut work = example();
    work.design.can.inside_diameter_um = um;
    work
}

const DIAMETER: Change = Change::Field(Field::InsideDiameter);

#[test]
fn typing_in_one_field_is_one_entry() {
    let mut history = History::new(example());
    assert!(!history.can_undo() && !history.can_redo());
    assert!(history.edit(with_diameter(80_000), DIAMETER));
    assert!(!history.edit(with_diameter(83_000), DIAMETER));
    assert!(!history.edit(with_diameter(83_500), DIAMETER));
    assert_eq!(history.position(), 1);
    assert_eq!(history.undo_change(), Some(DIAMETER));
    assert_eq!(history.undo(), Some(&example()));
    assert_eq!(history.redo_change(), Some(DIAMETER));
    assert_eq!(history.redo(), Some(&with_diameter(83_500)));
    assert_eq!(history.redo(), None);
}

#[test]
fn a_committed_field_begins_anew() {
    let mut history = History::new(example());
    history.edit(with_diameter(80_000), DIAMETER);
    history.commit();
    history.edit(with_diameter(83_000), DIAMETER);
    assert_eq!(history.position(), 2);
    history.edit(with_diameter(84_000), Change::ProbeDrag);
    assert_eq!(history.position(), 3);
    assert_eq!(history.undo(), Some(&with_diameter(83_000)));
    // After an undo nothing joins the entry that came back.
    history.edit(with_diameter(85_000), DIAMETER);
    assert_eq!(history.position(), 3);
    assert!(!history.can_redo());
    assert_eq!(history.undo(), Some(&with_diameter(83_000)));
}

#[test]
fn an_edit_that_changes_nothing_is_none() {
    let mut history = History::new(example());
    history.edit(with_diameter(80_000), DIAMETER);
    history.undo();
    assert!(!history.edit(example(), DIAMETER));
    assert!(history.can_redo());
}

#[test]
fn the_history_is_bounded_and_its_positions_hold() {
    let mut history = History::new(example());
    for um in 20_000..20_500 {
        history.edit(with_diameter(um), DIAMETER);
        history.commit();
    }
    assert_eq!(history.position(), 500);
    assert_eq!(history.go_to(450), Some(&with_diameter(20_449)));
    assert_eq!(history.position(), 450);
    assert_eq!(history.go_to(500), Some(&with_diameter(20_499)));
    assert_eq!(history.go_to(501), None);
    assert_eq!(history.go_to(3), None);
    assert_eq!(history.position(), 500);
    let mut steps = 0;
    while history.undo().is_some() {
        steps += 1;
    }
    assert!((100..=200).contains(&steps), "{steps}");
}

#[test]
fn names_are_fit_to_keep() {
    assert_eq!(clean_name("  Orchard\ngate  "), "Orchard gate");
    assert_eq!(clean_name(&"x".repeat(1000)).len(), LONGEST_NAME);
    assert_eq!(clean_name("\u{7}"), "");
}

#[test]
fn numbers_of_a_workpiece() {
    let mut work = example();
    assert_eq!(work.field(Field::InsideDiameter), Some(87_000));
    assert_eq!(work.field(Field::HoleDiameter), None);
    assert_eq!(work.field(Field::SleeveDiameter), None);
    assert_eq!(work.field(Field::MouthDiameter), None);
    work.set_field(Field::HoleDiameter, 4_100).unwrap();
    work.set_field(Field::SleevePermittivity, 2_100).unwrap();
    work.set_field(Field::SweepPoints, 41).unwrap();
    assert_eq!(work.field(Field::HoleDiameter), Some(4_100));
    assert_eq!(work.field(Field::SleevePermittivity), Some(2_100));
    assert!(work.field(Field::SleeveDiameter) > work.field(Field::WireDiameter));
    assert_eq!(work.field(Field::SweepPoints), Some(41));
    let before = work.clone();
    let error = work.set_field(Field::InsideDiameter, 9_999).unwrap_err();
    assert_eq!((error.field, error.low), (Field::InsideDiameter, 10_000));
    let error = work.set_field(Field::BandHigh, 2_400_000).unwrap_err();
    assert_eq!((error.field, error.low), (Field::BandHigh, 2_400_001));
    work.set_field(Field::InsideDiameter, i64::MAX).unwrap_err();
    assert_eq!(work, before);
}

#[test]
fn what_is_kept_comes_back() {
    let mut kept = Kept::default();
    kept.link = Some(link::encode(&example()));
    kept.unit = LengthUnit::Inch;
    kept.theme = Theme::Dark;
    kept.save("north", "v=1&d=87");
    kept.save("果园 \"gate\"", &link::encode(&example()));
    kept.save("north", "v=1&d=88");
    let back = read(Some(&write(&kept)));
    assert_eq!(back.broken, None);
    assert_eq!(back.kept, kept);
    assert_eq!(back.kept.saved.len(), 2);
    assert_eq!(back.kept.saved.first().unwrap().link, "v=1&d=88");
    assert!(kept.remove("north") && !kept.remove("north"));
    assert_eq!(read(None).kept, Kept::default());
    assert_eq!(read(None).broken, None);
}

#[test]
fn a_broken_store_loses_nothing() {
    for text in [
        "",
        "{",
        "null",
        "tinwave",
        "tinwave 2\nunit in",
        "\u{0}\u{fffd}",
    ] {
        let back = read(Some(text));
        assert_eq!(back.kept, Kept::default(), "{text}");
        assert_eq!(back.broken.as_deref(), Some(text));
    }
    let half = "tinwave 1\nlink\nunit in\nsaved v=1 a\nsaved v=1";
    let back = read(Some(half));
    assert_eq!(back.broken.as_deref(), Some(half));
    assert_eq!(back.kept.unit, LengthUnit::Inch);
    assert_eq!(back.kept.saved.len(), 1);
    assert_eq!(back.kept.link, None);
}

#[test]
fn what_a_newer_page_keeps_stays() {
    let back = read(Some("tinwave 1\ntheme sepia\ncharts open wide"));
    assert_eq!(back.broken, None);
    assert_eq!(back.kept.theme, Theme::System);
    assert!(write(&back.kept).ends_with("\ncharts open wide"));
}

#[test]
fn a_line_break_in_a_name_begins_no_line() {
    let mut kept = Kept::default();
    kept.save("a\nunit in", "v=1");
    let back = read(Some(&write(&kept)));
    assert_eq!(back.broken, None);
    assert_eq!(back.kept.unit, LengthUnit::default());
}

proptest! {
    #[test]
    fn undo_walks_back_to_the_beginning(works in prop::collection::vec(any_workpiece(), 1..12)) {
        let mut history = History::new(example());
        for work in &works {
            history.edit(work.clone(), Change::Opened);
            history.commit();
        }
        while history.undo().is_some() {}
        prop_assert_eq!(history.current(), &example());
        while history.redo().is_some() {}
        prop_assert_eq!(history.current(), works.last().unwrap());
    }

    #[test]
    fn every_number_set_is_the_number_held(work in any_workpiece(), share in 0.0..=1.0_f64) {
        for field in [
            Field::InsideDiameter, Field::OpenLength, Field::Wall, Field::BaseRecess,
            Field::WireDiameter, Field::ProbeLength, Field::BackshortDistance,
            Field::HoleDiameter, Field::Reference, Field::Shunt, Field::SleeveDiameter,
            Field::SleevePermittivity,
        ] {
            let (low, high) = field.range();
            let value = low + ((high - low) as f64 * share) as i64;
            let mut changed = work.clone();
            // Only a wire so thick that its twofold leaves the sleeve's range can refuse.
            if changed.set_field(field, value).is_ok() {
                prop_assert_eq!(changed.field(field), Some(value));
            } else {
                prop_assert_eq!(&changed, &work);
            }
        }
    }

    #[test]
    fn no_stored_text_panics(text in ".{0,200}") {
        let _ = read(Some(&text));
    }
}
