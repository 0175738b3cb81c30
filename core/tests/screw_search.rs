//! Tuning screws: search and curve against finite elements and whole cans.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod probe_cases;
mod support;

use probe_cases::{read, reflection};
use support::{bare, khz, orchard_gate};
use tinwave_core::design::{Band, Design, Mouth, Screw};
use tinwave_core::screw_search::{
    ScrewProgress, ScrewSearch, ScrewSettings, ScrewSettingsError, TunedScrews, depth_curve,
    depth_curve_part, depth_points,
};
use tinwave_core::whole_can::WholeCan;

const M4: ScrewSettings = ScrewSettings {
    count: 1,
    diameter_um: 4000,
    angle_millideg: 180_000,
};

fn run(design: &Design, settings: ScrewSettings) -> TunedScrews {
    let mut search = ScrewSearch::new(design, None, settings).expect("sound");
    let mut last = 0.0;
    for _ in 0..2000 {
        match search.step() {
            ScrewProgress::Done(found) => return found.expect("computed"),
            ScrewProgress::Working { done } => {
                assert!(done >= last && done < 1.0);
                last = done;
            }
        }
    }
    panic!("no end")
}

fn worst(design: &Design, screws: &[Screw]) -> f64 {
    let mut design = design.clone();
    design.screws.extend_from_slice(screws);
    let can = WholeCan::new(&design).expect("possible");
    let band = tinwave_core::match_band::band_frequencies(design.band, 5);
    band.into_iter()
        .map(|khz| can.match_at(f64::from(khz) * 1e3).expect("covered").vswr)
        .fold(1.0, f64::max)
}

/// Cases S1, S2 and H8 of the finite elements as a point of the depth curve: the
/// thread's pitch is four times the screw's depth, so one quarter turn makes it.
#[test]
fn depth_curve_agrees_with_finite_elements() {
    let cases = read(include_str!("data/probe_finite_element.json"));
    let mut seen = 0;
    for case in cases.iter().filter(|case| !case.geometry.screws.is_empty()) {
        let um = |m: f64| (m * 1e6).round() as u32;
        let (geometry, screw) = (&case.geometry, case.geometry.screws[0]);
        let mut design = bare((90.0, 1.0, 30.0, 50.0), Mouth::Absorbing, 200.0);
        design.can.inside_diameter_um = um(2.0 * geometry.guide_radius_m);
        design.probe.wire_diameter_um = um(2.0 * geometry.feed.wire.radius_m);
        design.probe.length_um = um(geometry.feed.wire.insertion_m);
        design.probe.backshort_distance_um = um(geometry.feed.wire.axial_m);
        let screw = Screw {
            axial_um: um(screw.axial_m),
            angle_millideg: (screw.angle_rad.to_degrees() * 1e3).round() as i32,
            depth_um: um(screw.insertion_m),
            diameter_um: um(2.0 * screw.radius_m),
        };
        // The five frequencies of the band that are the case's own too.
        let own: Vec<_> = case
            .impedance
            .iter()
            .filter(|(hz, _)| (*hz / 5e7).fract() == 0.0)
            .collect();
        let band = Band {
            low_khz: khz(own[0].0 / 1e6),
            high_khz: khz(own[4].0 / 1e6),
        };
        design.band = band;
        let curve =
            depth_curve(&design, None, screw, 4 * screw.depth_um, screw.depth_um).expect("sound");
        let [flush, deep] = curve.as_slice() else {
            panic!("two points: {curve:?}")
        };
        assert_eq!((flush.depth_um, deep.depth_um), (0, screw.depth_um));
        let wanted = own[..5]
            .iter()
            .map(|(_, z)| reflection(z.inv()).abs())
            .fold(0.0, f64::max);
        let got = deep.worst_vswr.expect("possible");
        let error = (got - 1.0) / (got + 1.0) - wanted;
        assert!(error.abs() <= 0.01, "{}: {error}", case.id);
        seen += 1;
    }
    assert_eq!(seen, 3);
}

#[test]
fn one_screw_betters_a_poor_match_and_two_do_not_worse() {
    let mut design = orchard_gate();
    design.probe.length_um = 27_000;
    design.probe.backshort_distance_um = 38_000;
    let one = run(&design, M4);
    assert_eq!(one.screws.len(), 1, "{one:?}");
    assert!(one.worst_vswr < 0.85 * one.worst_vswr_without, "{one:?}");
    let again = worst(&design, &one.screws);
    assert!((again - one.worst_vswr).abs() < 1e-9);
    assert!((worst(&design, &[]) - one.worst_vswr_without).abs() < 1e-9);
    // No neighbour is better.
    for (place, depth) in [(500, 0), (-500, 0), (0, 500), (0, -500)] {
        let mut screws = one.screws.clone();
        screws[0].axial_um = screws[0].axial_um.saturating_add_signed(place);
        screws[0].depth_um = screws[0].depth_um.saturating_add_signed(depth);
        assert!(worst(&design, &screws) > one.worst_vswr - 0.01);
    }
    let two = run(&design, ScrewSettings { count: 2, ..M4 });
    assert!(two.worst_vswr <= one.worst_vswr, "{two:?}");
    assert!((worst(&design, &two.screws) - two.worst_vswr).abs() < 1e-9);
}

#[test]
fn settings_out_of_range_are_refused() {
    let refused = |settings| ScrewSearch::new(&orchard_gate(), None, settings).err();
    assert_eq!(
        refused(ScrewSettings { count: 3, ..M4 }),
        Some(ScrewSettingsError::Count(3))
    );
    assert!(matches!(
        refused(ScrewSettings {
            diameter_um: 5,
            ..M4
        }),
        Some(ScrewSettingsError::Design(_))
    ));
}

#[test]
fn a_part_of_a_depth_curve_is_that_of_the_whole() {
    let design = orchard_gate();
    let screw = Screw {
        axial_um: 80_000,
        angle_millideg: 180_000,
        depth_um: 0,
        diameter_um: 4000,
    };
    let whole = depth_curve(&design, None, screw, 700, 5_000).expect("sound");
    // 5 mm are 28.6 quarter turns of 0.175 mm.
    assert_eq!(whole.len(), 29);
    assert_eq!(depth_points(700, 5_000), 29);
    let part = depth_curve_part(&design, None, screw, 700, 7..11).expect("sound");
    assert_eq!(part.as_slice(), &whole[7..11]);
    assert_eq!((depth_points(0, 5_000), depth_points(1, 500_000)), (0, 400));
}
