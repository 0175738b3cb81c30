//! A measured can: what is found, and what to do. Measurements are simulated with the
//! whole can.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod measured;

use measured::*;
use tinwave_core::complex::Complex;
use tinwave_core::diagnosis::{
    Conclusion, Knowledge, Measurement, Remedy, with_port_length, worst_vswr_as_built,
};
use tinwave_core::dimension::Dimension;
use tinwave_core::touchstone::{TouchstoneProblem, read_touchstone, write_one_port};
use tinwave_protocol::measure::{Diagnosed, FileRead, FileRefused, ReadFile};
use tinwave_worker::outsides::outside_of;

#[test]
fn a_wire_left_long_is_found_and_what_to_take_off_is_safe() {
    let diagnosis = found(simulated(1_500));
    let (change, _) = length(&diagnosis);
    assert!((change - 1.5e-3).abs() < 0.35e-3, "{change}");
    assert_ne!(diagnosis.conclusion, Conclusion::AsDrawn);
    assert!(diagnosis.misfit < 0.1 * diagnosis.misfit_as_drawn);
    let advice = advice(&diagnosis);
    let (whole, safe, _) = trim(&advice).expect("a cut");
    assert!(safe < whole && whole < 3_000, "{whole} {safe}");
    // What is said of the first step is what the true can then does.
    let drawn = design(DESIGN);
    let mut built = advice.as_built.clone();
    built.probe.length_um -= safe;
    let expected = worst_vswr_as_built(&built, outside_of(&drawn).as_ref());
    let expected = expected.unwrap().unwrap();
    let truly = worst(&with_wire(&drawn, 1_500 - i32::try_from(safe).unwrap()), 11);
    assert!(
        (expected / truly - 1.0).abs() < 0.05,
        "{expected}, not {truly}"
    );
}

#[test]
fn a_short_wire_is_to_be_lengthened() {
    let advice = advice(&found(simulated(-2_000)));
    assert!(trim(&advice).is_none(), "nothing is to be cut");
    let longer = advice
        .remedies
        .iter()
        .any(|(remedy, _)| matches!(remedy, Remedy::Lengthen { by_um } if *by_um > 500));
    assert!(longer, "{:?}", advice.remedies);
}

#[test]
fn what_cannot_be_told_apart_is_told_so() {
    // A hole drilled 2 mm off: stray capacitance does much the same.
    let mut off = design(DESIGN);
    off.probe.backshort_distance_um += 2_000;
    let diagnosis = found(Measurement::Reflection(points(&off, sweep())));
    let Conclusion::CannotTell(causes) = &diagnosis.conclusion else {
        panic!("{:?}", diagnosis.conclusion);
    };
    assert!(causes.contains(&Dimension::BackshortDistance));
    assert!(causes.contains(&Dimension::ShuntCapacitance));
}

#[test]
fn one_or_two_points_tell_no_cause() {
    let best = Measurement::from_best(2.36e9, 1.3).unwrap();
    assert_eq!(ask(best, 0.01, Knowledge::usual()), Diagnosed::TooFew);
    let two = Measurement::from_vswr(&[(2.40e9, 1.8), (2.48e9, 1.5)]).unwrap();
    assert_eq!(ask(two, 0.01, Knowledge::usual()), Diagnosed::TooFew);
    // Many points, of which two lie where the can is computed.
    let far = [(2.40e9, 1.8), (2.48e9, 1.5), (5.8e9, 1.1), (5.9e9, 1.1)];
    let far = Measurement::from_vswr(&far).unwrap();
    assert_eq!(ask(far, 0.01, Knowledge::usual()), Diagnosed::TooFew);
    let none = Measurement::from_best(0.9e9, 1.5).unwrap();
    let none = ask(none, 0.01, Knowledge::usual());
    assert!(
        matches!(none, Diagnosed::NoPoint { range_hz } if range_hz[0] > 1.5e9),
        "{none:?}"
    );
}

#[test]
fn what_no_can_does_is_not_explained() {
    // A plain resistor of 150 ohm, VSWR 3 everywhere.
    let load = sweep().map(|hz| (hz, Complex::new(0.5, 0.0))).collect();
    let diagnosis = found(Measurement::Reflection(load));
    assert_eq!(diagnosis.conclusion, Conclusion::Unexplained);
}

#[test]
fn a_line_before_the_can_is_found() {
    let bare = points(&design(DESIGN), sweep());
    let seen = Measurement::Reflection(with_port_length(&bare, 0.018));
    let diagnosis = found(seen);
    let (line, _) = diagnosis.port_length_m.expect("a line");
    assert!((line - 0.018).abs() < 2e-3, "{line}");
    assert_eq!(diagnosis.conclusion, Conclusion::AsDrawn);
}

#[test]
fn a_can_that_is_not_computed_has_no_diagnosis() {
    let mut through = design(DESIGN);
    through.probe.length_um = 99_000;
    let question = tinwave_protocol::measure::Diagnose {
        design: through,
        measurement: simulated(0),
        noise: 0.01,
        knowledge: Knowledge::usual(),
    };
    assert_eq!(answer(question), Diagnosed::NotComputed);
}

/// The fit needs no more steps than it is given, so that none runs long.
#[test]
fn fits_end_within_their_steps() {
    for longer in [-2_500, 0, 3_000] {
        let settings = tinwave_core::diagnosis::DiagnosisSettings::default();
        let drawn = design(DESIGN);
        let outside = outside_of(&drawn);
        let measurement = simulated(longer);
        let steps = tinwave_core::diagnosis::DiagnosisSteps::new(
            &drawn,
            outside.as_ref(),
            &measurement,
            settings,
        );
        let mut steps = steps.unwrap();
        let mut count = 1;
        while steps.step() {
            count += 1;
        }
        assert!(count < 110, "{count} for {longer}");
        let diagnosis = steps.finish().unwrap();
        let mut steps =
            tinwave_core::diagnosis::AdviceSteps::new(&drawn, outside.as_ref(), &diagnosis)
                .unwrap();
        let mut count = 1;
        while steps.step() {
            count += 1;
        }
        assert!(count < 80 * 6, "{count} pieces for {longer}");
    }
}

fn read(name: &str, text: &str) -> Result<FileRead, FileRefused> {
    answer(ReadFile {
        name: name.to_owned(),
        bytes: text.as_bytes().to_vec(),
        reference_ohm: 50.0,
    })
}

#[test]
fn a_file_comes_back_with_every_port() {
    let bare = points(&design(DESIGN), sweep());
    let one = write_one_port(&bare, 50.0);
    let back = read("a.s1p", &one).unwrap();
    assert_eq!((back.ports.len(), back.reference_ohm), (1, 50.0));
    let off = |points: &[(f64, Complex)]| {
        let pairs = points.iter().zip(&bare);
        pairs.map(|(a, b)| (a.1 - b.1).abs()).fold(0.0, f64::max)
    };
    assert!(off(&back.ports[0]) < 1e-9);
    // The can on the second port of a file of two.
    let mut two = String::from("# Hz S RI R 50\n");
    for point in &read_touchstone(&one, None).unwrap().points {
        let s = point.s[0][0];
        two += &format!("{} 0.5 0.1 0 0 0 0 {} {}\n", point.frequency_hz, s.re, s.im);
    }
    let back = read("a.S2P", &two).unwrap();
    assert_eq!(back.ports.len(), 2);
    assert!(off(&back.ports[1]) < 1e-9 && off(&back.ports[0]) > 0.1);
    // A name that does not fit: the text counts.
    assert_eq!(read("a.s1p", &two).unwrap().ports.len(), 2);
}

#[test]
fn what_is_wrong_with_a_file_is_told_with_its_line() {
    let wrong = |text: &str| match read("a.s1p", text) {
        Err(FileRefused::Wrong(error)) => (error.line, error.problem),
        other => panic!("{text}: {other:?}"),
    };
    let word = |text: &str| text.to_owned();
    assert_eq!(
        wrong("# MHz S RI R 50\n2400 0.1 x"),
        (2, TouchstoneProblem::Number { word: word("x") })
    );
    assert_eq!(wrong("2400 0.1 0.2"), (1, TouchstoneProblem::NoOptionLine));
    assert_eq!(
        wrong("# MHz S RI R 50\n2400 0,1 0"),
        (2, TouchstoneProblem::Comma { word: word("0,1") })
    );
    let (line, problem) = wrong("# MHz S RI R 50\n2400 .1 0\n2300 .1 0");
    assert!(line == 3 && matches!(problem, TouchstoneProblem::Frequency { .. }));
    assert_eq!(wrong("<script>alert(1)</script>").0, 1);
    assert_eq!(read("a.s1p", " \n"), Err(FileRefused::Empty));
    assert_eq!(read("a.s1p", "PK\u{0}\u{3}"), Err(FileRefused::NotText));
}
