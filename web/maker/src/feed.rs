//! Changes of the feed that touch more than one number: the connector, the opening
//! round the wire, the sleeve, the gauge.

use tinwave_core::design::{Micrometres, Sleeve};
use tinwave_core::si::{SiDesign, micrometres};

use crate::connectors::{ConnectorChoice, ConnectorKind, Mounting, connector};
use crate::wire_gauges::{GaugeSystem, WireGauge, gauges};
use crate::workpiece::Workpiece;

/// Permittivity of a fresh sleeve: solid polyethylene, 2.25 to 2.35 in handbooks (from
/// memory).
const SLEEVE_PERMITTIVITY_MILLI: u32 = 2_300;
/// What a caliper tells apart.
const CALIPER_UM: u32 = 5;

/// Where the opening round the wire, with which the field is computed, comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Opening {
    /// As wide as makes a line of the cable's impedance with the wire, in air.
    Line,
    /// The connector's own insulator.
    Connector,
    /// A diameter of one's own.
    Typed,
}

impl Opening {
    /// Every one.
    pub const ALL: [Self; 3] = [Self::Line, Self::Connector, Self::Typed];

    /// A word for it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Line => "line",
            Self::Connector => "connector",
            Self::Typed => "typed",
        }
    }

    /// The one of such a word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|opening| opening.key() == key)
    }
}

impl Workpiece {
    /// Where the opening comes from.
    #[must_use]
    pub fn opening(&self) -> Opening {
        match self.design.probe.hole_diameter_um {
            None => Opening::Line,
            Some(um) if self.connector.line_hole_um() == Some(um) => Opening::Connector,
            Some(_) => Opening::Typed,
        }
    }

    /// The opening that holds, whatever it comes from.
    #[must_use]
    pub fn opening_um(&self) -> Micrometres {
        micrometres(2.0 * SiDesign::new(&self.design).hole_radius_m)
    }

    /// Takes the opening from elsewhere. A typed one starts from what holds, told apart
    /// from the connector's by a hundredth of a millimetre where it must be.
    pub fn take_opening(&mut self, opening: Opening) {
        let holds = self.opening_um();
        self.design.probe.hole_diameter_um = match opening {
            Opening::Line => None,
            Opening::Connector => self.connector.line_hole_um().or(Some(holds)),
            Opening::Typed if self.connector.line_hole_um() == Some(holds) => {
                Some(holds.saturating_add(10))
            }
            Opening::Typed => Some(holds),
        };
    }

    /// Takes a connector of another kind, with a fixing that it is sold with.
    pub fn take_connector_kind(&mut self, kind: ConnectorKind) {
        let mounting = self.connector.mounting;
        let offered = connector(kind).mountings;
        let chosen = if offered.contains(&mounting) {
            ConnectorChoice { kind, mounting }
        } else {
            ConnectorChoice::usual(kind)
        };
        self.take_connector(chosen);
    }

    /// Takes another fixing.
    pub fn take_mounting(&mut self, mounting: Mounting) {
        let kind = self.connector.kind;
        self.take_connector(ConnectorChoice { kind, mounting });
    }

    /// An opening that was the old connector's becomes the new one's, and the cable's
    /// impedance is the connector's.
    fn take_connector(&mut self, chosen: ConnectorChoice) {
        let follows = self.opening() == Opening::Connector;
        let probe = &mut self.design.probe;
        if follows {
            probe.hole_diameter_um = chosen.line_hole_um();
        }
        probe.reference_milliohm = connector(chosen.kind).impedance_ohm * 1_000;
        self.connector = chosen;
    }

    /// Puts a sleeve over the wire, or takes it off.
    pub fn put_sleeve(&mut self, on: bool) {
        let probe = &mut self.design.probe;
        probe.sleeve = on.then(|| Sleeve {
            outside_diameter_um: probe.wire_diameter_um.saturating_mul(2),
            permittivity_milli: SLEEVE_PERMITTIVITY_MILLI,
        });
    }

    /// The first gauge of the wire's diameter, as far as a caliper tells.
    #[must_use]
    pub fn gauge(&self) -> Option<&'static WireGauge> {
        let diameter = self.design.probe.wire_diameter_um;
        all_gauges().find(|gauge| gauge.diameter_um.abs_diff(diameter) <= CALIPER_UM)
    }
}

/// Every wire of every list.
pub fn all_gauges() -> impl Iterator<Item = &'static WireGauge> {
    GaugeSystem::ALL
        .into_iter()
        .flat_map(|system| gauges(system).iter())
}

#[cfg(test)]
mod tests {
    use super::Opening;
    use crate::connectors::{ConnectorKind, Mounting};
    use crate::example::example;

    #[test]
    fn an_opening_that_is_the_connectors_follows_it() {
        let mut work = example();
        work.take_opening(Opening::Connector);
        assert_eq!(work.opening(), Opening::Connector);
        work.take_connector_kind(ConnectorKind::N);
        assert_eq!(work.opening_um(), 10_000);
        assert_eq!(work.opening(), Opening::Connector);
        work.take_opening(Opening::Typed);
        assert_eq!(work.opening(), Opening::Typed);
        work.take_opening(Opening::Line);
        assert_eq!(work.opening(), Opening::Line);
        assert!(work.design.check().is_ok());
    }

    #[test]
    fn a_connector_brings_its_impedance_and_a_fixing_that_exists() {
        let mut work = example();
        work.take_mounting(Mounting::Flange);
        work.take_connector_kind(ConnectorKind::F);
        assert_eq!(work.design.probe.reference_milliohm, 75_000);
        assert!(work.connector.exists());
        work.take_connector_kind(ConnectorKind::Cable);
        assert_eq!(work.connector.mounting, Mounting::Soldered);
        assert_eq!(work.design.probe.reference_milliohm, 50_000);
    }

    #[test]
    fn a_sleeve_is_put_on_and_taken_off() {
        let mut work = example();
        work.put_sleeve(true);
        assert!(work.design.check().is_ok() && work.design.probe.sleeve.is_some());
        work.put_sleeve(false);
        assert_eq!(work.design, example().design);
    }

    #[test]
    fn a_gauge_is_told_as_a_caliper_would() {
        let mut work = example();
        work.design.probe.wire_diameter_um = 1_291;
        assert_eq!(
            work.gauge().map(|gauge| gauge.label()).as_deref(),
            Some("AWG 16")
        );
        work.design.probe.wire_diameter_um = 1_297;
        assert_eq!(work.gauge(), None);
    }
}
