//! What was measured.

use alloc::vec::Vec;

use crate::complex::Complex;
use crate::math;
use crate::reflection::magnitude_of_vswr;

/// A measurement, frequencies in Hz, ascending.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Measurement {
    /// Complex reflection against the design's reference.
    Reflection(Vec<(f64, Complex)>),
    /// Magnitude of the reflection alone.
    Magnitude(Vec<(f64, f64)>),
    /// Only where it is best, and the magnitude there.
    BestAt {
        /// Frequency of the least reflection.
        frequency_hz: f64,
        /// Magnitude of the reflection there.
        magnitude: f64,
    },
}

/// Why a table written by hand can't be used. Rows count from 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MeasurementError {
    /// A frequency, Hz, that is not above the one before.
    Frequency {
        /// Row.
        row: usize,
        /// Value given.
        value: f64,
    },
    /// VSWR or return loss out of range.
    Value {
        /// Row.
        row: usize,
        /// Value given.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
}

impl Measurement {
    /// From pairs of frequency (Hz, ascending) and VSWR (1 or more).
    ///
    /// # Errors
    /// The first row that is wrong.
    pub fn from_vswr(rows: &[(f64, f64)]) -> Result<Self, MeasurementError> {
        magnitudes(rows, [1.0, 1e6], magnitude_of_vswr).map(Self::Magnitude)
    }

    /// From pairs of frequency (Hz, ascending) and return loss in dB (0 or more).
    ///
    /// # Errors
    /// The first row that is wrong.
    pub fn from_return_loss(rows: &[(f64, f64)]) -> Result<Self, MeasurementError> {
        magnitudes(rows, [0.0, 200.0], |db| math::pow(10.0, -db / 20.0)).map(Self::Magnitude)
    }

    /// From the frequency of the best match (Hz) and the VSWR there.
    ///
    /// # Errors
    /// A frequency not above zero or a VSWR below one.
    pub fn from_best(frequency_hz: f64, vswr: f64) -> Result<Self, MeasurementError> {
        magnitudes(&[(frequency_hz, vswr)], [1.0, 1e6], magnitude_of_vswr)?;
        Ok(Self::BestAt {
            frequency_hz,
            magnitude: magnitude_of_vswr(vswr),
        })
    }
}

fn magnitudes(
    rows: &[(f64, f64)],
    range: [f64; 2],
    magnitude: impl Fn(f64) -> f64,
) -> Result<Vec<(f64, f64)>, MeasurementError> {
    let mut last = 0.0;
    let mut out = Vec::with_capacity(rows.len());
    for (row, (hz, value)) in rows.iter().copied().enumerate() {
        if !(hz > last && hz.is_finite()) {
            return Err(MeasurementError::Frequency { row, value: hz });
        }
        if !(value >= range[0] && value <= range[1]) {
            return Err(MeasurementError::Value { row, value, range });
        }
        last = hz;
        out.push((hz, magnitude(value)));
    }
    Ok(out)
}
