//! Figures of one cut through the beam.

use alloc::vec::Vec;
use core::f64::consts::PI;

use super::sum_pattern::SumPattern;
use crate::math;

/// Points round a cut.
const POINTS: usize = 360;
/// Half-power angles and peaks are found to this, rad.
const FINE: f64 = 1e-6;

/// A side lobe.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SideLobe {
    /// Signed angle in the cut, rad.
    pub angle_rad: f64,
    /// Level over the cut's peak, dB; negative.
    pub level_db: f64,
}

/// A cut through the axis, sampled all the way round: the wanted polarisation.
#[derive(Clone, Debug)]
pub struct Cut<'a> {
    pattern: &'a SumPattern,
    azimuth_rad: f64,
    /// Directivity at `-π + 2π n/POINTS`.
    levels: Vec<f64>,
    /// Signed angle and directivity of the highest point.
    peak: (f64, f64),
}

impl<'a> Cut<'a> {
    /// The cut of an azimuth, rad: 0 is the E plane, a quarter turn the H plane.
    #[must_use]
    pub fn new(pattern: &'a SumPattern, azimuth_rad: f64) -> Self {
        let mut cut = Self {
            pattern,
            azimuth_rad,
            levels: Vec::with_capacity(POINTS),
            peak: (0.0, 0.0),
        };
        cut.levels = (0..POINTS)
            .map(|n| cut.directivity(Self::angle(n as isize)))
            .collect();
        let mut best = 0;
        for (n, level) in cut.levels.iter().enumerate() {
            if *level > cut.levels.get(best).copied().unwrap_or(0.0) {
                best = n;
            }
        }
        cut.peak = cut.refine(best as isize);
        cut
    }

    fn angle(n: isize) -> f64 {
        -PI + 2.0 * PI * n as f64 / POINTS as f64
    }

    fn level(&self, n: isize) -> f64 {
        let place = n.rem_euclid(POINTS as isize) as usize;
        self.levels.get(place).copied().unwrap_or(0.0)
    }

    /// Directivity at a signed angle, any number of turns.
    fn directivity(&self, angle: f64) -> f64 {
        let turns = math::floor((angle + PI) / (2.0 * PI));
        let within = angle - 2.0 * PI * turns;
        let field = self.pattern.wanted_in_cut(self.azimuth_rad, within);
        field.norm_sqr() / self.pattern.radiated_share()
    }

    /// The maximum next to a sampled one, by golden section.
    fn refine(&self, n: isize) -> (f64, f64) {
        const GOLDEN: f64 = 0.618_033_988_749_894_9;
        let (mut low, mut high) = (Self::angle(n - 1), Self::angle(n + 1));
        while high - low > FINE {
            let span = GOLDEN * (high - low);
            if self.directivity(high - span) >= self.directivity(low + span) {
                high = low + span;
            } else {
                low = high - span;
            }
        }
        let middle = 0.5 * (low + high);
        (middle, self.directivity(middle))
    }

    /// Signed angle of the highest point, rad.
    #[must_use]
    pub const fn peak_angle_rad(&self) -> f64 {
        self.peak.0
    }

    /// Its directivity, dB over isotropic.
    #[must_use]
    pub fn peak_dbi(&self) -> f64 {
        10.0 * math::log10(self.peak.1)
    }

    /// First angle to one side (±1) of the peak at which the power is half the
    /// peak's.
    fn half_power(&self, side: f64) -> Option<f64> {
        let half = 0.5 * self.peak.1;
        let step = 2.0 * PI / POINTS as f64;
        let (start, _) = self.peak;
        let first =
            (1..=POINTS / 2).find(|n| self.directivity(start + side * step * *n as f64) < half)?;
        let (mut near, mut far) = ((first - 1) as f64 * step, first as f64 * step);
        while far - near > FINE {
            let middle = 0.5 * (near + far);
            if self.directivity(start + side * middle) < half {
                far = middle;
            } else {
                near = middle;
            }
        }
        Some(near)
    }

    /// Full width of the beam at half its peak's power, degrees; `None` where the
    /// power does not fall that far.
    #[must_use]
    pub fn half_power_width_deg(&self) -> Option<f64> {
        Some((self.half_power(1.0)? + self.half_power(-1.0)?) * (180.0 / PI))
    }

    /// The higher of the first side lobes left and right of the main beam; `None`
    /// where the power falls all the way to the back.
    #[must_use]
    pub fn first_side_lobe(&self) -> Option<SideLobe> {
        let start = math::round((self.peak.0 + PI) / (2.0 * PI) * POINTS as f64) as isize;
        let on_side = |side: isize| -> Option<(f64, f64)> {
            let at = |n: isize| self.level(start + side * n);
            let reach = POINTS as isize / 2;
            let valley = (1..reach).find(|n| at(n + 1) > at(*n))?;
            let top = (valley + 1..reach).find(|n| at(n + 1) < at(*n))?;
            Some(self.refine(start + side * top))
        };
        let lobes = [on_side(1), on_side(-1)];
        let best = lobes
            .into_iter()
            .flatten()
            .reduce(|a, b| if b.1 > a.1 { b } else { a });
        best.map(|(angle, level)| SideLobe {
            angle_rad: angle - 2.0 * PI * math::floor((angle + PI) / (2.0 * PI)),
            level_db: 10.0 * math::log10(level / self.peak.1),
        })
    }
}
