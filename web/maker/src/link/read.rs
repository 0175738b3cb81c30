//! Reading a link, hostile ones included.

use tinwave_core::design::{Band, Can, Design, Mouth, Probe, Screw, Sleeve, Sweep};
use tinwave_core::design_error::{DesignError, Field};
use tinwave_core::metal::Metal;

use super::error::LinkError;
use super::name;
use super::number::thousandths;
use super::{
    LINK_VERSION, LONGEST_READ, Opened, V1_CONNECTOR, V1_METAL, V1_RECESS_UM,
    V1_REFERENCE_MILLIOHM, V1_SHUNT_FF, V1_WALL_UM,
};
use crate::connectors::{ConnectorChoice, ConnectorKind, Mounting};
use crate::entry::shortened;
use crate::station::Station;
use crate::workpiece::{Cut, Workpiece, clean_name};

/// The keys of version 1.
const KEYS: [&str; 19] = [
    "n", "b", "d", "l", "w", "r", "m", "pw", "pl", "pd", "ph", "z", "c", "s", "mo", "k", "t", "f",
    "u",
];

/// Whether a text holds only what a link may hold in a key or value.
pub(crate) fn plain(text: &str) -> bool {
    text.chars().all(allowed)
}

fn allowed(character: char) -> bool {
    character.is_ascii_alphanumeric() || matches!(character, '-' | '_' | '.' | '~')
}

/// The pairs of a link, each key once, and what became of them.
struct Pairs {
    list: Vec<(String, String)>,
    /// Whether a value that can't be read is passed over (a newer link).
    lenient: bool,
    not_understood: Vec<String>,
}

pub(super) fn decode(fragment: &str) -> Result<Opened, LinkError> {
    let fragment = fragment.strip_prefix('#').unwrap_or(fragment).trim();
    if fragment.is_empty() {
        return Err(LinkError::Empty);
    }
    if fragment.len() > LONGEST_READ {
        return Err(LinkError::TooLong {
            length: fragment.len(),
            most: LONGEST_READ,
        });
    }
    let mut pairs = Pairs {
        list: split(&unescaped(fragment))?,
        lenient: false,
        not_understood: Vec::new(),
    };
    let version = version(&mut pairs)?;
    let newer = (version > LINK_VERSION).then_some(version);
    pairs.lenient = newer.is_some();
    // A page that knows more stations than this one may have written its word.
    let station = pairs.take("at").and_then(|key| Station::from_key(&key));
    let work = Workpiece {
        design: design(&mut pairs)?,
        connector: pairs.optional("k", V1_CONNECTOR, connector)?,
        cut: pairs.optional("u", Cut::AsCut, cut)?,
    };
    work.design.check().map_err(LinkError::OutOfRange)?;
    Ok(Opened {
        work,
        station,
        newer,
        unknown: pairs.list,
        not_understood: pairs.not_understood,
    })
}

/// Undoes what software on the way does to links: `%7E` for `~` and the like.
fn unescaped(fragment: &str) -> String {
    let mut text = String::with_capacity(fragment.len());
    let mut rest = fragment;
    while let Some((before, after)) = rest.split_once('%') {
        text.push_str(before);
        let byte = after
            .get(..2)
            .filter(|hex| hex.bytes().all(|digit| digit.is_ascii_hexdigit()))
            .and_then(|hex| u8::from_str_radix(hex, 16).ok())
            .filter(u8::is_ascii_graphic);
        match byte {
            Some(byte) => {
                text.push(char::from(byte));
                rest = after.get(2..).unwrap_or("");
            }
            None => {
                text.push('%');
                rest = after;
            }
        }
    }
    text.push_str(rest);
    text.replace("&amp;", "&")
}

fn split(text: &str) -> Result<Vec<(String, String)>, LinkError> {
    let mut list: Vec<(String, String)> = Vec::new();
    for part in text.split('&').filter(|part| !part.is_empty()) {
        let Some((key, value)) = part.split_once('=') else {
            return Err(LinkError::NoValue {
                part: shortened(part),
            });
        };
        if let Some(character) = key.chars().chain(value.chars()).find(|&c| !allowed(c)) {
            return Err(LinkError::BadCharacter { character });
        }
        if list.iter().any(|(known, _)| known == key) {
            return Err(LinkError::Duplicate {
                key: shortened(key),
            });
        }
        list.push((key.into(), value.into()));
    }
    Ok(list)
}

fn version(pairs: &mut Pairs) -> Result<u32, LinkError> {
    let text = pairs.take("v").ok_or(LinkError::NoVersion)?;
    let bad = || LinkError::BadVersion {
        text: shortened(&text),
    };
    if text.len() > 6 || !text.bytes().all(|byte| byte.is_ascii_digit()) {
        return Err(bad());
    }
    text.parse()
        .ok()
        .filter(|&version: &u32| version > 0)
        .ok_or_else(bad)
}

impl Pairs {
    fn take(&mut self, key: &str) -> Option<String> {
        let at = self.list.iter().position(|(known, _)| known == key)?;
        Some(self.list.remove(at).1)
    }

    /// A key that every design needs.
    fn needed<T>(&mut self, key: &'static str, read: Reader<T>) -> Result<T, LinkError> {
        debug_assert!(KEYS.contains(&key));
        let value = self.take(key).ok_or(LinkError::Missing { key })?;
        read(key, &value)
    }

    /// A key that may be left out.
    fn optional<T>(
        &mut self,
        key: &'static str,
        default: T,
        read: Reader<T>,
    ) -> Result<T, LinkError> {
        debug_assert!(KEYS.contains(&key));
        let Some(value) = self.take(key) else {
            return Ok(default);
        };
        match read(key, &value) {
            Err(LinkError::BadValue { .. }) if self.lenient => {
                self.not_understood.push(key.into());
                Ok(default)
            }
            other => other,
        }
    }
}

type Reader<T> = fn(&'static str, &str) -> Result<T, LinkError>;

fn design(pairs: &mut Pairs) -> Result<Design, LinkError> {
    Ok(Design {
        name: pairs.optional("n", String::new(), |key, value| {
            name::decoded(value)
                .map(|name| clean_name(&name))
                .ok_or_else(|| bad(key, value))
        })?,
        band: pairs.needed("b", band)?,
        can: Can {
            inside_diameter_um: pairs.needed("d", |k, v| number(k, v, Field::InsideDiameter))?,
            open_length_um: pairs.needed("l", |k, v| number(k, v, Field::OpenLength))?,
            wall_um: pairs.optional("w", V1_WALL_UM, |k, v| number(k, v, Field::Wall))?,
            base_recess_um: pairs
                .optional("r", V1_RECESS_UM, |k, v| number(k, v, Field::BaseRecess))?,
            metal: pairs.optional("m", V1_METAL, |key, value| {
                Metal::from_key(value).ok_or_else(|| bad(key, value))
            })?,
        },
        probe: probe(pairs)?,
        mouth: pairs.optional("mo", Mouth::Open, mouth)?,
        screws: pairs.optional("t", Vec::new(), screws)?,
        sweep: pairs.optional("f", None, sweep)?,
    })
}

fn probe(pairs: &mut Pairs) -> Result<Probe, LinkError> {
    Ok(Probe {
        wire_diameter_um: pairs.needed("pw", |k, v| number(k, v, Field::WireDiameter))?,
        length_um: pairs.needed("pl", |k, v| number(k, v, Field::ProbeLength))?,
        backshort_distance_um: pairs.needed("pd", |k, v| number(k, v, Field::BackshortDistance))?,
        hole_diameter_um: pairs.optional("ph", None, |k, v| {
            number(k, v, Field::HoleDiameter).map(Some)
        })?,
        reference_milliohm: pairs.optional("z", V1_REFERENCE_MILLIOHM, |k, v| {
            number(k, v, Field::Reference)
        })?,
        shunt_ff: pairs.optional("c", V1_SHUNT_FF, |k, v| number(k, v, Field::Shunt))?,
        sleeve: pairs.optional("s", None, sleeve)?,
    })
}

fn cut(key: &'static str, value: &str) -> Result<Cut, LinkError> {
    match value {
        "best" => Ok(Cut::FollowsBest),
        _ => Err(bad(key, value)),
    }
}

fn bad(key: &'static str, value: &str) -> LinkError {
    LinkError::BadValue {
        key,
        value: shortened(value),
    }
}

/// One number of a field, in its range.
fn number(key: &'static str, text: &str, field: Field) -> Result<u32, LinkError> {
    let value = thousandths(text).ok_or_else(|| bad(key, text))?;
    field.check(value).map_err(LinkError::OutOfRange)?;
    u32::try_from(value).map_err(|_| bad(key, text))
}

fn band(key: &'static str, text: &str) -> Result<Band, LinkError> {
    let (low, high) = text.split_once('-').ok_or_else(|| bad(key, text))?;
    Ok(Band {
        low_khz: number(key, low, Field::BandLow)?,
        high_khz: number(key, high, Field::BandHigh)?,
    })
}

/// A kind, and its fixing; the usual one where none is stated.
fn connector(key: &'static str, text: &str) -> Result<ConnectorChoice, LinkError> {
    let (kind, mounting) = match text.split_once('_') {
        Some((kind, mounting)) => (kind, Some(mounting)),
        None => (text, None),
    };
    let mut choice = ConnectorKind::from_key(kind)
        .map(ConnectorChoice::usual)
        .ok_or_else(|| bad(key, text))?;
    if let Some(mounting) = mounting {
        choice.mounting = Mounting::from_key(mounting).ok_or_else(|| bad(key, text))?;
    }
    if choice.exists() {
        Ok(choice)
    } else {
        Err(bad(key, text))
    }
}

fn sweep(key: &'static str, text: &str) -> Result<Option<Sweep>, LinkError> {
    let [low, high, points] = parts(key, text, '-')?;
    let count = thousandths(points)
        .filter(|thousandths| thousandths % 1000 == 0)
        .ok_or_else(|| bad(key, text))?
        / 1000;
    Field::SweepPoints
        .check(count)
        .map_err(LinkError::OutOfRange)?;
    Ok(Some(Sweep {
        low_khz: number(key, low, Field::SweepLow)?,
        high_khz: number(key, high, Field::SweepHigh)?,
        points: u32::try_from(count).map_err(|_| bad(key, text))?,
    }))
}

fn sleeve(key: &'static str, text: &str) -> Result<Option<Sleeve>, LinkError> {
    let [diameter, permittivity] = parts(key, text, '_')?;
    Ok(Some(Sleeve {
        outside_diameter_um: number(key, diameter, Field::SleeveDiameter)?,
        permittivity_milli: number(key, permittivity, Field::SleevePermittivity)?,
    }))
}

fn mouth(key: &'static str, text: &str) -> Result<Mouth, LinkError> {
    let (word, numbers) = text.split_once('_').unwrap_or((text, ""));
    match word {
        "open" if numbers.is_empty() => Ok(Mouth::Open),
        "absorbing" if numbers.is_empty() => Ok(Mouth::Absorbing),
        "funnel" => {
            let [diameter, angle] = parts(key, numbers, '_')?;
            Ok(Mouth::Funnel {
                mouth_diameter_um: number(key, diameter, Field::MouthDiameter)?,
                half_angle_millideg: number(key, angle, Field::MouthAngle)?,
            })
        }
        "flange" => Ok(Mouth::Flange {
            outside_diameter_um: number(key, numbers, Field::MouthDiameter)?,
        }),
        "choke" => {
            let [diameter, depth] = parts(key, numbers, '_')?;
            Ok(Mouth::Choke {
                outside_diameter_um: number(key, diameter, Field::MouthDiameter)?,
                depth_um: number(key, depth, Field::ChokeDepth)?,
            })
        }
        _ => Err(bad(key, text)),
    }
}

fn screws(key: &'static str, text: &str) -> Result<Vec<Screw>, LinkError> {
    let count = text.split('~').count();
    let most = usize::try_from(Field::ScrewCount.range().1).unwrap_or(0);
    if count > most {
        return Err(LinkError::OutOfRange(DesignError {
            field: Field::ScrewCount,
            value: i64::try_from(count).unwrap_or(i64::MAX),
            low: Field::ScrewCount.range().0,
            high: Field::ScrewCount.range().1,
        }));
    }
    text.split('~').map(|screw| one_screw(key, screw)).collect()
}

fn one_screw(key: &'static str, text: &str) -> Result<Screw, LinkError> {
    let [axial, angle, depth, diameter] = parts(key, text, '_')?;
    let angle_value = thousandths(angle).ok_or_else(|| bad(key, text))?;
    Field::ScrewAngle
        .check(angle_value)
        .map_err(LinkError::OutOfRange)?;
    Ok(Screw {
        axial_um: number(key, axial, Field::ScrewAxial)?,
        angle_millideg: i32::try_from(angle_value).map_err(|_| bad(key, text))?,
        depth_um: number(key, depth, Field::ScrewDepth)?,
        diameter_um: number(key, diameter, Field::ScrewDiameter)?,
    })
}

/// Exactly `N` parts.
fn parts<'a, const N: usize>(
    key: &'static str,
    text: &'a str,
    between: char,
) -> Result<[&'a str; N], LinkError> {
    let mut found = [""; N];
    let mut pieces = text.split(between);
    for place in &mut found {
        *place = pieces.next().ok_or_else(|| bad(key, text))?;
    }
    match pieces.next() {
        Some(_) => Err(bad(key, text)),
        None => Ok(found),
    }
}
