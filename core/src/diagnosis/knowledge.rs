//! What is known of a can's deviations before a measurement.

use alloc::vec::Vec;

use crate::dimension::Dimension;
use crate::least_squares::SquareMatrix;

/// Expected deviations from the drawing and how sure they are.
#[derive(Clone, Debug, PartialEq)]
pub struct Knowledge {
    /// The dimensions that may deviate.
    pub dimensions: Vec<Dimension>,
    /// Expected deviation of each, in the unit of [`Dimension::of`].
    pub means: Vec<f64>,
    /// Covariance of the deviations.
    pub covariance: SquareMatrix,
}

impl Knowledge {
    /// Nothing but independent tolerances (standard deviations above zero).
    #[must_use]
    pub fn of_tolerances(tolerances: &[(Dimension, f64)]) -> Self {
        let mut covariance = SquareMatrix::zero(tolerances.len());
        for (i, (_, sd)) in tolerances.iter().enumerate() {
            covariance.add(i, i, sd * sd);
        }
        Self {
            dimensions: tolerances.iter().map(|(d, _)| *d).collect(),
            means: alloc::vec![0.0; tolerances.len()],
            covariance,
        }
    }

    /// The usual tolerances of length, distance, diameter, hole and stray capacitance.
    #[must_use]
    pub fn usual() -> Self {
        let usual = |dimension: &Dimension| (*dimension, dimension.usual_tolerance());
        let tolerances: Vec<_> = Dimension::ALL.iter().take(5).map(usual).collect();
        Self::of_tolerances(&tolerances)
    }

    /// The same after a dimension was changed on the can and on the drawing alike, the
    /// change itself right to within a standard deviation `sd`.
    #[must_use]
    pub fn after_change(mut self, dimension: Dimension, sd: f64) -> Self {
        if let Some(i) = self.dimensions.iter().position(|d| *d == dimension) {
            self.covariance.add(i, i, sd * sd);
        }
        self
    }
}
