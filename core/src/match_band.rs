//! The match over a band: its worst point, and how far it reaches.

use alloc::vec::Vec;

use crate::design::{Band, Kilohertz, Sweep};
use crate::reflection::PointMatch;

/// Match at one frequency of a sweep.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SweepPoint {
    /// Frequency.
    pub frequency_khz: Kilohertz,
    /// The match; `None` where it could not be computed.
    pub at: Option<PointMatch>,
}

/// A range of frequencies, edges included.
pub type FrequencyRange = (Kilohertz, Kilohertz);

/// The match over the band in a few numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MatchSummary {
    /// Largest VSWR over the band, edges included.
    pub worst_vswr_in_band: f64,
    /// Where the largest VSWR stands.
    pub worst_khz: Kilohertz,
    /// The frequencies round the band's centre over which VSWR stays at or
    /// under 1.5, as far as the sweep reaches; `None` where the centre itself
    /// is over it.
    pub vswr_1_5_khz: Option<FrequencyRange>,
    /// The same for VSWR 2.
    pub vswr_2_khz: Option<FrequencyRange>,
}

/// The frequencies of a sweep: evenly spaced, both ends included, whole kilohertz.
#[must_use]
pub fn sweep_frequencies(sweep: Sweep) -> Vec<Kilohertz> {
    let steps = u64::from(sweep.points.max(2) - 1);
    let width = u64::from(sweep.high_khz.saturating_sub(sweep.low_khz));
    (0..=steps)
        .map(|i| {
            let offset = (width * i + steps / 2) / steps;
            sweep
                .low_khz
                .saturating_add(Kilohertz::try_from(offset).unwrap_or(Kilohertz::MAX))
        })
        .collect()
}

/// Evenly spaced frequencies over a band, edges included.
#[must_use]
pub fn band_frequencies(band: Band, points: u32) -> Vec<Kilohertz> {
    sweep_frequencies(Sweep {
        low_khz: band.low_khz,
        high_khz: band.high_khz,
        points,
    })
}

/// Sums up points (ascending, from the sweep and the band together). `None`
/// where a point of the band could not be computed.
#[must_use]
pub fn summarise(points: &[SweepPoint], band: Band) -> Option<MatchSummary> {
    let mut worst: Option<(f64, Kilohertz)> = None;
    let inside = |khz: Kilohertz| khz >= band.low_khz && khz <= band.high_khz;
    for point in points.iter().filter(|point| inside(point.frequency_khz)) {
        let vswr = point.at?.vswr;
        if worst.is_none_or(|(w, _)| vswr > w) {
            worst = Some((vswr, point.frequency_khz));
        }
    }
    let (worst_vswr_in_band, worst_khz) = worst?;
    Some(MatchSummary {
        worst_vswr_in_band,
        worst_khz,
        vswr_1_5_khz: range_under(points, band.centre_khz(), 1.5),
        vswr_2_khz: range_under(points, band.centre_khz(), 2.0),
    })
}

/// The range round `centre` over which VSWR stays at or under `limit`; crossings
/// are interpolated straight between points.
fn range_under(points: &[SweepPoint], centre: Kilohertz, limit: f64) -> Option<FrequencyRange> {
    let known: Vec<(f64, f64)> = points
        .iter()
        .filter_map(|p| p.at.map(|at| (f64::from(p.frequency_khz), at.vswr)))
        .collect();
    let split = known.partition_point(|(khz, _)| *khz < f64::from(centre));
    let (below, above) = known.split_at_checked(split)?;
    let start = above.first().or_else(|| below.last())?;
    if start.1 > limit {
        return None;
    }
    let high = walk(above.iter().copied(), *start, limit);
    let low = walk(below.iter().rev().copied(), *start, limit);
    Some((
        crate::si::kilohertz(low * 1e3),
        crate::si::kilohertz(high * 1e3),
    ))
}

/// Follows points outward until VSWR passes the limit; gives the frequency there.
fn walk(outward: impl Iterator<Item = (f64, f64)>, start: (f64, f64), limit: f64) -> f64 {
    let mut last = start;
    for (khz, vswr) in outward {
        if vswr > limit {
            let share = (limit - last.1) / (vswr - last.1);
            return last.0 + (khz - last.0) * share;
        }
        last = (khz, vswr);
    }
    last.0
}
