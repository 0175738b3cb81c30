//! Is the path clear of the ground and of what stands on it?

use tinwave_core::radio_link::{
    Clearance, LinkError, Obstacle, PathClearance, PathProfile, STANDARD_EARTH_FACTOR,
    earth_bulge_m, equal_heights_over_flat_ground_m,
};

use super::plan::LinkPlan;

/// Longest path that is looked at along the Earth, m.
const LONGEST_PATH_M: f64 = 1e6;

/// Nearest to an end that an obstacle may stand, m.
const NEAREST_M: f64 = 0.01;

/// Least loss that is told, dB.
const LEAST_DB: f64 = 0.05;

/// How much of the path is free.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PathState {
    /// 60 % of the first Fresnel zone and more.
    Clear,
    /// The far end is in sight, but less than that is free.
    Tight,
    /// The straight line is blocked.
    Blocked,
}

/// A place of the path.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spot {
    /// The ground.
    Ground,
    /// The obstacle with this place in the plan's list.
    Obstacle(usize),
}

/// What is counted for ground and obstacles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LossOfPath {
    /// What decides it.
    pub by: Spot,
    /// The loss, dB: that of a single edge.
    pub loss_db: f64,
    /// Whether more than one place takes power: together they take more than the one
    /// that is counted.
    pub several: bool,
}

/// The path between the ends.
#[derive(Clone, Debug, PartialEq)]
pub struct PathAnswer {
    /// Its ends.
    pub profile: PathProfile,
    /// How it passes ground and obstacles.
    pub clearance: PathClearance,
    /// The obstacles that were counted, each with its place in the plan's list.
    pub obstacles: Vec<(usize, Obstacle)>,
    /// Places in the plan's list of those that do not stand between the ends.
    pub beyond: Vec<usize>,
    /// How much is free at the tightest place.
    pub state: PathState,
    /// Where that is.
    pub tightest: Spot,
    /// What is counted for it; `None` where nothing is lost.
    pub loss: Option<LossOfPath>,
    /// Height that both ends need over flat ground, m.
    pub even_heights_m: f64,
    /// The Earth's bulge in the middle, m.
    pub bulge_m: f64,
}

impl PathAnswer {
    /// `None` for a path too long to lie along the ground.
    pub(super) fn new(plan: &LinkPlan, frequency_hz: f64) -> Result<Option<Self>, LinkError> {
        if plan.distance_m > LONGEST_PATH_M {
            return Ok(None);
        }
        let profile = PathProfile {
            distance_m: plan.distance_m,
            height_a_m: plan.here.height_m,
            height_b_m: plan.far.height_m,
            frequency_hz,
            earth_factor: STANDARD_EARTH_FACTOR,
        };
        let between = NEAREST_M..=(plan.distance_m - NEAREST_M);
        let all = plan.obstacles.iter().copied().enumerate();
        let (obstacles, beyond): (Vec<_>, Vec<_>) =
            all.partition(|(_, one)| between.contains(&one.distance_m));
        let counted: Vec<Obstacle> = obstacles.iter().map(|(_, one)| *one).collect();
        let clearance = PathClearance::new(&profile, &counted)?;
        let half = 0.5 * plan.distance_m;
        let worst = clearance.worst();
        let tightest = clearance
            .worst_obstacle
            .filter(|n| clearance.obstacles.get(*n) == Some(worst))
            .and_then(|n| obstacles.get(n))
            .map_or(Spot::Ground, |(place, _)| Spot::Obstacle(*place));
        Ok(Some(Self {
            state: state(worst),
            tightest,
            loss: loss(&clearance, &obstacles),
            even_heights_m: equal_heights_over_flat_ground_m(
                profile.distance_m,
                frequency_hz,
                profile.earth_factor,
            ),
            bulge_m: earth_bulge_m(half, half, profile.earth_factor),
            beyond: beyond.into_iter().map(|(place, _)| place).collect(),
            profile,
            clearance,
            obstacles,
        }))
    }

    /// Whether too little of the path is free of the ground: the loss that is counted is
    /// then too small.
    #[must_use]
    pub fn is_low_over_ground(&self) -> bool {
        !self.clearance.ground.is_clear()
    }

    /// Whether the loss that is counted is only the least that is lost.
    #[must_use]
    pub fn is_at_best(&self) -> bool {
        self.is_low_over_ground() || self.loss.is_some_and(|loss| loss.several)
    }
}

fn state(worst: &Clearance) -> PathState {
    if worst.is_clear() {
        PathState::Clear
    } else if worst.clearance_m >= 0.0 {
        PathState::Tight
    } else {
        PathState::Blocked
    }
}

fn loss(clearance: &PathClearance, obstacles: &[(usize, Obstacle)]) -> Option<LossOfPath> {
    let ground = (Spot::Ground, clearance.ground.loss_db);
    let places = obstacles
        .iter()
        .map(|(place, _)| Spot::Obstacle(*place))
        .zip(clearance.obstacles.iter().map(|one| one.loss_db));
    let felt: Vec<(Spot, f64)> = std::iter::once(ground)
        .chain(places)
        .filter(|(_, loss_db)| *loss_db >= LEAST_DB)
        .collect();
    let worst = felt.iter().max_by(|a, b| a.1.total_cmp(&b.1))?;
    Some(LossOfPath {
        by: worst.0,
        loss_db: worst.1,
        several: felt.len() > 1,
    })
}
