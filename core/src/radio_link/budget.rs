//! The link budget: from the transmitter to the receiver, item by item, both ways.
//!
//! Source: Friis' equation in decibels with losses; D. M. Pozar, *Microwave
//! Engineering*, 4th ed. 2012, section 14.2.

use alloc::vec::Vec;

use super::error::{FREQUENCIES_HZ, LinkError, LinkQuantity, within};
use super::foliage::weissberger_loss_db;
use super::free_space::free_space_loss_db;
use super::link_end::{End, LOSSES_DB, LinkEnd};
use super::polarisation::practical_polarisation_loss_db;
use super::wall::Wall;

/// Lengths of path that a budget takes, m.
pub(super) const DISTANCES_M: [f64; 2] = [0.1, 1e9];

/// Two ends and what lies between them.
#[derive(Clone, Debug, PartialEq)]
pub struct Link {
    /// The first end.
    pub a: LinkEnd,
    /// The second end.
    pub b: LinkEnd,
    /// Frequency, Hz, 30 MHz to 100 GHz.
    pub frequency_hz: f64,
    /// Length of the path, m, 0.1 m to 1e9.
    pub distance_m: f64,
    /// Walls in the path.
    pub walls: Vec<Wall>,
    /// Depth of trees in the path, m, 0 to 400.
    pub foliage_depth_m: f64,
    /// Loss by diffraction, dB, zero or more: see
    /// [`super::PathClearance::diffraction_loss_db`].
    pub obstacle_loss_db: f64,
    /// Any further loss of the path, dB, zero or more.
    pub other_loss_db: f64,
    /// Margin wanted over the sensitivity against fading, dB, 0 to 300.
    pub required_fade_margin_db: f64,
}

/// Item of a budget, in the order of the way.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BudgetItemKind {
    /// Power of the transmitter; its item has the level, not a change.
    TransmitPower,
    /// Line of the transmitting end.
    TransmitLine,
    /// Connectors of the transmitting end.
    TransmitConnectors,
    /// Reflection at the transmitting antenna.
    TransmitMismatch,
    /// Gain of the transmitting antenna.
    TransmitGain,
    /// Its pointing.
    TransmitPointing,
    /// Free space.
    FreeSpace,
    /// The wall with this place in the list.
    Wall(usize),
    /// Trees.
    Foliage,
    /// Diffraction over an obstacle.
    Obstacle,
    /// Further loss of the path.
    Other,
    /// Unlike polarisations.
    Polarisation,
    /// Pointing of the receiving antenna.
    ReceivePointing,
    /// Its gain.
    ReceiveGain,
    /// Reflection at it.
    ReceiveMismatch,
    /// Connectors of the receiving end.
    ReceiveConnectors,
    /// Line of the receiving end.
    ReceiveLine,
}

/// One step of the way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BudgetItem {
    /// What it is.
    pub kind: BudgetItemKind,
    /// What it adds, dB; below zero for a loss. For the transmitter, its power in dBm.
    pub change_db: f64,
    /// Level after it, dBm.
    pub level_dbm: f64,
}

/// A budget in one direction.
#[derive(Clone, Debug, PartialEq)]
pub struct Budget {
    /// The end that sends.
    pub from: End,
    /// Every step, those without effect included, in order.
    pub items: Vec<BudgetItem>,
    /// EIRP towards the other end before pointing loss, dBm.
    pub eirp_dbm: f64,
    /// Level at the receiver's input, dBm.
    pub received_dbm: f64,
    /// Least that the receiver needs, dBm.
    pub sensitivity_dbm: f64,
    /// Received level less sensitivity, dB.
    pub margin_db: f64,
    /// Margin less the one wanted, dB.
    pub spare_db: f64,
}

impl Budget {
    /// Whether the wanted margin against fading is met.
    #[must_use]
    pub fn meets_fade_margin(&self) -> bool {
        self.spare_db >= 0.0
    }
}

impl Link {
    /// One of the ends.
    #[must_use]
    pub const fn end(&self, end: End) -> &LinkEnd {
        match end {
            End::A => &self.a,
            End::B => &self.b,
        }
    }

    /// Budget from one end to the other; `None` where that end does not send or the
    /// other does not receive.
    ///
    /// # Errors
    /// A number outside its range; walls and ends with their place.
    pub fn budget(&self, from: End) -> Result<Option<Budget>, LinkError> {
        self.check()?;
        let (sender, receiver) = (self.end(from), self.end(from.other()));
        let ends = (sender.transmit_power_dbm, receiver.sensitivity_dbm);
        let (Some(power_dbm), Some(sensitivity_dbm)) = ends else {
            return Ok(None);
        };
        let mut way = Way::new(power_dbm);
        way.sender(sender, self.frequency_hz)?;
        let eirp_dbm = way.level_dbm;
        way.add(BudgetItemKind::TransmitPointing, -sender.pointing_loss_db);
        self.path(&mut way)?;
        way.receiver(receiver, self.frequency_hz)?;
        let margin_db = way.level_dbm - sensitivity_dbm;
        Ok(Some(Budget {
            from,
            items: way.items,
            eirp_dbm,
            received_dbm: way.level_dbm,
            sensitivity_dbm,
            margin_db,
            spare_db: margin_db - self.required_fade_margin_db,
        }))
    }

    /// Budgets of the directions that there are, first end's first.
    ///
    /// # Errors
    /// As [`Self::budget`].
    pub fn budgets(&self) -> Result<Vec<Budget>, LinkError> {
        let mut both = Vec::with_capacity(2);
        for end in [End::A, End::B] {
            both.extend(self.budget(end)?);
        }
        Ok(both)
    }

    /// The budget of the direction with the smaller margin; `None` without any.
    ///
    /// # Errors
    /// As [`Self::budget`].
    pub fn weaker_budget(&self) -> Result<Option<Budget>, LinkError> {
        let both = self.budgets()?;
        let least = |a: &Budget, b: &Budget| a.margin_db.total_cmp(&b.margin_db);
        Ok(both.into_iter().min_by(least))
    }

    fn path(&self, way: &mut Way) -> Result<(), LinkError> {
        let hz = self.frequency_hz;
        let free = free_space_loss_db(self.distance_m, hz);
        way.add(BudgetItemKind::FreeSpace, -free);
        for (n, wall) in self.walls.iter().enumerate() {
            let loss = wall.loss_db(hz).map_err(|error| error.at(n))?;
            way.add(BudgetItemKind::Wall(n), -loss);
        }
        // Without trees their formula's range of frequencies does not matter.
        let trees = if self.foliage_depth_m == 0.0 {
            0.0
        } else {
            weissberger_loss_db(self.foliage_depth_m, hz)?
        };
        way.add(BudgetItemKind::Foliage, -trees);
        way.add(BudgetItemKind::Obstacle, -self.obstacle_loss_db);
        way.add(BudgetItemKind::Other, -self.other_loss_db);
        let crossed = practical_polarisation_loss_db(self.a.polarisation, self.b.polarisation);
        way.add(BudgetItemKind::Polarisation, -crossed);
        Ok(())
    }

    fn check(&self) -> Result<(), LinkError> {
        self.a.check().map_err(|error| error.at(0))?;
        self.b.check().map_err(|error| error.at(1))?;
        let level = LinkQuantity::LevelDb;
        within(LinkQuantity::FrequencyHz, self.frequency_hz, FREQUENCIES_HZ)?;
        within(LinkQuantity::DistanceM, self.distance_m, DISTANCES_M)?;
        within(level, self.obstacle_loss_db, LOSSES_DB)?;
        within(level, self.other_loss_db, LOSSES_DB)?;
        within(level, self.required_fade_margin_db, LOSSES_DB)?;
        Ok(())
    }
}

/// The items with the running level.
struct Way {
    items: Vec<BudgetItem>,
    level_dbm: f64,
}

impl Way {
    fn new(power_dbm: f64) -> Self {
        let mut way = Self {
            items: Vec::with_capacity(20),
            level_dbm: 0.0,
        };
        way.add(BudgetItemKind::TransmitPower, power_dbm);
        way
    }

    fn add(&mut self, kind: BudgetItemKind, change_db: f64) {
        // Plus zero: no loss is 0, not -0.
        let change_db = change_db + 0.0;
        self.level_dbm += change_db;
        self.items.push(BudgetItem {
            kind,
            change_db,
            level_dbm: self.level_dbm,
        });
    }

    fn sender(&mut self, end: &LinkEnd, frequency_hz: f64) -> Result<(), LinkError> {
        let line = end.line_loss_db(frequency_hz)?;
        let connectors = end.connector_loss_db(frequency_hz)?;
        self.add(BudgetItemKind::TransmitLine, -line);
        self.add(BudgetItemKind::TransmitConnectors, -connectors);
        self.add(BudgetItemKind::TransmitMismatch, -end.mismatch_loss_db);
        self.add(BudgetItemKind::TransmitGain, end.gain_dbi);
        Ok(())
    }

    fn receiver(&mut self, end: &LinkEnd, frequency_hz: f64) -> Result<(), LinkError> {
        let line = end.line_loss_db(frequency_hz)?;
        let connectors = end.connector_loss_db(frequency_hz)?;
        self.add(BudgetItemKind::ReceivePointing, -end.pointing_loss_db);
        self.add(BudgetItemKind::ReceiveGain, end.gain_dbi);
        self.add(BudgetItemKind::ReceiveMismatch, -end.mismatch_loss_db);
        self.add(BudgetItemKind::ReceiveConnectors, -connectors);
        self.add(BudgetItemKind::ReceiveLine, -line);
        Ok(())
    }
}
