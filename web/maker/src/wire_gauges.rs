//! Wire by gauge: SWG, AWG and cross-section in mm².

use crate::entry::{Entered, EntryError, LengthUnit, parse_length, shortened};

/// A way of naming wires.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum GaugeSystem {
    /// Imperial standard wire gauge.
    Swg,
    /// American wire gauge.
    Awg,
    /// Cross-section of a solid copper conductor.
    SquareMillimetre,
}

/// One wire of a system.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct WireGauge {
    /// The system.
    pub system: GaugeSystem,
    /// Gauge number, or hundredths of a square millimetre.
    pub size: u16,
    /// Diameter of the bare wire, micrometres.
    pub diameter_um: u32,
}

const fn swg(size: u16, diameter_um: u32) -> WireGauge {
    WireGauge {
        system: GaugeSystem::Swg,
        size,
        diameter_um,
    }
}

const fn awg(size: u16, diameter_um: u32) -> WireGauge {
    WireGauge {
        system: GaugeSystem::Awg,
        size,
        diameter_um,
    }
}

const fn area(size: u16, diameter_um: u32) -> WireGauge {
    WireGauge {
        system: GaugeSystem::SquareMillimetre,
        size,
        diameter_um,
    }
}

/// BS 3737:1964: diameters in thousandths of an inch, to the micrometre.
const SWG: [WireGauge; 23] = [
    swg(8, 4064),
    swg(9, 3658),
    swg(10, 3251),
    swg(11, 2946),
    swg(12, 2642),
    swg(13, 2337),
    swg(14, 2032),
    swg(15, 1829),
    swg(16, 1626),
    swg(17, 1422),
    swg(18, 1219),
    swg(19, 1016),
    swg(20, 914),
    swg(21, 813),
    swg(22, 711),
    swg(23, 610),
    swg(24, 559),
    swg(25, 508),
    swg(26, 457),
    swg(27, 417),
    swg(28, 376),
    swg(29, 345),
    swg(30, 315),
];

/// ASTM B258: 0.127 mm × 92^((36 − n)/39), to the micrometre.
const AWG: [WireGauge; 27] = [
    awg(4, 5189),
    awg(5, 4621),
    awg(6, 4115),
    awg(7, 3665),
    awg(8, 3264),
    awg(9, 2906),
    awg(10, 2588),
    awg(11, 2305),
    awg(12, 2053),
    awg(13, 1828),
    awg(14, 1628),
    awg(15, 1450),
    awg(16, 1291),
    awg(17, 1150),
    awg(18, 1024),
    awg(19, 912),
    awg(20, 812),
    awg(21, 723),
    awg(22, 644),
    awg(23, 573),
    awg(24, 511),
    awg(25, 455),
    awg(26, 405),
    awg(27, 361),
    awg(28, 321),
    awg(29, 286),
    awg(30, 255),
];

/// IEC 60228 class 1 nominal areas; the diameter of a circle of that area.
const AREA: [WireGauge; 8] = [
    area(50, 798),
    area(75, 977),
    area(100, 1128),
    area(150, 1382),
    area(250, 1784),
    area(400, 2257),
    area(600, 2764),
    area(1000, 3568),
];

impl GaugeSystem {
    /// Every system, in the order a list should show them.
    pub const ALL: [Self; 3] = [Self::SquareMillimetre, Self::Awg, Self::Swg];

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Swg => "SWG (imperial standard wire gauge)",
            Self::Awg => "AWG (American wire gauge)",
            Self::SquareMillimetre => "mm² (cross-section, solid copper)",
        }
    }

    /// The word it is kept under.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Swg => "swg",
            Self::Awg => "awg",
            Self::SquareMillimetre => "mm2",
        }
    }

    /// The published source.
    #[must_use]
    pub const fn source(self) -> &'static str {
        match self {
            Self::Swg => "BS 3737:1964 (withdrawn), values from public tables",
            Self::Awg => "ASTM B258, the formula 0.127 mm × 92^((36 − n)/39)",
            Self::SquareMillimetre => {
                "IEC 60228 class 1 areas; the diameter is that of a circle of the nominal area"
            }
        }
    }

    /// What to mind; empty where there is nothing.
    #[must_use]
    pub const fn note(self) -> &'static str {
        match self {
            Self::Swg | Self::Awg => "",
            Self::SquareMillimetre => {
                "The standard limits resistance, not diameter: real wire is often 1 to 3 % thinner. Measure the bared wire."
            }
        }
    }
}

impl WireGauge {
    /// `SWG 18`, `AWG 16`, `1.5 mm²`.
    #[must_use]
    pub fn label(self) -> String {
        match self.system {
            GaugeSystem::Swg => format!("SWG {}", self.size),
            GaugeSystem::Awg => format!("AWG {}", self.size),
            GaugeSystem::SquareMillimetre => {
                let mut text = crate::entry::format_trimmed(i64::from(self.size), 2);
                text.push_str(" mm²");
                text
            }
        }
    }
}

/// The wires of a system.
#[must_use]
pub const fn gauges(system: GaugeSystem) -> &'static [WireGauge] {
    match system {
        GaugeSystem::Swg => &SWG,
        GaugeSystem::Awg => &AWG,
        GaugeSystem::SquareMillimetre => &AREA,
    }
}

/// One wire; `None` where the list has no such size.
#[must_use]
pub fn gauge(system: GaugeSystem, size: u16) -> Option<WireGauge> {
    gauges(system)
        .iter()
        .copied()
        .find(|wire| wire.size == size)
}

/// The wire of a system whose diameter is nearest.
#[must_use]
pub fn nearest(system: GaugeSystem, diameter_um: u32) -> WireGauge {
    let mut best = match system {
        GaugeSystem::Swg => SWG[0],
        GaugeSystem::Awg => AWG[0],
        GaugeSystem::SquareMillimetre => AREA[0],
    };
    for &wire in gauges(system) {
        if wire.diameter_um.abs_diff(diameter_um) < best.diameter_um.abs_diff(diameter_um) {
            best = wire;
        }
    }
    best
}

/// Reads a wire's diameter: a gauge (`swg 18`, `16 AWG`, `1.5 mm²`) or a length.
///
/// # Errors
/// [`EntryError`]; a gauge outside the list is refused by name.
pub fn parse_wire(text: &str, unit: LengthUnit) -> Result<Entered<u32>, EntryError> {
    let lower = text.trim().to_ascii_lowercase();
    let split = |word: &str| -> Option<String> {
        let rest = lower
            .strip_prefix(word)
            .or_else(|| lower.strip_suffix(word))?;
        Some(rest.trim().to_owned())
    };
    let found = split("swg")
        .map(|size| (GaugeSystem::Swg, size))
        .or_else(|| split("awg").map(|size| (GaugeSystem::Awg, size)))
        .or_else(|| {
            ["mm²", "mm2", "mm^2", "sq mm", "sqmm"]
                .iter()
                .find_map(|word| split(word))
                .map(|size| (GaugeSystem::SquareMillimetre, size))
        });
    let Some((system, size)) = found else {
        return parse_length(text, unit);
    };
    let unknown = || EntryError::UnknownGauge {
        text: shortened(text.trim()),
    };
    let size = match system {
        // The area is a number with decimals: read as if in tenths of a
        // millimetre, it comes back in hundredths of mm² times ten.
        GaugeSystem::SquareMillimetre => {
            let thousandths = crate::entry::parse_permittivity(&size).map_err(|_| unknown())?;
            if thousandths.value % 10 != 0 || thousandths.rounded {
                return Err(unknown());
            }
            u16::try_from(thousandths.value / 10).map_err(|_| unknown())?
        }
        GaugeSystem::Swg | GaugeSystem::Awg => size.parse().map_err(|_| unknown())?,
    };
    gauge(system, size)
        .map(|wire| Entered::exactly(wire.diameter_um))
        .ok_or_else(unknown)
}
