//! What a curve of VSWR over frequency amounts to, near a band.

use tinwave_core::design::Band;

/// Frequencies below a VSWR.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Under {
    /// A single point tells no range.
    Unknown,
    /// None.
    Nowhere,
    /// From one to the other.
    Range {
        /// Lower end, Hz.
        low_hz: f64,
        /// Upper end, Hz.
        high_hz: f64,
        /// Whether the range stops there only because the curve does.
        curve_ends: (bool, bool),
    },
}

/// Figures of a curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CurveFigures {
    /// Where it is best in or near the band, Hz, and the VSWR there.
    pub best: Option<(f64, f64)>,
    /// The largest VSWR in the band; none where the curve does not reach across it.
    pub worst_in_band: Option<f64>,
    /// Frequencies round the best one with a VSWR under 2.
    pub under_two: Under,
}

/// A step of a sweep may miss the band's edge by so much of the band.
const EDGE_SLACK: f64 = 0.06;

fn edges(band: Band) -> (f64, f64) {
    (
        f64::from(band.low_khz) * 1e3,
        f64::from(band.high_khz) * 1e3,
    )
}

/// Figures of a curve: frequency in Hz, ascending, and VSWR.
#[must_use]
pub fn curve_figures(band: Band, curve: &[(f64, f64)]) -> CurveFigures {
    CurveFigures {
        best: best(band, curve),
        worst_in_band: worst_in(band, curve),
        under_two: under_two(band, curve),
    }
}

/// The best point in or near the band: within half its width beside it, unless the
/// match only gets better towards the end there.
fn best(band: Band, curve: &[(f64, f64)]) -> Option<(f64, f64)> {
    let (low, high) = edges(band);
    let within = |more: f64| -> Vec<(f64, f64)> {
        let range = low - more..=high + more;
        let points = curve.iter().filter(|point| range.contains(&point.0));
        points.copied().collect()
    };
    let least = |points: &[(f64, f64)]| points.iter().copied().min_by(|a, b| a.1.total_cmp(&b.1));
    let near = within(0.5 * (high - low));
    let found = least(&near);
    let at_end =
        found.is_some() && (found == near.first().copied() || found == near.last().copied());
    let inside = at_end.then(|| least(&within(0.0))).flatten();
    inside.or(found).or_else(|| least(curve))
}

/// The part of a curve between two frequencies, Hz, with its value at each of them where
/// it passes there: along straight lines, as a chart draws it. At most about so many
/// points, its last among them.
#[must_use]
pub fn between(low_hz: f64, high_hz: f64, curve: &[(f64, f64)], most: usize) -> Vec<(f64, f64)> {
    let inside: Vec<_> = curve
        .iter()
        .copied()
        .filter(|point| point.0 > low_hz && point.0 < high_hz)
        .collect();
    let every = inside.len() / most.max(1) + 1;
    let mut part: Vec<_> = at(low_hz, curve).into_iter().collect();
    part.extend(inside.iter().copied().step_by(every));
    if let Some(last) = inside.last().filter(|last| part.last() != Some(*last)) {
        part.push(*last);
    }
    part.extend(at(high_hz, curve));
    part
}

fn at(hz: f64, curve: &[(f64, f64)]) -> Option<(f64, f64)> {
    let after = curve.partition_point(|point| point.0 < hz);
    let right = curve.get(after)?;
    if right.0 == hz {
        return Some(*right);
    }
    let left = curve.get(after.checked_sub(1)?)?;
    let share = (hz - left.0) / (right.0 - left.0);
    Some((hz, left.1 + share * (right.1 - left.1)))
}

fn worst_in(band: Band, curve: &[(f64, f64)]) -> Option<f64> {
    let (low, high) = edges(band);
    let slack = (high - low) * EDGE_SLACK;
    let first = curve.first()?.0 <= low + slack;
    let last = curve.last()?.0 >= high - slack;
    let inside = curve.iter().filter(|point| (low..=high).contains(&point.0));
    let at_edges = [low, high].into_iter().filter_map(|edge| at(edge, curve));
    let worst = inside
        .copied()
        .chain(at_edges)
        .map(|point| point.1)
        .reduce(f64::max);
    worst.filter(|_| first && last && curve.len() > 1)
}

fn under_two(band: Band, curve: &[(f64, f64)]) -> Under {
    let Some((at, there)) = best(band, curve).filter(|_| curve.len() > 1) else {
        return Under::Unknown;
    };
    if there > 2.0 {
        return Under::Nowhere;
    }
    let Some(place) = curve.iter().position(|point| point.0 == at) else {
        return Under::Unknown;
    };
    let is_good = |point: &&(f64, f64)| point.1 <= 2.0;
    let (before, after) = curve.split_at(place);
    let below = before.iter().rev().take_while(is_good).count();
    let above = after.iter().take_while(is_good).count();
    let hz = |index: usize| curve.get(index).map_or(at, |point| point.0);
    Under::Range {
        low_hz: hz(place - below),
        high_hz: hz(place + above.saturating_sub(1)),
        curve_ends: (below == before.len(), above == after.len()),
    }
}

#[cfg(test)]
mod tests {
    use super::{Under, between, curve_figures};
    use tinwave_core::design::Band;

    const BAND: Band = Band {
        low_khz: 2_401_000,
        high_khz: 2_483_500,
    };

    fn curve(points: &[(f64, f64)]) -> Vec<(f64, f64)> {
        points
            .iter()
            .map(|(mhz, vswr)| (mhz * 1e6, *vswr))
            .collect()
    }

    #[test]
    fn a_part_reaches_to_its_ends_where_the_curve_passes_them() {
        let whole = curve(&[(2300.0, 2.0), (2400.0, 1.0), (2500.0, 3.0), (2600.0, 4.0)]);
        let part = between(2350e6, 2550e6, &whole, 100);
        let wanted = [(2350.0, 1.5), (2400.0, 1.0), (2500.0, 3.0), (2550.0, 3.5)];
        assert_eq!(part, curve(&wanted));
        // Beyond what was measured there is nothing.
        assert_eq!(between(2200e6, 2700e6, &whole, 100), whole);
        // Thinned, it still reaches its last point.
        let thin = between(2200e6, 2700e6, &whole, 1);
        assert!(thin.len() < 4 && thin.last() == whole.last(), "{thin:?}");
        assert!(between(2700e6, 2800e6, &whole, 100).is_empty());
    }

    #[test]
    fn a_curve_is_judged_near_the_band() {
        // Far off something else is matched better.
        let far = curve(&[
            (1000.0, 1.01),
            (2380.0, 2.4),
            (2400.0, 1.9),
            (2440.0, 1.5),
            (2480.0, 1.7),
            (2520.0, 2.2),
        ]);
        let figures = curve_figures(BAND, &far);
        assert_eq!(figures.best, Some((2440e6, 1.5)));
        // At 2401 MHz, on the line from 1.9 at 2400 to 1.5 at 2440.
        let worst = figures.worst_in_band.unwrap_or_default();
        assert!((worst - 1.89).abs() < 1e-9, "{worst}");
        let under = Under::Range {
            low_hz: 2400e6,
            high_hz: 2480e6,
            curve_ends: (false, false),
        };
        assert_eq!(figures.under_two, under);
    }

    #[test]
    fn a_range_that_stops_with_the_curve_says_so() {
        let short = curve(&[(2400.0, 1.9), (2440.0, 1.5), (2490.0, 1.7)]);
        let under = Under::Range {
            low_hz: 2400e6,
            high_hz: 2490e6,
            curve_ends: (true, true),
        };
        assert_eq!(curve_figures(BAND, &short).under_two, under);
    }

    #[test]
    fn what_is_not_measured_is_not_told() {
        let point = curve_figures(BAND, &curve(&[(2440.0, 1.5)]));
        assert_eq!(point.best, Some((2440e6, 1.5)));
        assert_eq!(
            (point.worst_in_band, point.under_two),
            (None, Under::Unknown)
        );
        let half = curve_figures(BAND, &curve(&[(2400.0, 1.5), (2440.0, 1.3)]));
        assert_eq!(half.worst_in_band, None);
        let bad = curve_figures(BAND, &curve(&[(2400.0, 3.0), (2440.0, 2.5), (2490.0, 3.0)]));
        assert_eq!(bad.under_two, Under::Nowhere);
        assert_eq!(curve_figures(BAND, &[]).best, None);
    }
}
