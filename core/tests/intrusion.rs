//! How deep a rivet may stick in, against finite elements and whole cans drawn anew.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod probe_cases;
mod support;

use probe_cases::{Case, read, reflection};
use support::{bare, khz, orchard_gate};
use tinwave_core::design::{Band, Design, Mouth, Screw};
use tinwave_core::intrusion::{
    DepthLimit, IntrusionError, USUAL_CHANGE, WallPlace, deepest_intrusion, last_place_um,
};
use tinwave_core::match_band::band_frequencies;
use tinwave_core::whole_can::WholeCan;

const RIVET: WallPlace = WallPlace {
    axial_um: 90_000,
    angle_millideg: 180_000,
    diameter_um: 4_000,
};

fn worst(design: &Design, place: WallPlace, depth_um: u32) -> f64 {
    let mut design = design.clone();
    if depth_um > 0 {
        design.screws.push(Screw {
            axial_um: place.axial_um,
            angle_millideg: place.angle_millideg,
            depth_um,
            diameter_um: place.diameter_um,
        });
    }
    let can = WholeCan::new(&design).expect("possible");
    band_frequencies(design.band, 5)
        .into_iter()
        .map(|khz| can.match_at(f64::from(khz) * 1e3).expect("covered").vswr)
        .fold(1.0, f64::max)
}

fn depth(limit: Result<DepthLimit, IntrusionError>) -> u32 {
    match limit {
        Ok(DepthLimit::Within { depth_um, .. }) => depth_um,
        other => panic!("no limit: {other:?}"),
    }
}

/// Largest VSWR of a case over 200 MHz, where each of the band's five points is one of
/// the case's frequencies.
fn worst_of(case: &Case, low_mhz: f64) -> f64 {
    let own = case.impedance.iter().filter(|(hz, _)| {
        let megahertz = (hz / 1e6).round();
        (low_mhz..=low_mhz + 200.0).contains(&megahertz) && megahertz % 50.0 == 0.0
    });
    let sizes: Vec<f64> = own.map(|(_, z)| reflection(z.inv()).abs()).collect();
    assert_eq!(sizes.len(), 5);
    let most = sizes.into_iter().fold(0.0, f64::max);
    (1.0 + most) / (1.0 - most)
}

/// Finite elements with a rod and without (cases S1 and S2, and C1, which is the same
/// can bare): asked for the change between the two, the limit is the rod's own depth.
/// Each over a band in which the change still grows with depth there.
#[test]
fn finite_elements_moved_as_much() {
    let cases = read(include_str!("data/probe_finite_element.json"));
    let case = |id: &str| cases.iter().find(|case| case.id == id).expect("a case");
    let um = |m: f64| (m * 1e6).round() as u32;
    for (id, low_mhz) in [("S1", 2_300.0), ("S2", 2_250.0)] {
        let mut design = bare((90.0, 0.813, 31.0, 51.4), Mouth::Absorbing, 200.0);
        design.band = Band {
            low_khz: khz(low_mhz),
            high_khz: khz(low_mhz + 200.0),
        };
        let rod = case(id).geometry.screws[0];
        let place = WallPlace {
            axial_um: um(rod.axial_m),
            angle_millideg: (rod.angle_rad.to_degrees() * 1e3).round() as i32,
            diameter_um: um(2.0 * rod.radius_m),
        };
        let change = (worst_of(case(id), low_mhz) - worst_of(case("C1"), low_mhz)).abs();
        let found = depth(deepest_intrusion(&design, None, &[[place]], change));
        let off = f64::from(found) / f64::from(um(rod.insertion_m)) - 1.0;
        assert!(off.abs() <= 0.02, "{id}: {found} for a change of {change}");
    }
}

/// The limit is where whole cans drawn anew say, all round and along the can.
#[test]
fn the_limit_is_where_whole_cans_say() {
    let design = orchard_gate();
    let without = worst(&design, RIVET, 0);
    let mut seen = 0;
    for angle_millideg in [180_000, 135_000, -90_000] {
        for axial_um in [20_000, 45_000, 80_000, 140_000] {
            let place = WallPlace {
                axial_um,
                angle_millideg,
                ..RIVET
            };
            let moved = |depth_um| (worst(&design, place, depth_um) - without).abs();
            match deepest_intrusion(&design, None, &[[place]], USUAL_CHANGE).expect("computed") {
                DepthLimit::Within {
                    depth_um,
                    alternative,
                } => {
                    assert_eq!(alternative, 0);
                    assert!(moved(depth_um) < 0.1 && moved(depth_um + 20) >= 0.1);
                    for part in 1..40 {
                        assert!(moved(depth_um * part / 40) < 0.1, "{place:?}");
                    }
                    seen += 1;
                }
                DepthLimit::Beyond { tried_um } => {
                    for part in 1..=40 {
                        assert!(moved(tried_um * part / 40) < 0.1, "{place:?}");
                    }
                }
            }
        }
    }
    assert!(seen >= 6);
}

/// TE11's field runs from the probe to the wall opposite and has nothing along a rod a
/// quarter round (Pozar, *Microwave Engineering*, 4th ed. 2012, eq. 3.129, from memory):
/// there a rivet may go deepest, opposite least deep of the three. Left and right are
/// the same.
#[test]
fn a_quarter_round_matters_least() {
    let design = orchard_gate();
    let found = |angle_millideg, change| {
        let place = WallPlace {
            angle_millideg,
            ..RIVET
        };
        deepest_intrusion(&design, None, &[[place]], change)
    };
    let (opposite, between) = (found(180_000, 0.1), found(120_000, 0.1));
    assert!(matches!(
        found(90_000, 0.1),
        Ok(DepthLimit::Beyond { tried_um }) if tried_um > 20_000
    ));
    assert!(depth(opposite) < depth(between));
    assert_eq!(depth(between), depth(found(-120_000, 0.1)));
    // More leave, more depth.
    assert!(depth(found(180_000, 0.05)) < depth(opposite));
}

/// Of several alternatives the one that allows least holds.
#[test]
fn several_alternatives_have_the_least_depth_of_each() {
    let design = orchard_gate();
    let places =
        [60_000, 80_000, 100_000, 120_000].map(|axial_um| [WallPlace { axial_um, ..RIVET }]);
    let each = places.map(|place| depth(deepest_intrusion(&design, None, &[place], 0.1)));
    let least = each.into_iter().min().expect("some");
    let all = deepest_intrusion(&design, None, &places, 0.1);
    // Each search ends 10 micrometres or less from where it could.
    assert!(depth(all).abs_diff(least) <= 20, "{all:?} {each:?}");
    let nothing: [[WallPlace; 1]; 0] = [];
    let none = deepest_intrusion(&design, None, &nothing, 0.1);
    assert_eq!(none, Ok(DepthLimit::Beyond { tried_um: 0 }));
}

/// Two rivets of a bracket are in the can at once.
#[test]
fn two_rivets_at_once() {
    let design = orchard_gate();
    let without = worst(&design, RIVET, 0);
    let pair = [80_000, 120_000].map(|axial_um| WallPlace { axial_um, ..RIVET });
    let found = depth(deepest_intrusion(&design, None, &[pair], 0.1));
    let moved = |depth_um: u32| {
        let mut both = design.clone();
        both.screws.push(Screw {
            axial_um: pair[0].axial_um,
            angle_millideg: pair[0].angle_millideg,
            depth_um,
            diameter_um: pair[0].diameter_um,
        });
        (worst(&both, pair[1], depth_um) - without).abs()
    };
    assert!(moved(found) < 0.1 && moved(found + 20) >= 0.1, "{found}");
    let twice = deepest_intrusion(&design, None, &[[RIVET, RIVET]], 0.1);
    assert_eq!(twice, Err(IntrusionError::Taken(RIVET)));
}

#[test]
fn impossible_places_are_refused() {
    let design = orchard_gate();
    let ask = |place| deepest_intrusion(&design, None, &[[place]], 0.1);
    // The probe's hole: 1.29 mm wire in a 50-ohm hole of 2.97 mm, 45 mm from the back.
    let beside = |axial_um| WallPlace {
        axial_um,
        angle_millideg: 0,
        ..RIVET
    };
    assert_eq!(
        ask(beside(48_400)),
        Err(IntrusionError::Taken(beside(48_400)))
    );
    assert!(ask(beside(49_000)).is_ok());
    let round = WallPlace {
        angle_millideg: 4_000,
        ..beside(45_000)
    };
    assert_eq!(ask(round), Err(IntrusionError::Taken(round)));
    let corner = beside(2_000);
    assert_eq!(ask(corner), Err(IntrusionError::Taken(corner)));
    let last_um = last_place_um(&design);
    let late = WallPlace {
        axial_um: last_um + 1,
        ..RIVET
    };
    let near_mouth = IntrusionError::NearMouth {
        place: late,
        last_um,
    };
    assert_eq!(ask(late), Err(near_mouth));
    let thin = WallPlace {
        diameter_um: 50,
        ..RIVET
    };
    assert!(matches!(ask(thin), Err(IntrusionError::Design(_))));
    let still = deepest_intrusion(&design, None, &[[RIVET]], 0.0);
    assert_eq!(still, Err(IntrusionError::Change(0.0)));
    let mut flange = design.clone();
    flange.mouth = Mouth::Flange {
        outside_diameter_um: 145_000,
    };
    let unsolved = deepest_intrusion(&flange, None, &[[RIVET]], 0.1);
    assert_eq!(unsolved, Err(IntrusionError::NotComputed));
}
