//! A minimum found on the grid, and its refinement with the true solver.

use alloc::vec::Vec;

use super::Setting;
use super::surrogate::{Surrogate, blend, worst};
use crate::chebyshev::ChebyshevPoints;
use crate::complex::Complex;

/// A length and distance with its largest |Γ| over the band.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Candidate {
    pub(super) length_m: f64,
    pub(super) distance_m: f64,
    pub(super) worst: f64,
}

/// Points of the local patch along each dimension.
const PATCH_LENGTHS: usize = 3;
const PATCH_DISTANCES: usize = 5;
/// How often the patch may move on when the minimum lies on its edge.
const MOST_MOVES: usize = 2;
/// Half width of the patch in grid steps.
const PATCH_STEPS: f64 = 1.5;
/// Cells of the patch on which its minimum is looked for.
const PATCH_CELLS: usize = 40;

/// Computes a patch round the candidate anew and takes its minimum.
pub(super) fn refine(setting: &Setting, surrogate: &Surrogate, start: Candidate) -> Candidate {
    let mut best = start;
    for _ in 0..MOST_MOVES {
        let patch = Patch::new(setting, surrogate, best);
        let (found, on_edge) = patch.minimum(best);
        best = found;
        if !on_edge {
            break;
        }
    }
    best
}

struct Patch {
    lengths: ChebyshevPoints,
    distances: ChebyshevPoints,
    frequencies: usize,
    /// For each length, for each distance, for each frequency.
    samples: Vec<Vec<Vec<Complex>>>,
    bounds: [(f64, f64); 2],
}

impl Patch {
    fn new(setting: &Setting, surrogate: &Surrogate, centre: Candidate) -> Self {
        let (length_step, distance_step) = surrogate.grid_steps_m();
        let within = |middle: f64, step: f64, (low, high): (f64, f64)| {
            let half = PATCH_STEPS * step;
            ((middle - half).max(low), (middle + half).min(high))
        };
        let length = within(centre.length_m, length_step, setting.lengths_m);
        let distance = within(centre.distance_m, distance_step, setting.distances_m);
        let count = if surrogate.distance_is_free() {
            PATCH_DISTANCES
        } else {
            1
        };
        let lengths = ChebyshevPoints::new(length.0, length.1, PATCH_LENGTHS);
        let distances = ChebyshevPoints::new(distance.0, distance.1, count);
        let frequencies = setting.conditions.len();
        let samples = lengths
            .points()
            .iter()
            .map(|length_m| sample_row(setting, *length_m, distances.points(), frequencies))
            .collect();
        Self {
            lengths,
            distances,
            frequencies,
            samples,
            bounds: [length, distance],
        }
    }

    /// The patch's minimum, and whether it lies on an edge that the search may cross.
    fn minimum(&self, start: Candidate) -> (Candidate, bool) {
        let [length, distance] = self.bounds;
        let cells = if self.distances.points().len() > 1 {
            PATCH_CELLS
        } else {
            0
        };
        let at =
            |(low, high): (f64, f64), i: usize| low + (high - low) * i as f64 / PATCH_CELLS as f64;
        let mut best = Candidate {
            worst: f64::INFINITY,
            ..start
        };
        let mut on_edge = false;
        for k in 0..=cells {
            let distance_m = if cells == 0 {
                start.distance_m
            } else {
                at(distance, k)
            };
            let weights = self.distances.weights(distance_m);
            let rows: Vec<Vec<Complex>> = self
                .samples
                .iter()
                .map(|row| blend(&weights, row, self.frequencies))
                .collect();
            for i in 0..=PATCH_CELLS {
                let length_m = at(length, i);
                let worst = worst(&self.lengths.weights(length_m), &rows, self.frequencies);
                if worst < best.worst {
                    best = Candidate {
                        length_m,
                        distance_m,
                        worst,
                    };
                    on_edge =
                        i == 0 || i == PATCH_CELLS || (cells > 0 && (k == 0 || k == PATCH_CELLS));
                }
            }
        }
        (best, on_edge)
    }
}

/// One length at several distances, computed with the true solver.
fn sample_row(
    setting: &Setting,
    length_m: f64,
    distances: &[f64],
    frequencies: usize,
) -> Vec<Vec<Complex>> {
    let first = distances.last().copied().unwrap_or_default();
    let probe = setting.prepare(length_m, first);
    distances
        .iter()
        .map(|distance_m| {
            probe
                .as_ref()
                .and_then(|probe| probe.at_backshort_distance(*distance_m).ok())
                .map_or_else(
                    || alloc::vec![Complex::ONE; frequencies],
                    |probe| {
                        setting
                            .reflections(&probe)
                            .map(|point| point.reflection)
                            .collect()
                    },
                )
        })
        .collect()
}
