//! Whether a path clears the ground and what stands on it.
//!
//! Heights are above one level at both ends; the Earth's bulge is added to the ground
//! and to each obstacle. Each obstacle counts as a single knife edge on its own: several
//! of like height lose more together than the worst alone.

use alloc::vec::Vec;

use super::error::{FREQUENCIES_HZ, LinkError, LinkQuantity, within};
use super::fresnel_zone::{earth_bulge_m, fresnel_radius_m};
use super::knife_edge::{diffraction_parameter, knife_edge_loss_db};
use crate::math;

/// Share of the first Fresnel radius that a path should clear (ITU-R P.530, section
/// 2.2.2, planning criterion, from memory).
pub const CLEARANCE_WANTED: f64 = 0.6;

/// Points of flat ground looked at before the worst is refined.
const GROUND_POINTS: u32 = 64;

/// Steps of the refinement; each narrows the place by 0.618.
const GROUND_STEPS: u32 = 40;

/// Heights that ends and obstacles may have, m.
const HEIGHTS_M: [f64; 2] = [0.0, 10_000.0];

/// Length that a path along the Earth may have, m.
const PATHS_M: [f64; 2] = [1.0, 1e6];

/// A path between two ends above level ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PathProfile {
    /// Length, m, 1 to 1,000,000.
    pub distance_m: f64,
    /// Height of the first end, m, 0 to 10,000.
    pub height_a_m: f64,
    /// Height of the second end, m.
    pub height_b_m: f64,
    /// Frequency, Hz, 30 MHz to 100 GHz.
    pub frequency_hz: f64,
    /// Effective Earth radius over the true one, 0.3 to 1000;
    /// [`super::STANDARD_EARTH_FACTOR`] unless known better.
    pub earth_factor: f64,
}

/// Something that stands in or near the path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Obstacle {
    /// Distance from the first end, m: inside the path.
    pub distance_m: f64,
    /// Height of its top above the level of the ends' ground, m.
    pub height_m: f64,
}

/// How a path passes one point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clearance {
    /// Distance of the point from the first end, m.
    pub distance_m: f64,
    /// Height of the straight line between the ends there, m.
    pub line_height_m: f64,
    /// Bulge of the Earth there, m.
    pub bulge_m: f64,
    /// Line over the obstacle and bulge, m; below zero when the line is blocked.
    pub clearance_m: f64,
    /// Radius of the first Fresnel zone there, m.
    pub fresnel_radius_m: f64,
    /// Clearance over that radius.
    pub ratio: f64,
    /// Diffraction parameter of a knife edge there.
    pub v: f64,
    /// Loss of that knife edge, dB.
    pub loss_db: f64,
}

impl Clearance {
    /// Whether 60 % of the first Fresnel zone is free.
    #[must_use]
    pub fn is_clear(&self) -> bool {
        self.ratio >= CLEARANCE_WANTED
    }
}

/// A path with its obstacles.
#[derive(Clone, Debug, PartialEq)]
pub struct PathClearance {
    /// Worst place of the flat ground.
    pub ground: Clearance,
    /// Each obstacle, in the order given.
    pub obstacles: Vec<Clearance>,
    /// Place in the list of the obstacle with the smallest ratio; `None` without any.
    pub worst_obstacle: Option<usize>,
    /// Metres by which both ends must rise so that ground and obstacles are 60 % clear;
    /// zero if they are.
    pub raise_both_m: f64,
}

impl PathClearance {
    /// Looks at a path.
    ///
    /// # Errors
    /// A number of the path, or of an obstacle, outside its range.
    pub fn new(profile: &PathProfile, obstacles: &[Obstacle]) -> Result<Self, LinkError> {
        profile.check()?;
        let mut at = Vec::with_capacity(obstacles.len());
        for (n, obstacle) in obstacles.iter().enumerate() {
            at.push(profile.over(obstacle).map_err(|error| error.at(n))?);
        }
        let ground = profile.worst_ground();
        let worst_obstacle = at
            .iter()
            .enumerate()
            .min_by(|(_, a), (_, b)| a.ratio.total_cmp(&b.ratio))
            .map(|(n, _)| n);
        let raise_both_m = at
            .iter()
            .map(|one| CLEARANCE_WANTED * one.fresnel_radius_m - one.clearance_m)
            .fold(profile.raise_over_ground_m(), f64::max);
        Ok(Self {
            ground,
            obstacles: at,
            worst_obstacle,
            raise_both_m,
        })
    }

    /// The place with the smallest ratio, ground or obstacle.
    #[must_use]
    pub fn worst(&self) -> &Clearance {
        self.worst_obstacle
            .and_then(|n| self.obstacles.get(n))
            .filter(|one| one.ratio <= self.ground.ratio)
            .unwrap_or(&self.ground)
    }

    /// Loss of the worst obstacle as a single knife edge, dB; none without obstacles.
    #[must_use]
    pub fn obstacle_loss_db(&self) -> f64 {
        self.obstacles
            .iter()
            .map(|one| one.loss_db)
            .fold(0.0, f64::max)
    }

    /// Loss of the worst place, ground or obstacle, as a single knife edge, dB.
    ///
    /// Rough where the ground decides: a smooth round surface loses more than an edge
    /// of the same height, and far behind the horizon very much more (ITU-R P.526,
    /// section 3, from memory), so this is the least that is lost. None where the ground
    /// is clear.
    #[must_use]
    pub fn diffraction_loss_db(&self) -> f64 {
        self.obstacle_loss_db().max(self.ground.loss_db)
    }
}

impl PathProfile {
    fn check(&self) -> Result<(), LinkError> {
        within(LinkQuantity::DistanceM, self.distance_m, PATHS_M)?;
        within(LinkQuantity::HeightM, self.height_a_m, HEIGHTS_M).map_err(|error| error.at(0))?;
        within(LinkQuantity::HeightM, self.height_b_m, HEIGHTS_M).map_err(|error| error.at(1))?;
        within(LinkQuantity::FrequencyHz, self.frequency_hz, FREQUENCIES_HZ)?;
        let factors = [0.3, 1000.0];
        within(LinkQuantity::EarthRadiusFactor, self.earth_factor, factors)?;
        Ok(())
    }

    fn over(&self, obstacle: &Obstacle) -> Result<Clearance, LinkError> {
        // An edge closer than a millimetre to an end has no Fresnel zone to speak of.
        let inside = [1e-3, self.distance_m - 1e-3];
        let distance = within(LinkQuantity::ObstacleDistanceM, obstacle.distance_m, inside)?;
        let heights = [-1000.0, 10_000.0];
        let height = within(LinkQuantity::ObstacleHeightM, obstacle.height_m, heights)?;
        Ok(self.passing(distance, height))
    }

    fn passing(&self, distance_m: f64, height_m: f64) -> Clearance {
        let far_m = self.distance_m - distance_m;
        let share = distance_m / self.distance_m;
        let line_height_m = self.height_a_m + (self.height_b_m - self.height_a_m) * share;
        let bulge_m = earth_bulge_m(distance_m, far_m, self.earth_factor);
        let clearance_m = line_height_m - bulge_m - height_m;
        let fresnel_radius_m = fresnel_radius_m(1, distance_m, far_m, self.frequency_hz);
        let v = diffraction_parameter(-clearance_m, distance_m, far_m, self.frequency_hz);
        Clearance {
            distance_m,
            line_height_m,
            bulge_m,
            clearance_m,
            fresnel_radius_m,
            ratio: clearance_m / fresnel_radius_m,
            v,
            loss_db: knife_edge_loss_db(v),
        }
    }

    /// The place of flat ground where a score of its clearance is least.
    fn least_over_ground(&self, score: impl Fn(&Clearance) -> f64) -> Clearance {
        // Near the ends the zone shrinks to nothing; half a percent in, an antenna on
        // the ground shows already.
        let step = self.distance_m / f64::from(GROUND_POINTS);
        let place = |n: f64| (n * step).clamp(0.005 * self.distance_m, 0.995 * self.distance_m);
        let at = |distance: f64| score(&self.passing(distance, 0.0));
        let mut best = (1.0, f64::INFINITY);
        for n in 0..=GROUND_POINTS {
            let value = at(place(f64::from(n)));
            if value < best.1 {
                best = (f64::from(n), value);
            }
        }
        let (mut low, mut high) = (place(best.0 - 1.0), place(best.0 + 1.0));
        let golden = 0.5 * (math::sqrt(5.0) - 1.0);
        for _ in 0..GROUND_STEPS {
            let part = golden * (high - low);
            if at(high - part) < at(low + part) {
                high = low + part;
            } else {
                low = high - part;
            }
        }
        self.passing(0.5 * (low + high), 0.0)
    }

    fn worst_ground(&self) -> Clearance {
        self.least_over_ground(|one| one.ratio)
    }

    /// How far both ends must rise over flat ground, zero or more.
    fn raise_over_ground_m(&self) -> f64 {
        let lacking = |one: &Clearance| CLEARANCE_WANTED * one.fresnel_radius_m - one.clearance_m;
        let worst = self.least_over_ground(|one| -lacking(one));
        lacking(&worst).max(0.0)
    }
}

/// Height, m, that both ends alike need so that 60 % of the first Fresnel zone clears
/// flat ground: radius and bulge at mid-path.
///
/// Distance and frequency above zero.
#[must_use]
pub fn equal_heights_over_flat_ground_m(
    distance_m: f64,
    frequency_hz: f64,
    earth_factor: f64,
) -> f64 {
    let half = 0.5 * distance_m;
    CLEARANCE_WANTED * fresnel_radius_m(1, half, half, frequency_hz)
        + earth_bulge_m(half, half, earth_factor)
}
