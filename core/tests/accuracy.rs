//! The accuracy table is complete and true: every public quantity has a row, every
//! row a test that exists, and published values given in the table hold.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod support;

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use serde_json::Value;
use support::{assert_near, table};
use tinwave_core::chebyshev::ChebyshevPoints;
use tinwave_core::complex::Complex;
use tinwave_core::design::Mouth;
use tinwave_core::match_band::{SweepPoint, summarise};
use tinwave_core::metal::Metal;
use tinwave_core::quadrature::{GaussLegendre, legendre_and_slope};
use tinwave_core::reflection::{self, PointMatch};
use tinwave_core::{beam, constants, math, si};

fn rows(table: &Value) -> &Vec<Value> {
    table["rows"].as_array().expect("rows")
}

fn text<'a>(value: &'a Value, key: &str) -> &'a str {
    value[key]
        .as_str()
        .unwrap_or_else(|| panic!("{key} in {value}"))
}

/// Source files below a folder.
fn sources(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            sources(&path, found);
        } else if path.extension().is_some_and(|ext| ext == "rs") {
            found.push(path);
        }
    }
}

/// Names after `pub fn` and `pub const fn`.
fn public_functions(source: &str) -> impl Iterator<Item = &str> {
    source.lines().filter_map(|line| {
        let line = line.trim_start();
        let rest = line
            .strip_prefix("pub fn ")
            .or_else(|| line.strip_prefix("pub const fn "))?;
        // A macro's `$name` is no name.
        rest.split(['(', '<'])
            .next()
            .filter(|name| !name.contains('$'))
    })
}

#[test]
fn every_public_quantity_has_a_row() {
    let table = table();
    let exempt: BTreeSet<&str> = table["modules_without_quantities"]
        .as_array()
        .expect("modules")
        .iter()
        .map(|entry| text(entry, "module"))
        .collect();
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    sources(&root, &mut files);
    let mut missing = Vec::new();
    let mut counted = 0;
    for file in files {
        let inside = file.strip_prefix(&root).expect("below the root");
        let first = inside
            .iter()
            .next()
            .and_then(|part| part.to_str())
            .expect("a name");
        let module = first.trim_end_matches(".rs");
        if exempt.contains(module) {
            continue;
        }
        let source = fs::read_to_string(&file).expect("a source file");
        for name in public_functions(&source) {
            counted += 1;
            let plain = table["plain_functions"][module]
                .as_array()
                .is_some_and(|names| names.iter().any(|plain| plain == name));
            let listed = rows(&table).iter().any(|row| {
                let quantity = text(row, "quantity").split(' ').next().unwrap_or_default();
                quantity.starts_with(module) && quantity.ends_with(&format!("::{name}"))
            });
            if !plain && !listed {
                missing.push(format!("{module}: {name}"));
            }
        }
    }
    assert!(counted > 60, "the scan finds functions: {counted}");
    assert!(
        missing.is_empty(),
        "no row in accuracy.json for {missing:?}"
    );
}

#[test]
fn every_row_names_a_source_and_a_test_that_exists() {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests");
    let table = table();
    for row in rows(&table) {
        let quantity = text(row, "quantity");
        assert!(!text(row, "source").is_empty(), "{quantity}: no source");
        assert!(
            row["digits"].is_u64() && row["tolerance"].is_number(),
            "{quantity}"
        );
        let (file, test) = text(row, "checked_by")
            .split_once("::")
            .expect("file::test");
        let source = fs::read_to_string(tests.join(format!("{file}.rs"))).expect("a test file");
        let head = format!("#[test]\nfn {test}(");
        assert!(source.contains(&head), "{quantity}: no test {file}::{test}");
        let body = source
            .split_once(&head)
            .and_then(|(_, rest)| rest.split("\n}\n").next())
            .expect("a body");
        let tolerance = row["tolerance"].as_f64().expect("a tolerance");
        if let Some(written) = row["written"].as_str() {
            assert!(
                body.contains(written),
                "{quantity}: {written} isn't asserted there"
            );
            assert_eq!(
                written.parse(),
                Ok(tolerance),
                "{quantity}: written and tolerance"
            );
        } else {
            let read = body.contains("tolerance(");
            let here = row["cases"].is_array() || row["exact"] == true;
            assert!(
                read || here,
                "{quantity}: nothing ties {test} to the tolerance"
            );
        }
    }
}

/// The value of a quantity for a case's inputs.
fn value(quantity: &str, case: &[Value]) -> f64 {
    let x = |i: usize| case[i].as_f64().expect("a number");
    let metal = || Metal::from_key(case[0].as_str().expect("a word")).expect("a metal");
    match quantity {
        "metal::skin_depth_m" => metal().skin_depth_m(x(1) * 1e6).expect("a real metal") * 1e6,
        "metal::surface_resistance" => metal().surface_resistance(x(1) * 1e6) * 1e3,
        "reflection::vswr" => reflection::vswr(x(0)),
        "reflection::magnitude_of_vswr" => reflection::magnitude_of_vswr(x(0)),
        "reflection::return_loss_db" => reflection::return_loss_db(x(0)),
        "reflection::reflection_coefficient" => {
            reflection::reflection_coefficient(Complex::real(x(0)), x(1)).abs()
        }
        "reflection::from_admittance" => {
            PointMatch::from_admittance(Complex::real(1.0 / x(0)), x(1)).vswr
        }
        "si::air_line_impedance_ohm" => si::air_line_impedance_ohm(x(0), x(1)),
        "si::air_line_ratio" => si::air_line_ratio(x(0)),
        "constants::wavenumber" => constants::wavenumber(x(0) * 1e6),
        "beam::endless_pipe_uncertainty" => {
            let mut design = support::bare((90.0, 1.0, 30.0, 50.0), Mouth::Open, 200.0);
            let hz = x(0) / (std::f64::consts::PI * 2.0 * 0.045) * constants::SPEED_OF_LIGHT;
            let wavelength = constants::SPEED_OF_LIGHT / hz;
            design.can.open_length_um = si::micrometres(x(1) * wavelength);
            beam::endless_pipe_uncertainty(&si::SiDesign::new(&design), hz).0
        }
        "math::jn" => math::jn(
            case[0]
                .as_i64()
                .expect("an order")
                .try_into()
                .expect("small"),
            x(1),
        ),
        "math::yn" => math::yn(
            case[0]
                .as_i64()
                .expect("an order")
                .try_into()
                .expect("small"),
            x(1),
        ),
        other => panic!("no way to evaluate {other}"),
    }
}

#[test]
fn published_values() {
    let table = table();
    let mut checked = 0;
    for row in rows(&table) {
        let Some(cases) = row["cases"].as_array() else {
            continue;
        };
        let quantity = text(row, "quantity");
        let tolerance = row["tolerance"].as_f64().expect("a tolerance");
        for case in cases {
            let (wanted, inputs) = case
                .as_array()
                .expect("a list")
                .split_last()
                .expect("a value");
            let wanted = wanted.as_f64().expect("a number");
            assert_near(quantity, value(quantity, inputs), wanted, tolerance);
            checked += 1;
        }
    }
    assert!(checked > 20, "the table has published values: {checked}");
}

#[test]
fn quadrature_is_exact_for_polynomials() {
    for n in 1..40 {
        let degree = 2 * n - 1;
        let power = |x: f64, k: usize| (0..k).fold(1.0, |p, _| p * x);
        let rule = GaussLegendre::new(n);
        // Over [0, 1] the integral of x^k is 1/(k+1).
        let got = rule.integrate(0.0, 1.0, |x| power(x, degree));
        assert_near("integral", got, 1.0 / (degree as f64 + 1.0), 1e-13);
    }
    // A&S 8.4: P3 = (5x³-3x)/2, slope (15x²-3)/2.
    let (p, slope) = legendre_and_slope(3, 0.5);
    assert_near("P3", p, -0.4375, 1e-13);
    assert_near("P3'", slope, 0.375, 1e-13);
}

#[test]
fn complex_functions_invert() {
    for re in [-3.0, -0.5, 0.0, 0.2, 4.0] {
        for im in [-2.0, -1e-3, 0.0, 0.7, 3.0] {
            let z = Complex::new(re, im);
            let root = z.sqrt();
            assert!(root.re >= 0.0, "principal root of {z:?}");
            assert!(
                (root * root - z).abs() < 1e-13,
                "square of the root of {z:?}"
            );
            if z.abs() > 0.0 {
                assert!((z.ln().exp() - z).abs() < 1e-13, "exp ln {z:?}");
                assert!((z / z - 1.0).abs() < 1e-13, "quotient {z:?}");
            }
        }
    }
}

#[test]
fn chebyshev_points_carry_polynomials() {
    let points = ChebyshevPoints::new(-2.0, 5.0, 6);
    let cubic = |x: f64| 1.0 - 2.0 * x + 0.5 * x * x - 0.25 * x * x * x;
    for x in [-2.0, -1.3, 0.0, 2.2, 5.0] {
        let weights = points.weights(x);
        let got: f64 = weights
            .iter()
            .zip(points.points())
            .map(|(w, p)| w * cubic(*p))
            .sum();
        assert_near("cubic", got, cubic(x), 1e-12);
    }
}

#[test]
fn a_band_ends_where_its_line_crosses() {
    let band = tinwave_core::design::Band {
        low_khz: 2_400_000,
        high_khz: 2_480_000,
    };
    let point = |khz: u32, vswr: f64| SweepPoint {
        frequency_khz: khz,
        at: Some(PointMatch {
            impedance_ohm: Complex::real(50.0),
            reflection: Complex::ZERO,
            vswr,
        }),
    };
    let points = [
        point(2_300_000, 3.0),
        point(2_400_000, 1.0),
        point(2_440_000, 1.2),
        point(2_480_000, 1.4),
        point(2_580_000, 2.4),
    ];
    let summary = summarise(&points, band).expect("all computed");
    assert_near("worst", summary.worst_vswr_in_band, 1.4, 1e-12);
    assert_eq!(summary.worst_khz, 2_480_000);
    assert_eq!(summary.vswr_2_khz, Some((2_350_000, 2_540_000)));
    assert_eq!(summary.vswr_1_5_khz, Some((2_375_000, 2_490_000)));
}
