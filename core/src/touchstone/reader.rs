//! Reads a whole file.

use alloc::vec::Vec;

use super::error::{TouchstoneError, TouchstoneProblem, error, excerpt};
use super::keyword::{Header, Section};
use super::option_line::{Format, OptionLine, Parameter};
use super::parameters::complex;
use super::table::{NOISE_VALUES, network, numbers, values_wanted};
use crate::complex::Complex;

/// Number of ports, as a version 1 file's name tells it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ports {
    /// `.s1p`.
    One,
    /// `.s2p`.
    Two,
}

/// Network parameters at one frequency.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NetworkPoint {
    /// Frequency, Hz.
    pub frequency_hz: f64,
    /// Scattering parameters, row by row; a one-port has only the first.
    pub s: [[Complex; 2]; 2],
}

/// Noise parameters at one frequency.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NoisePoint {
    /// Frequency, Hz.
    pub frequency_hz: f64,
    /// Least noise figure, dB.
    pub least_figure_db: f64,
    /// Source reflection for the least noise figure.
    pub optimum: Complex,
    /// Effective noise resistance, ohm.
    pub resistance_ohm: f64,
}

/// Something legal that is worth a word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum TouchstoneWarning {
    /// The file begins with a byte-order mark, which was passed over.
    ByteOrderMark,
    /// A further option line, which does not count.
    SecondOptionLine {
        /// Its line.
        line: usize,
    },
    /// More comes back than went in, for the first time on this line: no passive
    /// antenna does that.
    MoreThanAll {
        /// Its line.
        line: usize,
    },
}

/// A file read.
#[derive(Clone, Debug, PartialEq)]
pub struct Touchstone {
    /// Number of ports.
    pub ports: Ports,
    /// Kind of parameters that the file holds.
    pub parameter: Parameter,
    /// Format of the pairs.
    pub format: Format,
    /// Reference impedance of each port, ohm; a one-port repeats its own.
    pub reference_ohm: [f64; 2],
    /// The network, frequencies ascending.
    pub points: Vec<NetworkPoint>,
    /// Noise, if any.
    pub noise: Vec<NoisePoint>,
    /// What is worth a word.
    pub warnings: Vec<TouchstoneWarning>,
}

impl Touchstone {
    /// Frequency in Hz and reflection of the first port against `reference_ohm`
    /// (positive), the second port, if any, closed with its own reference.
    ///
    /// Source of the change of reference: D. M. Pozar, *Microwave Engineering*, 4th
    /// ed. 2012, eqs. 2.35 and 2.36.
    #[must_use]
    pub fn reflections(&self, reference_ohm: f64) -> Vec<(f64, Complex)> {
        let step =
            (reference_ohm - self.reference_ohm[0]) / (reference_ohm + self.reference_ohm[0]);
        let renormalised = |s: Complex| (s - step) / (Complex::ONE - s.scale(step));
        self.points
            .iter()
            .map(|point| (point.frequency_hz, renormalised(point.s[0][0])))
            .collect()
    }
}

/// Reads a file of version 1.0, 1.1, 2.0 or 2.1. `ports`: what the file's name says;
/// `None` takes it from the first line of data (version 2 states it itself).
///
/// # Errors
/// The first thing wrong, with its line.
pub fn read_touchstone(text: &str, ports: Option<Ports>) -> Result<Touchstone, TouchstoneError> {
    let mut reader = Reader {
        header: Header::new(ports.map(|ports| match ports {
            Ports::One => 1,
            Ports::Two => 2,
        })),
        option: None,
        points: Vec::new(),
        noise: Vec::new(),
        in_noise: false,
        warnings: Vec::new(),
        lines: 0,
    };
    let text = match text.strip_prefix('\u{feff}') {
        Some(rest) => {
            reader.warnings.push(TouchstoneWarning::ByteOrderMark);
            rest
        }
        None => text,
    };
    for (index, line) in text.lines().enumerate() {
        reader.lines = index + 1;
        reader.take(index + 1, line)?;
    }
    reader.finish()
}

struct Reader {
    header: Header,
    option: Option<OptionLine>,
    points: Vec<NetworkPoint>,
    noise: Vec<NoisePoint>,
    in_noise: bool,
    warnings: Vec<TouchstoneWarning>,
    lines: usize,
}

impl Reader {
    fn take(&mut self, line: usize, text: &str) -> Result<(), TouchstoneError> {
        let content = text.split('!').next().unwrap_or_default();
        if let Some(place) = content.chars().position(|c| !c.is_ascii()) {
            let column = place + 1;
            return Err(error(line, TouchstoneProblem::NotAscii { column }));
        }
        let content = content.trim_ascii();
        if content.is_empty() || self.header.section == Section::Ended {
            return Ok(());
        }
        if content.starts_with('[') {
            return self.header.take(line, content);
        }
        if self.header.section == Section::Information {
            return Ok(());
        }
        if let Some(option) = content.strip_prefix('#') {
            return self.take_option(line, option);
        }
        if self.header.reading_references {
            return self.header.take_references(line, content);
        }
        self.take_data(line, content)
    }

    fn take_option(&mut self, line: usize, text: &str) -> Result<(), TouchstoneError> {
        if self.option.is_some() {
            let warning = TouchstoneWarning::SecondOptionLine { line };
            self.warnings.push(warning);
            return Ok(());
        }
        self.option = Some(OptionLine::read(line, text)?);
        Ok(())
    }

    fn take_data(&mut self, line: usize, text: &str) -> Result<(), TouchstoneError> {
        let mut option = self
            .option
            .ok_or_else(|| error(line, TouchstoneProblem::NoOptionLine))?;
        if self.header.version2 && self.header.section == Section::Header {
            let keyword = excerpt("[Network Data]");
            return Err(error(line, TouchstoneProblem::KeywordMissing { keyword }));
        }
        if let Some(first) = self.header.references.first() {
            let second = self.header.references.get(1).unwrap_or(first);
            option.reference_ohm = [*first, *second];
            self.option = Some(option);
        }
        let (values, found) = numbers(line, text)?;
        let ports = *self
            .header
            .ports
            .get_or_insert(if found > 3 { 2 } else { 1 });
        if ports == 1 && matches!(option.parameter, Parameter::G | Parameter::H) {
            return Err(error(line, TouchstoneProblem::HybridOnePort));
        }
        let frequency_hz = values.first().copied().unwrap_or(0.0) * option.hertz_per_unit;
        let last = self.points.last().map(|point| point.frequency_hz);
        // A version 1 noise block is known by a frequency that is not above the last.
        let begins = !self.header.version2
            && ports == 2
            && found == NOISE_VALUES
            && last.is_some_and(|last| frequency_hz <= last);
        self.in_noise |= begins || self.header.section == Section::Noise;
        if self.in_noise {
            return self.take_noise(line, &option, frequency_hz, &values, found);
        }
        let wanted = values_wanted(ports, self.header.matrix);
        check_count(line, found, wanted)?;
        check_frequency(line, frequency_hz, last)?;
        let s = network(&option, &self.header, &values)
            .ok_or(error(line, TouchstoneProblem::Singular))?;
        let told = |w: &TouchstoneWarning| matches!(w, TouchstoneWarning::MoreThanAll { .. });
        if s[0][0].abs() > 1.0 && !self.warnings.iter().any(told) {
            self.warnings.push(TouchstoneWarning::MoreThanAll { line });
        }
        self.points.push(NetworkPoint { frequency_hz, s });
        Ok(())
    }

    fn take_noise(
        &mut self,
        line: usize,
        option: &OptionLine,
        frequency_hz: f64,
        values: &[f64],
        found: usize,
    ) -> Result<(), TouchstoneError> {
        check_count(line, found, NOISE_VALUES)?;
        let last = self.noise.last().map(|point| point.frequency_hz);
        check_frequency(line, frequency_hz, last)?;
        let at = |i: usize| values.get(i).copied().unwrap_or(0.0);
        let unit_ohm = if self.header.version2 {
            1.0
        } else {
            option.reference_ohm[0]
        };
        self.noise.push(NoisePoint {
            frequency_hz,
            least_figure_db: at(1),
            // Magnitude and angle, whatever the option line says.
            optimum: complex(Format::Magnitude, at(2), at(3)),
            resistance_ohm: at(4) * unit_ohm,
        });
        Ok(())
    }

    fn finish(self) -> Result<Touchstone, TouchstoneError> {
        let line = self.lines.max(1);
        let option = self
            .option
            .ok_or(error(line, TouchstoneProblem::NoOptionLine))?;
        if self.points.is_empty() {
            return Err(error(line, TouchstoneProblem::NoData));
        }
        let counts = [
            (self.header.frequencies, self.points.len()),
            (self.header.noise_frequencies, self.noise.len()),
        ];
        for (stated, found) in counts {
            if let Some(stated) = stated.filter(|stated| *stated != found) {
                let problem = TouchstoneProblem::FrequencyCount { found, stated };
                return Err(error(line, problem));
            }
        }
        Ok(Touchstone {
            ports: if self.header.ports == Some(1) {
                Ports::One
            } else {
                Ports::Two
            },
            parameter: option.parameter,
            format: option.format,
            reference_ohm: option.reference_ohm,
            points: self.points,
            noise: self.noise,
            warnings: self.warnings,
        })
    }
}

fn check_count(line: usize, found: usize, wanted: usize) -> Result<(), TouchstoneError> {
    if found == wanted {
        Ok(())
    } else {
        Err(error(line, TouchstoneProblem::ValueCount { found, wanted }))
    }
}

fn check_frequency(line: usize, value: f64, above: Option<f64>) -> Result<(), TouchstoneError> {
    if above.map_or(value >= 0.0, |above| value > above) {
        Ok(())
    } else {
        Err(error(line, TouchstoneProblem::Frequency { value, above }))
    }
}
