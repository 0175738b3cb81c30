//! One end of a link: radio, line, antenna.

use super::coax_line::{CoaxLine, Connector};
use super::error::{LinkError, LinkQuantity, within};
use super::polarisation::Polarisation;

/// Which end of a link.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum End {
    /// The first.
    A,
    /// The second.
    B,
}

impl End {
    /// The opposite one.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::A => Self::B,
            Self::B => Self::A,
        }
    }
}

/// Levels and gains that a link may have, dB or dBm.
pub(super) const LEVELS_DB: [f64; 2] = [-300.0, 300.0];

/// Losses that a link may have, dB.
pub(super) const LOSSES_DB: [f64; 2] = [0.0, 300.0];

/// One end of a link.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LinkEnd {
    /// Power at the transmitter's output, dBm; `None` for an end that only listens.
    pub transmit_power_dbm: Option<f64>,
    /// Least power at the receiver's input, dBm; `None` for an end that only sends.
    pub sensitivity_dbm: Option<f64>,
    /// Line between radio and antenna, if any.
    pub line: Option<CoaxLine>,
    /// Family of its connectors.
    pub connector: Connector,
    /// Mated pairs of connectors.
    pub connector_pairs: u8,
    /// Loss by reflection at the antenna, dB, zero or more; zero where the gain has it.
    pub mismatch_loss_db: f64,
    /// Gain of the antenna straight ahead, dBi.
    pub gain_dbi: f64,
    /// Loss by pointing past the other end, dB, zero or more.
    pub pointing_loss_db: f64,
    /// Polarisation of the antenna.
    pub polarisation: Polarisation,
}

impl LinkEnd {
    /// Loss of the line alone, dB.
    ///
    /// # Errors
    /// As [`CoaxLine::loss_db`].
    pub fn line_loss_db(&self, frequency_hz: f64) -> Result<f64, LinkError> {
        self.line.map_or(Ok(0.0), |line| line.loss_db(frequency_hz))
    }

    /// Loss of all connectors, dB.
    ///
    /// # Errors
    /// As [`Connector::pair_loss_db`].
    pub fn connector_loss_db(&self, frequency_hz: f64) -> Result<f64, LinkError> {
        let pair = self.connector.pair_loss_db(frequency_hz)?;
        Ok(f64::from(self.connector_pairs) * pair)
    }

    /// Loss of line and connectors together, dB.
    ///
    /// # Errors
    /// As for the parts.
    pub fn feed_loss_db(&self, frequency_hz: f64) -> Result<f64, LinkError> {
        Ok(self.line_loss_db(frequency_hz)? + self.connector_loss_db(frequency_hz)?)
    }

    pub(super) fn check(&self) -> Result<(), LinkError> {
        let level = LinkQuantity::LevelDb;
        for dbm in [self.transmit_power_dbm, self.sensitivity_dbm] {
            dbm.map_or(Ok(0.0), |dbm| within(level, dbm, LEVELS_DB))?;
        }
        within(level, self.gain_dbi, LEVELS_DB)?;
        within(level, self.mismatch_loss_db, LOSSES_DB)?;
        within(level, self.pointing_loss_db, LOSSES_DB)?;
        Ok(())
    }
}
