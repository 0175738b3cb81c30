//! A measured can beside its drawing: the file, why they differ, what to do.

use serde::{Deserialize, Serialize};
use tinwave_core::complex::Complex;
use tinwave_core::design::Design;
use tinwave_core::diagnosis::{Advice, Diagnosis, Knowledge, Measurement};
use tinwave_core::touchstone::{TouchstoneError, TouchstoneWarning};

use crate::{Job, Question};

/// Reads an analyser's file. It crosses once: what is in it stays with the page.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ReadFile {
    /// Its name, whose ending tells the number of ports.
    pub name: String,
    /// What is in it.
    pub bytes: Vec<u8>,
    /// The reflection is wanted against this impedance, ohm.
    pub reference_ohm: f64,
}

/// What an analyser's file holds.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FileRead {
    /// Frequency in Hz and reflection, for each port of the file.
    pub ports: Vec<Vec<(f64, Complex)>>,
    /// What the reflection is against, ohm.
    pub reference_ohm: f64,
    /// Legal, but worth a word.
    pub warnings: Vec<TouchstoneWarning>,
}

/// Why a file can't be read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum FileRefused {
    /// There is nothing in it.
    Empty,
    /// It is no text.
    NotText,
    /// Something in it is wrong.
    Wrong(TouchstoneError),
}

/// Looks for the small differences that explain a measurement.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Diagnose {
    /// The design that the can was made after.
    pub design: Design,
    /// What was measured.
    pub measurement: Measurement,
    /// How far the readings can be trusted: standard deviation of the reflection.
    pub noise: f64,
    /// What was known of this can before.
    pub knowledge: Knowledge,
}

/// What came of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Diagnosed {
    /// Differences, with their bounds.
    Found(Diagnosis),
    /// One or two points: they can be compared, but tell no cause.
    TooFew,
    /// No point lies where this can can be computed.
    NoPoint {
        /// The range, Hz.
        range_hz: [f64; 2],
    },
    /// The drawn can can't be computed.
    NotComputed,
}

/// So many points at least tell a cause.
pub const LEAST_POINTS: usize = 3;

/// Works out what to do about a can as it was found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Advise {
    /// The design that the can was made after.
    pub design: Design,
    /// What was found.
    pub diagnosis: Diagnosis,
}

impl Question for ReadFile {
    type Answer = Result<FileRead, FileRefused>;

    fn into_job(self) -> Job {
        Job::ReadFile(self)
    }
}

impl Question for Diagnose {
    type Answer = Diagnosed;

    fn into_job(self) -> Job {
        Job::Diagnose(self)
    }
}

impl Question for Advise {
    /// `None` where the can as found is outside what can be computed.
    type Answer = Option<Advice>;

    fn into_job(self) -> Job {
        Job::Advise(self)
    }
}
