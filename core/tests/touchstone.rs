//! Touchstone files: read as a general-purpose library reads them, refused with
//! the line where they are wrong, written so that they read back.
#![allow(clippy::expect_used, clippy::panic, reason = "a test may stop")]

mod support;

use proptest::prelude::*;
use serde_json::Value;
use support::{assert_near, numbers, tolerance};
use tinwave_core::complex::Complex;
use tinwave_core::touchstone::{
    Ports, TouchstoneError, TouchstoneProblem as Problem, TouchstoneWarning, read_touchstone,
    write_one_port,
};

#[test]
fn read_as_scikit_rf_reads_them() {
    let tol = tolerance(
        "touchstone::read_touchstone",
        "touchstone::read_as_scikit_rf_reads_them",
    );
    let data: Value = serde_json::from_str(include_str!("data/touchstone.json")).expect("JSON");
    let cases = data["cases"].as_array().expect("cases");
    assert_eq!(cases.len(), 39);
    for case in cases {
        let name = case["name"].as_str().expect("a name");
        let text = case["text"].as_str().expect("a text");
        let count = case["ports"].as_u64().expect("ports");
        let ports = if count == 1 { Ports::One } else { Ports::Two };
        for stated in [Some(ports), None] {
            let read =
                read_touchstone(text, stated).unwrap_or_else(|error| panic!("{name}: {error}"));
            assert_eq!(read.ports, ports, "{name}");
            let z0 = numbers(&case["z0"]);
            assert_near(name, read.reference_ohm[0], z0[0], 1e-12);
            let frequencies = numbers(&case["f_hz"]);
            assert_eq!(read.points.len(), frequencies.len(), "{name}");
            for (n, point) in read.points.iter().enumerate() {
                assert_near(name, point.frequency_hz / frequencies[n], 1.0, 1e-14);
                for row in 0..z0.len() {
                    for column in 0..z0.len() {
                        let wanted = numbers(&case["s"][n][row][column]);
                        let error =
                            (point.s[row][column] - Complex::new(wanted[0], wanted[1])).abs();
                        assert!(error <= tol, "{name}: S{row}{column} off by {error}");
                    }
                }
            }
        }
    }
}

/// Cases that the library can't read; the values follow from the standard's text.
#[test]
fn option_line_in_any_order_and_case() {
    let text = "! made by hand\n# r 75 ma S mHz ! trailing comment\n100 1 180 ! short\n";
    let read = read_touchstone(text, Some(Ports::One)).expect("legal");
    assert_near("R", read.reference_ohm[0], 75.0, 0.0);
    assert_near("f", read.points[0].frequency_hz, 1e8, 0.0);
    assert!((read.points[0].s[0][0] + 1.0).abs() < 1e-15);
    let two = read_touchstone("# GHz S MA R 0.01 50.0\n1 0 0 0 0 0 0 0 0\n", None).expect("1.1");
    assert_eq!(two.reference_ohm, [0.01, 50.0]);
}

#[test]
fn noise_block_is_known_by_its_frequency() {
    let text = "# GHz S RI R 50\n2 .9 0 0 0 0 0 .6 0\n22 .6 0 0 0 0 0 .5 0\n! noise\n4 .7 .64 69 .38\n18 2.7 .46 -33 .40\n";
    let read = read_touchstone(text, Some(Ports::Two)).expect("legal");
    assert_eq!((read.points.len(), read.noise.len()), (2, 2));
    let noise = read.noise[0];
    assert_near("f", noise.frequency_hz, 4e9, 0.0);
    assert_near("least figure", noise.least_figure_db, 0.7, 0.0);
    // Magnitude and degrees whatever the option line says; resistance over R.
    assert_near("magnitude", noise.optimum.abs(), 0.64, 1e-12);
    assert_near("angle", noise.optimum.arg().to_degrees(), 69.0, 1e-12);
    assert_near("resistance", noise.resistance_ohm, 19.0, 1e-12);
}

fn refused(text: &str, ports: Ports) -> TouchstoneError {
    match read_touchstone(text, Some(ports)) {
        Err(error) => error,
        Ok(_) => panic!("read without complaint: {text}"),
    }
}

#[test]
fn malformed_files_are_refused_with_their_line() {
    let one = |text| refused(text, Ports::One);
    let word = |text: &str| text.to_string();
    let version2 = "[Version] 2.0\n# GHz S RI R 50\n[Number of Ports] 1\n";
    let cases: Vec<(TouchstoneError, usize, Problem)> = vec![
        (
            one("# GHz S MA R 50\n2 .5 0\n1 .5 0\n"),
            3,
            Problem::Frequency {
                value: 1e9,
                above: Some(2e9),
            },
        ),
        (one("# GHz S MA R\n1 .5 0\n"), 1, Problem::NoReference),
        (
            one("# GHz S MA R 50\n1 .5\n"),
            2,
            Problem::ValueCount {
                found: 2,
                wanted: 3,
            },
        ),
        (
            one("# GHz S MA R 50\n2,4 0,5 90\n"),
            2,
            Problem::Comma { word: word("2,4") },
        ),
        (
            one("# THz S MA R 50\n1 .5 0\n"),
            1,
            Problem::OptionWord { word: word("THz") },
        ),
        (
            one("! two ports\n# GHz S RI R 50\n1 0.11 0 0.21 0 0.12 0 0.22 0\n"),
            3,
            Problem::ValueCount {
                found: 9,
                wanted: 3,
            },
        ),
        (
            one("# GHz S DB R 50\n1 -inf 0\n"),
            2,
            Problem::Number { word: word("-inf") },
        ),
        (
            one("# GHz S DB R 50\n1 nan 0\n"),
            2,
            Problem::Number { word: word("nan") },
        ),
        (
            one("# GHz S MA R 50\n1 .5 9\u{b0}\n"),
            2,
            Problem::NotAscii { column: 7 },
        ),
        (one("\n1 .5 0\n# GHz\n"), 2, Problem::NoOptionLine),
        (one("# GHz\n! nothing\n"), 2, Problem::NoData),
        (one("# GHz H\n1 .5 0\n"), 2, Problem::HybridOnePort),
        (one("# GHz Z RI\n1 -1 0\n"), 2, Problem::Singular),
        (
            one(&format!("{version2}1 0 0\n")),
            4,
            Problem::KeywordMissing {
                keyword: word("[Network Data]"),
            },
        ),
        (
            one(&format!(
                "{version2}[Number of Frequencies] 2\n[Network Data]\n1 0 0\n[End]\n"
            )),
            7,
            Problem::FrequencyCount {
                found: 1,
                stated: 2,
            },
        ),
        (
            one("[Version] 2.0\n# GHz\n[Number of Ports] 3\n"),
            3,
            Problem::PortCount {
                value: 3.0,
                range: [1.0, 2.0],
            },
        ),
        (
            one("[Version] 3.0\n# GHz\n"),
            1,
            Problem::Version { word: word("3.0") },
        ),
        (
            refused(
                "[Version] 2.0\n# GHz\n[Number of Ports] 2\n[Network Data]\n",
                Ports::Two,
            ),
            4,
            Problem::KeywordMissing {
                keyword: word("[Two-Port Data Order]"),
            },
        ),
    ];
    for (error, line, problem) in cases {
        assert_eq!(error, TouchstoneError { line, problem });
    }
}

#[test]
fn odd_but_legal_files_warn() {
    let bom = read_touchstone("\u{feff}# GHz S MA R 50\n1 .5 0\n", Some(Ports::One)).expect("read");
    assert_eq!(bom.warnings, [TouchstoneWarning::ByteOrderMark]);
    let active = read_touchstone("# GHz S MA R 50\n1 1.2 0\n", Some(Ports::One)).expect("read");
    assert_eq!(
        active.warnings,
        [TouchstoneWarning::MoreThanAll { line: 2 }]
    );
    assert_near("not clipped", active.points[0].s[0][0].re, 1.2, 1e-15);
}

#[test]
fn reflection_against_another_reference() {
    // 75 + 25j ohm: a line of 50 ohm sees (25+25j)/(125+25j), one of 75 sees 25j/(150+25j).
    let read = read_touchstone("# MHz Z RI R 50\n100 1.5 0.5\n", None).expect("legal");
    for reference in [50.0, 75.0, 12.0] {
        let z = Complex::new(75.0, 25.0);
        let wanted = (z - reference) / (z + reference);
        let (frequency, got) = read.reflections(reference)[0];
        assert_near("f", frequency, 1e8, 0.0);
        assert_near("reflection", (got - wanted).abs(), 0.0, 1e-14);
    }
}

proptest! {
    #[test]
    fn no_text_stops_the_reader(text in "\\PC*", lines in prop::collection::vec(
        "[#!\\[\\]a-zA-Z0-9 .,+\\-eE\\t]{0,40}", 0..8)) {
        let _ = read_touchstone(&text, None);
        let text = lines.join("\n");
        let _ = read_touchstone(&text, None);
        let headed = format!("# GHz S RI R 50\n{text}");
        let _ = read_touchstone(&headed, Some(Ports::Two));
        let version2 = format!("[Version] 2.0\n{headed}");
        let _ = read_touchstone(&version2, None);
    }

    #[test]
    fn numbers_read_as_the_standard_library_reads_them(value in -1e30_f64..1e30, small in -1.0_f64..1.0) {
        for value in [value, small, small * 1e-9] {
            let text = format!("# Hz S RI R 50\n1 {value:e} {value}\n");
            let read = read_touchstone(&text, None).expect("numbers");
            let s = read.points[0].s[0][0];
            prop_assert!((s.re - value).abs() <= 4e-16 * value.abs());
            prop_assert!((s.im - value).abs() <= 4e-16 * value.abs());
        }
    }

    #[test]
    fn what_is_written_reads_back(
        points in prop::collection::btree_map(1_u32..4_000_000, (-1.0_f64..1.0, -1e-3_f64..1e-3), 1..20),
        reference in 1.0_f64..500.0,
    ) {
        let points: Vec<(f64, Complex)> = points
            .iter()
            .map(|(khz, (re, im))| (f64::from(*khz) * 1e3, Complex::new(*re, *im)))
            .collect();
        let text = write_one_port(&points, reference);
        prop_assert!(text.is_ascii());
        let read = read_touchstone(&text, Some(Ports::One)).expect("own file");
        prop_assert!((read.reference_ohm[0] / reference - 1.0).abs() < 1e-10);
        prop_assert_eq!(read.points.len(), points.len());
        for (got, (frequency, s)) in read.points.iter().zip(&points) {
            prop_assert_eq!(got.frequency_hz, *frequency);
            prop_assert!((got.s[0][0].re - s.re).abs() <= 1e-10 * s.re.abs());
            prop_assert!((got.s[0][0].im - s.im).abs() <= 1e-10 * s.im.abs());
        }
    }
}
