//! How far a link reaches with a margin, everything but the distance as it is.

use super::budget::{Budget, Link};
use super::error::LinkError;
use super::link_end::End;
use crate::math;

impl Link {
    /// Distance, m, at which one direction has exactly a margin: only the free-space
    /// loss goes with distance, walls, trees and obstacles stay. `None` where there is
    /// no such direction.
    ///
    /// # Errors
    /// As [`Link::budget`].
    pub fn reach_m(&self, from: End, margin_db: f64) -> Result<Option<f64>, LinkError> {
        let budget = self.budget(from)?;
        Ok(budget.map(|budget| self.reach_of(&budget, margin_db)))
    }

    /// Distance, m, at which both directions (or the only one) have a margin.
    ///
    /// # Errors
    /// As [`Link::budget`].
    pub fn reach_both_ways_m(&self, margin_db: f64) -> Result<Option<f64>, LinkError> {
        let weaker = self.weaker_budget()?;
        Ok(weaker.map(|budget| self.reach_of(&budget, margin_db)))
    }

    fn reach_of(&self, budget: &Budget, margin_db: f64) -> f64 {
        self.distance_m * math::pow(10.0, (budget.margin_db - margin_db) / 20.0)
    }
}
