//! The keywords of version 2 and what they set.

use super::error::{TouchstoneError, TouchstoneProblem, error, excerpt};
use super::number::number;
use super::option_line::reference;

/// Where in a file the reader is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Section {
    /// Before the data.
    Header,
    /// Within `[Begin Information]`.
    Information,
    /// Network data.
    Network,
    /// Noise data.
    Noise,
    /// After `[End]`.
    Ended,
}

/// Which elements of a two-port's matrix a line holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum MatrixFormat {
    Full,
    Lower,
    Upper,
}

/// What the keywords said.
#[derive(Clone, Debug)]
pub(super) struct Header {
    pub(super) version2: bool,
    pub(super) ports: Option<usize>,
    /// Whether 21 stands before 12.
    pub(super) second_first: Option<bool>,
    pub(super) frequencies: Option<usize>,
    pub(super) noise_frequencies: Option<usize>,
    pub(super) references: alloc::vec::Vec<f64>,
    /// Whether lines of numbers go on with the references.
    pub(super) reading_references: bool,
    pub(super) matrix: MatrixFormat,
    pub(super) section: Section,
}

impl Header {
    pub(super) const fn new(ports: Option<usize>) -> Self {
        Self {
            version2: false,
            ports,
            second_first: None,
            frequencies: None,
            noise_frequencies: None,
            references: alloc::vec::Vec::new(),
            reading_references: false,
            matrix: MatrixFormat::Full,
            section: Section::Header,
        }
    }

    /// Takes a line that begins with `[`.
    pub(super) fn take(&mut self, line: usize, text: &str) -> Result<(), TouchstoneError> {
        let unknown = || {
            let word = excerpt(text);
            error(line, TouchstoneProblem::Keyword { word })
        };
        let (name, value) = text
            .strip_prefix('[')
            .and_then(|rest| rest.split_once(']'))
            .ok_or_else(unknown)?;
        let (name, value) = (name.trim(), value.trim());
        let is = |known: &str| name.eq_ignore_ascii_case(known);
        if self.section == Section::Information {
            if is("End Information") {
                self.section = Section::Header;
            }
            return Ok(());
        }
        self.reading_references = false;
        if is("Version") {
            self.version2 = true;
            let known = ["2.0", "2.1"].contains(&value);
            let word = excerpt(value);
            return known
                .then_some(())
                .ok_or_else(|| error(line, TouchstoneProblem::Version { word }));
        }
        if !self.version2 {
            return Err(error(
                line,
                TouchstoneProblem::KeywordMissing {
                    keyword: excerpt("[Version]"),
                },
            ));
        }
        if is("Number of Ports") {
            self.ports = Some(ports(line, value)?);
        } else if is("Number of Frequencies") {
            self.frequencies = Some(count(line, value)?);
        } else if is("Number of Noise Frequencies") {
            self.noise_frequencies = Some(count(line, value)?);
        } else if is("Two-Port Data Order") || is("Two-Port Order") {
            self.second_first = Some(match value {
                "21_12" => true,
                "12_21" => false,
                _ => return Err(unknown()),
            });
        } else if is("Matrix Format") {
            let word = |known: &str| value.eq_ignore_ascii_case(known);
            self.matrix = match () {
                () if word("Full") => MatrixFormat::Full,
                () if word("Lower") => MatrixFormat::Lower,
                () if word("Upper") => MatrixFormat::Upper,
                () => return Err(unknown()),
            };
        } else if is("Reference") {
            self.references.clear();
            self.reading_references = true;
            self.take_references(line, value)?;
        } else if is("Begin Information") {
            self.section = Section::Information;
        } else if is("Network Data") {
            self.start_data(line)?;
        } else if is("Noise Data") && self.section == Section::Network {
            self.section = Section::Noise;
        } else if is("End") {
            self.section = Section::Ended;
        } else {
            return Err(unknown());
        }
        Ok(())
    }

    /// References on the keyword's line or the lines after it.
    pub(super) fn take_references(
        &mut self,
        line: usize,
        text: &str,
    ) -> Result<(), TouchstoneError> {
        for word in text.split_ascii_whitespace() {
            self.references.push(reference(line, word)?);
        }
        Ok(())
    }

    fn start_data(&mut self, line: usize) -> Result<(), TouchstoneError> {
        let missing = |keyword| {
            let keyword = excerpt(keyword);
            error(line, TouchstoneProblem::KeywordMissing { keyword })
        };
        let ports = self.ports.ok_or_else(|| missing("[Number of Ports]"))?;
        if ports == 2 && self.second_first.is_none() && self.matrix == MatrixFormat::Full {
            return Err(missing("[Two-Port Data Order]"));
        }
        if !self.references.is_empty() && self.references.len() < ports {
            return Err(error(line, TouchstoneProblem::NoReference));
        }
        self.section = Section::Network;
        Ok(())
    }
}

fn ports(line: usize, text: &str) -> Result<usize, TouchstoneError> {
    match number(text) {
        Some(1.0) => Ok(1),
        Some(2.0) => Ok(2),
        Some(value) => Err(error(
            line,
            TouchstoneProblem::PortCount {
                value,
                range: [1.0, 2.0],
            },
        )),
        None => Err(no_number(line, text)),
    }
}

fn count(line: usize, text: &str) -> Result<usize, TouchstoneError> {
    text.parse().map_err(|_| no_number(line, text))
}

fn no_number(line: usize, text: &str) -> TouchstoneError {
    let word = excerpt(text);
    error(line, TouchstoneProblem::Number { word })
}
