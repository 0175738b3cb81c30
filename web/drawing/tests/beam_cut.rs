//! Cuts of a whole can's beam against finite elements.
#![allow(clippy::expect_used, reason = "a test may stop")]

use std::sync::Arc;

use tinwave_core::design::{Design, Mouth};
use tinwave_core::outside::OutsideSteps;
use tinwave_core::radiation::{CanBeam, SumPattern};
use tinwave_core::si::{SiDesign, hertz};
use tinwave_core::whole_can::{CanBody, WholeCan, probe_geometry};
use tinwave_drawing::beam_cut::BeamCut;
use tinwave_maker::example::example;

// Finite elements (general-purpose library, curved tetrahedra of order 3; our own
// calculation, no measurement): the can below with that funnel at 2435 MHz has
// half-power widths of 39.88 degrees along the wire and 46.59 across it (±0.5), and
// crossed polarisation in the H plane 36.85 dB below the peak.
const WIDTHS_DEG: [f64; 2] = [39.88, 46.59];
const CROSSED_DB: f64 = 36.85;

/// 90 mm inside, 150 mm long, wire 1 mm thick, 29.5 mm long, 50 mm from the back wall,
/// with a funnel of 180 mm and 30 degrees.
fn reference_funnel() -> Design {
    let mut design = example().design;
    (design.band.low_khz, design.band.high_khz) = (2_350_000, 2_520_000);
    design.can.inside_diameter_um = 90_000;
    design.can.open_length_um = 150_000;
    design.probe.wire_diameter_um = 1_000;
    design.probe.length_um = 29_500;
    design.probe.backshort_distance_um = 50_000;
    design.mouth = Mouth::Funnel {
        mouth_diameter_um: 180_000,
        half_angle_millideg: 30_000,
    };
    design
}

fn pattern(design: &Design) -> SumPattern {
    let mut steps = OutsideSteps::of_design(design)
        .expect("a design")
        .expect("an outside");
    while steps.step() {}
    let outside = Arc::new(steps.finish().expect("a solution"));
    let si = SiDesign::new(design);
    let body = CanBody::of(design, &si, Some(&outside)).expect("a body");
    let can = WholeCan::from_parts(body, &probe_geometry(&si), si.reference_ohm).expect("a can");
    CanBeam::new(&outside, Some(&can), hertz(2_435_000))
        .expect("a beam")
        .pattern
}

#[test]
fn cuts_have_the_widths_of_finite_elements() {
    let pattern = pattern(&reference_funnel());
    for (azimuth, wanted) in [
        (0.0, WIDTHS_DEG[0]),
        (90.0, WIDTHS_DEG[1]),
        (-90.0, WIDTHS_DEG[1]),
    ] {
        let cut = BeamCut::new(&pattern, azimuth);
        let width = cut.width_deg.expect("a width");
        assert!(
            (width - wanted).abs() <= 1.3,
            "{azimuth}: {width}, not {wanted}"
        );
        let highest = cut
            .wanted
            .iter()
            .map(|point| point.1)
            .fold(f64::MIN, f64::max);
        assert!((highest - cut.peak_dbi).abs() < 0.05);
    }
    let across = BeamCut::new(&pattern, 90.0).most_crossed.expect("some");
    assert!((across.below_db - CROSSED_DB).abs() <= 1.0, "{across:?}");
    // In the plane of the wire symmetry leaves none.
    assert_eq!(BeamCut::new(&pattern, 0.0).most_crossed, None);
}
