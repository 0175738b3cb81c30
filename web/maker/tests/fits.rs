//! Which trade sizes and bands carry one mode, against cutoffs by hand.
#![allow(clippy::unwrap_used, reason = "a test may stop")]

use tinwave_core::design::Band;
use tinwave_maker::bands::BANDS;
use tinwave_maker::example::example;
use tinwave_maker::fits::{
    Room, bands_for, base_of_bands, base_of_sizes, sizes_for, take_size, way_from,
};
use tinwave_maker::trade_sizes::{SizeGroup, TRADE_SIZES};
use tinwave_maker::workpiece::Cut;

/// Cutoff of a mode in a round pipe by its root (Abramowitz and Stegun 1964, table
/// 9.5: TE11 1.84118, TM01 2.40483).
fn cutoff_hz(root: f64, inside_um: u32) -> f64 {
    root * 299_792_458.0 / (std::f64::consts::PI * f64::from(inside_um) * 1e-6)
}

fn carries_one_mode(inside_um: u32, band: Band) -> bool {
    cutoff_hz(1.841_18, inside_um) < f64::from(band.low_khz) * 1e3
        && cutoff_hz(2.404_83, inside_um) > f64::from(band.high_khz) * 1e3
}

#[test]
fn the_sizes_are_all_that_carry_one_mode_and_no_other_the_roomiest_first() {
    let design = example().design;
    let fits = sizes_for(&design);
    let mut found: Vec<usize> = fits.iter().map(|fit| fit.index).collect();
    found.sort_unstable();
    let wanted: Vec<usize> = (0..TRADE_SIZES.len())
        .filter(|index| carries_one_mode(TRADE_SIZES[*index].inside_um, design.band))
        .collect();
    assert_eq!(found, wanted);
    assert!(wanted.len() > 10);
    let least = |room: Room| room.of_low_edge().min(room.above);
    assert!(fits.is_sorted_by(|a, b| least(a.room) >= least(b.room)));
}

#[test]
fn the_bands_are_all_that_a_can_carries_one_mode_over_the_nearest_first() {
    let mut design = example().design;
    design.can.inside_diameter_um = 155_000;
    let fits = bands_for(&design);
    let carried = BANDS
        .iter()
        .filter(|band| carries_one_mode(155_000, band.band()));
    assert_eq!(fits.len(), carried.count());
    let middle = |fit: &tinwave_maker::fits::BandFit| {
        let band = fit.band.band();
        f64::from(band.low_khz) + f64::from(band.high_khz)
    };
    // All of them lie below the design's own.
    assert!(fits.is_sorted_by(|a, b| middle(a) >= middle(b)));
    for fit in &fits {
        assert_eq!(fit.trial.can.inside_diameter_um, 155_000);
        assert_eq!(fit.trial.band, fit.band.band());
    }
}

#[test]
fn the_own_can_and_cut_do_not_matter_to_the_sizes_but_band_and_wire_do() {
    let design = example().design;
    let mut other = design.clone();
    other.can.inside_diameter_um = 99_000;
    other.can.open_length_um = 178_000;
    other.can.base_recess_um = 0;
    other.probe.length_um += 500;
    other.probe.backshort_distance_um += 900;
    other.name = "Shed roof".into();
    assert_eq!(base_of_sizes(&design), base_of_sizes(&other));
    assert_eq!(sizes_for(&design), sizes_for(&other));
    other.probe.wire_diameter_um = 2_000;
    assert_ne!(base_of_sizes(&design), base_of_sizes(&other));
    let mut typed = design.clone();
    typed.band.low_khz -= 1_000;
    assert_ne!(base_of_sizes(&design), base_of_sizes(&typed));
    // For the bands it is the other way round.
    assert_eq!(base_of_bands(&design), base_of_bands(&typed));
    assert_ne!(base_of_bands(&design), base_of_bands(&other));
}

#[test]
fn a_taken_size_is_the_can_from_then_on_and_its_cut_follows_the_best() {
    let mut work = example();
    work.cut = Cut::AsCut;
    let fits = sizes_for(&work.design);
    let fit = fits
        .iter()
        .find(|fit| fit.size().name == "307 × 409")
        .unwrap();
    assert!(!fit.is_can_of(&work.design));
    take_size(&mut work, fit, None);
    assert!(fit.is_can_of(&work.design));
    assert_eq!(work.cut, Cut::FollowsBest);
    // 115.89 mm over the seams, 6 mm of which are seams.
    assert_eq!(work.design.can.open_length_um, 109_890);
    assert!(work.design.check().is_ok());
}

#[test]
fn a_tube_is_cut_to_a_length_that_gives_the_wire_room() {
    let fits = sizes_for(&example().design);
    for fit in fits.iter().filter(|fit| !fit.has_own_length()) {
        let can = &fit.trial.can;
        assert!(can.open_length_um > 2 * can.inside_diameter_um / 2 + 40_000);
    }
    assert!(fits.iter().any(|fit| !fit.has_own_length()));
}

#[test]
fn the_way_on_leads_to_a_can_before_a_tube_and_to_the_nearest() {
    let fits = sizes_for(&example().design);
    let nearest = |um| fits.iter().min_by_key(|fit| way_from(fit, um)).unwrap();
    let wide = nearest(155_000);
    assert!(matches!(
        wide.size().group,
        SizeGroup::UsCan | SizeGroup::MetricCan
    ));
    let narrow = nearest(65_000);
    assert!(narrow.size().inside_um < wide.size().inside_um);
}

#[test]
fn a_band_too_wide_for_any_size_has_none() {
    let mut design = example().design;
    (design.band.low_khz, design.band.high_khz) = (2_000_000, 4_000_000);
    assert_eq!(sizes_for(&design), []);
}

#[test]
fn a_size_that_does_not_go_with_the_mouth_is_left_out() {
    let mut design = example().design;
    let all = sizes_for(&design).len();
    // A ring of 85 mm goes round none of the wider sizes.
    design.mouth = tinwave_core::design::Mouth::Flange {
        outside_diameter_um: 85_000,
    };
    assert!(sizes_for(&design).len() < all);
}
