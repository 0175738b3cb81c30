//! Lines of data.

use alloc::vec::Vec;

use super::error::{TouchstoneError, TouchstoneProblem, error, excerpt};
use super::keyword::{Header, MatrixFormat};
use super::number::number;
use super::option_line::OptionLine;
use super::parameters::{Matrix, complex, normalised, scattering};
use crate::complex::Complex;

/// Values of one noise frequency.
pub(super) const NOISE_VALUES: usize = 5;
/// More values than any line may have; the rest is only counted.
const MOST_VALUES: usize = 16;

/// The numbers of a line, and how many words it has.
pub(super) fn numbers(line: usize, text: &str) -> Result<(Vec<f64>, usize), TouchstoneError> {
    let mut values = Vec::new();
    let mut found = 0;
    for word in text.split_ascii_whitespace() {
        found += 1;
        if word.contains(',') {
            let word = excerpt(word);
            return Err(error(line, TouchstoneProblem::Comma { word }));
        }
        match number(word) {
            Some(value) if values.len() < MOST_VALUES => values.push(value),
            Some(_) => {}
            None => {
                let word = excerpt(word);
                return Err(error(line, TouchstoneProblem::Number { word }));
            }
        }
    }
    Ok((values, found))
}

/// How many values a line of network data has.
pub(super) fn values_wanted(ports: usize, matrix: MatrixFormat) -> usize {
    match (ports, matrix) {
        (1, _) => 3,
        (_, MatrixFormat::Full) => 9,
        _ => 7,
    }
}

/// The scattering parameters of a line's values; `None` where they are singular.
pub(super) fn network(option: &OptionLine, header: &Header, values: &[f64]) -> Option<Matrix> {
    let pair = |index: usize| {
        let at = |i: usize| values.get(i).copied().unwrap_or(0.0);
        complex(option.format, at(2 * index + 1), at(2 * index + 2))
    };
    let one_port = header.ports == Some(1);
    let matrix = if one_port {
        [[pair(0), Complex::ZERO], [Complex::ZERO; 2]]
    } else {
        match (header.matrix, header.second_first.unwrap_or(true)) {
            (MatrixFormat::Full, true) => [[pair(0), pair(2)], [pair(1), pair(3)]],
            (MatrixFormat::Full, false) => [[pair(0), pair(1)], [pair(2), pair(3)]],
            _ => [[pair(0), pair(1)], [pair(1), pair(2)]],
        }
    };
    let matrix = if header.version2 {
        normalised(option.parameter, matrix, option.reference_ohm)
    } else {
        matrix
    };
    let s = scattering(option.parameter, matrix, one_port)?;
    s.iter().flatten().all(|v| v.is_finite()).then_some(s)
}
