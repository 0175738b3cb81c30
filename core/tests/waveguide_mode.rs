//! Modes of the circular guide against handbooks and general-purpose libraries.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod common;

use common::{number, parse, rows};
use complex_bessel::{Scaling, besselj, besselj_seq};
use tinwave_core::bessel_roots::{BESSEL_ROOTS, COMPLETE_UP_TO};
use tinwave_core::constants::{CHI_TE11, CHI_TE21, CHI_TM01};
use tinwave_core::metal::Metal;
use tinwave_core::wall_loss::DB_PER_NEPER;
use tinwave_core::waveguide_mode::{Family, Mode, modes_up_to};

/// Zeros j_{n,s}, s = 1 to 5, n = 0 to 8. M. Abramowitz and I. A. Stegun,
/// *Handbook of Mathematical Functions*, 1964, table 9.5; digits recalculated with
/// mpmath at 30 digits.
const ZEROS_OF_J: [[f64; 5]; 9] = [
    [
        2.404825557696,
        5.520078110286,
        8.653727912911,
        11.791534439014,
        14.930917708488,
    ],
    [
        3.831705970208,
        7.015586669816,
        10.173468135063,
        13.323691936314,
        16.470630050878,
    ],
    [
        5.135622301841,
        8.417244140400,
        11.619841172149,
        14.795951782351,
        17.959819494988,
    ],
    [
        6.380161895924,
        9.761023129982,
        13.015200721698,
        16.223466160319,
        19.409415226435,
    ],
    [
        7.588342434504,
        11.064709488501,
        14.372536671618,
        17.615966049805,
        20.826932956962,
    ],
    [
        8.771483815960,
        12.338604197467,
        15.700174079712,
        18.980133875180,
        22.217799896561,
    ],
    [
        9.936109524218,
        13.589290170541,
        17.003819667816,
        20.320789213567,
        23.586084435581,
    ],
    [
        11.086370019245,
        14.821268727013,
        18.287582832482,
        21.641541019848,
        24.934927887673,
    ],
    [
        12.225092264005,
        16.037774190888,
        19.554536430997,
        22.945173131875,
        26.266814641177,
    ],
];

/// Zeros j'_{n,s}, same source; for n = 0 without the zero at the origin, which
/// the handbook counts and waveguide books do not.
const ZEROS_OF_SLOPE: [[f64; 5]; 9] = [
    [
        3.831705970208,
        7.015586669816,
        10.173468135063,
        13.323691936314,
        16.470630050878,
    ],
    [
        1.841183781341,
        5.331442773525,
        8.536316366346,
        11.706004902592,
        14.863588633909,
    ],
    [
        3.054236928227,
        6.706133194158,
        9.969467823088,
        13.170370856016,
        16.347522318322,
    ],
    [
        4.201188941211,
        8.015236598376,
        11.345924310743,
        14.585848286167,
        17.788747866066,
    ],
    [
        5.317553126084,
        9.282396285242,
        12.681908442639,
        15.964107037732,
        19.196028800049,
    ],
    [
        6.415616375700,
        10.519860873772,
        13.987188630140,
        17.312842487885,
        20.575514521387,
    ],
    [
        7.501266144684,
        11.734935953043,
        15.268181461098,
        18.637443009666,
        21.931715017802,
    ],
    [
        8.577836489714,
        12.932386237090,
        16.529365884367,
        19.941853366527,
        23.268052926458,
    ],
    [
        9.647421651997,
        14.115518907895,
        17.774012366915,
        21.229062622853,
        24.587197486318,
    ],
];

fn close(got: f64, expected: f64, tolerance: f64, what: &str) {
    assert!(
        (got - expected).abs() <= tolerance,
        "{what}: {got} for {expected}"
    );
}

#[test]
fn roots_match_the_handbook() {
    for (of_slope, table) in [(false, ZEROS_OF_J), (true, ZEROS_OF_SLOPE)] {
        for (order, zeros) in table.iter().enumerate() {
            for (index, zero) in zeros.iter().enumerate() {
                let (n, m) = (order as u8, index as u8 + 1);
                let mode = if of_slope {
                    Mode::te(n, m)
                } else {
                    Mode::tm(n, m)
                };
                close(mode.root().unwrap(), *zero, 1e-12, &mode.to_string());
            }
        }
    }
}

#[test]
fn roots_are_zeros_of_an_independent_bessel_function() {
    let at = |order: f64, x: f64| {
        besselj(order, num_complex::Complex::new(x, 0.0))
            .unwrap()
            .re
    };
    for root in &BESSEL_ROOTS {
        let n = f64::from(root.order);
        let (x, mode) = (root.x, Mode::from_root(root));
        // J' = (n/x) J_n - J_{n+1}; at a zero of the one the other is its slope's size.
        let (j, next) = (at(n, x), at(n + 1.0, x));
        let slope = n / x * j - next;
        let (value, steepness) = if root.of_derivative {
            (slope, (1.0 - n * n / (x * x)) * j)
        } else {
            (j, slope)
        };
        assert!(
            (value / steepness).abs() < 2e-14 * x,
            "{mode}: off by {}",
            value / steepness
        );
    }
}

#[test]
fn no_root_is_missing() {
    // Sign changes of an independent J_n and J_n' on a grid finer than the closest zeros.
    let (step, mut changes) = (0.02, 0_usize);
    let mut before: Option<Vec<f64>> = None;
    for k in 1..=(COMPLETE_UP_TO / step) as u32 {
        let z = num_complex::Complex::new(f64::from(k) * step, 0.0);
        let j = besselj_seq(0.0, z, 42, Scaling::Unscaled).unwrap().values;
        let slope = |n: usize| n as f64 / z.re * j[n].re - j[n + 1].re;
        let now: Vec<f64> = (0..40).flat_map(|n| [j[n].re, slope(n)]).collect();
        if let Some(before) = before {
            changes += now
                .iter()
                .zip(&before)
                .filter(|(a, b)| *a * *b < 0.0)
                .count();
        }
        before = Some(now);
    }
    assert_eq!(changes, BESSEL_ROOTS.len());
    assert!(BESSEL_ROOTS.windows(2).all(|pair| pair[0].x <= pair[1].x));
}

#[test]
fn guide_values_match_a_network_library() {
    let data = parse(include_str!("data/waveguide_mode.json"));
    for row in rows(&data, "rows") {
        let (n, m) = (number(row, "order") as u8, number(row, "index") as u8);
        let mode = if row["family"] == "te" {
            Mode::te(n, m)
        } else {
            Mode::tm(n, m)
        };
        let (a, f) = (number(row, "radius_m"), number(row, "frequency_hz"));
        let rs = number(row, "surface_resistance_ohm");
        let relative = |got: f64, key: &str| {
            let expected = number(row, key);
            close(got / expected, 1.0, 2e-9, &format!("{mode} {a} {f} {key}"));
        };
        relative(mode.cutoff_frequency_hz(a), "cutoff_hz");
        let z = mode.wave_impedance_ohm(a, f);
        if row["decay_np_per_m"].is_null() {
            relative(mode.guide_wavelength_m(a, f).unwrap(), "guide_wavelength_m");
            relative(
                mode.wall_attenuation_np_per_m(a, f, rs).unwrap(),
                "wall_np_per_m",
            );
            relative(z.re, "impedance_re");
            assert_eq!(mode.evanescent_decay_np_per_m(a, f), None);
            assert_eq!(z.im, 0.0);
        } else {
            relative(
                mode.evanescent_decay_np_per_m(a, f).unwrap(),
                "decay_np_per_m",
            );
            relative(z.im, "impedance_im");
            assert_eq!(mode.guide_wavelength_m(a, f), None);
            assert_eq!(mode.wall_attenuation_np_per_m(a, f, rs), None);
            assert_eq!(z.re, 0.0);
        }
    }
}

/// D. M. Pozar, *Microwave Engineering*, 4th ed. 2012, example 3.2 (from memory):
/// 5 mm radius, filled with a dielectric of 2.08, gold of 4.1e7 S/m, 14 GHz. The
/// book rounds c to 3e8 m/s.
#[test]
fn textbook_example_of_a_filled_guide() {
    let (a, eps, f) = (0.005, 2.08_f64, 14e9);
    let index = eps.sqrt();
    close(
        Mode::TE11.cutoff_frequency_hz(a) / index / 1e9,
        12.19,
        0.01,
        "TE11 GHz",
    );
    close(
        Mode::TM01.cutoff_frequency_hz(a) / index / 1e9,
        15.92,
        0.01,
        "TM01 GHz",
    );
    // A filled guide at f is an empty one at f √ε, with the wave impedance over √ε.
    let beta = 2.0 * std::f64::consts::PI / Mode::TE11.guide_wavelength_m(a, f * index).unwrap();
    close(beta, 208.0, 0.6, "phase constant");
    let empty = Mode::TE11
        .wall_attenuation_np_per_m(a, f * index, 0.0367)
        .unwrap();
    close(empty * index, 0.0672, 0.0002, "wall loss");
}

/// IEC 60153-4 "C" sizes: inside diameters in mm from memory, the bands of use in
/// GHz from memory; the bands lie between the cutoffs of TE11 and TM01, with
/// the margins the standard keeps: 1.15 times the first, 1.21 below the second.
#[test]
fn standard_circular_guides_lie_between_the_first_two_cutoffs() {
    let sizes = [
        (20.244, 9.97, 13.7),
        (17.475, 11.6, 15.9),
        (12.7, 15.9, 21.8),
        (11.125, 18.2, 24.9),
        (9.525, 21.2, 29.1),
        (8.331, 24.3, 33.2),
        (7.137, 28.3, 38.8),
        (6.35, 31.8, 43.6),
        (4.775, 42.4, 58.1),
        (2.388, 84.8, 116.0),
    ];
    for (diameter_mm, low, high) in sizes {
        let radius = diameter_mm / 2000.0;
        let te11 = Mode::TE11.cutoff_frequency_hz(radius) / 1e9;
        let tm01 = Mode::TM01.cutoff_frequency_hz(radius) / 1e9;
        close(low / te11, 1.15, 0.005, "lower edge over TE11 cutoff");
        close(high / te11, 1.577, 0.006, "upper edge over TE11 cutoff");
        close(tm01 / te11, 1.306, 0.001, "TM01 over TE11");
    }
}

/// TE11 wall loss at 2.45 GHz in dB/m (calculated from Marcuvitz's formula with
/// scikit-rf, to four digits): diameter mm, conductivity S/m, µr, dB/m.
#[test]
fn wall_loss_of_likely_pipes() {
    let table = [
        (83.0, 5.8e7, 1.0, 0.0166),
        (83.0, 1.67e7, 1.0, 0.03094),
        (83.0, 1.39e6, 1.0, 0.10723),
        (83.0, 7.0e6, 50.0, 0.33789),
        (99.0, 5.8e7, 1.0, 0.00823),
        (99.0, 1.67e7, 1.0, 0.01534),
        (99.0, 1.39e6, 1.0, 0.05315),
        (99.0, 7.0e6, 50.0, 0.16749),
    ];
    let f = 2.45e9;
    for (diameter_mm, sigma, mu_r, expected) in table {
        let rs = (std::f64::consts::PI * f * 4e-7 * std::f64::consts::PI * mu_r / sigma).sqrt();
        let alpha = Mode::TE11
            .wall_attenuation_np_per_m(diameter_mm / 2000.0, f, rs)
            .unwrap();
        close(alpha * DB_PER_NEPER, expected, 6e-6, "dB/m");
    }
    let copper = Metal::Copper.surface_resistance(f);
    let alpha = Mode::TE11
        .wall_attenuation_np_per_m(0.05, f, copper)
        .unwrap();
    close(alpha, 9.17488e-4, 1e-9, "copper, 100 mm");
}

#[test]
fn modes_come_in_the_order_of_their_cutoffs() {
    let names: Vec<String> = modes_up_to(0.05, 5.4e9)
        .iter()
        .map(Mode::to_string)
        .collect();
    // Order: Marcuvitz, Waveguide Handbook, 1951, section 2.3. ka = 5.66.
    let expected = [
        "TE11", "TM01", "TE21", "TM11", "TE01", "TE31", "TM21", "TE41", "TE12", "TM02",
    ];
    assert_eq!(names, expected);
    assert_eq!(modes_up_to(0.05, 1.7e9), []);
    close(Mode::TE11.root().unwrap(), CHI_TE11, 1e-15, "TE11");
    close(Mode::TM01.root().unwrap(), CHI_TM01, 1e-15, "TM01");
    close(Mode::TE21.root().unwrap(), CHI_TE21, 1e-15, "TE21");
    assert_eq!(Mode::TE11.family, Family::Te);
    assert_eq!(Mode::tm(3, 11).to_string(), "TM3,11");
}

#[test]
fn modes_beyond_the_table_and_odd_arguments_do_no_harm() {
    for mode in [Mode::te(200, 1), Mode::tm(0, 255), Mode::te(1, 0)] {
        assert_eq!(mode.root(), None);
        assert_eq!(mode.cutoff_frequency_hz(0.05), f64::INFINITY);
        assert_eq!(mode.guide_wavelength_m(0.05, 5e9), None);
        assert_eq!(mode.evanescent_decay_np_per_m(0.05, 5e9), None);
        assert_eq!(mode.wall_attenuation_np_per_m(0.05, 5e9, 0.01), None);
    }
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert_eq!(modes_up_to(bad, 2.4e9), []);
        assert_eq!(Mode::TE11.guide_wavelength_m(bad, 2.4e9), None);
        assert_eq!(Mode::TE11.guide_wavelength_m(0.05, bad), None);
        assert_eq!(Mode::TE11.evanescent_decay_np_per_m(0.05, bad), None);
    }
}
