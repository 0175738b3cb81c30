//! The option line: unit, parameter, format, reference, in any order and case.

use super::error::{TouchstoneError, TouchstoneProblem, error, excerpt};
use super::number::number;

/// What kind of network parameters a file holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Parameter {
    /// Scattering parameters.
    S,
    /// Admittances.
    Y,
    /// Impedances.
    Z,
    /// Inverse hybrid parameters.
    G,
    /// Hybrid parameters.
    H,
}

/// How a complex number is written as a pair.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Format {
    /// 20 log10 of the magnitude, and the angle in degrees.
    Decibel,
    /// Magnitude, and the angle in degrees.
    Magnitude,
    /// Real and imaginary part.
    RealImaginary,
}

/// Smallest and largest reference impedance taken, ohm.
pub(super) const REFERENCE_OHM: [f64; 2] = [1e-3, 1e6];

/// What the option line says; what it does not say has the standard's defaults.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct OptionLine {
    pub(super) hertz_per_unit: f64,
    pub(super) parameter: Parameter,
    pub(super) format: Format,
    pub(super) reference_ohm: [f64; 2],
}

impl OptionLine {
    /// Reads what follows the `#`.
    pub(super) fn read(line: usize, text: &str) -> Result<Self, TouchstoneError> {
        let mut option = Self {
            hertz_per_unit: 1e9,
            parameter: Parameter::S,
            format: Format::Magnitude,
            reference_ohm: [50.0; 2],
        };
        let mut words = text.split_ascii_whitespace().peekable();
        while let Some(word) = words.next() {
            if word.eq_ignore_ascii_case("r") {
                option.reference_ohm = references(line, &mut words)?;
            } else if !option.take(word) {
                let word = excerpt(word);
                return Err(error(line, TouchstoneProblem::OptionWord { word }));
            }
        }
        Ok(option)
    }

    /// Takes a single word in; `false` where it has no meaning.
    fn take(&mut self, word: &str) -> bool {
        let is = |known: &str| word.eq_ignore_ascii_case(known);
        let units = [("hz", 1.0), ("khz", 1e3), ("mhz", 1e6), ("ghz", 1e9)];
        let parameters = [
            ("s", Parameter::S),
            ("y", Parameter::Y),
            ("z", Parameter::Z),
            ("g", Parameter::G),
            ("h", Parameter::H),
        ];
        let formats = [
            ("db", Format::Decibel),
            ("ma", Format::Magnitude),
            ("ri", Format::RealImaginary),
        ];
        if let Some((_, unit)) = units.into_iter().find(|(name, _)| is(name)) {
            self.hertz_per_unit = unit;
        } else if let Some((_, parameter)) = parameters.into_iter().find(|(name, _)| is(name)) {
            self.parameter = parameter;
        } else if let Some((_, format)) = formats.into_iter().find(|(name, _)| is(name)) {
            self.format = format;
        } else {
            return false;
        }
        true
    }
}

/// One number for all ports, or in version 1.1 one for each; more than two are of
/// no use here and passed over.
fn references<'a>(
    line: usize,
    words: &mut core::iter::Peekable<impl Iterator<Item = &'a str>>,
) -> Result<[f64; 2], TouchstoneError> {
    let first = words
        .next()
        .ok_or(error(line, TouchstoneProblem::NoReference))?;
    let first = reference(line, first)?;
    let mut second = None;
    while let Some(value) = words.peek().and_then(|word| number(word)) {
        words.next();
        second.get_or_insert(within(line, value)?);
    }
    Ok([first, second.unwrap_or(first)])
}

/// A reference impedance.
pub(super) fn reference(line: usize, word: &str) -> Result<f64, TouchstoneError> {
    if word.contains(',') {
        let word = excerpt(word);
        return Err(error(line, TouchstoneProblem::Comma { word }));
    }
    let value = number(word).ok_or(error(line, TouchstoneProblem::NoReference))?;
    within(line, value)
}

fn within(line: usize, value: f64) -> Result<f64, TouchstoneError> {
    let range = REFERENCE_OHM;
    if value >= range[0] && value <= range[1] {
        Ok(value)
    } else {
        Err(error(line, TouchstoneProblem::Reference { value, range }))
    }
}
