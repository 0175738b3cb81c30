//! What a fit amounts to: estimates with bounds, and whether one cause can be told
//! from another.

use alloc::vec::Vec;

use super::knowledge::Knowledge;
use crate::dimension::Dimension;
use crate::least_squares::SquareMatrix;
use crate::math;

/// 95 % points of the chi-square distribution with 1 to 8 degrees of freedom.
/// Source: M. Abramowitz and I. A. Stegun, *Handbook*, 1964, table 26.8.
const CHI_SQUARE_95: [f64; 8] = [3.841, 5.991, 7.815, 9.488, 11.070, 12.592, 14.067, 15.507];
/// Correlations beyond this make two causes look alike.
const ALIKE: f64 = 0.9;
/// A dimension counts as measured when its bound shrinks below this share of what it
/// was before.
const MEASURED: f64 = 0.6;

/// So many standard deviations from what was expected several dimensions together may
/// lie, the wire's length apart, and still be a maker's small errors. Common practice,
/// no source.
const LIKELY: f64 = 5.0;
/// The same for the wire's length, which makers leave long on purpose.
const LIKELY_LENGTH: f64 = 12.0;

/// How far one dimension is off the drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Estimate {
    /// Which.
    pub dimension: Dimension,
    /// Deviation from the drawing, in the unit of [`Dimension::of`].
    pub change: f64,
    /// Its standard deviation; twice this either way holds 95 % of cases.
    pub sd: f64,
    /// Whether the measurement told it, rather than the tolerance known before.
    pub measured: bool,
}

/// What explains the measurement.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Conclusion {
    /// The can is as drawn, within the bounds.
    AsDrawn,
    /// One dimension alone explains it, and no other alone does.
    OneCause(Dimension),
    /// Each of these alone explains it: the measurement can't tell them apart.
    CannotTell(Vec<Dimension>),
    /// No dimension alone explains it; all together do.
    SeveralTogether,
    /// Even all together leave more than noise and the model's own error, or they
    /// would have to be off much further than makers are.
    Unexplained,
}

/// The outcome of a fit.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Diagnosis {
    /// Each dimension's deviation.
    pub estimates: Vec<Estimate>,
    /// The port's extra length and its standard deviation, metres of air line; only
    /// where phase was measured and it was asked for.
    pub port_length_m: Option<(f64, f64)>,
    /// What it amounts to.
    pub conclusion: Conclusion,
    /// Pairs that look alike, with their correlation.
    pub alike: Vec<(Dimension, Dimension, f64)>,
    /// Root mean square of what is left between measurement and fitted can, as
    /// reflection.
    pub misfit: f64,
    /// The same between measurement and drawing, the port's length taken away.
    pub misfit_as_drawn: f64,
    /// What is known now: for the next measurement.
    pub knowledge: Knowledge,
}

/// Puts a fit's numbers into words' shape. `covariance` has the dimensions first.
pub(super) fn conclude(
    before: &Knowledge,
    changes: &[f64],
    covariance: &SquareMatrix,
    (misfit, misfit_as_drawn): (f64, f64),
    expected_misfit: f64,
) -> Diagnosis {
    let count = before.dimensions.len();
    let sd = |i: usize| math::sqrt(covariance.at(i, i).max(0.0));
    let all: Vec<usize> = (0..count).collect();
    let estimates = before
        .dimensions
        .iter()
        .zip(changes)
        .enumerate()
        .map(|(i, (dimension, change))| Estimate {
            dimension: *dimension,
            change: *change,
            sd: sd(i),
            measured: sd(i) < MEASURED * math::sqrt(before.covariance.at(i, i)),
        })
        .collect();
    let mut alike = Vec::new();
    for (i, one) in before.dimensions.iter().enumerate() {
        for (k, other) in before.dimensions.iter().enumerate().take(i) {
            let correlation = covariance.at(i, k) / (sd(i) * sd(k));
            if correlation.abs() > ALIKE {
                alike.push((*other, *one, correlation));
            }
        }
    }
    let conclusion = if misfit > 3.0 * expected_misfit {
        Conclusion::Unexplained
    } else if stays(covariance, changes, &all) {
        Conclusion::AsDrawn
    } else {
        let alone = before.dimensions.iter().enumerate().filter(|(i, _)| {
            let others: Vec<usize> = all.iter().copied().filter(|k| k != i).collect();
            stays(covariance, changes, &others)
        });
        let alone: Vec<Dimension> = alone.map(|(_, d)| *d).collect();
        match alone.as_slice() {
            [] if are_likely(before, changes) => Conclusion::SeveralTogether,
            [] => Conclusion::Unexplained,
            [one] => Conclusion::OneCause(*one),
            _ => Conclusion::CannotTell(alone),
        }
    };
    Diagnosis {
        estimates,
        port_length_m: (covariance.size() > count)
            .then(|| (changes.get(count).copied().unwrap_or(0.0), sd(count))),
        conclusion,
        alike,
        misfit,
        misfit_as_drawn,
        knowledge: Knowledge {
            dimensions: before.dimensions.clone(),
            means: changes.iter().take(count).copied().collect(),
            covariance: covariance.part(&all),
        },
    }
}

/// Whether deviations are such as could be expected before.
fn are_likely(before: &Knowledge, changes: &[f64]) -> bool {
    let off = |i: usize| {
        let mean = before.means.get(i).copied().unwrap_or(0.0);
        changes.get(i).copied().unwrap_or(0.0) - mean
    };
    let all = 0..before.dimensions.len();
    let (length, others): (Vec<usize>, Vec<usize>) =
        all.partition(|i| before.dimensions.get(*i) == Some(&Dimension::ProbeLength));
    let squared = |which: &[usize]| {
        let off: Vec<f64> = which.iter().map(|i| off(*i)).collect();
        let weighted = before.covariance.part(which).solve(&off)?;
        Some(off.iter().zip(&weighted).map(|(a, b)| a * b).sum::<f64>())
    };
    [(length, LIKELY_LENGTH), (others, LIKELY)]
        .iter()
        .all(|(which, most)| which.is_empty() || squared(which).is_some_and(|s| s <= most * most))
}

/// Whether these dimensions may all be as drawn: their joint deviation lies within
/// its 95 % region.
fn stays(covariance: &SquareMatrix, changes: &[f64], which: &[usize]) -> bool {
    let Some(limit) = which
        .len()
        .checked_sub(1)
        .and_then(|n| CHI_SQUARE_95.get(n))
    else {
        return true;
    };
    let off: Vec<f64> = which
        .iter()
        .filter_map(|i| changes.get(*i).copied())
        .collect();
    let Some(weighted) = covariance.part(which).solve(&off) else {
        return false;
    };
    off.iter().zip(&weighted).map(|(a, b)| a * b).sum::<f64>() <= *limit
}
