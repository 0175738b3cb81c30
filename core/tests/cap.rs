//! The cap over the mouth against published lines, hand-worked slabs and limits.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod support;

use std::f64::consts::PI;
use std::sync::Arc;

use num_complex::Complex64;
use proptest::prelude::*;
use support::{assert_near, bare, orchard_gate};
use tinwave_core::cap::{
    CapError, Sheet, SheetField, cap_effect, capped_reflection, dissipation_loss_db,
};
use tinwave_core::complex::Complex;
use tinwave_core::constants::SPEED_OF_LIGHT;
use tinwave_core::design::Mouth;
use tinwave_core::mouth::{OpenPipe, mouth_reflection};
use tinwave_core::outside::{Outline, OutsideSpectrum, Rim};
use tinwave_core::probe::{GuideCondition, GuideEnd, PreparedProbe};
use tinwave_core::reflection::PointMatch;
use tinwave_core::si::SiDesign;
use tinwave_core::waveguide_mode::{Family, Mode};
use tinwave_core::whole_can::{CanBody, CanError, WholeCan, probe_geometry};

const TE11_ROOT: f64 = 1.841_183_781_34;

fn sheet(thickness_um: u32, permittivity_milli: u32, loss_tangent_micro: u32) -> Sheet {
    Sheet {
        thickness_um,
        permittivity_milli,
        loss_tangent_micro,
    }
}

fn hertz_of(ka: f64, radius_m: f64) -> f64 {
    ka * SPEED_OF_LIGHT / (2.0 * PI * radius_m)
}

/// D. M. Pozar, *Microwave Engineering*, 4th ed. 2012, example 3.1 (from memory): a
/// guide 10.7 mm wide, filled with PTFE of 2.08 and 0.0004, at 15 GHz has a phase
/// constant of 345.1 rad/m and 0.119 Np/m of dielectric loss. Both depend on the cutoff
/// wavenumber alone, here that of a round guide with the same one. Half a wave of the
/// filled guide passes everything on; of the standing wave in it the loss is
/// `α t (y/y0 + y0/y)`, worked by hand from the energies of the two waves. The book's
/// light runs at 3e8 m/s; the frequency here is set to its wavelength.
#[test]
fn published_filled_guide() {
    let (phase, loss) = (345.1, 0.119);
    let radius_m = TE11_ROOT * 0.0107 / PI;
    let hz = SPEED_OF_LIGHT / 0.02;
    let half_wave_um = (PI / phase * 1e6_f64).round() as u32;
    let matched = |sheet| capped_reflection(Mode::TE11, radius_m, hz, Complex::ZERO, &sheet);
    let half = matched(sheet(half_wave_um, 2_080, 0)).abs();
    assert!(half < 2e-3, "{half}");
    let quarter = matched(sheet(half_wave_um / 2, 2_080, 0)).abs();
    let k = 2.0 * PI / 0.02;
    let air = (k * k - (PI / 0.0107) * (PI / 0.0107)).sqrt();
    // A quarter wave turns the load 1 into (345.1/air)².
    let step = (phase / air) * (phase / air);
    assert_near("quarter", quarter, (step - 1.0) / (step + 1.0), 1e-3);
    let lossy = sheet(half_wave_um, 2_080, 400);
    let db = dissipation_loss_db(Mode::TE11, radius_m, hz, Complex::ZERO, &lossy);
    let wanted = loss * PI / phase * (phase / air + air / phase);
    let wanted_db = 10.0 / 10.0_f64.ln() * wanted;
    assert_near("loss", db.expect("passes") / wanted_db, 1.0, 0.01);
}

/// In a very wide guide a slab is one in free space: half of the light's wavelength in
/// it, or a quarter, (εr-1)/(εr+1) by hand.
#[test]
fn wide_guide_is_free_space() {
    let (radius_m, hz) = (100.0, SPEED_OF_LIGHT / 0.04);
    for mode in [Mode::TE11, Mode::TM01] {
        let quarter = sheet(5_000, 4_000, 0);
        let got = capped_reflection(mode, radius_m, hz, Complex::ZERO, &quarter);
        assert_near("quarter wave", got.abs(), 0.6, 1e-6);
        let half = sheet(10_000, 4_000, 0);
        let got = capped_reflection(mode, radius_m, hz, Complex::ZERO, &half);
        assert_near("half wave", got.abs(), 0.0, 1e-6);
    }
}

fn other(z: Complex) -> Complex64 {
    Complex64::new(z.re, z.im)
}

/// What the test works out itself: sums of waves to and fro, with another library's
/// complex numbers.
struct Slab {
    reflection: Complex64,
    /// Power that gets out over power that arrives.
    transmitted: f64,
}

/// `root`: mode's cutoff times radius; reflections at the end of the slab.
fn slab_by_waves(mode: Mode, ka: f64, kt: f64, permittivity: Complex64, end: Complex64) -> Slab {
    let root = mode.root().expect("a root");
    let phase = |e: Complex64| {
        let p = (e - (root / ka) * (root / ka)).sqrt();
        // Waves decay outward.
        if p.im > 0.0 { -p } else { p }
    };
    let wave = |e: Complex64| match mode.family {
        Family::Te => phase(e),
        Family::Tm => e / phase(e),
    };
    let one = Complex64::new(1.0, 0.0);
    let (y0, yd) = (wave(one), wave(permittivity));
    // What the open end is to the wave in the slab.
    let load = y0 * (one - end) / (one + end);
    let inner = (yd - load) / (yd + load);
    let face = (y0 - yd) / (y0 + yd);
    let through = (Complex64::new(0.0, -1.0) * phase(permittivity) * kt).exp();
    let echo = one / (one + face * inner * through * through);
    let reflection = (face + inner * through * through) * echo;
    // Field at the far face of the slab, per unit arriving.
    let field = (one + face) * through * (one + inner) * echo;
    // Back to the rim's plane through empty guide.
    let air = (Complex64::new(0.0, 2.0) * phase(one) * kt).exp();
    Slab {
        reflection: reflection * air,
        transmitted: field.norm_sqr() * load.re / y0.re,
    }
}

fn any_sheet(lossless: bool) -> impl Strategy<Value = Sheet> {
    let loss = if lossless { 0..=0_u32 } else { 0..=300_000_u32 };
    (0..=20_000_u32, 1_000..=10_000_u32, loss).prop_map(|(t, e, l)| sheet(t, e, l))
}

fn any_mode() -> impl Strategy<Value = Mode> {
    prop_oneof![Just(Mode::TE11), Just(Mode::TM01), Just(Mode::TE21)]
}

proptest! {
    /// Modes above and below cutoff, any passive end.
    #[test]
    fn agrees_with_waves_to_and_fro(
        mode in any_mode(),
        ka in 1.3..3.8_f64,
        end in (0.0..0.95_f64, -PI..PI),
        sheet in any_sheet(false),
    ) {
        let radius_m = 0.045;
        let root = mode.root().expect("a root");
        prop_assume!((ka - root).abs() > 1e-3);
        let hz = hertz_of(ka, radius_m);
        let end = Complex::from_polar(end.0, end.1);
        let kt = ka / radius_m * f64::from(sheet.thickness_um) * 1e-6;
        let permittivity = other(sheet.relative_permittivity());
        let wanted = slab_by_waves(mode, ka, kt, permittivity, other(end));
        prop_assume!(wanted.reflection.norm() < 1e3);
        let got = other(capped_reflection(mode, radius_m, hz, end, &sheet));
        let off = (got - wanted.reflection).norm();
        prop_assert!(off <= 1e-9 * (1.0 + wanted.reflection.norm_sqr()), "{off}");
    }

    /// What a lossless sheet doesn't send back gets out; a lossy one keeps some, as much
    /// as its loss in dB says.
    #[test]
    fn energy_is_kept(
        ka in 1.9..3.8_f64,
        end in (0.0..0.9_f64, -PI..PI),
        sheet in any_sheet(false),
    ) {
        let radius_m = 0.045;
        let hz = hertz_of(ka, radius_m);
        let end = Complex::from_polar(end.0, end.1);
        let kt = ka / radius_m * f64::from(sheet.thickness_um) * 1e-6;
        for loss_tangent_micro in [0, sheet.loss_tangent_micro] {
            let sheet = Sheet { loss_tangent_micro, ..sheet };
            let permittivity = other(sheet.relative_permittivity());
            let out = slab_by_waves(Mode::TE11, ka, kt, permittivity, other(end)).transmitted;
            let entered = 1.0 - capped_reflection(Mode::TE11, radius_m, hz, end, &sheet).norm_sqr();
            let db = dissipation_loss_db(Mode::TE11, radius_m, hz, end, &sheet).expect("passes");
            prop_assert!(db >= 0.0 && (loss_tangent_micro > 0 || db < 1e-9), "{db}");
            let kept = entered * 10.0_f64.powf(-db / 10.0);
            prop_assert!((out - kept).abs() <= 1e-9, "{out} {kept}");
        }
    }

    /// A sheet of no thickness, and one of air, change nothing.
    #[test]
    fn nothing_changes_nothing(
        mode in any_mode(),
        ka in 1.3..3.8_f64,
        sheet in any_sheet(true),
    ) {
        let radius_m = 0.04;
        let hz = hertz_of(ka, radius_m);
        let end = mouth_reflection(mode, ka).expect("covered");
        let none = Sheet { thickness_um: 0, ..sheet };
        let air = Sheet { permittivity_milli: 1_000, ..sheet };
        for sheet in [none, air] {
            let off = (capped_reflection(mode, radius_m, hz, end, &sheet) - end).abs();
            prop_assert!(off < 1e-9, "{off}");
        }
    }
}

/// A thin sheet is a shunt susceptance `k t (εr-1)`, over the vacuum's admittance, across
/// the mouth; TM01 has `k t (1-1/εr)(j/ka)²` in series besides, from the axial field.
/// Polarisation current `jωε0(εr-1) E` in the sheet: N. Marcuvitz, *Waveguide Handbook*,
/// 1951, section 1.2 (from memory: the TM line has the capacitance `ε/kc²` in series, here
/// a length of it swapped for a larger one). What is left goes with the square of the
/// thickness.
#[test]
fn thin_sheet_is_a_shunt() {
    let (radius_m, permittivity) = (0.0435, 2.25);
    for (mode, ka) in [
        (Mode::TE11, 2.2),
        (Mode::TM01, 2.2),
        (Mode::TM01, 2.7),
        (Mode::TE21, 2.2),
    ] {
        let pipe = OpenPipe::new(mode, ka).expect("in range");
        let (y, root) = (pipe.aperture_admittance(), mode.root().expect("a root"));
        let mut left = [0.0; 2];
        for (left, thickness_um) in left.iter_mut().zip([200_u32, 100]) {
            let kt = ka / radius_m * f64::from(thickness_um) * 1e-6;
            let shunt = Complex::new(0.0, kt * (permittivity - 1.0));
            let axial = match mode.family {
                Family::Te => 0.0,
                Family::Tm => kt * (1.0 - 1.0 / permittivity) * (root / ka) * (root / ka),
            };
            let series = (y.inv() + Complex::new(0.0, axial)).inv();
            let wanted = tinwave_core::mouth::reflection_of_admittance(mode, ka, series + shunt);
            let thin = sheet(thickness_um, 2_250, 0);
            let hz = hertz_of(ka, radius_m);
            let got = capped_reflection(mode, radius_m, hz, pipe.reflection(), &thin);
            *left = (got - wanted).abs();
            let moved = (got - pipe.reflection()).abs();
            assert!(moved > 20.0 * *left, "{mode}: {moved} {left}");
        }
        assert!(
            (0.2..0.3).contains(&(left[1] / left[0])),
            "{mode}: {left:?}"
        );
    }
}

/// At cutoff itself the mode is shorted (TE) or open (TM), cap or not.
#[test]
fn cutoff_stays_what_it_is() {
    for mode in [Mode::TE11, Mode::TM01, Mode::TE21] {
        let root = mode.root().expect("a root");
        let end = Complex::real(if mode.family == Family::Te { -1.0 } else { 1.0 });
        let hz = hertz_of(root, 0.045);
        for nudge in [0.0, 1e-9, -1e-9] {
            let at = hz * (1.0 + nudge);
            let end = if nudge == 0.0 {
                end
            } else {
                mouth_reflection(mode, root * (1.0 + nudge)).expect("covered")
            };
            let got = capped_reflection(mode, 0.045, at, end, &sheet(1_000, 2_250, 300));
            assert!((got - end).abs() < 1e-3, "{mode}: {got:?}");
        }
    }
}

/// The whole can under the cap is the probe before a mouth with the shunt worked out
/// here, for the endless pipe's mouth and for a solved outside.
#[test]
fn whole_can_under_a_cap() {
    let design = orchard_gate();
    let si = SiDesign::new(&design);
    let outline = Outline {
        radius_m: si.radius_m,
        length_m: si.open_length_m,
        rim: Rim::Bare,
    };
    let swept = design.effective_sweep();
    let (low, high) = (
        f64::from(swept.low_khz) * 1e3,
        f64::from(swept.high_khz) * 1e3,
    );
    let outside = Arc::new(OutsideSpectrum::new(&outline, low, high).expect("solved"));
    let probe = PreparedProbe::new(&probe_geometry(&si)).expect("possible");
    let lid = sheet(800, 2_250, 300);
    for solved in [None, Some(&outside)] {
        let effect = cap_effect(&design, solved, &lid).expect("computed");
        let mut seen = 0;
        for point in effect.sweep_with.iter().step_by(10) {
            let hz = f64::from(point.frequency_khz) * 1e3;
            let ka = 2.0 * PI * hz / SPEED_OF_LIGHT * si.radius_m;
            let end = solved.map_or_else(
                || GuideEnd {
                    length_m: si.open_length_m,
                    te11: mouth_reflection(Mode::TE11, ka).expect("covered"),
                    tm01: mouth_reflection(Mode::TM01, ka).expect("covered"),
                    te21: mouth_reflection(Mode::TE21, ka).expect("covered"),
                },
                |outside| outside.guide_end(hz).expect("in the band"),
            );
            let kt = ka / si.radius_m * 800e-6;
            let by_waves = |mode, end| {
                let slab =
                    slab_by_waves(mode, ka, kt, other(lid.relative_permittivity()), other(end));
                Complex::new(slab.reflection.re, slab.reflection.im)
            };
            let condition = GuideCondition {
                surface_resistance_ohm: design.can.metal.surface_resistance(hz),
                end: Some(GuideEnd {
                    te11: by_waves(Mode::TE11, end.te11),
                    tm01: by_waves(Mode::TM01, end.tm01),
                    te21: by_waves(Mode::TE21, end.te21),
                    ..end
                }),
            };
            let y = probe.input_admittance(hz, &condition);
            let wanted = PointMatch::from_admittance(y, si.reference_ohm);
            let got = point.at.expect("covered");
            assert!((got.reflection - wanted.reflection).abs() < 1e-9);
            seen += 1;
        }
        assert!(seen > 9);
        // Sums and the best frequency are those of the sweeps.
        let worst = |with: bool| {
            let points = if with {
                &effect.sweep_with
            } else {
                &effect.sweep_without
            };
            let band = design.band.low_khz..=design.band.high_khz;
            points
                .iter()
                .filter(|point| band.contains(&point.frequency_khz))
                .map(|point| point.at.expect("covered").vswr)
                .fold(1.0, f64::max)
        };
        assert_near("with", effect.with.worst_vswr_in_band, worst(true), 1e-9);
        assert_near(
            "without",
            effect.without.worst_vswr_in_band,
            worst(false),
            1e-9,
        );
        // The dip: no frequency near it is better.
        let (bare_dip, dip) = effect.dip_khz.expect("a dip");
        let cans = [(false, bare_dip), (true, dip)];
        let body = CanBody::of(&design, &si, solved).expect("open");
        for (with, khz) in cans {
            let body = if with {
                body.clone().with_cap(lid)
            } else {
                body.clone()
            };
            let can = WholeCan::from_parts(body, &probe_geometry(&si), 50.0).expect("possible");
            let at = |khz: u32| can.match_at(f64::from(khz) * 1e3).expect("covered").vswr;
            assert!(at(khz) < at(khz - 300) && at(khz) < at(khz + 300));
        }
        let shift = effect.shift_khz().expect("a dip");
        assert_eq!(shift, i64::from(dip) - i64::from(bare_dip));
    }
}

/// What is out of range is refused by name, a funnel by its own.
#[test]
fn wrong_caps_are_refused() {
    let design = bare((90.0, 1.0, 30.0, 50.0), Mouth::Open, 200.0);
    let good = sheet(1_000, 2_250, 300);
    assert!(cap_effect(&design, None, &good).is_ok());
    for (field, bad, value) in [
        (
            SheetField::Thickness,
            Sheet {
                thickness_um: 20_001,
                ..good
            },
            20_001,
        ),
        (
            SheetField::Permittivity,
            Sheet {
                permittivity_milli: 999,
                ..good
            },
            999,
        ),
        (
            SheetField::LossTangent,
            Sheet {
                loss_tangent_micro: 1_000_001,
                ..good
            },
            1_000_001,
        ),
    ] {
        let (low, high) = field.range();
        let wanted = CapError::Sheet {
            field,
            value,
            low,
            high,
        };
        assert_eq!(cap_effect(&design, None, &bad), Err(wanted));
    }
    let mut funnel = design.clone();
    funnel.mouth = Mouth::Funnel {
        mouth_diameter_um: 180_000,
        half_angle_millideg: 30_000,
    };
    assert_eq!(cap_effect(&funnel, None, &good), Err(CapError::Funnel));
    let mut flange = design;
    flange.mouth = Mouth::Flange {
        outside_diameter_um: 145_000,
    };
    let unsolved = Err(CapError::Can(CanError::MouthNotComputed));
    assert_eq!(cap_effect(&flange, None, &good), unsolved);
}
