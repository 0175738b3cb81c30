//! How far one dimension may be off before the match is no longer good.

use alloc::vec::Vec;

use super::Setting;
use super::surrogate::{Surrogate, worst};
use crate::chebyshev::ChebyshevPoints;
use crate::complex::Complex;
use crate::design::Micrometres;
use crate::probe::PreparedProbe;
use crate::reflection::magnitude_of_vswr;
use crate::si::micrometres;

/// (shorter by, longer by): how far a dimension may be off each way.
pub type Allowance = (Micrometres, Micrometres);

/// How far one dimension alone may be off before the largest VSWR of the band
/// passes a limit. Where the limit isn't reached within the range searched, the
/// allowance ends at that range's edge.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Slack {
    /// Before VSWR passes 1.5; `None` where it is over 1.5 already.
    pub to_vswr_1_5: Option<Allowance>,
    /// Before VSWR passes 2.
    pub to_vswr_2: Option<Allowance>,
}

/// Step of the walk outward from the best cut.
const STEP_M: f64 = 1e-4;
/// How far from the best distance is looked, metres over its own size.
const DISTANCE_REACH: f64 = 0.45;
const DISTANCE_POINTS: usize = 11;

pub(super) fn of_length(
    setting: &Setting,
    surrogate: &Surrogate,
    length_m: f64,
    distance_m: f64,
) -> Slack {
    let rows = surrogate.along_length(setting, distance_m);
    let worst_at = |x: f64| surrogate.worst_along(&rows, x);
    slack(worst_at, length_m, surrogate.length_range_m())
}

pub(super) fn of_distance(setting: &Setting, probe: &PreparedProbe, distance_m: f64) -> Slack {
    let low = distance_m * (1.0 - DISTANCE_REACH);
    let high = distance_m * (1.0 + DISTANCE_REACH);
    let points = ChebyshevPoints::new(low, high, DISTANCE_POINTS);
    let frequencies = setting.conditions.len();
    let rows: Vec<Vec<Complex>> = points
        .points()
        .iter()
        .map(|distance_m| {
            probe.at_backshort_distance(*distance_m).map_or_else(
                |_| alloc::vec![Complex::ONE; frequencies],
                |moved| {
                    setting
                        .reflections(&moved)
                        .map(|point| point.reflection)
                        .collect()
                },
            )
        })
        .collect();
    let worst_at = |x: f64| worst(&points.weights(x), &rows, frequencies);
    slack(worst_at, distance_m, (low, high))
}

fn slack(worst_at: impl Fn(f64) -> f64, best: f64, range: (f64, f64)) -> Slack {
    Slack {
        to_vswr_1_5: allowance(&worst_at, best, range, magnitude_of_vswr(1.5)),
        to_vswr_2: allowance(&worst_at, best, range, magnitude_of_vswr(2.0)),
    }
}

fn allowance(
    worst_at: &impl Fn(f64) -> f64,
    best: f64,
    (low, high): (f64, f64),
    limit: f64,
) -> Option<Allowance> {
    let at_best = worst_at(best);
    (at_best <= limit).then(|| {
        (
            micrometres(walk(worst_at, best, at_best, -STEP_M, best - low, limit)),
            micrometres(walk(worst_at, best, at_best, STEP_M, high - best, limit)),
        )
    })
}

/// Walks outward until the limit is passed; how far that is, interpolated.
fn walk(
    worst_at: &impl Fn(f64) -> f64,
    best: f64,
    at_best: f64,
    step: f64,
    reach: f64,
    limit: f64,
) -> f64 {
    let mut before = at_best;
    let mut gone = 0.0;
    while gone + step.abs() <= reach {
        let next = worst_at(best + step * (gone / step.abs() + 1.0));
        if next > limit {
            return gone + step.abs() * (limit - before) / (next - before);
        }
        before = next;
        gone += step.abs();
    }
    reach.max(0.0)
}
