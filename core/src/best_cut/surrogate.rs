//! The reflection over length and distance, interpolated from a few points.

use alloc::vec::Vec;

use super::Setting;
use super::candidate::Candidate;
use crate::chebyshev::ChebyshevPoints;
use crate::complex::Complex;
use crate::probe::PreparedProbe;

/// Cells of the grid on which minima are looked for.
const LENGTH_CELLS: usize = 64;
const DISTANCE_CELLS: usize = 96;

/// Reflections at Chebyshev points of length and distance, and their interpolation.
#[derive(Clone, Debug)]
pub(super) struct Surrogate {
    lengths: ChebyshevPoints,
    distances: ChebyshevPoints,
    frequencies: usize,
    /// For each length, for each distance, for each frequency.
    samples: Vec<Vec<Vec<Complex>>>,
    /// The probes at each length, kept for the slack.
    probes: Vec<Option<PreparedProbe>>,
}

impl Surrogate {
    pub(super) fn new(setting: &Setting, lengths: usize, distances: usize) -> Self {
        let (low, high) = setting.lengths_m;
        let (near, far) = setting.distances_m;
        Self {
            lengths: ChebyshevPoints::new(low, high, lengths),
            distances: ChebyshevPoints::new(near, far, distances),
            frequencies: setting.conditions.len(),
            samples: Vec::with_capacity(lengths),
            probes: Vec::with_capacity(lengths),
        }
    }

    pub(super) fn distance_is_free(&self) -> bool {
        self.distances.points().len() > 1
    }

    /// Steps of the grid on which minima are looked for, metres.
    pub(super) fn grid_steps_m(&self) -> (f64, f64) {
        let span = |points: &ChebyshevPoints| {
            let low = points.points().first().copied().unwrap_or_default();
            points.points().last().copied().unwrap_or_default() - low
        };
        (
            span(&self.lengths) / LENGTH_CELLS as f64,
            span(&self.distances) / DISTANCE_CELLS as f64,
        )
    }

    /// Computes one length's row of samples.
    pub(super) fn sample(&mut self, setting: &Setting, index: usize) {
        let Some(length_m) = self.lengths.points().get(index) else {
            return;
        };
        let first = self.distances.points().last().copied().unwrap_or_default();
        let probe = setting.prepare(*length_m, first);
        let row = self
            .distances
            .points()
            .iter()
            .map(|distance_m| self.reflections_at(setting, probe.as_ref(), *distance_m))
            .collect();
        self.samples.push(row);
        self.probes.push(probe);
    }

    /// Reflections of a prepared probe at another distance; all of it comes
    /// back where it can't be computed.
    fn reflections_at(
        &self,
        setting: &Setting,
        probe: Option<&PreparedProbe>,
        distance_m: f64,
    ) -> Vec<Complex> {
        probe
            .and_then(|probe| probe.at_backshort_distance(distance_m).ok())
            .map_or_else(
                || alloc::vec![Complex::ONE; self.frequencies],
                |probe| {
                    setting
                        .reflections(&probe)
                        .map(|point| point.reflection)
                        .collect()
                },
            )
    }

    /// At one distance, computed anew: for each length point, for each frequency.
    pub(super) fn along_length(&self, setting: &Setting, distance_m: f64) -> Vec<Vec<Complex>> {
        self.probes
            .iter()
            .map(|probe| self.reflections_at(setting, probe.as_ref(), distance_m))
            .collect()
    }

    /// Largest |Γ| at a length, from [`Surrogate::along_length`]'s rows.
    pub(super) fn worst_along(&self, rows: &[Vec<Complex>], length_m: f64) -> f64 {
        worst(&self.lengths.weights(length_m), rows, self.frequencies)
    }

    pub(super) fn length_range_m(&self) -> (f64, f64) {
        let points = self.lengths.points();
        (
            points.first().copied().unwrap_or_default(),
            points.last().copied().unwrap_or_default(),
        )
    }

    /// The local minima of the largest |Γ|, the lowest first.
    pub(super) fn minima(&self, most: usize) -> Vec<Candidate> {
        let grid = self.grid();
        let mut found = Vec::new();
        for (i, column) in grid.iter().enumerate() {
            for (k, candidate) in column.iter().enumerate() {
                if is_minimum(&grid, i, k, candidate.worst) {
                    found.push(*candidate);
                }
            }
        }
        found.sort_by(|a, b| a.worst.total_cmp(&b.worst));
        found.truncate(most);
        found
    }

    /// The largest |Γ| on a fine grid: for each distance, for each length.
    fn grid(&self) -> Vec<Vec<Candidate>> {
        let (length_step, distance_step) = self.grid_steps_m();
        let (low, _) = self.length_range_m();
        let near = self.distances.points().first().copied().unwrap_or_default();
        let cells = if self.distance_is_free() {
            DISTANCE_CELLS
        } else {
            0
        };
        let length_weights: Vec<(f64, Vec<f64>)> = (0..=LENGTH_CELLS)
            .map(|i| {
                let length_m = low + length_step * i as f64;
                (length_m, self.lengths.weights(length_m))
            })
            .collect();
        (0..=cells)
            .map(|k| {
                let distance_m = near + distance_step * k as f64;
                let weights = self.distances.weights(distance_m);
                let rows: Vec<Vec<Complex>> = self
                    .samples
                    .iter()
                    .map(|row| blend(&weights, row, self.frequencies))
                    .collect();
                length_weights
                    .iter()
                    .map(|(length_m, weights)| Candidate {
                        length_m: *length_m,
                        distance_m,
                        worst: worst(weights, &rows, self.frequencies),
                    })
                    .collect()
            })
            .collect()
    }
}

/// Weighted sum of rows, frequency by frequency.
pub(super) fn blend(weights: &[f64], rows: &[Vec<Complex>], frequencies: usize) -> Vec<Complex> {
    let mut sum = alloc::vec![Complex::ZERO; frequencies];
    for (weight, row) in weights.iter().zip(rows) {
        for (total, value) in sum.iter_mut().zip(row) {
            *total += value.scale(*weight);
        }
    }
    sum
}

/// Largest magnitude of the weighted sum of rows.
pub(super) fn worst(weights: &[f64], rows: &[Vec<Complex>], frequencies: usize) -> f64 {
    let mut largest: f64 = 0.0;
    for f in 0..frequencies {
        let mut sum = Complex::ZERO;
        for (weight, row) in weights.iter().zip(rows) {
            if let Some(value) = row.get(f) {
                sum += value.scale(*weight);
            }
        }
        largest = largest.max(sum.norm_sqr());
    }
    crate::math::sqrt(largest)
}

/// Whether no neighbour on the grid is lower.
fn is_minimum(grid: &[Vec<Candidate>], i: usize, k: usize, value: f64) -> bool {
    let near = |centre: usize| centre.saturating_sub(1)..=centre + 1;
    near(i).all(|row| {
        near(k).all(|cell| {
            grid.get(row)
                .and_then(|column| column.get(cell))
                .is_none_or(|neighbour| neighbour.worst >= value)
        })
    })
}
