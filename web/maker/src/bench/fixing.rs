//! How a connector is held.

use crate::connectors::{ConnectorChoice, Flange, Mounting, connector};

/// What holds the connector to the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clamp {
    /// A square flange with four screws.
    Screws(Flange),
    /// One nut.
    Nut,
    /// Solder all round.
    Solder,
}

/// What holds a connector; a flange of unknown size counts as a nut's connector.
#[must_use]
pub fn clamp_of(choice: ConnectorChoice) -> Clamp {
    match (choice.mounting, connector(choice.kind).flange) {
        (Mounting::Flange, Some(flange)) => Clamp::Screws(flange),
        (Mounting::Soldered, _) => Clamp::Solder,
        _ => Clamp::Nut,
    }
}

/// The metric screw that goes through a hole (ISO 273, fine to medium).
#[must_use]
pub const fn screw_for_hole(hole_um: u32) -> &'static str {
    match hole_um {
        0..2_600 => "M2",
        2_600..3_200 => "M2.5",
        3_200..4_300 => "M3",
        _ => "M4",
    }
}
