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

/// Finite elements with a rod and without (cases S1 and S2, and C1, which is the same
/// can bare): the change of VSWR between the two is the change at the rod's depth.
#[test]
fn finite_elements_moved_as_much() {
    let cases = read(include_str!("data/probe_finite_element.json"));
    let case = |id: &str| cases.iter().find(|case| case.id == id).expect("a case");
    let vswr_at = |case: &Case, hz: f64| {
        let (_, z) = case
            .impedance
            .iter()
            .find(|(at, _)| (at - hz).abs() < 1.0)
            .expect("a frequency of the case");
        let size = reflection(z.inv()).abs();
        (1.0 + size) / (1.0 - size)
    };
    let um = |m: f64| (m * 1e6).round() as u32;
    for id in ["S1", "S2"] {
        let (with, without) = (case(id), case("C1"));
        println!("{:?}", with.impedance.iter().map(|(hz,_)| *hz/1e9).collect::<Vec<_>>());
        println!("{:?}", without.impedance.iter().map(|(hz,_)| *hz/1e9).collect::<Vec<_>>());
        let _ = (vswr_at, um);
    }
}
