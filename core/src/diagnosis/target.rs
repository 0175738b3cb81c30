//! A measurement as weighted residuals of a model.

use alloc::vec::Vec;

use super::measurement::Measurement;
use super::port_length::{search, turn};
use crate::chebyshev::ChebyshevPoints;
use crate::complex::Complex;
use crate::least_squares::SquareMatrix;
use crate::math;

/// With more points than this the model is computed at fewer and interpolated.
const MOST_DIRECT: usize = 33;
/// Points of the interpolation: enough for the several turns that the reflection
/// of a long can makes over a third of an octave.
const NODES: usize = 29;
/// Relative distance of the frequencies beside a best one.
const BESIDE: f64 = 0.01;
/// How well a best frequency is read off, as a share of itself. Common practice.
const BEST_READ: f64 = 0.003;
/// Least curvature of the squared magnitude that a best frequency counts with.
const LEAST_CURVATURE: f64 = 10.0;
/// Points that the port's length is looked for with.
const SEARCH_POINTS: usize = 40;
/// Below this a magnitude has no slope.
const LEAST_MAGNITUDE: f64 = 1e-6;

/// What residuals are taken against.
#[derive(Clone, Debug)]
pub(super) struct Target {
    measurement: Measurement,
    noise: f64,
    /// Frequencies at which the model is computed.
    pub(super) model_hz: Vec<f64>,
    /// For each measured point the weights of the model's points; empty: one for one.
    weights: Vec<Vec<f64>>,
    /// Curvature of the squared magnitude by relative frequency, for a best frequency.
    curvature: f64,
}

impl Target {
    /// The points of a measurement that `covers` lets through; `None` where none is.
    pub(super) fn new(
        measurement: &Measurement,
        noise: f64,
        covers: impl Fn(f64) -> bool,
    ) -> Option<Self> {
        let mut measurement = measurement.clone();
        let frequencies: Vec<f64> = match &mut measurement {
            Measurement::Reflection(points) => {
                points.retain(|(hz, s)| s.is_finite() && covers(*hz));
                points.iter().map(|(hz, _)| *hz).collect()
            }
            Measurement::Magnitude(points) => {
                points.retain(|(hz, s)| s.is_finite() && covers(*hz));
                points.iter().map(|(hz, _)| *hz).collect()
            }
            Measurement::BestAt { frequency_hz, .. } => {
                let f = *frequency_hz;
                let three = alloc::vec![f * (1.0 - BESIDE), f, f * (1.0 + BESIDE)];
                three.into_iter().filter(|hz| covers(*hz)).collect()
            }
        };
        let best = matches!(measurement, Measurement::BestAt { .. });
        if frequencies.is_empty() || (best && frequencies.len() < 3) {
            return None;
        }
        let (model_hz, weights) = model_points(frequencies);
        Some(Self {
            measurement,
            noise,
            model_hz,
            weights,
            curvature: 1.0,
        })
    }

    /// Measured points that count.
    pub(super) fn points(&self) -> usize {
        match &self.measurement {
            Measurement::Reflection(points) => points.len(),
            Measurement::Magnitude(points) => points.len(),
            Measurement::BestAt { .. } => 1,
        }
    }

    /// Whether phase was measured.
    pub(super) const fn has_phase(&self) -> bool {
        matches!(self.measurement, Measurement::Reflection(_))
    }

    /// The model at every measured frequency.
    fn spread(&self, model: &[Complex]) -> Vec<Complex> {
        if self.weights.is_empty() {
            return model.to_vec();
        }
        let blend = |weights: &Vec<f64>| {
            let terms = weights.iter().zip(model);
            terms.fold(Complex::ZERO, |sum, (w, s)| sum + s.scale(*w))
        };
        self.weights.iter().map(blend).collect()
    }

    /// How sharply a best frequency shows, from the model of the drawing.
    pub(super) fn prepare(&mut self, model: &[Complex]) {
        if let (Measurement::BestAt { .. }, [low, middle, high]) = (&self.measurement, model) {
            let bend = low.norm_sqr() + high.norm_sqr() - 2.0 * middle.norm_sqr();
            self.curvature = (bend / (BESIDE * BESIDE)).abs().max(LEAST_CURVATURE);
        }
    }

    /// The port's extra length, where phase is known, from every few of the points.
    pub(super) fn search_port(
        &self,
        model: &[Complex],
        slopes: &[Vec<Complex>],
        known: &SquareMatrix,
    ) -> Option<f64> {
        let Measurement::Reflection(points) = &self.measurement else {
            return None;
        };
        let every = points.len() / SEARCH_POINTS + 1;
        let thin =
            |values: Vec<Complex>| -> Vec<Complex> { values.into_iter().step_by(every).collect() };
        let measured: Vec<_> = points.iter().copied().step_by(every).collect();
        let slopes: Vec<_> = slopes.iter().map(|d| thin(self.spread(d))).collect();
        let model = thin(self.spread(model));
        search(&measured, &model, &slopes, known, self.noise)
    }

    /// Differences over their standard deviations.
    pub(super) fn residuals(&self, model: &[Complex], port_m: f64) -> Vec<f64> {
        let model = self.spread(model);
        let size = |s: Complex| s.abs().max(LEAST_MAGNITUDE);
        match &self.measurement {
            Measurement::Reflection(points) => points
                .iter()
                .zip(model)
                .flat_map(|((hz, m), s)| {
                    let off = s * turn(port_m, *hz) - *m;
                    [off.re / self.noise, off.im / self.noise]
                })
                .collect(),
            Measurement::Magnitude(points) => points
                .iter()
                .zip(model)
                .map(|((_, m), s)| (size(s) - m) / self.noise)
                .collect(),
            Measurement::BestAt { magnitude, .. } => match model.as_slice() {
                [low, middle, high] => {
                    let slope = (high.norm_sqr() - low.norm_sqr()) / (2.0 * BESIDE);
                    alloc::vec![
                        (size(*middle) - magnitude) / self.noise,
                        slope / (self.curvature * BEST_READ),
                    ]
                }
                _ => Vec::new(),
            },
        }
    }

    /// Smooth errors of model and calibration, one each for level and slope, per unit
    /// of reflection, as residuals.
    pub(super) fn smooth_errors(&self, port_m: f64) -> Vec<Vec<f64>> {
        let span = |first: f64, last: f64| {
            let (middle, half) = (0.5 * (first + last), (0.5 * (last - first)).max(1.0));
            move |hz: f64| (hz - middle) / half
        };
        match &self.measurement {
            Measurement::Reflection(points) => {
                let along = span(
                    points.first().map_or(0.0, |p| p.0),
                    points.last().map_or(0.0, |p| p.0),
                );
                let shape = |unit: Complex, sloped: bool| -> Vec<f64> {
                    let one = |(hz, _): &(f64, Complex)| {
                        let size = if sloped { along(*hz) } else { 1.0 };
                        let e = (unit * turn(port_m, *hz)).scale(size / self.noise);
                        [e.re, e.im]
                    };
                    points.iter().flat_map(one).collect()
                };
                alloc::vec![
                    shape(Complex::ONE, false),
                    shape(Complex::J, false),
                    shape(Complex::ONE, true),
                    shape(Complex::J, true),
                ]
            }
            Measurement::Magnitude(points) => {
                let along = span(
                    points.first().map_or(0.0, |p| p.0),
                    points.last().map_or(0.0, |p| p.0),
                );
                alloc::vec![
                    points.iter().map(|_| 1.0 / self.noise).collect(),
                    points
                        .iter()
                        .map(|(hz, _)| along(*hz) / self.noise)
                        .collect(),
                ]
            }
            Measurement::BestAt { .. } => alloc::vec![alloc::vec![1.0 / self.noise, 0.0]],
        }
    }

    /// Root mean square of the differences, as reflection.
    pub(super) fn misfit(&self, residuals: &[f64]) -> f64 {
        let sum: f64 = residuals.iter().map(|r| r * r).sum();
        let count = residuals.len().max(1) as f64;
        self.noise * math::sqrt(sum / count)
    }
}

/// Where the model is computed, and how it is interpolated from there.
fn model_points(frequencies: Vec<f64>) -> (Vec<f64>, Vec<Vec<f64>>) {
    match (frequencies.first(), frequencies.last()) {
        (Some(first), Some(last)) if frequencies.len() > MOST_DIRECT => {
            let nodes = ChebyshevPoints::new(*first, *last, NODES);
            let weights = frequencies.iter().map(|hz| nodes.weights(*hz)).collect();
            (nodes.points().to_vec(), weights)
        }
        _ => (frequencies, Vec::new()),
    }
}
