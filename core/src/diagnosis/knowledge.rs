//! What is known of a can's deviations before a measurement.

use alloc::vec::Vec;

use crate::dimension::Dimension;
use crate::least_squares::SquareMatrix;

/// Expected deviations from the drawing and how sure they are.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
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

    /// The same after a dimension was changed on the can alone, by `by` to within a
    /// standard deviation `sd`: the drawing is what the can should become.
    #[must_use]
    pub fn after_work(mut self, dimension: Dimension, by: f64, sd: f64) -> Self {
        if let Some(i) = self.dimensions.iter().position(|d| *d == dimension)
            && let Some(mean) = self.means.get_mut(i)
        {
            *mean += by;
        }
        self.after_change(dimension, sd)
    }

    /// The same after a dimension was made anew after the drawing, to within a standard
    /// deviation `sd`: nothing that was known of it counts.
    #[must_use]
    pub fn made_anew(mut self, dimension: Dimension, sd: f64) -> Self {
        let Some(place) = self.dimensions.iter().position(|d| *d == dimension) else {
            return self;
        };
        if let Some(mean) = self.means.get_mut(place) {
            *mean = 0.0;
        }
        for other in 0..self.dimensions.len() {
            let own = self.covariance.at(place, other);
            let wanted = if other == place { sd * sd } else { 0.0 };
            self.covariance.add(place, other, wanted - own);
            if other != place {
                self.covariance.add(other, place, -own);
            }
        }
        self
    }

    /// Standard deviation of one dimension.
    #[must_use]
    pub fn sd_of(&self, dimension: Dimension) -> Option<f64> {
        let place = self.dimensions.iter().position(|d| *d == dimension)?;
        let variance = self.covariance.at(place, place);
        Some(crate::math::sqrt(variance.max(0.0)))
    }
}
