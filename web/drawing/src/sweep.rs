//! A sweep between its points, near a frequency, and within a band.

use tinwave_core::complex::Complex;
use tinwave_core::design::Band;
use tinwave_core::match_band::SweepPoint;
use tinwave_core::reflection::{PointMatch, vswr};

/// The match between the points of a sweep: the reflection is drawn straight
/// from point to point.
#[must_use]
pub fn interpolate(points: &[SweepPoint], khz: u32) -> Option<PointMatch> {
    let after = points.iter().position(|point| point.frequency_khz >= khz)?;
    let right = points.get(after)?;
    if right.frequency_khz == khz {
        return right.at;
    }
    let left = points.get(after.checked_sub(1)?)?;
    let (a, b) = (left.at?, right.at?);
    let width = f64::from(right.frequency_khz.saturating_sub(left.frequency_khz)).max(1.0);
    let part = f64::from(khz.saturating_sub(left.frequency_khz)) / width;
    let reflection = a.reflection.scale(1.0 - part) + b.reflection.scale(part);
    // The reference follows from any point: Z (1 - g) = Z0 (1 + g).
    let reference = a.impedance_ohm * (Complex::ONE - a.reflection) / (Complex::ONE + a.reflection);
    let impedance_ohm = reference * (Complex::ONE + reflection) / (Complex::ONE - reflection);
    Some(PointMatch {
        impedance_ohm,
        reflection,
        vswr: vswr(reflection.abs()),
    })
}

/// The point of a sweep nearest to a frequency.
#[must_use]
pub fn nearest(points: &[SweepPoint], khz: u32) -> Option<&SweepPoint> {
    points
        .iter()
        .min_by_key(|point| point.frequency_khz.abs_diff(khz))
}

/// The points within a band, its edges put in.
#[must_use]
pub fn within_band(points: &[SweepPoint], band: Band) -> Vec<SweepPoint> {
    let edge = |khz: u32| SweepPoint {
        frequency_khz: khz,
        at: interpolate(points, khz),
    };
    let inside = points
        .iter()
        .filter(|point| point.frequency_khz > band.low_khz && point.frequency_khz < band.high_khz);
    let mut part = Vec::with_capacity(points.len());
    part.push(edge(band.low_khz));
    part.extend(inside.copied());
    part.push(edge(band.high_khz));
    part.retain(|point| point.at.is_some());
    part
}

#[cfg(test)]
mod tests {
    use super::{interpolate, within_band};
    use tinwave_core::complex::Complex;
    use tinwave_core::design::Band;
    use tinwave_core::match_band::SweepPoint;
    use tinwave_core::reflection::PointMatch;

    const BAND: Band = Band {
        low_khz: 2_401_000,
        high_khz: 2_483_500,
    };

    /// 101 points, 2318.5 to 2566 MHz, admittance of a made-up resonance.
    fn sweep() -> Vec<SweepPoint> {
        (0..101_u32)
            .map(|i| {
                let x = (f64::from(i) - 50.0) / 60.0;
                SweepPoint {
                    frequency_khz: 2_318_500 + 2_475 * i,
                    at: Some(PointMatch::from_admittance(
                        Complex::new(0.018, 0.02 * x),
                        50.0,
                    )),
                }
            })
            .collect()
    }

    #[test]
    fn between_points_the_match_lies_between() {
        let points = sweep();
        let at = interpolate(&points, 2_318_500 + 2_475 * 20 + 1_237);
        let (Some(at), Some(left), Some(right)) = (at, points[20].at, points[21].at) else {
            unreachable!("every point has a match");
        };
        assert!(at.vswr < left.vswr && at.vswr > right.vswr);
        // The impedance belongs to the reflection: Z0 (1 + g) / (1 - g), 50 ohm.
        let back = (Complex::ONE + at.reflection) / (Complex::ONE - at.reflection);
        assert!((back.scale(50.0) - at.impedance_ohm).abs() < 1e-9);
        assert!(interpolate(&points, 1).is_none());
        assert!(interpolate(&points, 9_000_000).is_none());
    }

    #[test]
    fn the_band_part_begins_and_ends_at_its_edges() {
        let part = within_band(&sweep(), BAND);
        let ends = (
            part.first().map(|p| p.frequency_khz),
            part.last().map(|p| p.frequency_khz),
        );
        assert_eq!(ends, (Some(BAND.low_khz), Some(BAND.high_khz)));
    }
}
