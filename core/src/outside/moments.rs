//! Azimuthal moments of the free-space kernel between two panels at one frequency.

use super::samples::{PointPair, Samples};
use crate::complex::Complex;
use crate::phasor::sines_and_cosines;

/// Highest moment: order 2 needs `cos 3ψ`.
const MOMENTS: usize = 4;

/// `∫∫ λ_a λ_b ∫ g cos mψ dψ ds ds'` for m = 0..3, with `g = e^(-jkR)/(4πR)` and the
/// rising (1) or falling (0) triangles λ on the two panels.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Moments {
    pub(super) of: [[[Complex; 2]; 2]; MOMENTS],
}

/// Reads the samples of a pair of panels from the front of the lists.
pub(super) struct Reader<'a> {
    points: core::slice::Iter<'a, PointPair>,
    distance: &'a [f64],
    weight: &'a [f64],
    cosine: &'a [f64],
}

impl<'a> Reader<'a> {
    pub(super) fn new(samples: &'a Samples) -> Self {
        Self {
            points: samples.points.iter(),
            distance: &samples.distance,
            weight: &samples.weight,
            cosine: &samples.cosine,
        }
    }

    /// Moments of the next `points` pairs of points.
    pub(super) fn moments(&mut self, k: f64, points: u32) -> Moments {
        let mut moments = Moments::default();
        for _ in 0..points {
            let Some(point) = self.points.next() else {
                break;
            };
            let kernel = self.round(k, point.samples as usize);
            let first = [1.0 - point.s, point.s].map(|part| part * point.weight);
            let second = [1.0 - point.t, point.t];
            for (sum, kernel) in moments.of.iter_mut().zip(kernel) {
                for (row, a) in sum.iter_mut().zip(first) {
                    for (place, b) in row.iter_mut().zip(second) {
                        *place += kernel.scale(a * b);
                    }
                }
            }
        }
        moments
    }

    /// `∫ g cos mψ dψ` of the next `count` samples.
    fn round(&mut self, k: f64, count: usize) -> [Complex; MOMENTS] {
        let count = count.min(self.distance.len());
        let (distance, distances) = self.distance.split_at(count);
        let (weight, weights) = self.weight.split_at(count);
        let (cosine, cosines) = self.cosine.split_at(count);
        (self.distance, self.weight, self.cosine) = (distances, weights, cosines);
        // Two at a time, which processors do as one.
        let (mut re, mut im) = ([[0.0; 2]; MOMENTS], [[0.0; 2]; MOMENTS]);
        let pairs = distance.as_chunks::<2>().0.iter();
        let pairs = pairs
            .zip(weight.as_chunks::<2>().0)
            .zip(cosine.as_chunks::<2>().0);
        for ((r, w), c) in pairs {
            let [sines, cosines] = sines_and_cosines(r.map(|r| k * r));
            for lane in 0..2 {
                let c = c[lane];
                let twice = 2.0 * c * c - 1.0;
                let turns = [1.0, c, twice, c * (2.0 * twice - 1.0)];
                let (x, y) = (w[lane] * cosines[lane], -w[lane] * sines[lane]);
                for m in 0..MOMENTS {
                    re[m][lane] += x * turns[m];
                    im[m][lane] += y * turns[m];
                }
            }
        }
        [0, 1, 2, 3].map(|m: usize| Complex::new(re[m][0] + re[m][1], im[m][0] + im[m][1]))
    }
}
