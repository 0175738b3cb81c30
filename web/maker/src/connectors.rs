//! Coaxial connectors by their generic kind, and how they sit on the can.

use tinwave_core::design::Band;

use crate::confidence::Confidence;

/// A kind of connector.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum ConnectorKind {
    /// N.
    N,
    /// SMA.
    #[default]
    Sma,
    /// SMA with its centre contacts exchanged.
    RpSma,
    /// TNC.
    Tnc,
    /// BNC.
    Bnc,
    /// F, 75 ohm.
    F,
    /// No connector: the cable soldered to the can.
    Cable,
}

/// How it is fixed to the can.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Mounting {
    /// A square flange with four screws, flat on the outside.
    #[default]
    Flange,
    /// One threaded hole with a nut.
    SingleHole,
    /// Soldered to the wall.
    Soldered,
}

/// The connector that a maker chose.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct ConnectorChoice {
    /// Its kind.
    pub kind: ConnectorKind,
    /// Its fixing.
    pub mounting: Mounting,
}

/// A square flange with four holes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Flange {
    /// Side of the square, micrometres.
    pub square_um: u32,
    /// Between neighbouring screw holes, micrometres.
    pub hole_pitch_um: u32,
    /// Diameter of the screw holes, micrometres.
    pub hole_um: u32,
}

/// What is known of a kind. Lengths in micrometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Connector {
    /// The kind.
    pub kind: ConnectorKind,
    /// Its name.
    pub name: &'static str,
    /// Nominal impedance.
    pub impedance_ohm: u32,
    /// Round hole of the single-hole form.
    pub panel_hole_um: Option<u32>,
    /// Diameter of the insulator behind the flange.
    pub dielectric_um: Option<u32>,
    /// Diameter of the centre pin.
    pub pin_um: Option<u32>,
    /// Highest frequency it is made for.
    pub top_frequency_khz: Option<u32>,
    /// The usual square flange.
    pub flange: Option<Flange>,
    /// The fixings it is sold with.
    pub mountings: &'static [Mounting],
    /// Published source.
    pub source: &'static str,
    /// How sure the dimensions are.
    pub confidence: Confidence,
    /// What to mind; may be empty.
    pub note: &'static str,
}

const BOLTED: &[Mounting] = &[Mounting::Flange, Mounting::SingleHole];

/// Every kind, in the order a list should show them.
pub const CONNECTORS: &[Connector] = &[
    Connector {
        kind: ConnectorKind::N,
        name: "N socket",
        impedance_ohm: 50,
        panel_hole_um: Some(16_000),
        dielectric_um: Some(10_000),
        pin_um: Some(3_040),
        top_frequency_khz: Some(11_000_000),
        flange: Some(Flange {
            square_um: 25_400,
            hole_pitch_um: 18_260,
            hole_um: 3_300,
        }),
        mountings: BOLTED,
        source: "IEC 61169-16, MIL-STD-348",
        confidence: Confidence::FromMemory,
        note: "The insulator behind the flange is 8.2 to 10.2 mm thick, by make. Measure yours.",
    },
    Connector {
        kind: ConnectorKind::Sma,
        name: "SMA socket",
        impedance_ohm: 50,
        panel_hole_um: Some(6_500),
        dielectric_um: Some(4_100),
        pin_um: Some(1_270),
        top_frequency_khz: Some(18_000_000),
        flange: Some(Flange {
            square_um: 12_700,
            hole_pitch_um: 8_640,
            hole_um: 2_600,
        }),
        mountings: BOLTED,
        source: "IEC 61169-15, MIL-STD-348",
        confidence: Confidence::FromMemory,
        note: "The long-pin form can serve as the probe itself where its pin is long enough.",
    },
    Connector {
        kind: ConnectorKind::RpSma,
        name: "RP-SMA socket",
        impedance_ohm: 50,
        panel_hole_um: Some(6_500),
        dielectric_um: Some(4_100),
        pin_um: Some(1_270),
        top_frequency_khz: Some(18_000_000),
        flange: Some(Flange {
            square_um: 12_700,
            hole_pitch_um: 8_640,
            hole_um: 2_600,
        }),
        mountings: BOLTED,
        source: "Common practice, no source; the body is that of SMA (IEC 61169-15)",
        confidence: Confidence::FromMemory,
        note: "Pin and socket are exchanged. An SMA plug screws on, but makes no contact or does damage.",
    },
    Connector {
        kind: ConnectorKind::Tnc,
        name: "TNC socket",
        impedance_ohm: 50,
        panel_hole_um: Some(12_900),
        dielectric_um: Some(6_500),
        pin_um: Some(2_100),
        top_frequency_khz: Some(11_000_000),
        flange: Some(Flange {
            square_um: 17_500,
            hole_pitch_um: 12_700,
            hole_um: 2_600,
        }),
        mountings: BOLTED,
        source: "IEC 61169-17, MIL-STD-348",
        confidence: Confidence::FromMemory,
        note: "The insulator behind the flange is 4.7 to 6.5 mm thick, by make. Measure yours.",
    },
    Connector {
        kind: ConnectorKind::Bnc,
        name: "BNC socket",
        impedance_ohm: 50,
        panel_hole_um: Some(12_900),
        dielectric_um: None,
        pin_um: None,
        top_frequency_khz: Some(4_000_000),
        flange: None,
        mountings: &[Mounting::SingleHole],
        source: "IEC 61169-8",
        confidence: Confidence::FromMemory,
        note: "Usable, but it leaks above 2 GHz. Some need a 9.7 mm hole.",
    },
    Connector {
        kind: ConnectorKind::F,
        name: "F socket",
        impedance_ohm: 75,
        panel_hole_um: Some(9_600),
        dielectric_um: None,
        pin_um: None,
        top_frequency_khz: None,
        flange: None,
        mountings: &[Mounting::SingleHole],
        source: "IEC 61169-24",
        confidence: Confidence::FromMemory,
        note: "A 75 ohm connector for receivers. Set the line to 75 ohm too.",
    },
    Connector {
        kind: ConnectorKind::Cable,
        name: "No connector, cable soldered on",
        impedance_ohm: 50,
        panel_hole_um: None,
        dielectric_um: Some(2_950),
        pin_um: Some(900),
        top_frequency_khz: None,
        flange: None,
        mountings: &[Mounting::Soldered],
        source: "A 5 mm cable with solid insulation, common practice, no source",
        confidence: Confidence::FromMemory,
        note: "The hole takes the insulator only. The braid is spread out and soldered all round.",
    },
];

impl ConnectorKind {
    /// Every kind, in the order of [`CONNECTORS`].
    pub const ALL: [Self; 7] = [
        Self::N,
        Self::Sma,
        Self::RpSma,
        Self::Tnc,
        Self::Bnc,
        Self::F,
        Self::Cable,
    ];

    /// The word it is kept under.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::N => "n",
            Self::Sma => "sma",
            Self::RpSma => "rpsma",
            Self::Tnc => "tnc",
            Self::Bnc => "bnc",
            Self::F => "f",
            Self::Cable => "cable",
        }
    }

    /// The kind of such a word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.key() == key)
    }
}

impl Mounting {
    /// Every fixing.
    pub const ALL: [Self; 3] = [Self::Flange, Self::SingleHole, Self::Soldered];

    /// The word it is kept under.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Flange => "flange",
            Self::SingleHole => "nut",
            Self::Soldered => "solder",
        }
    }

    /// The fixing of such a word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|mounting| mounting.key() == key)
    }

    /// Words for people.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Flange => "square flange, four screws",
            Self::SingleHole => "one hole and a nut",
            Self::Soldered => "soldered to the wall",
        }
    }
}

/// What is known of a kind.
#[must_use]
pub const fn connector(kind: ConnectorKind) -> &'static Connector {
    match kind {
        ConnectorKind::N => &CONNECTORS[0],
        ConnectorKind::Sma => &CONNECTORS[1],
        ConnectorKind::RpSma => &CONNECTORS[2],
        ConnectorKind::Tnc => &CONNECTORS[3],
        ConnectorKind::Bnc => &CONNECTORS[4],
        ConnectorKind::F => &CONNECTORS[5],
        ConnectorKind::Cable => &CONNECTORS[6],
    }
}

impl ConnectorChoice {
    /// A kind with the first of its fixings.
    #[must_use]
    pub fn usual(kind: ConnectorKind) -> Self {
        let mounting = connector(kind).mountings.first().copied();
        Self {
            kind,
            mounting: mounting.unwrap_or_default(),
        }
    }

    /// Whether that kind is sold with that fixing.
    #[must_use]
    pub fn exists(self) -> bool {
        connector(self.kind).mountings.contains(&self.mounting)
    }

    /// Hole to drill in the can's wall: for the insulator under a flange or a
    /// soldered cable, for the thread of a single-hole socket.
    #[must_use]
    pub const fn drill_um(self) -> Option<u32> {
        let known = connector(self.kind);
        match self.mounting {
            Mounting::Flange | Mounting::Soldered => known.dielectric_um,
            Mounting::SingleHole => known.panel_hole_um,
        }
    }

    /// Outer diameter of the coaxial line where it meets the inner wall: what a
    /// design's hole diameter should be.
    #[must_use]
    pub const fn line_hole_um(self) -> Option<u32> {
        connector(self.kind).dielectric_um
    }

    /// The face that the wire's length is measured from.
    #[must_use]
    pub const fn measured_from(self) -> &'static str {
        match self.mounting {
            Mounting::Flange => "the flange’s face, which lies on the outside of the can",
            Mounting::SingleHole => "the shoulder, which seats on the outside of the can",
            Mounting::Soldered => "the end of the braid, on the outside of the can",
        }
    }

    /// How far that face is outside the inner wall: add it to the probe's
    /// length to have the wire's length from the face.
    #[must_use]
    pub const fn face_from_inner_wall_um(self, wall_um: u32) -> u32 {
        // Every fixing of the list seats on the outside of the wall.
        wall_um
    }

    /// A sentence where the connector does not suit the band.
    #[must_use]
    pub fn warning(self, band: Band) -> Option<&'static str> {
        let known = connector(self.kind);
        if known.impedance_ohm != 50 {
            return Some(
                "This is a 75 ohm connector. A probe that is matched to it shows VSWR 1.5 on 50 ohm cable. Use it with 75 ohm cable and set the line to 75 ohm.",
            );
        }
        let beyond = known
            .top_frequency_khz
            .is_some_and(|top| band.high_khz > top);
        beyond.then_some(
            "The band is above what this connector is made for. Its loss and reflection are not in these figures. Choose a smaller kind, such as SMA.",
        )
    }
}
