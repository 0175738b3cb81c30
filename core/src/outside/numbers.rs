//! A solved outside as plain numbers and back, so that it can go from one thread
//! of a program to another.

use alloc::vec::Vec;

use super::far_series::FarSeries;
use super::mouth_mode::MouthMode;
use super::outline::Outline;
use super::solution::OutsideSolution;
use super::spectrum::OutsideSpectrum;
use crate::chebyshev::ChebyshevPoints;
use crate::complex::Complex;

/// Most frequencies and terms that numbers are taken for: far more than any body
/// that is solved has.
const MOST: f64 = 4096.0;

impl OutsideSpectrum {
    /// The solution as numbers; only [`Self::from_numbers`] reads them.
    #[must_use]
    pub fn to_numbers(&self) -> Vec<f64> {
        let (low, high) = self.band_hz();
        let mut numbers = alloc::vec![self.solutions.len() as f64, low, high];
        for solution in &self.solutions {
            numbers.push(solution.frequency_hz);
            for mode in &solution.modes {
                let terms = mode.series.theta.len().min(mode.series.phi.len());
                numbers.extend([mode.ka, mode.k, mode.centre_m]);
                numbers.extend([mode.admittance.re, mode.admittance.im, terms as f64]);
                for series in [&mode.series.theta, &mode.series.phi] {
                    for term in series.iter().take(terms) {
                        numbers.extend([term.re, term.im]);
                    }
                }
            }
        }
        numbers
    }

    /// The solution of an outline from its numbers; `None` if they aren't such.
    #[must_use]
    pub fn from_numbers(outline: &Outline, numbers: &[f64]) -> Option<Self> {
        let mut numbers = numbers.iter().copied();
        let count = whole(numbers.next()?)?;
        let (low, high) = (numbers.next()?, numbers.next()?);
        let mut solutions = Vec::new();
        for _ in 0..count {
            let frequency_hz = numbers.next()?;
            let mut mode = |order| read_mode(outline, order, &mut numbers);
            solutions.push(OutsideSolution {
                frequency_hz,
                modes: [mode(0)?, mode(1)?, mode(2)?],
            });
        }
        Some(Self {
            outline: *outline,
            points: ChebyshevPoints::new(low, high, count),
            solutions,
        })
    }
}

fn whole(number: f64) -> Option<usize> {
    (1.0..=MOST).contains(&number).then_some(number as usize)
}

fn read_mode(
    outline: &Outline,
    order: usize,
    numbers: &mut impl Iterator<Item = f64>,
) -> Option<MouthMode> {
    let (ka, k, centre_m) = (numbers.next()?, numbers.next()?, numbers.next()?);
    let admittance = Complex::new(numbers.next()?, numbers.next()?);
    let terms = whole(numbers.next()?)?;
    let mut list = || -> Option<Vec<Complex>> {
        (0..terms)
            .map(|_| Some(Complex::new(numbers.next()?, numbers.next()?)))
            .collect()
    };
    let (theta, phi) = (list()?, list()?);
    Some(MouthMode {
        ka,
        k,
        centre_m,
        radius_m: outline.radius_m,
        admittance,
        series: FarSeries { order, theta, phi },
    })
}
