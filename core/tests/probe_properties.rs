//! What must hold for every probe: energy, symmetry, continuity, limits.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod probe_cases;

use std::f64::consts::PI;

use probe_cases::reflection;
use tinwave_core::complex::Complex;
use tinwave_core::constants::{CHI_TE11, CHI_TM01, ETA_0, SPEED_OF_LIGHT, wavenumber};
use tinwave_core::probe::{
    Feed, GuideCondition, GuideEnd, Insulation, PreparedProbe, ProbeError, ProbeGeometry,
    ProbeSolution, Wire, WireId,
};

const MATCHED: GuideCondition = GuideCondition::MATCHED;

fn wire(radius_mm: f64, insertion_mm: f64, axial_mm: f64, angle_deg: f64) -> Wire {
    Wire {
        radius_m: radius_mm * 1e-3,
        insertion_m: insertion_mm * 1e-3,
        axial_m: axial_mm * 1e-3,
        angle_rad: angle_deg.to_radians(),
    }
}

/// A 90 mm can with a 31 mm probe of 1 mm wire.
fn can(axial_mm: f64, screws: Vec<Wire>) -> ProbeGeometry {
    ProbeGeometry {
        guide_radius_m: 0.045,
        feed: Feed {
            wire: wire(0.5, 31.0, axial_mm, 0.0),
            hole_radius_m: 1.15e-3,
            insulation: None,
            shunt_capacitance_f: 0.0,
        },
        screws,
    }
}

fn ready(geometry: &ProbeGeometry) -> PreparedProbe {
    PreparedProbe::new(geometry).expect("a possible geometry")
}

/// Numbers in [0, 1), the same on every run (Knuth's linear congruential generator).
struct Draw(u64);

impl Draw {
    fn next(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.next()
    }

    /// Any geometry of the range people build, and a frequency of it, Hz.
    fn geometry(&mut self) -> (ProbeGeometry, f64) {
        let a = 0.01 * self.between(0.0, 15f64.ln()).exp();
        let ka = self.between(1.85, 3.8);
        let frequency = ka / a * SPEED_OF_LIGHT / (2.0 * PI);
        let radius_m = (0.15e-3 * self.between(0.0, 20f64.ln()).exp()).min(0.15 * a);
        let hole_radius_m = radius_m * self.between(1.2, 4.0);
        let insertion_m = self.between(2.0 * radius_m, 1.9 * a - radius_m);
        let axial_m = self.between(hole_radius_m, 6.0 * a);
        let fed = Wire {
            radius_m,
            insertion_m,
            axial_m,
            angle_rad: self.between(-3.0, 3.0),
        };
        let insulation = (self.next() < 0.3).then(|| Insulation {
            radius_m: radius_m * self.between(1.0, 2.0),
            relative_permittivity: self.between(1.0, 4.0),
        });
        let screws = (0..(3.0 * self.next()) as usize)
            .map(|_| Wire {
                radius_m: self.between(0.02, 0.06) * a,
                insertion_m: self.between(0.0, 0.8) * a,
                axial_m: self.between(0.1, 6.0) * a,
                angle_rad: self.between(-3.0, 3.0),
            })
            .collect();
        let shunt_capacitance_f = self.between(0.0, 2e-13);
        let feed = Feed {
            wire: fed,
            hole_radius_m,
            insulation,
            shunt_capacitance_f,
        };
        (
            ProbeGeometry {
                guide_radius_m: a,
                feed,
                screws,
            },
            frequency,
        )
    }
}

fn fractions(solution: &ProbeSolution) -> f64 {
    solution.te11.power_fraction + solution.tm01.power_fraction + solution.te21.power_fraction
}

/// In front of every wire.
fn end(geometry: &ProbeGeometry, te11: Complex, tm01: Complex, te21: Complex) -> GuideEnd {
    let wires = geometry.screws.iter().chain([&geometry.feed.wire]);
    let farthest = wires.map(|w| w.axial_m).fold(0.0, f64::max);
    GuideEnd {
        length_m: farthest + geometry.guide_radius_m,
        te11,
        tm01,
        te21,
    }
}

#[test]
fn power_is_conserved_over_the_whole_range() {
    let mut draw = Draw(1);
    let mut tried = 0;
    while tried < 300 {
        let (geometry, frequency) = draw.geometry();
        let probe = match PreparedProbe::new(&geometry) {
            Ok(probe) => probe,
            Err(ProbeError::Collision { .. }) => continue,
            Err(error) => panic!("{geometry:?}: {error:?}"),
        };
        tried += 1;
        let mirror = |d: &mut Draw| Complex::from_polar(d.between(0.0, 0.95), d.between(-PI, PI));
        // TE11 always propagates here. The others may be below cutoff, where a real
        // reflection takes no power.
        let open = end(
            &geometry,
            mirror(&mut draw),
            Complex::real(0.3),
            Complex::real(-0.4),
        );
        for end in [None, Some(open)] {
            let condition = GuideCondition {
                surface_resistance_ohm: 0.0,
                end,
            };
            let solution = probe.solve(frequency, &condition);
            let y = probe.input_admittance(frequency, &condition);
            assert_eq!(solution.input_admittance, y);
            assert!(
                y.is_finite() && y.re > 0.0,
                "{geometry:?} {frequency}: {y:?}"
            );
            let sum = fractions(&solution);
            assert!((sum - 1.0).abs() < 1e-7, "{geometry:?} {frequency}: {sum}");
        }
        let lossy = GuideCondition {
            surface_resistance_ohm: 0.1,
            end: Some(open),
        };
        let y = probe.input_admittance(frequency, &lossy);
        assert!(
            y.is_finite() && y.re > 0.0,
            "{geometry:?} {frequency}: {y:?}"
        );
    }
}

#[test]
fn amplitudes_carry_the_stated_power() {
    let solution = ready(&can(51.0, Vec::new())).solve(2.44e9, &MATCHED);
    let power = 0.5 * solution.te11.aligned.norm_sqr();
    let input = 0.5 * solution.input_admittance.re;
    assert!((power / input - 1.0).abs() < 1e-9);
    assert!(solution.te11.propagates && !solution.tm01.propagates && !solution.te21.propagates);
    assert_eq!(solution.te11.crossed, Complex::ZERO);
}

#[test]
fn a_closed_lossless_cavity_takes_no_power() {
    let geometry = can(51.0, vec![wire(2.0, 12.0, 80.0, 40.0)]);
    let mirror = Complex::real(-1.0);
    let end = Some(end(&geometry, mirror, mirror, mirror));
    let y = ready(&geometry).input_admittance(
        2.44e9,
        &GuideCondition {
            surface_resistance_ohm: 0.0,
            end,
        },
    );
    assert!(y.im.abs() > 1e-4 && y.re.abs() < 1e-9 * y.im.abs(), "{y:?}");
}

#[test]
fn the_backshort_repeats_every_half_guide_wavelength() {
    let frequency = 2.3e9;
    let k = wavenumber(frequency);
    let cutoff = CHI_TE11 / 0.045;
    let half_mm = 1e3 * PI / (k * k - cutoff * cutoff).sqrt();
    let near = ready(&can(150.0, Vec::new())).input_admittance(frequency, &MATCHED);
    let far = ready(&can(150.0 + half_mm, Vec::new())).input_admittance(frequency, &MATCHED);
    assert!(
        (reflection(near) - reflection(far)).abs() < 1e-3,
        "{near:?} {far:?}"
    );
}

#[test]
fn moving_the_wire_equals_starting_afresh() {
    let screws = vec![wire(2.0, 10.0, 30.0, 90.0), wire(2.0, 14.0, 90.0, 10.0)];
    for screws in [Vec::new(), screws] {
        let start = ready(&can(51.0, screws.clone()));
        for axial_mm in [3.0, 8.0, 21.0, 51.0, 70.0] {
            let moved = start.at_backshort_distance(axial_mm * 1e-3).expect("room");
            let fresh = ready(&can(axial_mm, screws.clone()));
            for f in [2.1e9, 2.44e9, 3.4e9] {
                let (a, b) = (
                    moved.input_admittance(f, &MATCHED),
                    fresh.input_admittance(f, &MATCHED),
                );
                assert!(
                    (a - b).abs() <= 1e-9 * b.abs(),
                    "{axial_mm} {f}: {a:?} {b:?}"
                );
            }
        }
    }
}

#[test]
fn a_screw_of_no_depth_is_the_bare_wall() {
    let bare = ready(&can(51.0, Vec::new())).input_admittance(2.44e9, &MATCHED);
    let flush =
        ready(&can(51.0, vec![wire(2.0, 0.0, 80.0, 0.0)])).input_admittance(2.44e9, &MATCHED);
    assert_eq!(bare, flush);
    let mut before = f64::INFINITY;
    for depth_mm in [8.0, 4.0, 2.0, 1.0, 0.1] {
        let y = ready(&can(51.0, vec![wire(2.0, depth_mm, 80.0, 0.0)]))
            .input_admittance(2.44e9, &MATCHED);
        let effect = (reflection(y) - reflection(bare)).abs();
        assert!(effect < before, "{depth_mm}: {effect}");
        before = effect;
    }
    assert!(before < 1e-4, "{before}");
}

#[test]
fn only_angles_between_wires_count() {
    let screws = |turn: f64| {
        vec![
            wire(2.0, 12.0, 80.0, 35.0 + turn),
            wire(2.0, 9.0, 30.0, 120.0 + turn),
        ]
    };
    let mut turned = can(51.0, screws(77.0));
    turned.feed.wire.angle_rad = 77f64.to_radians();
    let one = ready(&can(51.0, screws(0.0))).solve(2.7e9, &MATCHED);
    let other = ready(&turned).solve(2.7e9, &MATCHED);
    assert!(
        (one.input_admittance - other.input_admittance).abs() < 1e-10 * one.input_admittance.abs()
    );
    assert!(one.te11.crossed.abs() > 1e-3 * one.te11.aligned.abs());
    assert!((one.te11.crossed - other.te11.crossed).abs() < 1e-9 * one.te11.aligned.abs());
    // Seen in a mirror through the fed wire the crossed wave changes sign.
    let mirrored = vec![wire(2.0, 12.0, 80.0, -35.0), wire(2.0, 9.0, 30.0, -120.0)];
    let mirrored = ready(&can(51.0, mirrored)).solve(2.7e9, &MATCHED);
    assert!((one.te11.crossed + mirrored.te11.crossed).abs() < 1e-9 * one.te11.aligned.abs());
}

#[test]
fn the_response_is_continuous_at_a_cutoff() {
    let probe = ready(&can(51.0, vec![wire(2.0, 12.0, 80.0, 40.0)]));
    let cutoff = CHI_TM01 / 0.045 * SPEED_OF_LIGHT / (2.0 * PI);
    for rs in [0.0, 0.05] {
        let condition = GuideCondition {
            surface_resistance_ohm: rs,
            end: None,
        };
        let gamma = |f: f64| reflection(probe.input_admittance(f, &condition));
        let (below, at, above) = (
            gamma(cutoff * (1.0 - 1e-9)),
            gamma(cutoff),
            gamma(cutoff * (1.0 + 1e-9)),
        );
        assert!(at.is_finite());
        assert!(
            (at - below).abs() < 1e-4 && (at - above).abs() < 1e-4,
            "{below:?} {at:?} {above:?}"
        );
    }
}

#[test]
fn the_wall_takes_the_attenuation_of_the_mode() {
    // D. M. Pozar, Microwave Engineering, 4th ed. 2012, eq. 3.133 (TE11 in round guide).
    let (a, f, rs) = (0.045, 2.44e9, 0.05);
    let below = CHI_TE11 / (wavenumber(f) * a);
    let alpha = rs / (a * ETA_0 * (1.0 - below * below).sqrt())
        * (below * below + 1.0 / (CHI_TE11 * CHI_TE11 - 1.0));
    let probe = ready(&can(51.0, Vec::new()));
    let at = |length_m: f64| {
        let open = GuideEnd {
            length_m,
            te11: Complex::ZERO,
            tm01: Complex::ZERO,
            te21: Complex::ZERO,
        };
        let condition = GuideCondition {
            surface_resistance_ohm: rs,
            end: Some(open),
        };
        probe.solve(f, &condition).te11.power_fraction
    };
    let (near, far) = (at(0.2), at(5.2));
    assert!(far < near && near < 1.0);
    let measured = 0.5 * (near / far).ln() / 5.0;
    assert!((measured / alpha - 1.0).abs() < 1e-4, "{measured} {alpha}");
}

#[test]
fn a_sleeve_lengthens_the_wire() {
    let bare = can(51.0, Vec::new());
    let sleeved = |radius_m: f64, relative_permittivity: f64| {
        let mut geometry = bare.clone();
        geometry.feed.insulation = Some(Insulation {
            radius_m,
            relative_permittivity,
        });
        ready(&geometry).input_admittance(2.44e9, &MATCHED)
    };
    let plain = ready(&bare).input_admittance(2.44e9, &MATCHED);
    assert_eq!(plain, sleeved(1.0e-3, 1.0));
    // A longer wire has more reactance here.
    let reactance = [
        plain,
        sleeved(1.0e-3, 1.5),
        sleeved(1.0e-3, 2.3),
        sleeved(1.5e-3, 2.3),
    ]
    .map(|y| y.inv().im);
    assert!(
        reactance.windows(2).all(|pair| pair[1] > pair[0] + 1.0),
        "{reactance:?}"
    );
}

#[test]
fn shunt_capacitance_adds_its_susceptance() {
    let mut geometry = can(51.0, Vec::new());
    let plain = ready(&geometry).input_admittance(2.44e9, &MATCHED);
    geometry.feed.shunt_capacitance_f = 1e-13;
    let loaded = ready(&geometry).input_admittance(2.44e9, &MATCHED);
    let extra = loaded - plain;
    assert!(extra.re.abs() < 1e-15 && (extra.im - 2.0 * PI * 2.44e9 * 1e-13).abs() < 1e-12);
}

#[test]
fn impossible_geometries_are_refused() {
    let refused = |change: &dyn Fn(&mut ProbeGeometry)| {
        let mut geometry = can(51.0, vec![wire(2.0, 12.0, 80.0, 0.0)]);
        change(&mut geometry);
        PreparedProbe::new(&geometry).err()
    };
    assert_eq!(refused(&|_| ()), None);
    assert!(matches!(
        refused(&|g| g.guide_radius_m = f64::NAN),
        Some(ProbeError::GuideRadius { .. })
    ));
    assert!(matches!(
        refused(&|g| g.feed.wire.radius_m = 0.0),
        Some(ProbeError::WireRadius {
            wire: WireId::Feed,
            ..
        })
    ));
    assert!(matches!(
        refused(&|g| g.feed.wire.insertion_m = 0.0896),
        Some(ProbeError::Insertion {
            wire: WireId::Feed,
            ..
        })
    ));
    assert!(matches!(
        refused(&|g| g.feed.wire.axial_m = 1e-3),
        Some(ProbeError::AxialPosition {
            wire: WireId::Feed,
            ..
        })
    ));
    assert!(matches!(
        refused(&|g| g.feed.wire.angle_rad = f64::INFINITY),
        Some(ProbeError::Angle {
            wire: WireId::Feed,
            ..
        })
    ));
    assert!(matches!(
        refused(&|g| g.feed.hole_radius_m = 0.5e-3),
        Some(ProbeError::HoleRadius { value: 0.5e-3, .. })
    ));
    let sleeve = |radius_m, relative_permittivity| {
        Some(Insulation {
            radius_m,
            relative_permittivity,
        })
    };
    assert!(matches!(
        refused(&|g| g.feed.insulation = sleeve(0.4e-3, 2.0)),
        Some(ProbeError::InsulationRadius { .. })
    ));
    assert!(matches!(
        refused(&|g| g.feed.insulation = sleeve(0.8e-3, 0.9)),
        Some(ProbeError::Permittivity { .. })
    ));
    assert!(matches!(
        refused(&|g| g.feed.shunt_capacitance_f = -1e-13),
        Some(ProbeError::ShuntCapacitance { .. })
    ));
    assert!(matches!(
        refused(&|g| g.screws[0].insertion_m = -1e-3),
        Some(ProbeError::Insertion {
            wire: WireId::Screw(0),
            ..
        })
    ));
    // 2.4 mm apart where the radii add up to 2.5 mm.
    assert!(matches!(
        refused(&|g| g.screws[0].axial_m = 0.0534),
        Some(ProbeError::Collision { .. })
    ));
    // Across the can, tip to tip with room, then overlapping.
    assert_eq!(
        refused(&|g| g.screws[0] = wire(2.0, 50.0, 51.0, 180.0)),
        None
    );
    assert!(matches!(
        refused(&|g| g.screws[0] = wire(2.0, 60.0, 51.0, 180.0)),
        Some(ProbeError::Collision { .. })
    ));
    let probe = ready(&can(51.0, vec![wire(2.0, 12.0, 80.0, 0.0)]));
    assert!(probe.at_backshort_distance(0.0795).is_err());
    assert!(probe.at_backshort_distance(0.0005).is_err());
}
