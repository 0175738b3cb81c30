//! The search for the best flat ring and the best cup at a can's rim.

use tinwave_core::design::Mouth;
use tinwave_core::outside::Rim;
use tinwave_core::si::metres;
use tinwave_protocol::beam::{MouthChoice, MouthGoal, Radiated};

use super::can::BareCan;

/// Shares of a wavelength that rings and cups are first tried with: their width
/// beyond the can, and a cup's depth.
const WIDTHS: [f64; 8] = [0.08, 0.16, 0.24, 0.32, 0.4, 0.5, 0.6, 0.7];
const CUP_WIDTHS: [f64; 5] = [0.08, 0.16, 0.24, 0.34, 0.46];
const CUP_DEPTHS: [f64; 5] = [0.08, 0.16, 0.24, 0.32, 0.42];
/// Steps of each finer search, and the first of them, mm.
const FINER: u32 = 14;
const FIRST_STEP_MM: u32 = 8;

/// What stands at the rim, whole millimetres beyond the can and deep; a ring has no
/// depth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct RimSize {
    pub(super) width_mm: u32,
    pub(super) depth_mm: u32,
}

impl RimSize {
    /// Outside diameter on a can, in whole micrometres.
    pub(super) fn outside_um(self, can: &BareCan) -> u32 {
        can.inside_diameter_um()
            .saturating_add(self.width_mm.saturating_mul(2_000))
    }

    pub(super) fn mouth(self, can: &BareCan) -> Mouth {
        let outside_diameter_um = self.outside_um(can);
        if self.depth_mm == 0 {
            Mouth::Flange {
                outside_diameter_um,
            }
        } else {
            Mouth::Choke {
                outside_diameter_um,
                depth_um: self.depth_mm.saturating_mul(1_000),
            }
        }
    }

    fn rim(self, can: &BareCan) -> Rim {
        let outside_radius_m = 0.5 * metres(self.outside_um(can));
        if self.depth_mm == 0 {
            Rim::Flange { outside_radius_m }
        } else {
            Rim::Choke {
                outside_radius_m,
                depth_m: metres(self.depth_mm.saturating_mul(1_000)),
            }
        }
    }
}

/// What is sought, in this order.
const GOALS: [MouthGoal; 3] = [
    MouthGoal::RingForGain,
    MouthGoal::CupForGain,
    MouthGoal::CupForRear,
];

const fn is_ring(goal: MouthGoal) -> bool {
    matches!(goal, MouthGoal::RingForGain)
}

const fn value(goal: MouthGoal, of: &Radiated) -> f64 {
    match goal {
        MouthGoal::CupForRear => of.front_to_rear_db,
        _ => of.gain_dbi,
    }
}

/// Where a finer search stands.
#[derive(Clone, Copy, Debug)]
struct Climb {
    goal: MouthGoal,
    step_mm: u32,
    /// Neighbours tried since the last gain.
    tried: usize,
}

/// A search in steps of one solved body.
pub(super) struct RimSearch {
    can: BareCan,
    bare: Option<Radiated>,
    /// Sizes of the first look, in order.
    coarse: Vec<RimSize>,
    done: u32,
    solved: Vec<(RimSize, Radiated)>,
    climb: Climb,
}

impl RimSearch {
    pub(super) fn new(can: BareCan) -> Self {
        let mm = |share: f64| (share * can.wavelength_m() * 1e3).round().clamp(2.0, 5e3) as u32;
        let ring = |width: &f64| RimSize {
            width_mm: mm(*width),
            depth_mm: 0,
        };
        let cup = |width: f64| {
            CUP_DEPTHS.map(|depth| RimSize {
                width_mm: mm(width),
                depth_mm: mm(depth),
            })
        };
        let mut coarse: Vec<_> = WIDTHS.iter().map(ring).collect();
        coarse.extend(CUP_WIDTHS.into_iter().flat_map(cup));
        Self {
            can,
            bare: None,
            coarse,
            done: 0,
            solved: Vec::new(),
            climb: Climb {
                goal: MouthGoal::RingForGain,
                step_mm: FIRST_STEP_MM,
                tried: 0,
            },
        }
    }

    fn coarse_steps(&self) -> u32 {
        self.coarse.len() as u32
    }

    /// Bodies to solve in all.
    pub(super) fn total(&self) -> u32 {
        1 + self.coarse_steps() + FINER * GOALS.len() as u32
    }

    fn best(&self, goal: MouthGoal) -> Option<(RimSize, Radiated)> {
        let kind = |size: &RimSize| (size.depth_mm == 0) == is_ring(goal);
        let found = self.solved.iter().filter(|(size, _)| kind(size));
        found
            .max_by(|a, b| value(goal, &a.1).total_cmp(&value(goal, &b.1)))
            .copied()
    }

    /// Solves for a size, if it is new; whether it was.
    fn solve(&mut self, size: RimSize) -> bool {
        if self.solved.iter().any(|(known, _)| *known == size) {
            return false;
        }
        if let Some(radiated) = self.can.solve(size.rim(&self.can)) {
            self.solved.push((size, radiated));
        }
        true
    }

    /// Solves the next neighbour of the best size that is new.
    fn climb(&mut self, goal: MouthGoal) {
        if self.climb.goal != goal {
            self.climb = Climb {
                goal,
                step_mm: FIRST_STEP_MM,
                tried: 0,
            };
        }
        let sides = if is_ring(goal) { 2 } else { 4 };
        while self.climb.step_mm > 0 {
            let Some((best, before)) = self.best(goal) else {
                return;
            };
            let step = i64::from(self.climb.step_mm);
            let (wide, deep) = match self.climb.tried {
                0 => (step, 0),
                1 => (-step, 0),
                2 => (0, step),
                _ => (0, -step),
            };
            self.climb.tried += 1;
            if self.climb.tried > sides {
                self.climb.tried = 0;
                self.climb.step_mm /= 2;
                continue;
            }
            let moved = |mm: u32, by: i64, least: i64| {
                u32::try_from((i64::from(mm) + by).max(least)).unwrap_or(mm)
            };
            let next = RimSize {
                width_mm: moved(best.width_mm, wide, 2),
                depth_mm: moved(best.depth_mm, deep, if is_ring(goal) { 0 } else { 2 }),
            };
            if self.solve(next) {
                let after = self.best(goal).map(|(_, radiated)| value(goal, &radiated));
                if after.is_some_and(|after| after > value(goal, &before)) {
                    self.climb.tried = 0;
                }
                return;
            }
        }
    }

    /// Solves one body.
    pub(super) fn step(&mut self) {
        let place = self.done;
        self.done += 1;
        if place == 0 {
            self.bare = self.can.solve(Rim::Bare);
            return;
        }
        let coarse = self.coarse.get(place as usize - 1).copied();
        if let Some(size) = coarse {
            self.solve(size);
            return;
        }
        let goal = (place - 1 - self.coarse_steps()) / FINER;
        if let Some(goal) = GOALS.get(goal as usize) {
            self.climb(*goal);
        }
    }

    /// What was found; nothing where even the bare can could not be solved.
    pub(super) fn choices(&self) -> Vec<MouthChoice> {
        let Some(bare) = self.bare else {
            return Vec::new();
        };
        let bare = MouthChoice {
            goal: MouthGoal::Bare,
            mouth: Mouth::Open,
            radiated: bare,
        };
        let best = GOALS.into_iter().filter_map(|goal| {
            let (size, radiated) = self.best(goal)?;
            let mouth = size.mouth(&self.can);
            Some(MouthChoice {
                goal,
                mouth,
                radiated,
            })
        });
        std::iter::once(bare).chain(best).collect()
    }
}
