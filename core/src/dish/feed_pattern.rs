//! What a dish sees of its feed: the wanted field, averaged round the axis, and the
//! power.

use alloc::vec::Vec;
use core::f64::consts::{FRAC_PI_2, PI};

use crate::complex::Complex;
use crate::constants::wavenumber;
use crate::math;
use crate::radiation::SumPattern;

/// Parts that 0 to π is divided into.
const PARTS: usize = 360;
/// Azimuths that the power is averaged over: exact for orders up to 2.
const AZIMUTHS: usize = 8;

/// A feed's pattern, normalised to radiated power: fields whose squared magnitude is
/// the directivity, phase at the rim's middle.
#[derive(Clone, Debug, PartialEq)]
pub struct FeedPattern {
    pub(super) wavenumber: f64,
    /// Mean of the wanted fields in E and H plane at `n π/PARTS`.
    pub(super) wanted: Vec<Complex>,
    /// `∫ power sin θ dθ` from 0 to `n π/PARTS`, 2 in all.
    pub(super) power: Vec<f64>,
}

impl FeedPattern {
    /// Of a can's beam. On the dish's axis TM01 and TE21 cancel; they count as lost.
    #[must_use]
    pub fn new(pattern: &SumPattern) -> Self {
        let norm = 1.0 / math::sqrt(pattern.radiated_share());
        let azimuth = |n: usize| 2.0 * PI * n as f64 / AZIMUTHS as f64;
        let plane = |theta: f64, azimuth: f64| {
            let both = [azimuth, azimuth + PI];
            let fields = both.map(|own| pattern.field(theta, own).wanted_and_crossed(own).0);
            let [one, other] = fields;
            (one + other).scale(0.5 * norm)
        };
        Self::from_fields(
            wavenumber(pattern.frequency_hz()),
            |theta| [plane(theta, 0.0), plane(theta, FRAC_PI_2)],
            |theta| {
                let all = (0..AZIMUTHS).map(|n| pattern.field(theta, azimuth(n)).gain());
                all.sum::<f64>() * norm * norm / AZIMUTHS as f64
            },
        )
    }

    /// From the wanted fields in E and H plane and the power averaged round the axis,
    /// both functions of the polar angle (0 to π); wavenumber in rad/m. The power is
    /// brought to a mean of 1 over the sphere, the fields with it.
    #[must_use]
    pub fn from_fields(
        wavenumber: f64,
        fields: impl Fn(f64) -> [Complex; 2],
        power: impl Fn(f64) -> f64,
    ) -> Self {
        let step = PI / PARTS as f64;
        let angle = |n: usize| n as f64 * step;
        let mut wanted: Vec<Complex> = (0..=PARTS)
            .map(|n| {
                let [e, h] = fields(angle(n));
                (e + h).scale(0.5)
            })
            .collect();
        // Simpson's rule over each part.
        let density = |theta: f64| power(theta) * math::sin(theta);
        let mut sums = Vec::with_capacity(PARTS + 1);
        let mut sum = 0.0;
        sums.push(sum);
        let mut before = density(0.0);
        for n in 1..=PARTS {
            let after = density(angle(n));
            let middle = density(angle(n) - 0.5 * step);
            sum += step / 6.0 * (before + 4.0 * middle + after);
            sums.push(sum);
            before = after;
        }
        let norm = 2.0 / sum;
        for value in &mut sums {
            *value *= norm;
        }
        let root = math::sqrt(norm);
        for value in &mut wanted {
            *value = value.scale(root);
        }
        Self {
            wavenumber,
            wanted,
            power: sums,
        }
    }

    /// Angle of a sample, rad.
    pub(super) fn angle(n: usize) -> f64 {
        n as f64 * (PI / PARTS as f64)
    }

    /// Place of an angle among the samples: the one before it and the share of the
    /// part beyond.
    pub(super) fn place(theta: f64) -> (usize, f64) {
        let place = (theta * (PARTS as f64 / PI)).clamp(0.0, PARTS as f64);
        let before = math::floor(place).min((PARTS - 1) as f64);
        (before as usize, place - before)
    }
}
