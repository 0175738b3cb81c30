//! A table that was written by hand: a frequency and a value on each line.

use tinwave_core::diagnosis::{Measurement, MeasurementError};

use crate::entry::{EntryError, parse_frequency};

/// What the second column holds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Column {
    /// VSWR.
    #[default]
    Vswr,
    /// Return loss, dB; S11 in dB is the same with a minus.
    ReturnLoss,
}

/// A table that could be read.
#[derive(Clone, Debug, PartialEq)]
pub struct TableRead {
    /// What was measured.
    pub measurement: Measurement,
    /// Whether values below zero were taken as S11 in dB.
    pub turned: bool,
}

/// Why a table can't be read, and on which line, from 1.
#[derive(Clone, Debug, PartialEq)]
pub struct TableFault {
    /// The line; 0 where it is about the whole.
    pub line: usize,
    /// What is wrong.
    pub problem: TableProblem,
}

/// What is wrong with a line.
#[derive(Clone, Debug, PartialEq)]
pub enum TableProblem {
    /// There is no line with numbers.
    NoRow,
    /// A line needs a frequency and one value.
    NotTwo,
    /// The frequency can't be read.
    Frequency(EntryError),
    /// Each frequency must be above the one before.
    NotAscending,
    /// The value is no number.
    NoNumber,
    /// The value is out of range.
    OutOfRange {
        /// The range.
        range: [f64; 2],
    },
}

/// A number with a point or a comma.
#[must_use]
pub fn decimal(text: &str) -> Option<f64> {
    let plain = text.trim().replace(',', ".");
    plain.parse().ok().filter(|value: &f64| value.is_finite())
}

/// A row: its line from 1, frequency in Hz, value.
type Row = (usize, f64, f64);

fn rows_of(text: &str) -> Result<Vec<Row>, TableFault> {
    let mut rows = Vec::new();
    for (index, line) in text.lines().enumerate() {
        // Headings and notes.
        let said = line.split('!').next().unwrap_or_default();
        if !said.contains(|c: char| c.is_ascii_digit()) {
            continue;
        }
        let wrong = |problem| TableFault {
            line: index + 1,
            problem,
        };
        let (frequency, value) = two_columns(said).ok_or_else(|| wrong(TableProblem::NotTwo))?;
        let khz = parse_frequency(frequency)
            .map_err(|error| wrong(TableProblem::Frequency(error)))?
            .value;
        let value = decimal(value).ok_or_else(|| wrong(TableProblem::NoNumber))?;
        rows.push((index + 1, f64::from(khz) * 1e3, value));
    }
    Ok(rows)
}

/// Reads a table: MHz where no unit stands, the lowest frequency first.
///
/// # Errors
/// [`TableFault`], the first thing wrong.
pub fn read_table(text: &str, column: Column) -> Result<TableRead, TableFault> {
    let rows = rows_of(text)?;
    if rows.is_empty() {
        return Err(TableFault {
            line: 0,
            problem: TableProblem::NoRow,
        });
    }
    let mut pairs: Vec<(f64, f64)> = rows.iter().map(|(_, hz, value)| (*hz, *value)).collect();
    let turned = column == Column::ReturnLoss
        && pairs.iter().all(|(_, value)| *value <= 0.0)
        && pairs.iter().any(|(_, value)| *value < 0.0);
    if turned {
        for pair in &mut pairs {
            pair.1 = -pair.1;
        }
    }
    let read = match column {
        Column::Vswr => Measurement::from_vswr(&pairs),
        Column::ReturnLoss => Measurement::from_return_loss(&pairs),
    };
    let measurement = read.map_err(|error| {
        let (row, problem) = match error {
            MeasurementError::Frequency { row, .. } => (row, TableProblem::NotAscending),
            MeasurementError::Value { row, range, .. } => (row, TableProblem::OutOfRange { range }),
        };
        TableFault {
            line: rows.get(row).map_or(row, |(line, ..)| *line),
            problem,
        }
    })?;
    Ok(TableRead {
        measurement,
        turned,
    })
}

/// A frequency and the last value, with space, tab, semicolon or (alone) a comma
/// before it; the frequency's unit may stand apart.
fn two_columns(line: &str) -> Option<(&str, &str)> {
    let parted = |c: char| c.is_ascii_whitespace() || c == ';';
    let line = line.trim_matches(parted);
    let (first, value) = line.rsplit_once(parted).or_else(|| line.split_once(','))?;
    let frequency = first.trim_end_matches(|c: char| parted(c) || c == ',');
    // Three numbers are no pair.
    let alone = frequency
        .split(parted)
        .skip(1)
        .all(|word| !word.contains(|c: char| c.is_ascii_digit()));
    (alone && !frequency.is_empty() && !value.is_empty()).then_some((frequency, value.trim()))
}

#[cfg(test)]
mod tests {
    use super::{Column, TableProblem, read_table};
    use tinwave_core::diagnosis::Measurement;

    fn vswr(text: &str) -> Vec<(f64, f64)> {
        let read = read_table(text, Column::Vswr).map(|read| read.measurement);
        let Ok(Measurement::Magnitude(points)) = read else {
            return Vec::new();
        };
        let vswr = |(hz, size): (f64, f64)| (hz / 1e6, (1.0 + size) / (1.0 - size));
        points.into_iter().map(vswr).collect()
    }

    #[test]
    fn headings_notes_units_and_signs_of_decimals_are_read() {
        let text =
            "frequency VSWR\n2400 1,8 ! hazy\n2.42 GHz; 1.6\n2440\t1.5\n2460 MHz 1.55\n2480,1.7";
        let wanted = [
            (2400.0, 1.8),
            (2420.0, 1.6),
            (2440.0, 1.5),
            (2460.0, 1.55),
            (2480.0, 1.7),
        ];
        let read = vswr(text);
        assert_eq!(read.len(), wanted.len());
        for (one, other) in read.iter().zip(wanted) {
            assert!(
                (one.0 - other.0).abs() < 1e-9 && (one.1 - other.1).abs() < 1e-9,
                "{one:?}"
            );
        }
    }

    #[test]
    fn return_loss_and_s11_in_db_are_the_same_but_for_the_sign() {
        // A VSWR of 2 is a reflection of 1/3: 9.542 dB.
        let read = |text| read_table(text, Column::ReturnLoss);
        let (loss, s11) = (read("2400 9.542\n2440 14"), read("2400 -9.542\n2440 -14"));
        let of = |read: &Result<super::TableRead, _>| {
            read.as_ref().ok().map(|read| read.measurement.clone())
        };
        assert_eq!(of(&loss), of(&s11));
        assert!(loss.is_ok_and(|read| !read.turned) && s11.is_ok_and(|read| read.turned));
        assert!(
            matches!(of(&read("2400 9.542")), Some(Measurement::Magnitude(points))
            if (points[0].1 - 1.0 / 3.0).abs() < 1e-4)
        );
    }

    #[test]
    fn what_is_wrong_is_told_with_its_line() {
        let range = [1.0, 1e6];
        for (text, line, problem) in [
            ("2400 1.5\n2450 0.5", 2, TableProblem::OutOfRange { range }),
            ("MHz VSWR\n2400 1.5\n2450", 3, TableProblem::NotTwo),
            ("2400 1.5 3", 1, TableProblem::NotTwo),
            ("\n2400 1.5\n2400 1.6", 3, TableProblem::NotAscending),
            ("2400 1.x", 1, TableProblem::NoNumber),
            ("no numbers", 0, TableProblem::NoRow),
        ] {
            let fault = read_table(text, Column::Vswr).err();
            assert_eq!(
                fault.map(|f| (f.line, f.problem)),
                Some((line, problem)),
                "{text}"
            );
        }
        let fault = read_table("24 1.5", Column::Vswr).err();
        assert!(matches!(
            fault.map(|f| f.problem),
            Some(TableProblem::Frequency(_))
        ));
    }
}
