//! The design file: millimetres and megahertz in JSON, whole micrometres and
//! kilohertz in a [`Design`].

use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use super::thousandths::push_thousandths;
use super::tree::JsonTree;
use crate::design::{Band, Can, Design, Mouth, Probe, Screw, Sleeve, Sweep};
use crate::design_error::{DesignError, Field};
use crate::metal::Metal;

/// Why a design file can't be understood.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum JsonError {
    /// Not JSON.
    Syntax {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
    /// A part is missing.
    Missing {
        /// Where.
        path: &'static str,
    },
    /// A part is of the wrong kind.
    WrongKind {
        /// Where.
        path: &'static str,
        /// What belongs there.
        wanted: &'static str,
    },
    /// A number is out of range; in the file's own unit.
    OutOfRange {
        /// Where.
        path: &'static str,
        /// What it was.
        value: f64,
        /// Smallest that would be right.
        low: f64,
        /// Largest that would be right.
        high: f64,
    },
    /// A word that is not known.
    UnknownWord {
        /// Where.
        path: &'static str,
        /// The words that are.
        allowed: &'static str,
    },
}

impl fmt::Display for JsonError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Syntax { line, column } => {
                write!(f, "not valid JSON: line {line}, column {column}")
            }
            Self::Missing { path } => write!(f, "{path}: missing"),
            Self::WrongKind { path, wanted } => write!(f, "{path}: must be {wanted}"),
            Self::OutOfRange {
                path,
                value,
                low,
                high,
            } => {
                let mut numbers = [String::new(), String::new(), String::new()];
                for (text, number) in numbers.iter_mut().zip([value, low, high]) {
                    push_thousandths(text, number * THOUSAND);
                }
                let [value, low, high] = numbers;
                write!(f, "{path}: {value} is out of range, {low} to {high}")
            }
            Self::UnknownWord { path, allowed } => write!(f, "{path}: must be one of {allowed}"),
        }
    }
}

impl core::error::Error for JsonError {}

/// A number's place in the file, and whole units per file unit.
struct Place {
    path: &'static str,
    per_unit: f64,
}

const fn place(path: &'static str, per_unit: f64) -> Place {
    Place { path, per_unit }
}

/// Millimetres to micrometres, megahertz to kilohertz, and so on.
pub(super) const THOUSAND: f64 = 1e3;

/// Where each number stands in the file.
const fn place_of(field: Field) -> Place {
    let path = match field {
        Field::InsideDiameter => "can.inside_diameter_mm",
        Field::OpenLength => "can.open_length_mm",
        Field::Wall => "can.wall_mm",
        Field::BaseRecess => "can.base_recess_mm",
        Field::WireDiameter => "probe.wire_diameter_mm",
        Field::ProbeLength => "probe.length_mm",
        Field::BackshortDistance => "probe.backshort_distance_mm",
        Field::HoleDiameter => "probe.hole_diameter_mm",
        Field::Reference => "probe.reference_ohm",
        Field::Shunt => "probe.shunt_pf",
        Field::SleeveDiameter => "probe.sleeve.outside_diameter_mm",
        Field::SleevePermittivity => "probe.sleeve.permittivity",
        Field::BandLow => "band.low_mhz",
        Field::BandHigh => "band.high_mhz",
        Field::SweepLow => "sweep.low_mhz",
        Field::SweepHigh => "sweep.high_mhz",
        Field::SweepPoints => return place("sweep.points", 1.0),
        Field::ScrewAxial => "screws[].axial_mm",
        Field::ScrewDepth => "screws[].depth_mm",
        Field::ScrewDiameter => "screws[].diameter_mm",
        Field::ScrewAngle => "screws[].angle_deg",
        Field::ScrewCount => return place("screws", 1.0),
        Field::MouthDiameter => "mouth diameter (mouth_diameter_mm or outside_diameter_mm)",
        Field::MouthAngle => "mouth.half_angle_deg",
        Field::ChokeDepth => "mouth.depth_mm",
    };
    place(path, THOUSAND)
}

impl From<DesignError> for JsonError {
    fn from(error: DesignError) -> Self {
        let place = place_of(error.field);
        Self::OutOfRange {
            path: place.path,
            value: as_float(error.value) / place.per_unit,
            low: as_float(error.low) / place.per_unit,
            high: as_float(error.high) / place.per_unit,
        }
    }
}

#[allow(
    clippy::cast_precision_loss,
    reason = "whole units of a design are far below 2^53"
)]
fn as_float(value: i64) -> f64 {
    value as f64
}

/// Reads a design from JSON that some parser has read. Numbers are rounded to
/// the nearest whole micrometre, kilohertz, femtofarad, milliohm and thousandth.
/// Unknown keys are passed over.
///
/// # Errors
/// [`JsonError`] with the field and, for numbers, the range that would be right.
pub fn design_from_tree<T: JsonTree>(tree: T) -> Result<Design, JsonError> {
    let root = &object(tree, "the design")?;
    check_schema(root)?;
    let design = Design {
        name: name(root)?,
        band: band(&required(root, "band")?)?,
        can: can(&required(root, "can")?)?,
        probe: probe(&required(root, "probe")?)?,
        mouth: mouth(root.member("mouth"))?,
        screws: screws(root.member("screws"))?,
        sweep: root.member("sweep").map(sweep).transpose()?,
    };
    design.check()?;
    Ok(design)
}

fn object<T: JsonTree>(value: T, path: &'static str) -> Result<T, JsonError> {
    if value.is_object() {
        Ok(value)
    } else {
        Err(JsonError::WrongKind {
            path,
            wanted: "an object",
        })
    }
}

fn required<T: JsonTree>(map: &T, key: &'static str) -> Result<T, JsonError> {
    let value = map.member(key).ok_or(JsonError::Missing { path: key })?;
    object(value, key)
}

fn check_schema<T: JsonTree>(root: &T) -> Result<(), JsonError> {
    let path = "schema";
    let value = root.member(path).ok_or(JsonError::Missing { path })?;
    match value.number() {
        Some(1.0) => Ok(()),
        Some(value) => Err(JsonError::OutOfRange {
            path,
            value,
            low: 1.0,
            high: 1.0,
        }),
        None => Err(JsonError::WrongKind {
            path,
            wanted: "the number 1",
        }),
    }
}

fn name<T: JsonTree>(root: &T) -> Result<String, JsonError> {
    root.member("name").map_or(Ok(String::new()), |value| {
        value.text().ok_or(JsonError::WrongKind {
            path: "name",
            wanted: "text",
        })
    })
}

/// A number in whole units, or `None` where it isn't stated.
fn number<T: JsonTree>(map: &T, key: &str, field: Field) -> Result<Option<i64>, JsonError> {
    let Some(value) = map.member(key) else {
        return Ok(None);
    };
    let Place { path, per_unit } = place_of(field);
    let stated = value.number().ok_or(JsonError::WrongKind {
        path,
        wanted: "a number",
    })?;
    let whole = crate::math::round(stated * per_unit);
    let (low, high) = field.range();
    if !(whole >= as_float(low) && whole <= as_float(high)) {
        return Err(JsonError::OutOfRange {
            path,
            value: stated,
            low: as_float(low) / per_unit,
            high: as_float(high) / per_unit,
        });
    }
    #[allow(clippy::cast_possible_truncation, reason = "checked against the range")]
    Ok(Some(whole as i64))
}

/// A number that must be stated.
fn stated<T: JsonTree>(map: &T, key: &str, field: Field) -> Result<u32, JsonError> {
    number(map, key, field)?
        .map(unsigned)
        .ok_or(JsonError::Missing {
            path: place_of(field).path,
        })
}

fn stated_or<T: JsonTree>(
    map: &T,
    key: &str,
    field: Field,
    default: u32,
) -> Result<u32, JsonError> {
    Ok(number(map, key, field)?.map_or(default, unsigned))
}

/// Within every field's range, so nothing is lost.
fn unsigned(value: i64) -> u32 {
    u32::try_from(value).unwrap_or_default()
}

fn band<T: JsonTree>(map: &T) -> Result<Band, JsonError> {
    Ok(Band {
        low_khz: stated(map, "low_mhz", Field::BandLow)?,
        high_khz: stated(map, "high_mhz", Field::BandHigh)?,
    })
}

fn can<T: JsonTree>(map: &T) -> Result<Can, JsonError> {
    let metal = match map.member("metal") {
        None => Metal::Perfect,
        Some(value) => value
            .text()
            .and_then(|word| Metal::from_key(&word))
            .ok_or(JsonError::UnknownWord {
                path: "can.metal",
                allowed: "perfect, tinplate, galvanised, aluminium, copper, brass, zinc, steel, stainless",
            })?,
    };
    Ok(Can {
        inside_diameter_um: stated(map, "inside_diameter_mm", Field::InsideDiameter)?,
        open_length_um: stated(map, "open_length_mm", Field::OpenLength)?,
        wall_um: stated_or(map, "wall_mm", Field::Wall, 250)?,
        base_recess_um: stated_or(map, "base_recess_mm", Field::BaseRecess, 0)?,
        metal,
    })
}

fn probe<T: JsonTree>(map: &T) -> Result<Probe, JsonError> {
    Ok(Probe {
        wire_diameter_um: stated(map, "wire_diameter_mm", Field::WireDiameter)?,
        length_um: stated(map, "length_mm", Field::ProbeLength)?,
        backshort_distance_um: stated(map, "backshort_distance_mm", Field::BackshortDistance)?,
        hole_diameter_um: number(map, "hole_diameter_mm", Field::HoleDiameter)?.map(unsigned),
        reference_milliohm: stated_or(map, "reference_ohm", Field::Reference, 50_000)?,
        shunt_ff: stated_or(map, "shunt_pf", Field::Shunt, 0)?,
        sleeve: map.member("sleeve").map(sleeve).transpose()?,
    })
}

fn sleeve<T: JsonTree>(value: T) -> Result<Sleeve, JsonError> {
    let map = &object(value, "probe.sleeve")?;
    Ok(Sleeve {
        outside_diameter_um: stated(map, "outside_diameter_mm", Field::SleeveDiameter)?,
        permittivity_milli: stated(map, "permittivity", Field::SleevePermittivity)?,
    })
}

fn mouth<T: JsonTree>(value: Option<T>) -> Result<Mouth, JsonError> {
    let Some(value) = value else {
        return Ok(Mouth::Open);
    };
    let map = &object(value, "mouth")?;
    let kind = map.member("kind").and_then(|kind| kind.text());
    let outside = || stated(map, "outside_diameter_mm", Field::MouthDiameter);
    match kind.as_deref() {
        Some("open") => Ok(Mouth::Open),
        Some("absorbing") => Ok(Mouth::Absorbing),
        Some("funnel") => Ok(Mouth::Funnel {
            mouth_diameter_um: stated(map, "mouth_diameter_mm", Field::MouthDiameter)?,
            half_angle_millideg: stated(map, "half_angle_deg", Field::MouthAngle)?,
        }),
        Some("flange") => Ok(Mouth::Flange {
            outside_diameter_um: outside()?,
        }),
        Some("choke") => Ok(Mouth::Choke {
            outside_diameter_um: outside()?,
            depth_um: stated(map, "depth_mm", Field::ChokeDepth)?,
        }),
        _ => Err(JsonError::UnknownWord {
            path: "mouth.kind",
            allowed: "open, absorbing, funnel, flange, choke",
        }),
    }
}

fn screws<T: JsonTree>(value: Option<T>) -> Result<Vec<Screw>, JsonError> {
    let Some(value) = value else {
        return Ok(Vec::new());
    };
    let list = value.items().ok_or(JsonError::WrongKind {
        path: "screws",
        wanted: "a list",
    })?;
    list.into_iter()
        .map(|value| {
            let map = &object(value, "screws[]")?;
            let angle = number(map, "angle_deg", Field::ScrewAngle)?.unwrap_or(0);
            Ok(Screw {
                axial_um: stated(map, "axial_mm", Field::ScrewAxial)?,
                angle_millideg: i32::try_from(angle).unwrap_or_default(),
                depth_um: stated(map, "depth_mm", Field::ScrewDepth)?,
                diameter_um: stated(map, "diameter_mm", Field::ScrewDiameter)?,
            })
        })
        .collect()
}

fn sweep<T: JsonTree>(value: T) -> Result<Sweep, JsonError> {
    let map = &object(value, "sweep")?;
    Ok(Sweep {
        low_khz: stated(map, "low_mhz", Field::SweepLow)?,
        high_khz: stated(map, "high_mhz", Field::SweepHigh)?,
        points: stated_or(map, "points", Field::SweepPoints, 101)?,
    })
}
