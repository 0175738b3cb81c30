//! A solved outside as numbers comes back the same, and nothing else is taken for one.
#![allow(clippy::expect_used, reason = "a test may stop")]

use tinwave_core::outside::{Outline, OutsideSpectrum, Rim};

fn outline() -> Outline {
    Outline {
        radius_m: 0.045,
        length_m: 0.19,
        rim: Rim::Bare,
    }
}

#[test]
fn numbers_come_back_as_the_solution() {
    let solved = OutsideSpectrum::new(&outline(), 2.4e9, 2.5e9).expect("in range");
    let numbers = solved.to_numbers();
    let back = OutsideSpectrum::from_numbers(&outline(), &numbers).expect("its own numbers");
    assert_eq!(back, solved);
    assert_eq!(back.guide_end(2.44e9), solved.guide_end(2.44e9));
}

#[test]
fn other_numbers_are_refused() {
    let solved = OutsideSpectrum::new(&outline(), 2.4e9, 2.5e9).expect("in range");
    let numbers = solved.to_numbers();
    let cut_short = numbers.get(..numbers.len() - 1).expect("not empty");
    for list in [cut_short, &[][..], &[-1.0; 9], &[f64::NAN; 9], &[1e300; 9]] {
        assert_eq!(OutsideSpectrum::from_numbers(&outline(), list), None);
    }
}
