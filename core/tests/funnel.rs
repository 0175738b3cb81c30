//! Funnels: the flat sheet, the quick fits, the search.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod common;
mod support;

use std::f64::consts::PI;

use common::{number, parse, rows};
use support::{assert_near, tolerance};
use tinwave_core::constants::SPEED_OF_LIGHT;
use tinwave_core::funnel::{
    FlatPattern, FunnelChoice, FunnelLimits, FunnelProgress, FunnelSearch, funnel_gain_fit_dbi,
    handbook_horn_dbi,
};
use tinwave_core::outside::{Outline, PreparedOutside, Rim};

const HZ: f64 = 2.437e9;
const CAN: Outline = Outline {
    radius_m: 0.045,
    length_m: 0.15,
    rim: Rim::Bare,
};

#[test]
fn the_sheet_rolls_up_to_the_funnel() {
    let most = tolerance(
        "funnel::FlatPattern::new",
        "funnel::the_sheet_rolls_up_to_the_funnel",
    );
    for degrees in [10.0, 20.0, 30.0, 45.0, 70.0] {
        let angle = f64::to_radians(degrees);
        let sheet = FlatPattern::new(0.045, 0.09, angle, 0.01).expect("a funnel");
        // Arcs become the circles; the straight edge becomes the wall.
        assert_near(
            "throat",
            sheet.inner_radius_m * sheet.angle_rad,
            2.0 * PI * 0.045,
            most,
        );
        assert_near(
            "mouth",
            sheet.outer_radius_m * sheet.angle_rad,
            2.0 * PI * 0.09,
            most,
        );
        assert_near("wall", sheet.slant_m(), 0.045 / angle.sin(), most);
        // Lateral area of a frustum, π (r + R) l; the seam is a strip along the wall.
        let area = PI * (0.045 + 0.09) * sheet.slant_m() + 0.01 * sheet.slant_m();
        assert_near("area", sheet.area_m2(), area, most);
    }
    assert!(FlatPattern::new(0.05, 0.04, 0.5, 0.0).is_none());
    assert!(FlatPattern::new(0.05, 0.06, 1.6, 0.0).is_none());
}

#[test]
fn the_rectangle_holds_the_sheet() {
    let most = tolerance(
        "funnel::FlatPattern::rectangle_m",
        "funnel::the_rectangle_holds_the_sheet",
    );
    for degrees in [8.0, 14.0, 25.0, 30.0, 40.0, 60.0] {
        let sheet =
            FlatPattern::new(0.045, 0.11, f64::to_radians(degrees), 0.012).expect("a funnel");
        let half = 0.5 * sheet.angle_rad;
        let mut points = Vec::new();
        for n in 0..=20_000 {
            let turn = -half + sheet.angle_rad * f64::from(n) / 20_000.0;
            for radius in [sheet.inner_radius_m, sheet.outer_radius_m] {
                points.push((radius * turn.sin(), radius * turn.cos()));
                if n == 20_000 {
                    // The strip at a right angle to the edge, away from the sheet.
                    let across = 0.012 * half.cos();
                    let down = -0.012 * half.sin();
                    points.push((radius * half.sin() + across, radius * half.cos() + down));
                }
            }
        }
        let span = |of: fn(&(f64, f64)) -> f64| {
            let values = points.iter().map(of);
            let (low, high) = values.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| {
                (low.min(v), high.max(v))
            });
            high - low
        };
        let (width, height) = sheet.rectangle_m();
        assert_near("width", width, span(|p| p.0), most);
        assert_near("height", height, span(|p| p.1), most);
        // The chord between the mouth's corners.
        let chord = 2.0 * sheet.outer_radius_m * half.sin();
        assert_near("chord", sheet.chord_m(), chord, most);
    }
}

#[test]
fn the_fit_follows_the_solutions() {
    let most = tolerance(
        "funnel::funnel_gain_fit_dbi",
        "funnel::the_fit_follows_the_solutions",
    );
    let data = parse(include_str!("data/outside_bodies.json"));
    let mut compared = 0;
    for row in rows(&data, "bodies") {
        let rim = &row["rim"];
        if rim["kind"] != "funnel" {
            continue;
        }
        let mouth = number(rim, "mouth_diameter_mm") / 1e3;
        let angle = number(rim, "half_angle_deg").to_radians();
        let got = funnel_gain_fit_dbi(mouth, angle, SPEED_OF_LIGHT / HZ);
        assert_near("fit", got, number(row, "D_dB"), most);
        compared += 1;
    }
    assert!(compared >= 8, "{compared} funnels");
}

#[test]
fn the_handbook_horn() {
    let most = tolerance("funnel::handbook_horn_dbi", "funnel::the_handbook_horn");
    // Balanis section 13.4: the horn of greatest directivity for its length has
    // d = √(3 l λ), which makes s = 3/8, and a loss of about 2.9 dB.
    let (wavelength, slant) = (0.1_f64, 1.2_f64);
    let diameter = (3.0 * slant * wavelength).sqrt();
    let angle = (0.5 * diameter / slant).asin();
    let loss = 20.0 * (PI * diameter / wavelength).log10()
        - handbook_horn_dbi(diameter, angle, wavelength);
    assert_near("loss", loss, 2.9, most);
    for factor in [0.85, 1.15] {
        let other = factor * diameter;
        let angle = (0.5 * other / slant).asin();
        let gain = handbook_horn_dbi(other, angle, wavelength);
        let best = handbook_horn_dbi(diameter, (0.5 * diameter / slant).asin(), wavelength);
        assert!(gain < best, "{factor}: {gain} and {best}");
    }
}

/// Runs a search; checks that it says how far it is.
fn search(limits: FunnelLimits) -> Option<FunnelChoice> {
    let mut search = FunnelSearch::new(&CAN, HZ, limits);
    let mut last = 0.0;
    for _ in 0..200 {
        match search.step() {
            FunnelProgress::Working { done } => {
                assert!(done >= last && done <= 1.0, "{done} after {last}");
                last = done;
            }
            FunnelProgress::Done(choice) => return choice,
        }
    }
    panic!("no end")
}

fn gain_of(mouth_m: f64, half_angle_rad: f64) -> f64 {
    let outline = Outline {
        rim: Rim::Funnel {
            mouth_radius_m: 0.5 * mouth_m,
            half_angle_rad,
        },
        ..CAN
    };
    let prepared = PreparedOutside::new(&outline, HZ).expect("a body");
    let solution = prepared.solve(HZ).expect("in range");
    let mode = solution.te11();
    10.0 * (mode.far_field(0.0).theta.norm_sqr() / mode.radiated_power()).log10()
}

#[test]
fn no_funnel_on_a_grid_is_better() {
    let most = tolerance(
        "funnel::FunnelSearch::step",
        "funnel::no_funnel_on_a_grid_is_better",
    );
    let limits = [
        FunnelLimits {
            mouth_m: Some(0.2),
            length_m: Some(0.11),
            ..FunnelLimits::default()
        },
        FunnelLimits {
            length_m: Some(0.08),
            ..FunnelLimits::default()
        },
        FunnelLimits {
            sheet_m: Some((0.5, 0.3)),
            seam_m: 0.01,
            ..FunnelLimits::default()
        },
    ];
    for limits in limits {
        let best = search(limits).expect("a funnel");
        let mut tried = 0;
        for degrees in (10..=58).step_by(4) {
            let angle = f64::from(degrees).to_radians();
            for n in 0..14 {
                let mouth = 0.11 + 0.015 * f64::from(n);
                let sheet =
                    FlatPattern::new(0.045, 0.5 * mouth, angle, limits.seam_m).expect("a sheet");
                let length = sheet.slant_m() * angle.cos();
                let (w, h) = sheet.rectangle_m();
                let on_sheet = limits
                    .sheet_m
                    .is_none_or(|(a, b)| (w <= a && h <= b) || (w <= b && h <= a));
                let fits = limits.mouth_m.is_none_or(|most| mouth <= most)
                    && limits.length_m.is_none_or(|most| length <= most)
                    && on_sheet;
                if fits {
                    let gain = gain_of(mouth, angle);
                    assert!(
                        gain <= best.directivity_dbi + most,
                        "{mouth} at {degrees}: {gain}, found {best:?}"
                    );
                    tried += 1;
                }
            }
        }
        assert!(tried > 10, "{tried} funnels on the grid");
        let again = gain_of(best.mouth_diameter_m, best.half_angle_rad);
        assert_near("its gain", best.directivity_dbi, again, 1e-9);
    }
    let none = FunnelLimits {
        mouth_m: Some(0.08),
        ..FunnelLimits::default()
    };
    assert_eq!(search(none), None);
}
