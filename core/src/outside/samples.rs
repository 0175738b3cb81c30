//! Where and with what weight the kernel is taken: everything that depends on
//! the shape alone, made once and used at every frequency.
//!
//! Round the axis: `ψ = δ sinh(U x)`, `δ = d/√(ρρ')`, `U = asinh(π/δ)`, Gauss in x
//! on [0, 1]. That takes out the peak at ψ = 0 whatever the distance d between
//! the two points of the arc. Along the arc: two by two Gauss points for panels
//! apart; for the same and neighbouring panels three, and the inner integral is
//! split at the nearest point with a cubic substitution, which takes out the
//! logarithm.

use alloc::vec::Vec;
use core::f64::consts::PI;

use super::arc::Panel;
use crate::math;
use crate::phasor::sine_and_cosine;
use crate::quadrature::GaussLegendre;

/// One pair of points on two panels.
#[derive(Clone, Copy, Debug)]
pub(super) struct PointPair {
    /// Share of the first panel's length.
    pub(super) s: f64,
    /// Share of the second panel's length.
    pub(super) t: f64,
    /// Weight of the pair, lengths included, m².
    pub(super) weight: f64,
    /// Number of its samples round the axis.
    pub(super) samples: u32,
}

/// Two panels with their pairs of points.
#[derive(Clone, Copy, Debug)]
pub(super) struct PanelPair {
    pub(super) i: u32,
    pub(super) j: u32,
    pub(super) points: u32,
}

/// All of them, one after the other.
#[derive(Clone, Debug, Default)]
pub(super) struct Samples {
    pub(super) pairs: Vec<PanelPair>,
    pub(super) points: Vec<PointPair>,
    /// Distances R between the two points in space, m.
    pub(super) distance: Vec<f64>,
    /// Weight of a sample over `4πR`, 1/m.
    pub(super) weight: Vec<f64>,
    /// `cos ψ`.
    pub(super) cosine: Vec<f64>,
}

/// Panels are near when an end of one is closer to an end of the other than this
/// share of the longer one.
const NEAR: f64 = 0.5;
/// Fewest samples round half the axis with and without the substitution; samples
/// come in pairs.
const FEWEST_PEAKED: usize = 6;
const FEWEST_EVEN: usize = 4;
/// Most pairs beyond these.
const MOST_BEYOND: usize = 30;

/// Least `d/√(ρρ')`.
const CLOSEST: f64 = 1e-6;
/// `d/√(ρρ')` from which the kernel has no peak worth a substitution.
const APART: f64 = 0.8;

/// Pairs of samples beyond the fewest for a phase round half the axis and a reach
/// of the substitution.
fn peaked_beyond(phase: f64, reach: f64) -> usize {
    math::round(0.22 * phase + 0.18 * reach + 0.45) as usize
}

/// The same without the substitution; 0.6 + 3.5/δ stands for 2/asinh(δ/2).
fn even_beyond(phase: f64, delta: f64) -> usize {
    let wanted = 2.1 + 3.5 / delta + 0.3 * phase;
    let beyond = (wanted - FEWEST_EVEN as f64).max(0.0);
    math::round(0.5 * beyond + 0.45) as usize
}

/// Makes samples.
#[derive(Debug)]
pub(super) struct Sampler {
    far: [(f64, f64); 2],
    near: Vec<(f64, f64)>,
    /// Gauss rules on [0, 1] with `FEWEST_PEAKED + 2 n` points.
    peaked: Vec<Vec<(f64, f64)>>,
    /// Cosines of `FEWEST_EVEN + 2 n` evenly spaced angles.
    even: Vec<Vec<f64>>,
    /// Highest wavenumber, rad/m.
    k: f64,
}

fn rule(n: usize) -> Vec<(f64, f64)> {
    GaussLegendre::new(n).on(0.0, 1.0).collect()
}

/// Cosines of the middles of n equal parts of half a turn.
fn even_cosines(n: usize) -> Vec<f64> {
    let step = PI / n as f64;
    (0..n).map(|i| math::cos((i as f64 + 0.5) * step)).collect()
}

impl Sampler {
    /// For wavenumbers up to `k` and distances from the axis up to `radius`.
    pub(super) fn new(k: f64, radius: f64) -> Self {
        let two = rule(2);
        let most = |beyond: usize| beyond.min(MOST_BEYOND);
        let peaked = most(peaked_beyond(2.0 * k * radius, math::asinh(PI / CLOSEST)));
        let even = most(even_beyond(2.0 * k * radius, APART));
        Self {
            far: [0, 1].map(|n| two.get(n).copied().unwrap_or_default()),
            near: rule(3),
            peaked: (0..=peaked).map(|n| rule(FEWEST_PEAKED + 2 * n)).collect(),
            even: (0..=even)
                .map(|n| even_cosines(FEWEST_EVEN + 2 * n))
                .collect(),
            k,
        }
    }

    /// Makes room for the samples of about so many pairs of panels.
    pub(super) fn reserve(to: &mut Samples, pairs: usize) {
        const POINTS: usize = 5;
        const SAMPLES: usize = 8;
        to.pairs.reserve(pairs);
        to.points.reserve(POINTS * pairs);
        for list in [&mut to.distance, &mut to.weight, &mut to.cosine] {
            list.reserve(POINTS * SAMPLES * pairs);
        }
    }

    /// Adds the samples of two panels, numbered i and j.
    pub(super) fn add(
        &self,
        to: &mut Samples,
        (i, first): (usize, &Panel),
        (j, second): (usize, &Panel),
    ) {
        let before = to.points.len();
        let scale = first.length * second.length;
        let close = NEAR * first.length.max(second.length);
        if i == j || first.end_distance(second) < close {
            for &(s, w) in &self.near {
                self.inner_near(to, (first, s), second, w * scale);
            }
        } else {
            for (s, w) in self.far {
                for (t, v) in self.far {
                    self.round(to, (first, s), (second, t), w * v * scale);
                }
            }
        }
        to.pairs.push(PanelPair {
            i: i as u32,
            j: j as u32,
            points: (to.points.len() - before) as u32,
        });
    }

    /// The inner integral over a panel near the outer point.
    fn inner_near(&self, to: &mut Samples, outer: (&Panel, f64), inner: &Panel, weight: f64) {
        let (rho, z) = outer.0.at(outer.1);
        let offset = (rho - inner.rho[0]) * inner.across + (z - inner.z[0]) * inner.along;
        let split = (offset / inner.length).clamp(0.0, 1.0);
        for (edge, length) in [(split, -split), (split, 1.0 - split)] {
            if math::fabs(length) < 1e-9 {
                continue;
            }
            for &(x, w) in &self.near {
                let t = edge + length * x * x * x;
                let weight = weight * w * 3.0 * x * x * math::fabs(length);
                self.round(to, outer, (inner, t), weight);
            }
        }
    }

    /// The samples round the axis of one pair of points.
    fn round(
        &self,
        to: &mut Samples,
        (first, s): (&Panel, f64),
        (second, t): (&Panel, f64),
        weight: f64,
    ) {
        let (rho, z) = first.at(s);
        let (other_rho, other_z) = second.at(t);
        let (across, along) = (rho - other_rho, z - other_z);
        let square = across * across + along * along;
        let product = rho * other_rho;
        let delta = math::sqrt(square / product).clamp(CLOSEST, 1e9);
        // The phase along the way round decides how many samples it takes.
        let phase = self.k * (math::sqrt(square + 4.0 * product) - math::sqrt(square));
        let samples = if delta < APART {
            self.peaked(to, delta, phase, (square, product))
        } else {
            self.even(to, delta, phase, (square, product))
        };
        to.points.push(PointPair {
            s,
            t,
            weight,
            samples: samples as u32,
        });
    }

    /// Samples where the kernel peaks at ψ = 0.
    fn peaked(
        &self,
        to: &mut Samples,
        delta: f64,
        phase: f64,
        (square, product): (f64, f64),
    ) -> usize {
        let reach = math::asinh(PI / delta);
        let rule = pick(&self.peaked, peaked_beyond(phase, reach));
        for &(x, w) in rule {
            let e = math::exp(reach * x);
            let inverse = 1.0 / e;
            let psi = delta * 0.5 * (e - inverse);
            let stretch = delta * 0.5 * (e + inverse) * reach;
            let cosine = sine_and_cosine(psi).1;
            let distance = math::sqrt(square + 2.0 * product * (1.0 - cosine));
            to.distance.push(distance);
            to.cosine.push(cosine);
            // Twice for the other half turn.
            to.weight.push(w * stretch / (2.0 * PI * distance));
        }
        rule.len()
    }

    /// Samples where it does not: evenly spaced, which converges like a power
    /// with the distance of the nearest singularity, `2 asinh(δ/2)` off the real
    /// angles.
    fn even(
        &self,
        to: &mut Samples,
        delta: f64,
        phase: f64,
        (square, product): (f64, f64),
    ) -> usize {
        let rule = pick(&self.even, even_beyond(phase, delta));
        let weight = 0.5 / rule.len() as f64;
        for &cosine in rule {
            let distance = math::sqrt(square + 2.0 * product * (1.0 - cosine));
            to.distance.push(distance);
            to.cosine.push(cosine);
            to.weight.push(weight / distance);
        }
        rule.len()
    }
}

/// The rule of a list, or its last.
fn pick<T>(rules: &[Vec<T>], number: usize) -> &[T] {
    rules
        .get(number)
        .or(rules.last())
        .map_or(&[], Vec::as_slice)
}
