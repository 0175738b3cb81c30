//! The kinds of a plan's numbers: their units, how they are read and shown.

use crate::entry::{EntryError, LengthUnit, Units, format_decimal, parse_decimal, parse_in};

/// Metres in a foot.
const FOOT_M: f64 = 0.3048;

/// What kind of number it is. The unit that is kept stands behind each.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PlanQuantity {
    /// m; shown in metres or feet.
    Distance,
    /// m; shown in millimetres or inches.
    Thickness,
    /// dB.
    Decibels,
    /// dBi.
    Gain,
    /// dBm of a transmitter: watts may be written.
    Power,
    /// dBm of a receiver.
    Level,
    /// Degrees.
    Angle,
    /// Hz; shown in megahertz.
    Bandwidth,
    /// K.
    Temperature,
    /// A whole number.
    Count,
}

const DISTANCES: Units = Units {
    spellings: &[
        ("m", 1.0),
        ("km", 1e3),
        ("ft", FOOT_M),
        ("foot", FOOT_M),
        ("feet", FOOT_M),
        ("'", FOOT_M),
        ("′", FOOT_M),
        ("mi", 1_609.344),
        ("mile", 1_609.344),
        ("miles", 1_609.344),
        ("yd", 0.914_4),
        ("cm", 0.01),
        ("mm", 1e-3),
        ("in", 0.025_4),
    ],
    known: "Distances are in m, km, cm, ft, yd or mi.",
};
const THICKNESSES: Units = Units {
    spellings: &[
        ("mm", 1e-3),
        ("cm", 1e-2),
        ("m", 1.0),
        ("in", 0.025_4),
        ("inch", 0.025_4),
        ("inches", 0.025_4),
        ("\"", 0.025_4),
        ("″", 0.025_4),
        ("ft", FOOT_M),
    ],
    known: "Thicknesses are in mm, cm, m, in or ft.",
};
const DECIBELS: Units = Units {
    spellings: &[("db", 1.0)],
    known: "This is in dB.",
};
const GAINS: Units = Units {
    spellings: &[("dbi", 1.0), ("db", 1.0)],
    known: "Gains are in dBi.",
};
const LEVELS: Units = Units {
    spellings: &[("dbm", 1.0)],
    known: "Levels are in dBm.",
};
const ANGLES: Units = Units {
    spellings: &[("°", 1.0), ("deg", 1.0), ("degrees", 1.0)],
    known: "Angles are in degrees.",
};
const BANDWIDTHS: Units = Units {
    spellings: &[("mhz", 1e6), ("khz", 1e3), ("ghz", 1e9), ("hz", 1.0)],
    known: "Bandwidths are in MHz, kHz, GHz or Hz.",
};
const TEMPERATURES: Units = Units {
    spellings: &[("k", 1.0)],
    known: "Noise temperatures are in K.",
};
const COUNTS: Units = Units {
    spellings: &[],
    known: "This is a plain number.",
};
const POWERS_KNOWN: &str = "Powers are in dBm, mW or W.";

impl PlanQuantity {
    /// The symbol of the unit that it is shown in; empty for a bare number.
    #[must_use]
    pub const fn symbol(self, unit: LengthUnit) -> &'static str {
        match (self, unit) {
            (Self::Distance, LengthUnit::Millimetre) => "m",
            (Self::Distance, LengthUnit::Inch) => "ft",
            (Self::Thickness, unit) => unit.symbol(),
            (Self::Decibels, _) => "dB",
            (Self::Gain, _) => "dBi",
            (Self::Power | Self::Level, _) => "dBm",
            (Self::Angle, _) => "°",
            (Self::Bandwidth, _) => "MHz",
            (Self::Temperature, _) => "K",
            (Self::Count, _) => "",
        }
    }

    /// Worth of that unit in the one that is kept.
    #[must_use]
    pub const fn worth(self, unit: LengthUnit) -> f64 {
        match (self, unit) {
            (Self::Distance, LengthUnit::Inch) => FOOT_M,
            (Self::Thickness, LengthUnit::Millimetre) => 1e-3,
            (Self::Thickness, LengthUnit::Inch) => 0.025_4,
            (Self::Bandwidth, _) => 1e6,
            _ => 1.0,
        }
    }

    /// Reads a number; the value is in the unit that is kept.
    ///
    /// # Errors
    /// [`EntryError`]: what is wrong with the text.
    pub fn parse(self, text: &str, unit: LengthUnit) -> Result<f64, EntryError> {
        let units = match self {
            Self::Distance => DISTANCES,
            Self::Thickness => THICKNESSES,
            Self::Decibels => DECIBELS,
            Self::Gain => GAINS,
            Self::Power => return parse_power(text),
            Self::Level => LEVELS,
            Self::Angle => ANGLES,
            Self::Bandwidth => BANDWIDTHS,
            Self::Temperature => TEMPERATURES,
            Self::Count => COUNTS,
        };
        let value = parse_in(text, units, self.worth(unit))?;
        if self == Self::Count && value.fract() != 0.0 {
            return Err(EntryError::NotWhole);
        }
        Ok(value)
    }

    /// The text of an input box, without its unit: short, to a thousandth at most.
    #[must_use]
    pub fn text(self, value: f64, unit: LengthUnit) -> String {
        let shown = value / self.worth(unit);
        let places = if shown.abs() >= 100.0 { 2 } else { 3 };
        let text = format_decimal(shown, places).replace('−', "-");
        let short = text.trim_end_matches('0').trim_end_matches('.');
        if short == "-0" {
            "0".to_owned()
        } else {
            short.to_owned()
        }
    }
}

/// A transmitter's power in dBm; watts are turned into it.
fn parse_power(text: &str) -> Result<f64, EntryError> {
    let (value, unit) = parse_decimal(text)?;
    let milliwatts = match unit.as_str() {
        "" | "dbm" => return Ok(value),
        "mw" => value,
        "w" => value * 1e3,
        "kw" => value * 1e6,
        _ => {
            return Err(EntryError::UnknownUnit {
                unit: crate::entry::shortened(&unit),
                known: POWERS_KNOWN,
            });
        }
    };
    if milliwatts < 0.0 {
        return Err(EntryError::Negative);
    }
    // No power at all has no level; it is refused as too small.
    Ok(10.0 * milliwatts.max(f64::MIN_POSITIVE).log10())
}
