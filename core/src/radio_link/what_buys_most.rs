//! Which change of a link is worth how many decibels.
//!
//! Raising the power is left out: it helps one direction only, and the law limits it.

use alloc::vec::Vec;

use super::budget::{DISTANCES_M, Link};
use super::coax_line::{CoaxLine, CoaxType};
use super::error::LinkError;
use super::link_end::{End, LinkEnd};
use super::polarisation::Polarisation;

/// Gain that a larger antenna is reckoned to add, dB: twice the aperture.
pub const LARGER_ANTENNA_DB: f64 = 3.0;

/// Cables that [`LinkChange::BetterCable`] offers: thin enough to bend by hand, and
/// thick.
pub const BETTER_CABLES: [CoaxType; 2] = [CoaxType::Foam240, CoaxType::Foam400];

/// Least worth of a change that is listed, dB.
const LEAST_DB: f64 = 0.05;

/// A change of a link.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LinkChange {
    /// Radio at the antenna, no line; one pair of connectors stays.
    RemoveLine(End),
    /// Line of half the length.
    HalveLine(End),
    /// The same length of a better cable.
    BetterCable(End, CoaxType),
    /// Aim that end exactly.
    Aim(End),
    /// Match that antenna perfectly.
    BetterMatch(End),
    /// Antenna with [`LARGER_ANTENNA_DB`] more gain.
    LargerAntenna(End),
    /// Turn one end so that the polarisations are alike; both are linear.
    MatchPolarisation,
    /// Go round the wall with this place in the list.
    AvoidWall(usize),
    /// Go over or round the trees.
    AvoidFoliage,
    /// Rise over the obstacle.
    ClearObstacle,
    /// Half the distance.
    HalveDistance,
}

/// A change with its worth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Saving {
    /// The change.
    pub change: LinkChange,
    /// What it adds to the margin of the weaker direction, dB.
    pub gained_db: f64,
}

impl Link {
    /// Every change worth 0.05 dB or more with its worth, the best first. Each is
    /// reckoned alone. Empty without a direction.
    ///
    /// # Errors
    /// As [`Link::budget`].
    pub fn what_buys_most(&self) -> Result<Vec<Saving>, LinkError> {
        let Some(now) = self.weaker_budget()? else {
            return Ok(Vec::new());
        };
        let mut savings = Vec::new();
        for change in self.changes() {
            let changed = self.after(change);
            let Some(then) = changed.budget(now.from)? else {
                continue;
            };
            let gained_db = then.margin_db - now.margin_db;
            if gained_db >= LEAST_DB {
                savings.push(Saving { change, gained_db });
            }
        }
        savings.sort_by(|a, b| b.gained_db.total_cmp(&a.gained_db));
        Ok(savings)
    }

    /// Every change that could be made.
    fn changes(&self) -> Vec<LinkChange> {
        let mut all = Vec::new();
        for end in [End::A, End::B] {
            if self.end(end).line.is_some() {
                all.extend([LinkChange::RemoveLine(end), LinkChange::HalveLine(end)]);
                all.extend(BETTER_CABLES.map(|cable| LinkChange::BetterCable(end, cable)));
            }
            all.extend([
                LinkChange::Aim(end),
                LinkChange::BetterMatch(end),
                LinkChange::LargerAntenna(end),
            ]);
        }
        all.extend((0..self.walls.len()).map(LinkChange::AvoidWall));
        all.extend([LinkChange::AvoidFoliage, LinkChange::ClearObstacle]);
        // No turn makes a straight wire's wave circular.
        let linear = |end: &LinkEnd| matches!(end.polarisation, Polarisation::Linear { .. });
        if linear(&self.a) && linear(&self.b) {
            all.push(LinkChange::MatchPolarisation);
        }
        if 0.5 * self.distance_m >= DISTANCES_M[0] {
            all.push(LinkChange::HalveDistance);
        }
        all
    }

    /// The link after a change.
    #[must_use]
    pub fn after(&self, change: LinkChange) -> Self {
        let mut link = self.clone();
        match change {
            LinkChange::RemoveLine(end) => {
                let end = link.end_mut(end);
                end.line = None;
                end.connector_pairs = end.connector_pairs.min(1);
            }
            LinkChange::HalveLine(end) => link.change_line(end, |line| line.length_m *= 0.5),
            LinkChange::BetterCable(end, cable) => {
                link.change_line(end, |line| line.coax = cable);
            }
            LinkChange::Aim(end) => link.end_mut(end).pointing_loss_db = 0.0,
            LinkChange::BetterMatch(end) => link.end_mut(end).mismatch_loss_db = 0.0,
            LinkChange::LargerAntenna(end) => {
                link.end_mut(end).gain_dbi += LARGER_ANTENNA_DB;
            }
            LinkChange::MatchPolarisation => link.a.polarisation = link.b.polarisation,
            LinkChange::AvoidWall(n) => {
                if n < link.walls.len() {
                    link.walls.remove(n);
                }
            }
            LinkChange::AvoidFoliage => link.foliage_depth_m = 0.0,
            LinkChange::ClearObstacle => link.obstacle_loss_db = 0.0,
            LinkChange::HalveDistance => link.distance_m *= 0.5,
        }
        link
    }

    fn end_mut(&mut self, end: End) -> &mut LinkEnd {
        match end {
            End::A => &mut self.a,
            End::B => &mut self.b,
        }
    }

    fn change_line(&mut self, end: End, change: impl FnOnce(&mut CoaxLine)) {
        if let Some(line) = &mut self.end_mut(end).line {
            change(line);
        }
    }
}
