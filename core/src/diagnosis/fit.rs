//! The fit itself, one model evaluation a step.

use alloc::sync::Arc;
use alloc::vec::Vec;

use super::conclusion::{Diagnosis, conclude};
use super::knowledge::Knowledge;
use super::measurement::Measurement;
use super::target::Target;
use crate::changed_can::ChangedCan;
use crate::complex::Complex;
use crate::design::Design;
use crate::design_error::DesignError;
use crate::dimension::Dimension;
use crate::least_squares::SquareMatrix;
use crate::math;
use crate::outside::OutsideSpectrum;

/// Why nothing can be diagnosed.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum DiagnosisError {
    /// A number of the design outside its hard range.
    Design(DesignError),
    /// The drawn can itself can't be computed: mouth or probe.
    NotComputed,
    /// No measured point lies where the can is computed and its guide carries a wave,
    /// near the band (from 0.8 of its lower edge to 1.25 of its upper one).
    NoPoint {
        /// The range, Hz.
        range: [f64; 2],
    },
    /// No dimension is free, or a covariance that is none.
    Knowledge,
    /// Noise must be a number within this range, as reflection.
    Noise {
        /// Value given.
        value: f64,
        /// Range allowed.
        range: [f64; 2],
    },
}

impl From<DesignError> for DiagnosisError {
    fn from(error: DesignError) -> Self {
        Self::Design(error)
    }
}

/// How a measurement is weighed.
#[derive(Clone, Debug, PartialEq)]
pub struct DiagnosisSettings {
    /// Standard deviation of the measured reflection's parts, independent from point
    /// to point; 1e-5 to 1.
    pub noise: f64,
    /// Standard deviation of smooth errors of calibration and model, as reflection.
    pub smooth_error: f64,
    /// What is known before.
    pub knowledge: Knowledge,
    /// Whether an extra length at the port is looked for.
    pub find_port_length: bool,
}

impl Default for DiagnosisSettings {
    /// Noise 0.01 (common practice, no source), smooth error 0.005 (the model's own
    /// against finite elements), usual tolerances, port length looked for.
    fn default() -> Self {
        Self {
            noise: 0.01,
            smooth_error: 0.005,
            knowledge: Knowledge::usual(),
            find_port_length: true,
        }
    }
}

/// What is known of the port's extra length once it was found, metres.
const PORT_SD_M: f64 = 1.0;
/// Step of finite differences by the port's length, metres.
const PORT_STEP_M: f64 = 1e-6;
/// Most rounds of linearisation.
const MOST_ROUNDS: usize = 12;
/// Damping beyond which no step helps.
const MOST_DAMPING: f64 = 1e6;
/// A gain in cost below this ends the fit.
const LEAST_GAIN: f64 = 1e-4;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Stage {
    Start,
    Column(usize),
    Trial,
    Done,
}

/// A fit that advances step by step; each step is one evaluation of the model, a few
/// milliseconds.
#[derive(Clone, Debug)]
pub struct DiagnosisSteps {
    can: ChangedCan,
    target: Target,
    settings: DiagnosisSettings,
    information: SquareMatrix,
    /// Deviations, then the port's length if it is free.
    values: Vec<f64>,
    port_free: bool,
    model: Vec<Complex>,
    residuals: Vec<f64>,
    /// Slopes of the model by each dimension.
    slopes: Vec<Vec<Complex>>,
    /// Slopes of the residuals by each value.
    columns: Vec<Vec<f64>>,
    port_known: bool,
    damping: f64,
    rounds: usize,
    stage: Stage,
    misfit_as_drawn: f64,
}

/// Runs a fit to its end.
///
/// # Errors
/// [`DiagnosisError`].
pub fn diagnose(
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
    measurement: &Measurement,
    settings: DiagnosisSettings,
) -> Result<Diagnosis, DiagnosisError> {
    let mut steps = DiagnosisSteps::new(design, outside, measurement, settings)?;
    while steps.step() {}
    steps.finish().ok_or(DiagnosisError::NotComputed)
}

impl DiagnosisSteps {
    /// Sets a fit up; the work is in [`Self::step`].
    ///
    /// # Errors
    /// [`DiagnosisError`].
    pub fn new(
        design: &Design,
        outside: Option<&Arc<OutsideSpectrum>>,
        measurement: &Measurement,
        settings: DiagnosisSettings,
    ) -> Result<Self, DiagnosisError> {
        let range = [1e-5, 1.0];
        let value = settings.noise;
        if !(value >= range[0] && value <= range[1]) {
            return Err(DiagnosisError::Noise { value, range });
        }
        let can = ChangedCan::new(design, outside)?.ok_or(DiagnosisError::NotComputed)?;
        let si = can.nominal();
        let cutoff = crate::waveguide_mode::Mode::TE11.cutoff_frequency_hz(si.radius_m);
        let range = [
            (0.8 * si.band_low_hz).max(1.03 * cutoff),
            1.25 * si.band_high_hz,
        ];
        let covers = |hz: f64| hz >= range[0] && hz <= range[1] && can.covers(hz);
        let target = Target::new(measurement, settings.noise, covers)
            .ok_or(DiagnosisError::NoPoint { range })?;
        let knowledge = &settings.knowledge;
        let count = knowledge.dimensions.len();
        let inverse = knowledge.covariance.inverse();
        let port_free = settings.find_port_length && target.has_phase();
        let mut information = SquareMatrix::zero(count + usize::from(port_free));
        let inverse = inverse.filter(|m| count > 0 && m.size() == count);
        let inverse = inverse.ok_or(DiagnosisError::Knowledge)?;
        for row in 0..count {
            for column in 0..count {
                information.add(row, column, inverse.at(row, column));
            }
        }
        information.add(count, count, 1.0 / (PORT_SD_M * PORT_SD_M));
        let mut values = alloc::vec![0.0; count];
        values.extend(port_free.then_some(0.0));
        Ok(Self {
            can,
            target,
            settings,
            information,
            values,
            port_free,
            model: Vec::new(),
            residuals: Vec::new(),
            slopes: Vec::new(),
            columns: Vec::new(),
            port_known: false,
            damping: 1e-3,
            rounds: 0,
            stage: Stage::Start,
            misfit_as_drawn: 0.0,
        })
    }

    /// Measured points that the fit rests on.
    #[must_use]
    pub fn points(&self) -> usize {
        self.target.points()
    }

    /// Does one piece; `false` when there is no more.
    pub fn step(&mut self) -> bool {
        self.stage = match self.stage {
            Stage::Start => self.start(),
            Stage::Column(index) => self.column(index),
            Stage::Trial => self.trial(),
            Stage::Done => Stage::Done,
        };
        self.stage != Stage::Done
    }

    /// Share of the work done, 0 to 1; a guess, as the number of rounds is not known
    /// before.
    #[must_use]
    pub fn done(&self) -> f64 {
        if self.stage == Stage::Done {
            1.0
        } else {
            (self.rounds as f64 / 5.0).min(0.95)
        }
    }

    fn port_m(&self, values: &[f64]) -> f64 {
        let count = self.settings.knowledge.dimensions.len();
        values.get(count).copied().unwrap_or(0.0)
    }

    /// The model with these deviations; `None` where it can't be computed.
    fn model(&mut self, values: &[f64]) -> Option<Vec<Complex>> {
        let dimensions = self.settings.knowledge.dimensions.iter().copied();
        let changes: Vec<(Dimension, f64)> = dimensions.zip(values.iter().copied()).collect();
        let si = self.can.changed(&changes);
        self.can.reflections(&si, &self.target.model_hz).ok()
    }

    /// Squared residuals and what was known before.
    fn cost(&self, values: &[f64], residuals: &[f64]) -> f64 {
        let off = self.off(values);
        let known: f64 = self
            .information
            .times(&off)
            .iter()
            .zip(&off)
            .map(|(a, b)| a * b)
            .sum();
        residuals.iter().map(|r| r * r).sum::<f64>() + known
    }

    /// Differences from what was expected before; the port's length is not expected to
    /// be anything.
    fn off(&self, values: &[f64]) -> Vec<f64> {
        let means = self.settings.knowledge.means.iter().copied();
        let means = means.chain(core::iter::repeat(0.0));
        let mut off: Vec<f64> = values.iter().zip(means).map(|(v, m)| v - m).collect();
        if let Some(port) = off.get_mut(self.settings.knowledge.dimensions.len()) {
            *port = 0.0;
        }
        off
    }

    fn start(&mut self) -> Stage {
        let values = self.values.clone();
        let Some(model) = self.model(&values) else {
            return Stage::Done;
        };
        self.target.prepare(&model);
        self.model = model;
        Stage::Column(0)
    }

    /// Slopes by one dimension, by a finite difference of the true solver.
    fn column(&mut self, index: usize) -> Stage {
        if index == 0 {
            self.slopes.clear();
        }
        let dimensions = &self.settings.knowledge.dimensions;
        let Some(step) = dimensions.get(index).map(|dimension| dimension.step()) else {
            return Stage::Done;
        };
        let last = index + 1 == dimensions.len();
        let mut values = self.values.clone();
        if let Some(value) = values.get_mut(index) {
            *value += step;
        }
        let Some(model) = self.model(&values) else {
            return Stage::Done;
        };
        let pairs = model.iter().zip(&self.model);
        self.slopes
            .push(pairs.map(|(b, a)| (*b - *a).scale(1.0 / step)).collect());
        if !last {
            return Stage::Column(index + 1);
        }
        self.find_port();
        self.fill_columns();
        Stage::Trial
    }

    /// The first time, with the slopes at hand: the port's length with which drawing
    /// and small changes together come nearest to the measurement.
    fn find_port(&mut self) {
        if self.port_known {
            return;
        }
        self.port_known = true;
        let count = self.slopes.len();
        let known = self.information.part(&(0..count).collect::<Vec<_>>());
        if self.port_free
            && let Some(port) = self.target.search_port(&self.model, &self.slopes, &known)
            && let Some(last) = self.values.last_mut()
        {
            *last = port;
        }
        let port = self.port_m(&self.values);
        self.residuals = self.target.residuals(&self.model, port);
        let as_drawn = self.target.misfit(&self.residuals);
        self.misfit_as_drawn = as_drawn;
    }

    /// Slopes of the residuals from those of the model.
    fn fill_columns(&mut self) {
        let port = self.port_m(&self.values);
        let slope = |changed: Vec<f64>, step: f64| -> Vec<f64> {
            let pairs = changed.iter().zip(&self.residuals);
            pairs.map(|(b, a)| (b - a) / step).collect()
        };
        let dimensions = &self.settings.knowledge.dimensions;
        let mut columns: Vec<Vec<f64>> = dimensions
            .iter()
            .zip(&self.slopes)
            .map(|(dimension, slopes)| {
                let step = dimension.step();
                let pairs = self.model.iter().zip(slopes);
                let changed: Vec<Complex> = pairs.map(|(s, d)| *s + d.scale(step)).collect();
                slope(self.target.residuals(&changed, port), step)
            })
            .collect();
        if self.port_free {
            let changed = self.target.residuals(&self.model, port + PORT_STEP_M);
            columns.push(slope(changed, PORT_STEP_M));
        }
        self.columns = columns;
    }

    /// The data's own part of the normal matrix, times a vector.
    fn data_information(&self, vector: &[f64]) -> Vec<f64> {
        let mut along = alloc::vec![0.0; self.residuals.len()];
        for (column, v) in self.columns.iter().zip(vector) {
            for (sum, slope) in along.iter_mut().zip(column) {
                *sum += slope * v;
            }
        }
        self.columns.iter().map(|c| dot(c, &along)).collect()
    }

    /// Normal matrix: information of the data and from before.
    fn normal(&self) -> SquareMatrix {
        let mut normal = self.information.clone();
        for (i, one) in self.columns.iter().enumerate() {
            for (k, other) in self.columns.iter().enumerate() {
                normal.add(i, k, dot(one, other));
            }
        }
        normal
    }

    fn trial(&mut self) -> Stage {
        let mut normal = self.normal();
        let known = self.information.times(&self.off(&self.values));
        let right: Vec<f64> = self
            .columns
            .iter()
            .zip(&known)
            .map(|(column, known)| -dot(column, &self.residuals) - known)
            .collect();
        for i in 0..normal.size() {
            let own = normal.at(i, i);
            normal.add(i, i, self.damping * own);
        }
        let Some(step) = normal.solve(&right) else {
            return Stage::Done;
        };
        let values: Vec<f64> = self.values.iter().zip(&step).map(|(v, s)| v + s).collect();
        let before = self.cost(&self.values, &self.residuals);
        let port = self.port_m(&values);
        let tried = self.model(&values).map(|model| {
            let residuals = self.target.residuals(&model, port);
            (self.cost(&values, &residuals), model, residuals)
        });
        match tried {
            Some((cost, model, residuals)) if cost <= before => {
                self.values = values;
                self.model = model;
                self.residuals = residuals;
                self.damping = (self.damping * 0.1).max(1e-9);
                self.rounds += 1;
                let settled = before - cost < LEAST_GAIN * (1.0 + cost.min(100.0));
                if settled || self.rounds >= MOST_ROUNDS {
                    Stage::Done
                } else {
                    Stage::Column(0)
                }
            }
            _ => {
                self.damping *= 10.0;
                if self.damping > MOST_DAMPING {
                    Stage::Done
                } else {
                    Stage::Trial
                }
            }
        }
    }

    /// The outcome; `None` where the model could not be computed or steps are left.
    #[must_use]
    pub fn finish(self) -> Option<Diagnosis> {
        if self.stage != Stage::Done || self.columns.len() != self.values.len() {
            return None;
        }
        let normal = self.normal();
        let inverse = normal.inverse()?;
        let misfit = self.target.misfit(&self.residuals);
        let mut covariance = inverse.clone();
        // Noise larger than stated shows in what is left; it widens what the data tell,
        // not what was known before.
        let spare = self.residuals.len().saturating_sub(self.values.len());
        let left = dot(&self.residuals, &self.residuals) / spare.max(1) as f64;
        let excess = if spare > 10 { left.max(1.0) - 1.0 } else { 0.0 };
        for row in 0..inverse.size() {
            let own: Vec<f64> = (0..inverse.size()).map(|i| inverse.at(row, i)).collect();
            let pulls: Vec<f64> = self.data_information(&own);
            for (column, value) in inverse.times(&pulls).into_iter().enumerate() {
                covariance.add(row, column, excess * value);
            }
        }
        for shape in self.target.smooth_errors(self.port_m(&self.values)) {
            let pulls: Vec<f64> = self.columns.iter().map(|c| dot(c, &shape)).collect();
            let shift = inverse.times(&pulls);
            let variance = self.settings.smooth_error * self.settings.smooth_error;
            for (row, a) in shift.iter().enumerate() {
                for (column, b) in shift.iter().enumerate() {
                    covariance.add(row, column, variance * a * b);
                }
            }
        }
        let (noise, smooth) = (self.settings.noise, self.settings.smooth_error);
        let expected = math::sqrt(noise * noise + smooth * smooth);
        let misfits = (misfit, self.misfit_as_drawn);
        let knowledge = &self.settings.knowledge;
        Some(conclude(
            knowledge,
            &self.values,
            &covariance,
            misfits,
            expected,
        ))
    }
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}
